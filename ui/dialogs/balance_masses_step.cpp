#include "ui/dialogs/balance_masses_step.h"

#include <QLabel>
#include <QVBoxLayout>

#include "ui/pages/page_parts.h"
#include "ui/sheet/balance_words.h"

namespace fettle {

namespace {

QString rowHtml(const QStringList& cells, const char* tag) {
    QString row = QStringLiteral("<tr>");
    for (const QString& cell : cells)
        row += QStringLiteral("<%1 align='left' style='padding-right:18px'>%2</%1>")
                   .arg(QString::fromLatin1(tag), cell.toHtmlEscaped());
    return row + QStringLiteral("</tr>");
}

QString tableHtml(const BalanceTable& table) {
    if (table.rows.empty()) return {};
    QString html = QStringLiteral("<table cellspacing='2'>") + rowHtml(table.heads, "th");
    for (const QStringList& row : table.rows)
        html += rowHtml(row, "td");
    return html + QStringLiteral("</table>");
}

}  // namespace

BalanceMassesStep::BalanceMassesStep(BalanceModel& model, const Theme& theme, QWidget* parent)
    : QScrollArea(parent), model_(model), theme_(theme) {
    setObjectName(QStringLiteral("balanceMassesStep"));
    setAccessibleName(tr("Masses to fit and what is left"));
    setWidgetResizable(true);
    setFrameStyle(QFrame::NoFrame);
    auto* page = new QWidget;
    auto* all = new QVBoxLayout(page);
    const auto add = [&](const char* name) {
        auto* label = new QLabel(page);
        label->setObjectName(QString::fromLatin1(name));
        label->setWordWrap(true);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
        all->addWidget(label);
        return label;
    };
    state_ = add("balanceState");
    text_ = add("balanceAnswer");
    text_->setTextFormat(Qt::RichText);
    doubts_ = add("balanceDoubts");
    all->addStretch(1);
    setWidget(page);
    connect(&model_, &BalanceModel::changed, this, &BalanceMassesStep::showAnswer);
    connect(&theme_, &Theme::changed, this, &BalanceMassesStep::showAnswer);
    showAnswer();
}

void BalanceMassesStep::showAnswer() {
    QString html;
    for (const BalanceSection& section : balanceResults(model_.job(), model_.answer())) {
        html +=
            QStringLiteral("<p style='margin-bottom:2px'><b>%1</b></p>").arg(section.heading.toHtmlEscaped());
        html += tableHtml(section.table);
        for (const QString& line : section.lines)
            html +=
                QStringLiteral("<p style='margin-top:0;margin-bottom:2px'>%1</p>").arg(line.toHtmlEscaped());
    }
    text_->setText(html);
    text_->setVisible(!html.isEmpty());
    const QString state = balanceState(model_.answer());
    state_->setText(state);
    state_->setVisible(!state.isEmpty());
    setInk(*state_, theme_, model_.answer().refused() ? Role::Trouble : Role::Ink);
    const QStringList doubts = balanceDoubts(model_.answer());
    doubts_->setText(doubts.join(QChar('\n')));
    doubts_->setVisible(!doubts.isEmpty());
    setInk(*doubts_, theme_, Role::Trouble);
}

}  // namespace fettle
