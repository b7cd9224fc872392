#include "ui/dialogs/alerts_dialog.h"

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QShortcut>
#include <QTableView>
#include <QVBoxLayout>

#include "core/fleet/alerts.h"
#include "core/store/day.h"
#include "ui/dialogs/alert_delivery_form.h"
#include "ui/dialogs/alert_rules_form.h"
#include "ui/model/site_time.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"
#include "ui/pages/ruled_table.h"

namespace fettle {

namespace {

struct ListAnswer {
    std::vector<Alert> alerts;
    std::string timeZone;
};

Result<ListAnswer> readList(FleetFile& fleet, bool clearedToo) {
    auto alerts = fleet.alerts().alerts(clearedToo);
    if (!alerts) return fail(alerts.error());
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    return ListAnswer{std::move(*alerts), site->timeZone};
}

}  // namespace

AlertsDialog::AlertsDialog(FleetWork& work, const Theme& theme, QWidget* parent)
    : QDialog(parent),
      work_(work),
      checking_(work.path()),
      tabs_(new QTabWidget(this)),
      word_(new QLabel(this)),
      detail_(new QLabel(this)),
      clearedToo_(new QCheckBox(tr("&Cleared ones too"), this)),
      why_(new QLineEdit(this)),
      table_(new QTableView(this)) {
    setObjectName(QStringLiteral("alertsDialog"));
    setWindowTitle(tr("Alerts between rounds"));
    setAttribute(Qt::WA_DeleteOnClose);
    tabs_->setObjectName(QStringLiteral("alertTabs"));
    tabs_->setAccessibleName(tr("Alerts, rules, delivery"));
    setQuietTabs(*tabs_);
    tabs_->addTab(buildList(theme), tr("A&lerts"));
    tabs_->addTab(new AlertRulesForm(work, theme, this), tr("R&ules"));
    tabs_->addTab(new AlertDeliveryForm(work, theme, this), tr("Deli&very"));
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* all = new QVBoxLayout(this);
    all->addWidget(tabs_, 1);
    all->addWidget(buttons);
    connect(&work_, &FleetWork::changedFleet, this, &AlertsDialog::read);
    resize(fontMetrics().averageCharWidth() * 165, fontMetrics().height() * 38);
    read();
}

QPushButton* AlertsDialog::button(const QString& text, const char* name, const QString& help) {
    auto* made = new QPushButton(text, this);
    made->setObjectName(QString::fromLatin1(name));
    made->setToolTip(help);
    made->setAutoDefault(false);
    return made;
}

QWidget* AlertsDialog::buildList(const Theme& theme) {
    auto* page = new QWidget(this);
    word_->setObjectName(QStringLiteral("alertsWord"));
    word_->setWordWrap(true);
    detail_->setObjectName(QStringLiteral("alertDetail"));
    detail_->setWordWrap(true);
    detail_->setTextFormat(Qt::PlainText);
    detail_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    detail_->setMinimumHeight(3 * fontMetrics().lineSpacing());
    table_->setObjectName(QStringLiteral("alerts"));
    table_->setAccessibleName(tr("Alerts"));
    table_->setModel(&alerts_);
    setRuled(*table_, theme);
    const int wide = fontMetrics().averageCharWidth();
    table_->setColumnWidth(AlertModel::State, wide * 20);
    table_->setColumnWidth(AlertModel::Machine, wide * 16);
    table_->setColumnWidth(AlertModel::Since, wide * 25);
    table_->setColumnWidth(AlertModel::Delivery, wide * 32);
    keepHeadsWhole(*table_);
    table_->horizontalHeader()->setSectionResizeMode(AlertModel::What, QHeaderView::Stretch);
    connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &AlertsDialog::showCurrent);
    connect(table_, &QTableView::activated, this, &AlertsDialog::openMachine);
    auto* lines = new QVBoxLayout(page);
    endAtTheRight(*lines);
    lines->addWidget(word_);
    lines->addWidget(table_, 1);
    lines->addWidget(detail_);
    lines->addWidget(buildFoot());
    return page;
}

