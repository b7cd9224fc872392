#include "ui/dialogs/alert_rules_form.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QSpinBox>
#include <QStandardItemModel>
#include <QTableView>
#include <QVBoxLayout>
#include <algorithm>

#include "core/fleet/alert_rules.h"
#include "ui/model/alert_model.h"
#include "ui/model/words.h"
#include "ui/pages/given_number.h"
#include "ui/pages/page_parts.h"
#include "ui/pages/ruled_table.h"

namespace fettle {

namespace {

std::string dataOf(const QComboBox& box) {
    return kept(box.currentData().toString());
}

void choose(QComboBox& box, const std::string& data) {
    box.setCurrentIndex(std::max(0, box.findData(shown(data))));
}

}  // namespace

AlertRulesForm::AlertRulesForm(FleetWork& work, const Theme& theme, QWidget* parent)
    : QWidget(parent),
      work_(work),
      model_(new QStandardItemModel(0, 3, this)),
      table_(new QTableView(this)),
      word_(new QLabel(this)),
      name_(named(new QLineEdit(this), "ruleName", tr("Name of the rule"),
                  tr("A new name makes a new rule, a name that is there changes that one"))),
      fault_(named(new QLineEdit(this), "ruleFault", tr("Fault of the rule"),
                   tr("A fault key or how keys begin: bearing, gear_mesh; empty: any fault"))),
      machine_(named(new QLineEdit(this), "ruleMachine", tr("Machine of the rule"),
                     tr("Tag of one machine; empty: all"))),
      area_(named(new QLineEdit(this), "ruleArea", tr("Area of the rule"), tr("One area; empty: all"))),
      kind_(named(new QComboBox(this), "ruleKind", tr("What the rule looks at"),
                  tr("Weight of a fault, zone or growth of a level, stage of a bearing, silence"))),
      grade_(named(new QComboBox(this), "ruleGrade", tr("Zone or stage of the rule"),
                   tr("From this zone or stage on"))),
      criticality_(named(new QComboBox(this), "ruleCriticality", tr("Criticality of the rule"),
                         tr("Machines of one criticality, or all"))),
      deliver_(named(new QComboBox(this), "ruleDeliver", tr("How the alert is sent"),
                     tr("At once, after the quiet hours, with the daily digest, or not at all"))),
      least_(named(new GivenNumber(this), "ruleLeast", tr("Least value of the rule"),
                   tr("Decibans, percent in a week, or times the interval, by what the rule looks at; empty: "
                      "as it says in grey"))),
      hours_(
          named(new GivenNumber(this), "ruleHours", tr("Least hours of silence"),
                tr("Hours of silence at least, whatever the interval is; empty: the interval alone counts"))),
      hits_(named(new QSpinBox(this), "ruleHits", tr("Number of recordings"),
                  tr("In so many recordings; two at least, but zone D may alert on one"))),
      of_(named(new QSpinBox(this), "ruleOf", tr("Of so many recordings"),
                tr("Of the newest running recordings of a point that passed their sensor checks"))),
      second_(named(
          new QCheckBox(tr("after the first, ask for another at once; two that agree then alert"), this),
          "ruleSecond", tr("After the first, ask for another"),
          tr("When one recording alone shows it, the sensor is asked for another instead of waiting "
             "for its next; when that one shows it too, the alert is raised, whatever number is "
             "set here"))),
      enabled_(named(new QCheckBox(tr("the rule is asked"), this), "ruleEnabled", tr("The rule is asked"),
                     tr("A rule that is off raises nothing and stays here"))),
      new_(named(new QPushButton(tr("Ne&w rule"), this), "ruleNew", tr("New rule"),
                 tr("Empties the fields for a rule of a new name"))),
      save_(named(new QPushButton(tr("&Save rule"), this), "ruleSave", tr("Save rule"),
                  tr("Keep the rule as typed"))),
      remove_(named(new QPushButton(tr("&Remove rule"), this), "ruleRemoveAlert", tr("Remove rule"),
                    tr("Take the chosen rule away"))) {
    setObjectName(QStringLiteral("alertRulesForm"));
    build(theme);
    setRule(AlertRule());
    connect(&work_, &FleetWork::changedFleet, this, &AlertRulesForm::read);
    read();
}

void AlertRulesForm::build(const Theme& theme) {
    named(table_, "alertRules", tr("Rules of alerts"), {});
    model_->setHorizontalHeaderLabels({tr("rule"), tr("alerts on"), tr("sent")});
    table_->setModel(model_);
    setRuled(*table_, theme);
    const int wide = fontMetrics().averageCharWidth();
    table_->setColumnWidth(0, wide * 22);
    table_->setColumnWidth(2, wide * 32);
    keepHeadsWhole(*table_);
    table_->horizontalHeader()->setSectionResizeMode(1, QHeaderView::Stretch);
    word_->setObjectName(QStringLiteral("alertRuleWord"));
    word_->setWordWrap(true);
    word_->setMinimumHeight(2 * fontMetrics().lineSpacing());
    auto* fields = new QWidget(this);
    form_ = new QFormLayout(fields);
    buildFields();
    auto* scroll = new QScrollArea(this);
    scroll->setWidget(fields);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setFocusPolicy(Qt::NoFocus);
    auto* foot = new QHBoxLayout;
    foot->addWidget(word_, 1);
    foot->addWidget(new_);
    foot->addWidget(remove_);
    foot->addWidget(save_);
    auto* lines = new QVBoxLayout(this);
    endAtTheRight(*lines);
    lines->addWidget(table_, 2);
    lines->addWidget(scroll, 3);
    lines->addLayout(foot);
    connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this, &AlertRulesForm::chosen);
    connect(save_, &QPushButton::clicked, this, &AlertRulesForm::save);
    connect(remove_, &QPushButton::clicked, this, &AlertRulesForm::remove);
    connect(new_, &QPushButton::clicked, this, &AlertRulesForm::startNew);
    for (QPushButton* one : {new_, save_, remove_})
        one->setAutoDefault(false);
}

