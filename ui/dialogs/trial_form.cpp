#include "ui/dialogs/trial_form.h"

#include <QComboBox>
#include <QDateTimeEdit>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QVBoxLayout>

#include "core/workshop/unbalance.h"
#include "ui/model/engine_words.h"
#include "ui/model/site_time.h"
#include "ui/model/trial_words.h"
#include "ui/model/unit_words.h"
#include "ui/pages/page_parts.h"

namespace fettle {

namespace {

constexpr double kAngleUnknown = -1;

QScrollArea* scrolled(QWidget* inside, const char* name) {
    auto* area = new QScrollArea;
    area->setObjectName(QString::fromLatin1(name));
    area->setWidget(inside);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    return area;
}

QLabel* heading(const QString& text, QWidget* parent) {
    auto* label = new QLabel(text, parent);
    QFont font = label->font();
    font.setBold(true);
    label->setFont(font);
    return label;
}

void fill(QComboBox* box, const std::vector<Word>& words) {
    for (const Word& word : words)
        box->addItem(word.text, shown(word.key));
}

void choose(QComboBox* box, const std::string& key) {
    const int at = box->findData(shown(key));
    if (at >= 0) box->setCurrentIndex(at);
}

std::string channelKey(const std::string& point, const std::string& channel) {
    return point + "\n" + channel;
}

}  // namespace

TrialForm::TrialForm(const Theme& theme, const Units& units, bool writable, QWidget* parent)
    : QWidget(parent), theme_(theme), units_(units), writable_(writable) {
    setObjectName(QStringLiteral("trialForm"));
    auto* columns = new QHBoxLayout;
    columns->addWidget(scrolled(buildFields(), "trialFields"), 6);
    columns->addWidget(scrolled(buildOutcome(), "trialOutcome"), 6);
    lacks_ = selectableText(this, "trialLacks");
    setInk(*lacks_, theme, Role::Trouble);
    keep_ = new QPushButton(tr("&Keep as a plan"), this);
    keep_->setObjectName(QStringLiteral("trialKeep"));
    keep_->setToolTip(tr("Keeps what is typed; nothing is promised yet"));
    start_ = new QPushButton(tr("&Start the trial: freeze the promise"), this);
    start_->setObjectName(QStringLiteral("trialStart"));
    start_->setToolTip(tr("From then on neither the change nor the promise can be altered"));
    for (QPushButton* button : {keep_, start_})
        button->setAutoDefault(false);
    connect(keep_, &QPushButton::clicked, this, [this] { emit keepWanted(trial()); });
    connect(start_, &QPushButton::clicked, this, [this] { emit startWanted(trial()); });
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(lacks_, 1);
    buttons->addWidget(keep_);
    buttons->addWidget(start_);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->addLayout(columns, 1);
    all->addLayout(buttons);
    filling_ = false;
    showFields();
}

QWidget* TrialForm::buildFields() {
    auto* box = new QWidget;
    fields_ = new QFormLayout(box);
    fields_->setRowWrapPolicy(QFormLayout::WrapLongRows);
    fields_->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    buildWhat();
    buildMass();
    buildPromise();
    return box;
}

void TrialForm::addField(const QString& label, QWidget* field, const char* name, const QString& help) {
    field->setObjectName(QString::fromLatin1(name));
    field->setAccessibleName(label);
    field->setToolTip(help);
    fields_->addRow(label, field);
}

// Below its label: what is in it is long.
void TrialForm::addWideField(const QString& label, QWidget* field, const char* name, const QString& help) {
    field->setObjectName(QString::fromLatin1(name));
    field->setAccessibleName(label);
    field->setToolTip(help);
    auto* head = new QLabel(label, this);
    head->setBuddy(field);
    fields_->addRow(head);
    fields_->addRow(field);
}

QDoubleSpinBox* TrialForm::amount(double most, int digits, const QString& unit) {
    auto* box = new QDoubleSpinBox(this);
    box->setRange(0, most);
    box->setDecimals(digits);
    box->setSuffix(QStringLiteral(" ") + unit);
    box->setSpecialValueText(tr("not given"));
    connect(box, &QDoubleSpinBox::valueChanged, this, &TrialForm::showExpected);
    return box;
}

void TrialForm::buildWhat() {
    name_ = new QLineEdit(this);
    kind_ = new QComboBox(this);
    at_ = new QComboBox(this);
    words_ = new QLineEdit(this);
    element_ = new QComboBox(this);
    follows_ = new QComboBox(this);
    channel_ = new QComboBox(this);
    fill(kind_, trialKinds());
    fill(element_, trialElements());
    fill(follows_, trialFollows());
    for (QComboBox* box : {kind_, at_, element_, follows_, channel_})
        box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    addField(tr("Name"), name_, "trialName", tr("What this trial is called in lists and on its sheet"));
    addField(tr("What is changed"), kind_, "trialKind", tr("Kind of change made on purpose"));
    addField(tr("Where"), at_, "trialAt", tr("Place on the machine"));
    addField(tr("In words"), words_, "trialWords", tr("As somebody else would have to make it again"));
    addField(tr("Damaged element"), element_, "trialElement", tr("Of the bearing at this place"));
    addField(tr("Followed is"), follows_, "trialFollows", tr("What is watched recording by recording"));
    addWideField(tr("Channel followed"), channel_, "trialChannel",
                 tr("Where 1x is read; 1x in brackets is the median of the span before"));
    for (QLineEdit* line : {name_, words_})
        connect(line, &QLineEdit::textChanged, this, &TrialForm::showExpected);
    for (QComboBox* box : {at_, element_, channel_})
        connect(box, &QComboBox::currentIndexChanged, this, &TrialForm::showExpected);
    for (QComboBox* box : {kind_, follows_})
        connect(box, &QComboBox::currentIndexChanged, this, &TrialForm::showFields);
}

void TrialForm::buildMass() {
    mass_ = amount(100000, 2, tr("g"));
    radius_ = amount(10000, 1, tr("mm"));
    rotor_ = amount(100000, 1, tr("kg"));
    angle_ = amount(360, 0, tr("degrees"));
    angle_->setMinimum(kAngleUnknown);
    angle_->setValue(kAngleUnknown);
    angle_->setSpecialValueText(tr("not known"));
    grade_ = new QComboBox(this);
    for (const double grade : kBalanceGrades)
        grade_->addItem(shown(gradeName(grade)), grade);
    grade_->setCurrentIndex(grade_->findData(6.3));
    connect(grade_, &QComboBox::currentIndexChanged, this, &TrialForm::showExpected);
    addField(tr("Mass"), mass_, "trialMass", tr("Of everything that is added, in g"));
    addField(tr("Radius"), radius_, "trialRadius", tr("From the shaft's centre to the mass, in mm"));
    addField(tr("Rotor's mass"), rotor_, "trialRotor",
             tr("In kg; without it neither grade nor range can be said"));
    addField(tr("Grade asked"), grade_, "trialGrade", tr("Balance quality grade of ISO 21940-11, in mm/s"));
    addField(tr("From the heavy spot"), angle_, "trialAngle",
             tr("Angle between the mass and the rotor's own unbalance; 0 degrees adds to it"));
}

void TrialForm::buildPromise() {
    least_ = new QSpinBox(this);
    least_->setRange(10, 60);
    least_->setValue(20);
    least_->setSuffix(tr(" decibans"));
    within_ = new QSpinBox(this);
    within_->setRange(3, 500);
    within_->setValue(10);
    within_->setSuffix(tr(" recordings"));
    before_ = new QDateTimeEdit(this);
    before_->setTimeSpec(Qt::UTC);  // the field knows no zones: it holds the clock's reading
    before_->setDisplayFormat(momentFormat());
    before_->setCalendarPopup(true);
    stopAt_ = new QLineEdit(this);
    stopAt_->setPlaceholderText(
        withUnitsBeside(tr("as in: 7.1 mm/s r.m.s. or 80 °C at the DE bearing"), units_));
    responsible_ = new QLineEdit(this);
    permit_ = new QLineEdit(this);
    addField(tr("Weight promised"), least_, "trialLeast",
             tr("Reached by 3 of 5 running recordings, in decibans"));
    addField(tr("Within"), within_, "trialWithin", tr("Running recordings after the change"));
    addField(tr("Before, from"), before_, "trialBefore",
             tr("Recordings from then on stand for the time before"));
    addField(tr("Stopped at once at"), stopAt_, "trialStopAt", tr("The value that ends the trial at once"));
    addField(tr("Who answers for it"), responsible_, "trialResponsible", tr("A person of the site"));
    addField(tr("Permit"), permit_, "trialPermit", tr("Number of the permit to work; may be empty"));
    connect(least_, &QSpinBox::valueChanged, this, &TrialForm::showExpected);
    connect(within_, &QSpinBox::valueChanged, this, &TrialForm::showExpected);
    connect(before_, &QDateTimeEdit::editingFinished, this,
            [this] { emit beforeChanged(*trial().beforeFrom); });
    for (QLineEdit* line : {stopAt_, responsible_, permit_})
        connect(line, &QLineEdit::textChanged, this, &TrialForm::showExpected);
}

QWidget* TrialForm::buildOutcome() {
    auto* box = new QWidget;
    auto* lines = new QVBoxLayout(box);
    figures_ = selectableText(box, "trialFigures");
    figures_->setTextFormat(Qt::RichText);
    how_ = selectableText(box, "trialHow");
    warnings_ = selectableText(box, "trialWarnings");
    promise_ = selectableText(box, "trialPromise");
    setInk(*how_, theme_, Role::MutedInk);
    setInk(*warnings_, theme_, Role::Trouble);
    lines->addWidget(heading(tr("What it has to do"), box));
    lines->addWidget(figures_);
    lines->addWidget(how_);
    lines->addWidget(warnings_);
    lines->addWidget(heading(tr("What is promised"), box));
    lines->addWidget(promise_);
    lines->addWidget(heading(tr("Before it is started, each of these is confirmed"), box));
    standing_ = selectableText(box, "trialStanding");
    setInk(*standing_, theme_, Role::Trouble);
    standing_->hide();
    lines->addWidget(standing_);
    cautionLines_ = new QVBoxLayout;
    lines->addLayout(cautionLines_);
    lines->addStretch(1);
    return box;
}

void TrialForm::setPlan(std::shared_ptr<const TrialPlan> plan) {
    plan_ = std::move(plan);
    zone_ = siteZone(plan_->timeZone);
    const QSignalBlocker quiet(before_);
    const QDateTime there = siteTime(plan_->beforeFrom, zone_);
    before_->setDateTime(QDateTime(there.date(), there.time(), Qt::UTC));
    fillChoices();
    showFields();
}

// A trial adds to what is there.
void TrialForm::setStanding(const std::string& urgency, const std::string& zone) {
    QStringList words;
    if (urgency == "act")
        words << tr(
            "The round has this machine at act already: settle that before anything is changed on "
            "purpose.");
    if (zone == "D")
        words << tr(
            "This machine vibrates in zone D already, where damage is to be expected: a trial adds "
            "to it.");
    standing_->setText(words.join(u'\n'));
    standing_->setVisible(!words.isEmpty());
}

void TrialForm::fillChoices() {
    const TrialChange typed = change();
    filling_ = true;
    at_->clear();
    for (const std::string& place : plan_->places)
        at_->addItem(shown(place), shown(place));
    channel_->clear();
    const ShownUnit unit = shownUnit(QStringLiteral("mm/s"), units_);
    for (const TrialChannel& one : plan_->channels) {
        const QString name = tr("%1 %2, %3").arg(shown(one.point), shown(one.name), shown(one.direction));
        channel_->addItem(one.onceMmS
                              ? tr("%1 (1x %2 %3)").arg(name, numberText(unit.shown(*one.onceMmS)), unit.unit)
                              : name,
                          shown(channelKey(one.point, one.name)));
    }
    choose(at_, typed.at);
    choose(channel_, channelKey(typed.point, typed.channel));
    filling_ = false;
}

void TrialForm::fillCautions() {
    const auto words = trialCautions(kind());
    if (cautions_.size() == words.size() && !cautions_.empty() &&
        cautions_.back()->property("words").toString() == shown(words.back()))
        return;
    for (QCheckBox* old : cautions_)
        delete old->parentWidget();
    cautions_.clear();
    for (const std::string& one : words) {
        auto* line = new QWidget(this);
        auto* box = new QCheckBox(line);
        box->setObjectName(QStringLiteral("trialCaution%1").arg(cautions_.size()));
        box->setAccessibleName(engineText(one));
        box->setProperty("words", shown(one));
        box->setEnabled(writable_);
        auto* text = selectableText(line, "trialCautionText");
        text->setText(withUnitsBeside(engineText(one), units_));
        text->setBuddy(box);
        auto* row = new QHBoxLayout(line);
        row->setContentsMargins(0, 0, 0, 0);
        row->addWidget(box, 0, Qt::AlignTop);
        row->addWidget(text, 1);
        connect(box, &QCheckBox::toggled, this, &TrialForm::showExpected);
        cautionLines_->addWidget(line);
        cautions_.push_back(box);
    }
}

void TrialForm::setTrial(const Trial& trial) {
    kept_ = trial;
    filling_ = true;
    const TrialChange& c = trial.change;
    name_->setText(shown(trial.name));
    choose(kind_, toText(c.kind));
    choose(at_, c.at);
    words_->setText(shown(c.words));
    choose(element_, c.fault);
    choose(follows_, toText(c.follows));
    choose(channel_, channelKey(c.point, c.channel));
    mass_->setValue(c.massG);
    radius_->setValue(c.radiusMm);
    rotor_->setValue(c.rotorKg.value_or(0));
    angle_->setValue(c.angleDeg.value_or(kAngleUnknown));
    grade_->setCurrentIndex(grade_->findData(c.grade));
    least_->setValue(int(trial.promise.leastDban));
    within_->setValue(trial.promise.within);
    stopAt_->setText(shown(trial.stopAt));
    responsible_->setText(shown(trial.responsible));
    permit_->setText(shown(trial.permit));
    if (trial.beforeFrom) {
        const QDateTime there = siteTime(*trial.beforeFrom, zone_);
        before_->setDateTime(QDateTime(there.date(), there.time(), Qt::UTC));
    }
    filling_ = false;
    showFields();
    for (QCheckBox* box : cautions_)
        for (const std::string& one : trial.precautions)
            if (box->property("words").toString() == shown(one)) box->setChecked(true);
}

TrialKind TrialForm::kind() const {
    for (const TrialKind one : {TrialKind::Mass, TrialKind::Bearing, TrialKind::Bolt})
        if (kind_->currentData().toString() == shown(toText(one))) return one;
    return TrialKind::Other;
}

TrialFollows TrialForm::follows() const {
    if (kind() == TrialKind::Mass) return TrialFollows::Once;
    if (kind() == TrialKind::Bearing) return TrialFollows::Weight;
    if (kind() == TrialKind::Bolt) return TrialFollows::Looseness;
    for (const TrialFollows one : {TrialFollows::Weight, TrialFollows::Once, TrialFollows::Looseness})
        if (follows_->currentData().toString() == shown(toText(one))) return one;
    return TrialFollows::Velocity;
}

TrialChange TrialForm::change() const {
    TrialChange c;
    c.kind = kind();
    c.follows = follows();
    c.at = kept(at_->currentData().toString());
    c.words = kept(words_->text());
    const QStringList channel = channel_->currentData().toString().split(u'\n');
    if (channel.size() == 2) {
        c.point = kept(channel[0]);
        c.channel = kept(channel[1]);
    }
    if (c.kind == TrialKind::Mass) {
        c.massG = mass_->value();
        c.radiusMm = radius_->value();
        if (rotor_->value() > 0) c.rotorKg = rotor_->value();
        if (angle_->value() >= 0) c.angleDeg = angle_->value();
        c.grade = grade_->currentData().toDouble();
    }
    if (c.follows == TrialFollows::Weight) c.fault = kept(element_->currentData().toString());
    return c;
}

Trial TrialForm::trial() const {
    Trial now = kept_;
    now.name = kept(name_->text());
    now.change = change();
    if (now.name.empty()) now.name = kept(trialChangeText(now.change));
    now.stopAt = kept(stopAt_->text());
    now.responsible = kept(responsible_->text());
    now.permit = kept(permit_->text());
    now.beforeFrom = Instant(
        std::chrono::milliseconds(QDateTime(before_->date(), before_->time(), zone_).toMSecsSinceEpoch()));
    now.precautions.clear();
    for (const QCheckBox* box : cautions_)
        if (box->isChecked()) now.precautions.push_back(kept(box->property("words").toString()));
    if (!plan_) return now;
    now.machine = plan_->machine->tag;
    now.expectation =
        expectedOf(now.change, *plan_->machine, groundOf(*plan_, now.change), double(least_->value()));
    TrialPromise asked;
    asked.leastDban = least_->value();
    asked.within = within_->value();
    now.promise = promisedOf(now.change, now.expectation, asked);
    return now;
}

void TrialForm::showFields() {
    if (filling_) return;
    const TrialKind what = kind();
    const auto show = [this](QWidget* field, bool visible) {
        field->setVisible(visible);
        if (QWidget* label = fields_->labelForField(field)) label->setVisible(visible);
    };
    for (QWidget* field : std::initializer_list<QWidget*>{mass_, radius_, rotor_, angle_, grade_})
        show(field, what == TrialKind::Mass);
    show(follows_, what == TrialKind::Other);
    show(element_, follows() == TrialFollows::Weight);
    fillCautions();
    showExpected();
}

void TrialForm::showExpected() {
    if (filling_) return;
    showOutcome(trial());
}

void TrialForm::showOutcome(const Trial& now) {
    QString rows;
    for (const TrialFigure& row : trialFigures(now.change, now.expectation, units_))
        rows += QStringLiteral("<tr><td style='padding-right:1em'>%1</td><td>%2</td></tr>")
                    .arg(row.name.toHtmlEscaped(), row.value.toHtmlEscaped());
    figures_->setText(QStringLiteral("<table>%1</table>").arg(rows));
    figures_->setVisible(!rows.isEmpty());
    std::vector<std::string> how = now.expectation.notes;
    if (!now.expectation.how.empty()) how.insert(how.begin(), now.expectation.how);
    how_->setText(linesOf(how, units_));
    how_->setVisible(!how.empty());
    warnings_->setText(linesOf(now.expectation.warnings, units_));
    warnings_->setVisible(!now.expectation.warnings.empty());
    promise_->setText(now.promise.sentences.empty()
                          ? tr("Nothing can be promised yet: %1.")
                                .arg(withUnitsBeside(engineText(now.expectation.lacking), units_))
                          : linesOf(now.promise.sentences, units_));
    const std::vector<std::string> lacks = startLacks(now);
    QStringList words;
    for (const std::string& one : lacks)
        words << withUnitsBeside(trialLackText(one), units_);
    lacks_->setText(!writable_ ? tr("This fleet file is open for reading only.")
                    : lacks.empty()
                        ? QString()
                        : tr("Before it can be started: %1.").arg(words.join(QStringLiteral("; "))));
    keep_->setEnabled(writable_ && plan_);
    start_->setEnabled(writable_ && plan_ && lacks.empty());
}

}  // namespace fettle
