#include "ui/dialogs/balance_dialog_parts.h"

#include <QCheckBox>
#include <QLabel>
#include <QScrollArea>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/pages/page_parts.h"
#include "ui/sheet/balance_words.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr int kStepRoom = 8;

QStringList stepNames() {
    return {tr("1  Cautions"), tr("2  Rotor"), tr("3  Runs"), tr("4  Masses"), tr("5  Record")};
}

bool anyAt(const BalanceModel& model, std::initializer_list<const char*> places, bool refusals) {
    for (const BalanceRemark& remark : model.answer().remarks)
        for (const char* place : places)
            if (remark.place.starts_with(place) &&
                (remark.kind == BalanceRemark::Kind::Refusal) == refusals &&
                (refusals || remark.kind == BalanceRemark::Kind::Missing))
                return true;
    return false;
}

QString stateOf(const BalanceModel& model, int step) {
    switch (step) {
        case 0:
            return model.job().cautionsRead ? tr("read") : tr("to be read");
        case 1:
            return anyAt(model, {"/rotor", "/planes"}, true)    ? tr("refused")
                   : anyAt(model, {"/rotor", "/planes"}, false) ? tr("wanting")
                                                                : tr("complete");
        case 2:
            return anyAt(model, {"/initial", "/trials", "/check"}, true)    ? tr("refused")
                   : anyAt(model, {"/initial", "/trials", "/check"}, false) ? tr("wanting")
                                                                            : tr("complete");
        case 3:
            return model.answer().solved ? tr("told") : tr("not yet");
        default:
            return model.closed() ? tr("closed") : tr("in work");
    }
}

}  // namespace

QListWidget* balanceSteps(QWidget* parent) {
    auto* steps = new QListWidget(parent);
    steps->setObjectName(QStringLiteral("balanceSteps"));
    steps->setAccessibleName(tr("Steps"));
    steps->setFrameStyle(QFrame::NoFrame);
    steps->addItems(stepNames());
    steps->setSpacing(2);
    steps->setFixedWidth(steps->fontMetrics().averageCharWidth() * 15);
    return steps;
}

void markBalanceSteps(QListWidget& steps, const BalanceModel& model) {
    const QStringList names = stepNames();
    for (int i = 0; i < steps.count() && i < names.size(); ++i)
        steps.item(i)->setText(names[i] + QStringLiteral("\n    ") + stateOf(model, i));
    const int wide = steps.sizeHintForColumn(0) + 2 * steps.spacing() + kStepRoom;
    if (wide > steps.minimumWidth()) steps.setFixedWidth(wide);
}

int stepToGoOnWith(const BalanceModel& model) {
    if (model.answer().solved) return 3;
    return anyAt(model, {"/rotor", "/planes"}, false) || anyAt(model, {"/rotor", "/planes"}, true) ? 1 : 2;
}

CautionPage balanceCautionPage(const Theme& theme, QWidget* parent) {
    auto* scroll = new QScrollArea(parent);
    scroll->setObjectName(QStringLiteral("balanceCautions"));
    scroll->setAccessibleName(tr("Cautions"));
    scroll->setWidgetResizable(true);
    scroll->setFrameStyle(QFrame::NoFrame);
    auto* page = new QWidget;
    auto* all = new QVBoxLayout(page);
    auto* title = new QLabel(tr("Before anything turns"), page);
    setTitleFont(*title);
    all->addWidget(title);
    for (const QString& caution : balanceCautions()) {
        auto* label = new QLabel(caution, page);
        label->setWordWrap(true);
        all->addWidget(label);
        all->addWidget(new ThinRule(theme, page));
    }
    auto* read = new QCheckBox(tr("I have &read this, and I may balance here"), page);
    read->setObjectName(QStringLiteral("cautionsRead"));
    read->setToolTip(tr("The other steps open when this is ticked"));
    all->addWidget(read);
    all->addStretch(1);
    scroll->setWidget(page);
    return {scroll, read};
}

QSize balanceDialogSize(int em, const QWidget* over) {
    QSize size(74 * em, 44 * em);
    if (over) size = size.boundedTo(over->window()->size() - QSize(2 * em, 4 * em));
    return size.expandedTo(QSize(46 * em, 28 * em));
}

}  // namespace fettle