void AlertRulesForm::buildFields() {
    for (const char* kind : {"weight", "zone", "stage", "growth", "silence"})
        kind_->addItem(alertKindWord(kind), QString::fromLatin1(kind));
    for (const char* deliver : {"now", "day", "digest", "list"})
        deliver_->addItem(deliverWord(deliver), QString::fromLatin1(deliver));
    criticality_->addItem(tr("all"), QString());
    for (const char* letter : {"A", "B", "C"})
        criticality_->addItem(QString::fromLatin1(letter), QString::fromLatin1(letter));
    least_->setRange(0, 1000);
    least_->setDecimals(1);
    hours_->setRange(0, 10000);
    hours_->setDecimals(0);
    hours_->setWords(tr(" h"), tr("no least number of hours"));
    hits_->setRange(1, 12);
    of_->setRange(1, 12);
    of_->setPrefix(tr("of "));
    recordings_ = new QHBoxLayout;
    recordings_->addWidget(hits_);
    recordings_->addWidget(of_);
    recordings_->addWidget(second_, 1);
    auto* machines = new QHBoxLayout;
    machines->addWidget(machine_);
    machines->addWidget(area_);
    machines->addWidget(criticality_);
    machine_->setPlaceholderText(tr("all machines"));
    area_->setPlaceholderText(tr("all areas"));
    fault_->setPlaceholderText(tr("any fault"));
    form_->addRow(tr("Name"), name_);
    form_->addRow(tr("Looks at"), kind_);
    form_->addRow(tr("From zone"), grade_);
    form_->addRow(tr("Fault"), fault_);
    form_->addRow(tr("At least"), least_);
    form_->addRow(tr("And at least"), hours_);
    form_->addRow(tr("In recordings"), recordings_);
    form_->addRow(tr("Machine, area, criticality"), machines);
    form_->addRow(tr("Sent"), deliver_);
    form_->addRow(QString(), enabled_);
    connect(kind_, &QComboBox::currentIndexChanged, this, &AlertRulesForm::kindChosen);
    for (QLineEdit* one : {name_, fault_, machine_, area_})
        connect(one, &QLineEdit::textChanged, this, &AlertRulesForm::fieldChanged);
    for (QComboBox* one : {grade_, criticality_, deliver_})
        connect(one, &QComboBox::currentIndexChanged, this, &AlertRulesForm::fieldChanged);
    for (GivenNumber* one : {least_, hours_})
        connect(one, &QDoubleSpinBox::valueChanged, this, &AlertRulesForm::fieldChanged);
    for (QSpinBox* one : {hits_, of_})
        connect(one, &QSpinBox::valueChanged, this, &AlertRulesForm::fieldChanged);
}

void AlertRulesForm::kindChosen() {
    const std::string kind = dataOf(*kind_), was = dataOf(*grade_);
    const QSignalBlocker quiet(grade_);
    grade_->clear();
    if (kind == "zone")
        for (const char* zone : {"C", "D"})
            grade_->addItem(tr("zone %1").arg(QString::fromLatin1(zone)), QString::fromLatin1(zone));
    if (kind == "stage") {
        grade_->addItem(tr("early"), QStringLiteral("early"));
        grade_->addItem(tr("developed"), QStringLiteral("developed"));
        grade_->addItem(tr("late"), QStringLiteral("late"));
    }
    choose(*grade_, was);
    if (auto* label = qobject_cast<QLabel*>(form_->labelForField(grade_)))
        label->setText(kind == "stage" ? tr("From stage") : tr("From zone"));
    AlertRule shipped;
    shipped.kind = kind;
    const QString unit = kind == "weight"   ? tr(" decibans")
                         : kind == "growth" ? tr(" % in a week")
                                            : tr(" times its interval");
    least_->setWords(unit, QString::number(leastOf(shipped)) + unit);
    const auto ask = [&](QWidget* field, bool asked) {
        field->setEnabled(asked);
        form_->setRowVisible(field, asked);
    };
    ask(grade_, kind == "zone" || kind == "stage");
    ask(fault_, kind == "weight" || kind == "stage");
    ask(least_, kind == "weight" || kind == "growth" || kind == "silence");
    ask(hours_, kind == "silence");
    form_->setRowVisible(recordings_, kind != "silence");
    second_->setEnabled(kind == "weight" || kind == "stage" || kind == "zone");
    fieldChanged();
}