QWidget* AlertsDialog::buildFoot() {
    auto* foot = new QWidget(this);
    why_->setObjectName(QStringLiteral("alertWhy"));
    why_->setPlaceholderText(tr("what was seen or done"));
    why_->setAccessibleName(tr("Why the alert is acknowledged"));
    why_->setToolTip(tr("Kept with the alert; needed to acknowledge it"));
    clearedToo_->setObjectName(QStringLiteral("clearedToo"));
    clearedToo_->setToolTip(tr("Also those that were acknowledged and are over"));
    acknowledge_ =
        button(tr("Ac&knowledge"), "alertAcknowledge", tr("You have seen to the chosen alert (Ctrl+Return)"));
    open_ = button(tr("&Open machine"), "alertOpen", tr("Its machine, at the place and fault (Return)"));
    check_ = button(tr("Check &now"), "alertCheck", tr("Ask the rules of every machine, silence too"));
    connect(acknowledge_, &QPushButton::clicked, this, &AlertsDialog::acknowledge);
    connect(why_, &QLineEdit::returnPressed, this, &AlertsDialog::acknowledge);
    connect(why_, &QLineEdit::textChanged, this, &AlertsDialog::showCurrent);
    connect(open_, &QPushButton::clicked, this, &AlertsDialog::openMachine);
    connect(check_, &QPushButton::clicked, this, &AlertsDialog::checkNow);
    connect(clearedToo_, &QCheckBox::toggled, this, &AlertsDialog::read);
    connect(new QShortcut(QKeySequence(QStringLiteral("Ctrl+Return")), this), &QShortcut::activated, this,
            &AlertsDialog::acknowledge);
    auto* lines = new QVBoxLayout(foot);
    lines->setContentsMargins(0, 0, 0, 0);
    auto* one = new QHBoxLayout;
    one->addWidget(why_, 1);
    one->addWidget(acknowledge_);
    one->addWidget(open_);
    auto* two = new QHBoxLayout;
    two->addWidget(clearedToo_);
    two->addStretch(1);
    two->addWidget(check_);
    lines->addLayout(one);
    lines->addLayout(two);
    return foot;
}

const Alert* AlertsDialog::current() const {
    return alerts_.at(table_->currentIndex().row());
}

void AlertsDialog::read() {
    work_.ask<ListAnswer>(
        this, QStringLiteral("alerts"),
        [all = clearedToo_->isChecked()](FleetFile& fleet, const CancelToken&) {
            return readList(fleet, all);
        },
        [this](Result<ListAnswer> answer) {
            if (!answer) return word_->setText(sentence(answer.error()));
            const std::int64_t chosen = current() ? current()->id : 0;
            const auto standing = answer->alerts.size();
            alerts_.set(std::move(answer->alerts), siteZone(answer->timeZone));
            word_->setText(
                standing == 0
                    ? tr("No alert stands. Rules are asked when recordings come in; none alerts on one "
                         "recording but zone D.")
                    : tr("An alert stands until somebody has seen to it and it is over. It is told again "
                         "when it grows."));
            choose(chosen);
            showCurrent();
        });
}

// The same alert wherever it stands now: a reason that is typed is of that one. None where it is gone; 0: the
// first, while no reason is typed.
void AlertsDialog::choose(std::int64_t id) {
    for (int row = 0; row < alerts_.rowCount(); ++row)
        if (id == 0 ? why_->text().isEmpty() : alerts_.at(row)->id == id)
            return table_->setCurrentIndex(alerts_.index(row, AlertModel::State));
    table_->setCurrentIndex({});
}

void AlertsDialog::showCurrent() {
    const Alert* alert = current();
    const bool open = alert && !alert->acknowledged && work_.writable();
    why_->setEnabled(open);
    acknowledge_->setEnabled(open && !why_->text().trimmed().isEmpty());
    open_->setEnabled(alert != nullptr);
    check_->setEnabled(work_.writable() && !checking_.running());
    if (!alert) return detail_->clear();
    QString text = tr("%1, rule %2: %3").arg(shown(alert->machine), shown(alert->rule), shown(alert->words));
    text += QChar('\n') + alertStateText(*alert, alerts_.zone());
    if (alert->ended)
        text += QChar('\n') + tr("Not seen since %1.").arg(momentText(*alert->ended, alerts_.zone()));
    detail_->setText(text);
}

void AlertsDialog::acknowledge() {
    const Alert* alert = current();
    if (!alert || alert->acknowledged || !work_.writable()) return;
    if (why_->text().trimmed().isEmpty()) {
        word_->setText(tr("Say first what was seen or done; it is kept with the alert."));
        return why_->setFocus();
    }
    work_.write<void>(
        this,
        [id = alert->id, why = kept(why_->text())](FleetFile& fleet) {
            return acknowledgeAlert(fleet, id, {}, why, nowUtc());
        },
        [this](Status status) {
            if (!status) return word_->setText(sentence(status.error()));
            why_->clear();
            table_->setFocus();
        });
}

void AlertsDialog::openMachine() {
    const Alert* alert = current();
    if (!alert) return;
    emit machineWanted(shown(alert->machine), alert->kind == "silence" ? QString() : shown(alert->at),
                       alert->kind == "silence" ? QString() : shown(alert->fault));
    accept();
}

void AlertsDialog::checkNow() {
    const bool started = checking_.start<AlertsRaised>(
        [](FleetFile& fleet, const Progress&, const CancelToken& cancel) {
            return raiseAlerts(fleet, {AlertRun::Which::All, {}, cancel});
        },
        [this](Result<AlertsRaised> done) {
            check_->setEnabled(work_.writable());
            if (!done) return word_->setText(sentence(done.error()));
            if (done->any()) work_.noteChange();
            word_->setText(tr("%1 looked at: %2 raised, %3 grown, %4 over.")
                               .arg(counted(qsizetype(done->machines), tr("machine"), tr("machines")))
                               .arg(done->raised)
                               .arg(done->grown)
                               .arg(done->ended));
        });
    if (started) check_->setEnabled(false);
}

}  // namespace fettle
