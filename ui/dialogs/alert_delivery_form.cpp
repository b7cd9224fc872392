#include "ui/dialogs/alert_delivery_form.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QRegularExpression>
#include <QScrollArea>
#include <QSpinBox>
#include <QTimeEdit>
#include <QVBoxLayout>

#include "core/exchange/command_words.h"
#include "core/fleet/alert_post.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"

namespace fettle {

namespace {

int minutesOf(const QTimeEdit& edit) {
    return edit.time().hour() * 60 + edit.time().minute();
}

QTime timeOf(int minutes) {
    return QTime(minutes / 60, minutes % 60);
}

std::vector<std::string> wordsIn(const QString& text, const QRegularExpression& between) {
    std::vector<std::string> words;
    for (const QString& word : text.split(between, Qt::SkipEmptyParts))
        words.push_back(kept(word));
    return words;
}

struct DeliveryAnswer {
    AlertWays ways;
    bool allowed = false;
    std::vector<AlertMessage> unsent;
};

Result<DeliveryAnswer> readDelivery(FleetFile& fleet) {
    DeliveryAnswer answer;
    auto ways = alertWays(fleet);
    if (!ways) return fail(ways.error());
    answer.ways = std::move(*ways);
    const auto allowed = deliveryAllowed(fleet);
    if (!allowed) return fail(allowed.error());
    answer.allowed = *allowed || !answer.ways.any();
    auto unsent = fleet.alerts().unsentMessages();
    if (!unsent) return fail(unsent.error());
    answer.unsent = std::move(*unsent);
    return answer;
}

}  // namespace

AlertDeliveryForm::AlertDeliveryForm(FleetWork& work, const Theme& theme, QWidget* parent)
    : QWidget(parent),
      work_(work),
      sending_(work.path()),
      word_(new QLabel(this)),
      state_(new QLabel(this)),
      server_(named(new QLineEdit(this), "mailServer", tr("Mail server"),
                    tr("Computer that takes mail; empty: no mail is sent"))),
      user_(named(new QLineEdit(this), "mailUser", tr("Login name at the mail server"),
                  tr("Empty: without a login"))),
      place_(named(new QLineEdit(this), "mailPasswordPlace", tr("Where the password lies"),
                   tr("Path of the file, name of the variable, or the program with its arguments: words with "
                      "blanks in them between double quotes, no shell reads them"))),
      ca_(named(new QLineEdit(this), "mailCa", tr("Certificates"),
                tr("File with the certificate of an authority of one's own (PEM); empty: the system's"))),
      from_(named(new QLineEdit(this), "mailFrom", tr("Address mails come from"),
                  tr("As in fettle@site.example"))),
      to_(named(new QLineEdit(this), "mailTo", tr("Addresses mails go to"),
                tr("Separated by commas; each gets a mail of its own"))),
      program_(named(new QLineEdit(this), "alertProgram", tr("Program to run"),
                     tr("By its whole path; it reads the alert as JSON. Empty: none"))),
      security_(named(new QComboBox(this), "mailSecurity", tr("Encryption"),
                      tr("Without encryption only to a server on this computer"))),
      placeKind_(named(new QComboBox(this), "mailPasswordKind", tr("Kind of place of the password"),
                       tr("The password itself is never kept in the fleet file"))),
      port_(named(new QSpinBox(this), "mailPort", tr("Port of the mail server"),
                  tr("587 with STARTTLS, 465 with TLS"))),
      perHour_(named(new QSpinBox(this), "mailPerHour", tr("Mails an hour to one address"),
                     tr("What is more comes in one digest"))),
      seconds_(named(new QSpinBox(this), "alertProgramSeconds", tr("Seconds the program may take"),
                     tr("Then it is ended with all it started"))),
      arguments_(named(new QPlainTextEdit(this), "alertProgramArguments", tr("Arguments of the program"),
                       tr("One a line, given as they stand; no shell reads them"))),
      quietFrom_(named(new QTimeEdit(this), "quietFrom", tr("Quiet hours begin"),
                       tr("Time of the site. Between these only rules that say so send"))),
      quietTo_(named(new QTimeEdit(this), "quietTo", tr("Quiet hours end"),
                     tr("Time of the site. The same as the beginning: no quiet hours"))),
      digest_(named(new QTimeEdit(this), "digestAt", tr("Daily digest"), tr("Time of the site"))),
      save_(named(new QPushButton(tr("&Save delivery"), this), "deliverySave", tr("Save delivery"),
                  tr("Keep what is typed and allow this computer to send it"))),
      test_(named(new QPushButton(tr("Send a &test"), this), "deliveryTest", tr("Send a test"),
                  tr("A message that says it is a test, to every address and the program, as saved"))) {
    setObjectName(QStringLiteral("alertDeliveryForm"));
    build(theme);
    setWays({});
    connect(&work_, &FleetWork::changedFleet, this, &AlertDeliveryForm::read);
    connect(&sending_, &LongWork::finished, this, &AlertDeliveryForm::fieldChanged);
    read();
}

void AlertDeliveryForm::build(const Theme& theme) {
    word_->setObjectName(QStringLiteral("deliveryWord"));
    word_->setWordWrap(true);
    word_->setTextFormat(Qt::PlainText);
    word_->setMinimumHeight(2 * fontMetrics().lineSpacing());
    state_->setObjectName(QStringLiteral("deliveryState"));
    state_->setWordWrap(true);
    state_->setTextFormat(Qt::PlainText);
    setInk(*state_, theme, Role::MutedInk);
    auto* fields = new QWidget(this);
    auto* form = new QFormLayout(fields);
    buildMail(*form);
    buildRest(*form);
    auto* scroll = new QScrollArea(this);
    scroll->setWidget(fields);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setFocusPolicy(Qt::NoFocus);
    auto* foot = new QHBoxLayout;
    foot->addWidget(word_, 1);
    foot->addWidget(test_);
    foot->addWidget(save_);
    auto* lines = new QVBoxLayout(this);
    endAtTheRight(*lines);
    lines->addWidget(state_);
    lines->addWidget(scroll, 1);
    lines->addLayout(foot);
    connect(save_, &QPushButton::clicked, this, &AlertDeliveryForm::save);
    connect(test_, &QPushButton::clicked, this, &AlertDeliveryForm::sendTest);
    for (QPushButton* one : {save_, test_})
        one->setAutoDefault(false);
}

void AlertDeliveryForm::buildMail(QFormLayout& form) {
    security_->addItem(tr("STARTTLS"), QStringLiteral("starttls"));
    security_->addItem(tr("TLS from the first byte"), QStringLiteral("tls"));
    security_->addItem(tr("none, this computer alone"), QStringLiteral("none"));
    placeKind_->addItem(tr("no password"), QString());
    placeKind_->addItem(tr("in a file only you may read"), QStringLiteral("file"));
    placeKind_->addItem(tr("in an environment variable"), QStringLiteral("environment"));
    placeKind_->addItem(tr("printed by a program"), QStringLiteral("command"));
    port_->setRange(1, 65535);
    port_->setGroupSeparatorShown(false);
    perHour_->setRange(1, 1000);
    port_->setPrefix(tr("port "));
    perHour_->setPrefix(tr("at most "));
    perHour_->setSuffix(tr(" an hour"));
    auto* server = new QHBoxLayout;
    server->addWidget(server_, 1);
    server->addWidget(security_);
    server->addWidget(port_);
    auto* password = new QHBoxLayout;
    password->addWidget(placeKind_);
    password->addWidget(place_, 1);
    auto* to = new QHBoxLayout;
    to->addWidget(to_, 1);
    to->addWidget(perHour_);
    form.addRow(tr("Mail server"), server);
    form.addRow(tr("Login name"), user_);
    form.addRow(tr("Password"), password);
    form.addRow(tr("Certificates"), ca_);
    form.addRow(tr("From"), from_);
    form.addRow(tr("To"), to);
    for (QLineEdit* one : {server_, user_, place_, ca_, from_, to_})
        connect(one, &QLineEdit::textChanged, this, &AlertDeliveryForm::fieldChanged);
    connect(placeKind_, &QComboBox::currentIndexChanged, this, &AlertDeliveryForm::fieldChanged);
    connect(security_, &QComboBox::currentIndexChanged, this, [this](int index) {
        if (!filling_) port_->setValue(index == 1 ? 465 : index == 2 ? 25 : 587);
        fieldChanged();
    });
}

void AlertDeliveryForm::buildRest(QFormLayout& form) {
    seconds_->setRange(1, 600);
    seconds_->setPrefix(tr("at most "));
    seconds_->setSuffix(tr(" s"));
    arguments_->setTabChangesFocus(true);
    arguments_->setFixedHeight(3 * fontMetrics().lineSpacing());
    for (QTimeEdit* one : {quietFrom_, quietTo_, digest_})
        one->setDisplayFormat(QStringLiteral("HH:mm"));
    auto* program = new QHBoxLayout;
    program->addWidget(program_, 1);
    program->addWidget(seconds_);
    auto* quiet = new QHBoxLayout;
    quiet->addWidget(quietFrom_);
    quiet->addWidget(new QLabel(tr("to"), this));
    quiet->addWidget(quietTo_);
    quiet->addStretch(1);
    auto* digest = new QHBoxLayout;
    digest->addWidget(digest_);
    digest->addStretch(1);
    form.addRow(tr("Program"), program);
    form.addRow(tr("Arguments"), arguments_);
    form.addRow(tr("Quiet hours"), quiet);
    form.addRow(tr("Digest at"), digest);
    connect(program_, &QLineEdit::textChanged, this, &AlertDeliveryForm::fieldChanged);
    connect(arguments_, &QPlainTextEdit::textChanged, this, &AlertDeliveryForm::fieldChanged);
}

Result<SecretPlace> AlertDeliveryForm::place() const {
    const QString kind = placeKind_->currentData().toString();
    if (kind == QStringLiteral("file")) return SecretPlace{kept(place_->text()), "", {}};
    if (kind == QStringLiteral("environment")) return SecretPlace{"", kept(place_->text()), {}};
    if (kind != QStringLiteral("command")) return SecretPlace{};
    auto words = commandWords(place_->text().toStdString(), "");
    if (!words) return fail(ErrorKind::Invalid, "", "password", words.error().rule);
    return SecretPlace{"", "", std::move(*words)};
}

void AlertDeliveryForm::setPlace(const SecretPlace& place) {
    const int kind = !place.file.empty()          ? 1
                     : !place.environment.empty() ? 2
                     : !place.command.empty()     ? 3
                                                  : 0;
    placeKind_->setCurrentIndex(kind);
    place_->setText(kind == 1   ? shown(place.file)
                    : kind == 2 ? shown(place.environment)
                                : shown(commandLine(place.command)));
}

Status AlertDeliveryForm::setMail(AlertWays& ways) const {
    ways.mail.reset();
    if (server_->text().trimmed().isEmpty()) return {};
    MailWay mail = stored_.mail.value_or(MailWay());
    mail.server.host = kept(server_->text());
    mail.server.port = port_->value();
    mail.server.security = kept(security_->currentData().toString());
    mail.server.user = kept(user_->text());
    mail.server.caFile = kept(ca_->text());
    auto lies = place();
    if (!lies) return fail(lies.error());
    mail.password = std::move(*lies);
    mail.from = kept(from_->text());
    mail.to = wordsIn(to_->text(), QRegularExpression(QStringLiteral("[\\s,;]+")));
    mail.perHour = perHour_->value();
    ways.mail = std::move(mail);
    return {};
}

Result<AlertWays> AlertDeliveryForm::ways() const {
    AlertWays ways = stored_;  // what has no field stays as it was set
    if (auto good = setMail(ways); !good) return fail(good.error());
    ways.command.reset();
    if (!program_->text().trimmed().isEmpty()) {
        CommandWay command = stored_.command.value_or(CommandWay());
        command.words = {kept(program_->text())};
        for (const QString& line : arguments_->toPlainText().split(u'\n', Qt::SkipEmptyParts))
            command.words.push_back(line.toStdString());
        command.timeoutS = seconds_->value();
        ways.command = std::move(command);
    }
    ways.quietFrom = minutesOf(*quietFrom_);
    ways.quietTo = minutesOf(*quietTo_);
    ways.digestAt = minutesOf(*digest_);
    return ways;
}

void AlertDeliveryForm::setWays(const AlertWays& ways) {
    filling_ = true;
    stored_ = ways;
    const MailWay mail = ways.mail.value_or(MailWay());
    const CommandWay command = ways.command.value_or(CommandWay());
    server_->setText(shown(mail.server.host));
    security_->setCurrentIndex(std::max(0, security_->findData(shown(mail.server.security))));
    port_->setValue(mail.server.port);
    user_->setText(shown(mail.server.user));
    setPlace(mail.password);
    ca_->setText(shown(mail.server.caFile));
    from_->setText(shown(mail.from));
    QStringList to, arguments;
    for (const std::string& address : mail.to)
        to << shown(address);
    to_->setText(to.join(QStringLiteral(", ")));
    perHour_->setValue(mail.perHour);
    program_->setText(command.words.empty() ? QString() : shown(command.words[0]));
    for (std::size_t i = 1; i < command.words.size(); ++i)
        arguments << shown(command.words[i]);
    arguments_->setPlainText(arguments.join(u'\n'));
    seconds_->setValue(command.timeoutS);
    quietFrom_->setTime(timeOf(ways.quietFrom));
    quietTo_->setTime(timeOf(ways.quietTo));
    digest_->setTime(timeOf(ways.digestAt));
    filling_ = false;
    fieldChanged();
}

void AlertDeliveryForm::fieldChanged() {
    if (filling_) return;
    place_->setEnabled(placeKind_->currentIndex() > 0);
    const auto typed = ways();
    const Status good = typed ? checkAlertWays(*typed) : Status(fail(typed.error()));
    word_->setText(good ? QString() : sentence(good.error()));
    save_->setEnabled(work_.writable() && good);
    test_->setEnabled(work_.writable() && !sending_.running());
}

void AlertDeliveryForm::read() {
    work_.ask<DeliveryAnswer>(
        this, QStringLiteral("alert delivery"),
        [](FleetFile& fleet, const CancelToken&) { return readDelivery(fleet); },
        [this](Result<DeliveryAnswer> answer) {
            if (!answer) return state_->setText(sentence(answer.error()));
            QStringList lines;
            if (!answer->allowed)
                lines << tr(
                    "This was set by another user or on another computer: nothing is sent from here "
                    "until you save it.");
            for (const AlertMessage& message : answer->unsent)
                if (!message.error.empty())
                    lines
                        << tr("Not sent yet, tries: %1. %2").arg(message.attempts).arg(shown(message.error));
            if (!answer->ways.any()) lines << tr("Nothing is sent: alerts are listed here alone.");
            state_->setText(lines.join(u'\n'));
            if (std::string text = toText(answer->ways); text != read_) {
                read_ = std::move(text);
                setWays(answer->ways);
            }
        });
}

void AlertDeliveryForm::save() {
    if (!save_->isEnabled()) return;
    const auto typed = ways();
    if (!typed) return;
    work_.write<void>(
        this, [ways = *typed](FleetFile& fleet) { return setAlertWays(fleet, ways); },
        [this](Status status) { word_->setText(status ? tr("Kept.") : sentence(status.error())); });
}

void AlertDeliveryForm::sendTest() {
    const bool started = sending_.start<std::vector<DeliveryFailure>>(
        [](FleetFile& fleet, const Progress&, const CancelToken& cancel) {
            return fettle::sendTest(fleet, cancel);
        },
        [this](Result<std::vector<DeliveryFailure>> failures) {
            QStringList lines;
            if (!failures)
                lines << sentence(failures.error());
            else if (failures->empty())
                lines << tr("The test was taken everywhere.");
            else
                for (const DeliveryFailure& failure : *failures)
                    lines << tr("%1: %2").arg(shown(failure.way), shown(failure.why));
            state_->setText(lines.join(u'\n'));
        });
    if (!started) return;
    test_->setEnabled(false);
    state_->setText(tr("The test is being sent."));
}

}  // namespace fettle