AlertRule AlertRulesForm::rule() const {
    AlertRule rule;
    rule.name = kept(name_->text());
    rule.kind = dataOf(*kind_);
    if (fault_->isEnabled()) rule.fault = kept(fault_->text());
    if (grade_->isEnabled()) rule.grade = dataOf(*grade_);
    if (least_->isEnabled()) rule.least = least_->given();
    if (hours_->isEnabled()) rule.leastHours = hours_->given();
    rule.hits = rule.kind == "silence" ? 1 : hits_->value();
    rule.of = rule.kind == "silence" ? 1 : of_->value();
    rule.askSecond = second_->isEnabled() && second_->isChecked();
    rule.machine = kept(machine_->text());
    rule.area = kept(area_->text());
    rule.criticality = dataOf(*criticality_);
    rule.deliver = dataOf(*deliver_);
    rule.enabled = enabled_->isChecked();
    return rule;
}

void AlertRulesForm::setRule(const AlertRule& rule) {
    name_->setText(shown(rule.name));
    choose(*kind_, rule.kind);
    kindChosen();
    fault_->setText(shown(rule.fault));
    choose(*grade_, rule.grade);
    least_->setGiven(rule.least);
    hours_->setGiven(rule.leastHours);
    hits_->setValue(rule.hits);
    of_->setValue(rule.of);
    second_->setChecked(rule.askSecond);
    machine_->setText(shown(rule.machine));
    area_->setText(shown(rule.area));
    choose(*criticality_, rule.criticality);
    choose(*deliver_, rule.deliver);
    enabled_->setChecked(rule.enabled);
    fieldChanged();
}

void AlertRulesForm::fieldChanged() {
    const AlertRule typed = rule();
    const Status good = typed.name.empty() ? Status{} : checkAlertRule(typed);
    word_->setText(good ? shown(typed.name.empty() ? "" : wordsOf(typed)) : sentence(good.error()));
    save_->setEnabled(work_.writable() && good && !typed.name.empty());
}

void AlertRulesForm::read() {
    work_.ask<std::vector<AlertRule>>(
        this, QStringLiteral("alert rules"),
        [](FleetFile& fleet, const CancelToken&) { return fleet.alerts().rules(); },
        [this](Result<std::vector<AlertRule>> rules) {
            if (!rules) return word_->setText(sentence(rules.error()));
            show(std::move(*rules));
        });
}

void AlertRulesForm::show(std::vector<AlertRule> rules) {
    const auto same = [](const AlertRule& a, const AlertRule& b) {
        return a.name == b.name && a.enabled == b.enabled && a.deliver == b.deliver &&
               wordsOf(a) == wordsOf(b);
    };
    if (model_->rowCount() > 0 && std::equal(rules.begin(), rules.end(), rules_.begin(), rules_.end(), same))
        return;  // what is being typed stays
    rules_ = std::move(rules);
    const auto typed = std::find_if(rules_.begin(), rules_.end(),
                                    [this](const AlertRule& one) { return one.name == kept(name_->text()); });
    const int row =
        typed != rules_.end() ? int(typed - rules_.begin()) : std::max(0, table_->currentIndex().row());
    model_->removeRows(0, model_->rowCount());
    for (const AlertRule& rule : rules_) {
        QList<QStandardItem*> cells;
        const QString name = rule.enabled ? shown(rule.name) : tr("%1 (off)").arg(shown(rule.name));
        for (const QString& text : {name, shown(wordsOf(rule)), deliverWord(rule.deliver)}) {
            cells << new QStandardItem(text);
            cells.back()->setEditable(false);
        }
        model_->appendRow(cells);
    }
    if (!rules_.empty()) table_->setCurrentIndex(model_->index(std::min(row, model_->rowCount() - 1), 0));
}

void AlertRulesForm::chosen() {
    const int row = table_->currentIndex().row();
    const bool any = row >= 0 && row < int(rules_.size());
    remove_->setEnabled(any && work_.writable());
    if (any) setRule(rules_[std::size_t(row)]);
}

void AlertRulesForm::startNew() {
    table_->setCurrentIndex({});
    setRule(AlertRule());
    word_->setText(tr("Give the new rule a name, then save it."));
    name_->setFocus();
}

void AlertRulesForm::save() {
    if (!save_->isEnabled()) return;
    work_.write<void>(
        this, [rule = rule()](FleetFile& fleet) { return fleet.alerts().putRule(rule); },
        [this](Status status) {
            word_->setText(status ? tr("Kept; it is asked from the next recordings on.")
                                  : sentence(status.error()));
        });
}

void AlertRulesForm::remove() {
    const int row = table_->currentIndex().row();
    if (row < 0 || row >= int(rules_.size())) return;
    work_.write<void>(
        this,
        [name = rules_[std::size_t(row)].name](FleetFile& fleet) { return fleet.alerts().removeRule(name); },
        [this](Status status) {
            if (!status) word_->setText(sentence(status.error()));
        });
}

}  // namespace fettle
