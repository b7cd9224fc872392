#include "ui/dialogs/return_dialog.h"

#include <QComboBox>
#include <QDateEdit>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QPlainTextEdit>

#include "ui/model/words.h"
#include "ui/panels/photo_strip.h"

namespace fettle {

namespace {

QComboBox* codes(const std::vector<std::string>& all, const QString& none, QWidget* parent) {
    auto* box = new QComboBox(parent);
    box->addItem(none, QString());
    for (const std::string& code : all)
        box->addItem(shown(code), shown(code));
    return box;
}

QWidget* inARow(const std::vector<QWidget*>& parts, QWidget* parent) {
    auto* row = new QWidget(parent);
    auto* line = new QHBoxLayout(row);
    line->setContentsMargins(0, 0, 0, 0);
    for (QWidget* part : parts)
        line->addWidget(part, 1);
    return row;
}

void name(QWidget* widget, const char* object, const QString& says) {
    widget->setObjectName(QString::fromLatin1(object));
    widget->setAccessibleName(says);
    widget->setToolTip(says);
}

void choose(QComboBox* box, const std::vector<std::string>& said) {
    for (const std::string& code : said)
        if (const int at = box->findData(shown(code)); at > 0) box->setCurrentIndex(at);
}

}  // namespace

ReturnDialog::ReturnDialog(FleetWork& work, const Theme& theme, const QString& machine, std::int64_t job,
                           const std::vector<JobFinding>& findings, QWidget* parent)
    : AnswerDialog(theme, QStringLiteral("returnDialog"), tr("Planner's report: %1").arg(machine),
                   tr("Keep the report"), parent),
      machine_(machine),
      job_(job),
      findings_(findings),
      finding_(new QComboBox(this)),
      outcome_(new QComboBox(this)) {
    for (const JobFinding& finding : findings_)
        finding_->addItem(faultWords(finding.fault, finding.at));
    outcome_->addItem(tr("confirmed: as told"), QStringLiteral("confirmed"));
    outcome_->addItem(tr("another fault was found"), QStringLiteral("another_fault"));
    outcome_->addItem(tr("opened, nothing found"), QStringLiteral("not_found"));
    outcome_->addItem(tr("not opened"), QStringLiteral("not_opened"));
    addField(tr("Finding"), finding_, "finding");
    addField(tr("Found"), outcome_, "outcome");
    addCodes();
    addRest(work, theme);
    connect(outcome_, &QComboBox::currentIndexChanged, this, &ReturnDialog::check);
    connect(finding_, &QComboBox::currentIndexChanged, this, &ReturnDialog::check);
    connect(text_, &QPlainTextEdit::textChanged, this, &ReturnDialog::check);
    connect(this, &QDialog::accepted, this, [this] { emit given(half(), photos_->photos()); });
    check();
}

void ReturnDialog::addCodes() {
    const ReturnCodes& all = returnCodes();
    showedAs_ = codes(all.showedAs, tr("not said"), this);
    cameFrom_ = codes(all.cameFrom, tr("not said"), this);
    damage_ = codes(all.bearingDamage, tr("not said"), this);
    addField(tr("It showed as (ISO 14224 manner)"), showedAs_, "showedAs");
    addField(tr("It came from"), cameFrom_, "cameFrom");
    addField(tr("Bearing damage (ISO 15243)"), damage_, "damage");
}

void ReturnDialog::addRest(FleetWork& work, const Theme& theme) {
    on_ = new QDateEdit(QDate::currentDate(), this);
    on_->setDisplayFormat(dateFormat());
    on_->setCalendarPopup(true);
    on_->setMaximumDate(QDate::currentDate().addDays(1));
    hours_ = new QDoubleSpinBox(this);
    hours_->setRange(-0.5, 10000);
    hours_->setDecimals(1);
    hours_->setSingleStep(0.5);
    hours_->setSpecialValueText(tr("not said"));
    hours_->setValue(hours_->minimum());
    part_ = new QComboBox(this);
    part_->addItem(tr("not said"));
    part_->addItem(tr("kept"), true);
    part_->addItem(tr("not kept"), false);
    partTag_ = new QLineEdit(this);
    partTag_->setPlaceholderText(tr("tag of the old part"));
    before_ = new QLineEdit(this);
    after_ = new QLineEdit(this);
    before_->setPlaceholderText(tr("before: offset, angle"));
    after_->setPlaceholderText(tr("after: offset, angle"));
    text_ = new QPlainTextEdit(this);
    text_->setTabChangesFocus(true);
    text_->setFixedHeight(fontMetrics().lineSpacing() * 4);
    name(part_, "part", tr("Whether the old part was kept"));
    name(partTag_, "partTag", tr("Tag of the old part"));
    name(before_, "alignmentBefore", tr("Alignment before: offset and angle with their units"));
    name(after_, "alignmentAfter", tr("Alignment after: offset and angle with their units"));
    photos_ = new PhotoStrip(work, theme, true, this);
    addField(tr("Opened on"), on_, "on");
    addField(tr("People x hours"), hours_, "hours");
    form()->addRow(tr("Old part"), inARow({part_, partTag_}, this));
    form()->addRow(tr("Alignment"), inARow({before_, after_}, this));
    addField(tr("In words"), text_, "text");
    form()->addRow(tr("Photographs"), photos_);
}

void ReturnDialog::check() {
    const bool bearing = isBearingFault(finding().fault);
    damage_->setVisible(bearing);
    form()->labelForField(damage_)->setVisible(bearing);
    const bool lacking = outcome_->currentData().toString() == QStringLiteral("another_fault") &&
                         kept(text_->toPlainText()).empty();
    lacks(lacking ? tr("Say in words which other fault was found.") : QString());
}

JobFinding ReturnDialog::finding() const {
    const int at = finding_->currentIndex();
    return at < 0 || at >= int(findings_.size()) ? JobFinding{} : findings_[std::size_t(at)];
}

PlannerReturn ReturnDialog::half() const {
    PlannerReturn said;
    said.job = job_;
    said.machine = kept(machine_);
    said.finding = finding();
    said.outcome = kept(outcome_->currentData().toString());
    for (const QComboBox* box : {showedAs_, cameFrom_, damage_}) {
        const std::string code = kept(box->currentData().toString());
        if (!code.empty() && (box != damage_ || isBearingFault(said.finding.fault)))
            said.codes.push_back(code);
    }
    if (hours_->value() >= 0) said.hours = hours_->value();
    if (part_->currentData().isValid()) said.partKept = part_->currentData().toBool();
    said.partTag = kept(partTag_->text());
    said.alignmentBefore = kept(before_->text());
    said.alignmentAfter = kept(after_->text());
    said.text = kept(text_->toPlainText());
    said.on = kept(on_->date().toString(Qt::ISODate));
    return said;
}

void ReturnDialog::setReturn(const PlannerReturn& half, std::vector<NewPhoto> photos) {
    for (std::size_t i = 0; i < findings_.size(); ++i)
        if (findings_[i].fault == half.finding.fault && findings_[i].at == half.finding.at)
            finding_->setCurrentIndex(int(i));
    outcome_->setCurrentIndex(std::max(0, outcome_->findData(shown(half.outcome))));
    for (QComboBox* box : {showedAs_, cameFrom_, damage_})
        choose(box, half.codes);
    if (half.hours) hours_->setValue(*half.hours);
    if (half.partKept) part_->setCurrentIndex(*half.partKept ? 1 : 2);
    partTag_->setText(shown(half.partTag));
    before_->setText(shown(half.alignmentBefore));
    after_->setText(shown(half.alignmentAfter));
    text_->setPlainText(shown(half.text));
    on_->setDate(QDate::fromString(shown(half.on), Qt::ISODate));
    photos_->setNew(std::move(photos));
}

}  // namespace fettle
