#include <QCheckBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/panels/evidence_panel.h"
#include "ui/panels/evidence_view.h"
#include "ui/panels/evidence_words.h"
#include "ui/panels/fault_list.h"
#include "ui/panels/suggestion_list.h"

namespace fettle {

namespace {

QFont boldened(QFont font) {
    font.setBold(true);
    return font;
}

}  // namespace

QLabel* EvidencePanel::addLabel(const QString& name, bool muted) {
    auto* label = new QLabel(page_);
    label->setObjectName(name);
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    label->setFocusPolicy(Qt::ClickFocus);
    column_->addWidget(label);
    if (muted) muted_ << label;
    return label;
}

QPushButton* EvidencePanel::addButton(const QString& name, const QString& text, const QString& help) {
    auto* button = new QPushButton(text, page_);
    button->setObjectName(name);
    button->setToolTip(help);
    return button;
}

// Parts beside each other, the first takes the room.
QWidget* EvidencePanel::addRow(std::initializer_list<QWidget*> parts) {
    auto* row = new QWidget(page_);
    auto* line = new QHBoxLayout(row);
    line->setContentsMargins(0, 0, 0, 0);
    bool first = true;
    for (QWidget* part : parts) {
        line->addWidget(part, first ? 1 : 0, first ? Qt::Alignment() : Qt::AlignTop);
        first = false;
    }
    column_->addWidget(row);
    return row;
}

EvidencePanel::Section EvidencePanel::addSection(const QString& name, const QString& title) {
    Section section;
    section.head = addLabel(name + QStringLiteral("Head"), false);
    section.head->setText(title);
    section.head->setFont(boldened(font()));
    section.body = addLabel(name, false);
    section.body->setTextFormat(Qt::RichText);
    return section;
}

void EvidencePanel::build() {
    column_ = new QVBoxLayout(page_);
    column_->setContentsMargins(10, 0, 10, 10);
    column_->setSpacing(6);
    buildTop();
    buildTable();
    buildOtherSide();
    buildHistory();
    column_->addStretch(1);
}

void EvidencePanel::buildTop() {
    basis_ = addLabel(QStringLiteral("panelBasis"), true);
    week_ = addButton(QStringLiteral("showWeek"), tr("Show the week"),
                      tr("Back from the chosen recording to all of the week"));
    addRow({basis_, week_});
    words_ = addLabel(QStringLiteral("panelWords"), true);
    faults_ = new FaultList(theme_, selection_, page_);
    column_->addWidget(faults_);
    scale_ = addLabel(QStringLiteral("weightScale"), true);
    scale_->setText(scaleWords());
    verdict_ = addLabel(QStringLiteral("verdict"), false);
    facts_ = addLabel(QStringLiteral("verdictFacts"), true);
}

void EvidencePanel::buildTable() {
    tableHead_ = addLabel(QStringLiteral("evidenceHead"), false);
    tableHead_->setFont(boldened(font()));
    sum_ = new QCheckBox(tr("Running sum"), page_);
    sum_->setObjectName(QStringLiteral("runningSum"));
    sum_->setToolTip(tr("A column that adds up line by line, decibans"));
    copy_ = addButton(QStringLiteral("copyEvidence"), tr("Copy table"),
                      tr("All columns of the table, for a spreadsheet"));
    tableRow_ = addRow({tableHead_, sum_, copy_});
    sumSays_ = addLabel(QStringLiteral("evidenceSum"), true);
    view_ = new EvidenceView(theme_, selection_, page_);
    column_->addWidget(view_);
    claims_ = addLabel(QStringLiteral("claims"), false);
    whoseButton_ = addButton(QStringLiteral("whoseLine"), tr("Whose line is it?"),
                             tr("Which machine's stops the line under the cursor leaves with"));
    claimsRow_ = addRow({claims_, whoseButton_});
    whose_ = addLabel(QStringLiteral("whoseLineSays"), false);
}

void EvidencePanel::buildOtherSide() {
    against_ = addSection(QStringLiteral("against"), tr("Against"));
    rivals_ = addSection(QStringLiteral("rivals"), tr("Rivals for the same lines"));
    change_ = addSection(QStringLiteral("change"), tr("What would change this verdict"));
    suggestionsHead_ = addLabel(QStringLiteral("suggestionsHead"), false);
    suggestionsHead_->setFont(boldened(font()));
    suggestionsHead_->setText(tr("Recordings that would settle it"));
    asksButton_ = addButton(QStringLiteral("showAsks"), tr("All asked for…"),
                            tr("What is asked for of the nodes and on the walk, of the whole fleet"));
    addRow({suggestionsHead_, asksButton_});
    suggestions_ = new SuggestionList(page_);
    column_->addWidget(suggestions_);
}

void EvidencePanel::buildHistory() {
    chartHead_ = addLabel(QStringLiteral("weightHead"), false);
    chartHead_->setFont(boldened(font()));
    chartHead_->setText(tr("Weight over the weeks, decibans a recording"));
    chart_ = new WeightChart(theme_, page_);
    column_->addWidget(chart_);
    leftOut_ = addSection(QStringLiteral("leftOut"), tr("Left out"));
    blind_ = addSection(QStringLiteral("blindSpots"), tr("Blind spots"));
    history_ = addSection(QStringLiteral("history"), tr("What its history says"));
    firstListed_ = addLabel(QStringLiteral("firstListedSays"), false);
    firstButton_ = addButton(QStringLiteral("firstListed"), tr("First listed…"),
                             tr("The first day on which the rule would have listed the machine, asked of the "
                                "kept weeks back from its last repair, or from now; takes a while"));
    addRow({firstListed_, firstButton_});
    notes_ = addSection(QStringLiteral("notes"), tr("About the recordings"));
}

}  // namespace fettle
