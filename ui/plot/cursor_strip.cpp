#include "ui/plot/cursor_strip.h"

#include <QDoubleSpinBox>
#include <QLabel>
#include <QMenu>
#include <QSignalBlocker>
#include <QToolButton>

#include "ui/model/numbers.h"
#include "ui/plot/head_flow.h"
#include "ui/plot/readout.h"

namespace fettle {

namespace {

constexpr double kMostHz = 1e5;
constexpr int kMostHarmonics = 60, kMostPairs = 20;

QSpinBox* countBox(const QString& name, const QString& says, int most, QWidget* parent) {
    auto* box = new QSpinBox(parent);
    box->setObjectName(name);
    box->setAccessibleName(says);
    box->setToolTip(says);
    box->setRange(1, most);
    return box;
}

}  // namespace

CursorStrip::CursorStrip(const QString& name, QWidget* parent) : QWidget(parent) {
    setObjectName(name);
    setAccessibleName(tr("Cursor"));
    carrierName_ = new QLabel(this);
    carrier_ = hertzBox(name + QStringLiteral("Carrier"), tr("Frequency of the carrier or of cursor A"));
    secondName_ = new QLabel(QStringLiteral("B"), this);
    second_ = hertzBox(name + QStringLiteral("Second"), tr("Frequency of cursor B"));
    harmonicsName_ = new QLabel(tr("harmonics"), this);
    harmonics_ = countBox(name + QStringLiteral("Harmonics"), tr("Number of harmonics, with the carrier"),
                          kMostHarmonics, this);
    spacingName_ = new QLabel(tr("apart"), this);
    spacing_ = hertzBox(name + QStringLiteral("Spacing"), tr("Spacing of the sidebands"));
    presets_ = new QToolButton(this);
    presets_->setObjectName(name + QStringLiteral("Spacings"));
    presets_->setText(tr("spacing of"));
    presets_->setAccessibleName(tr("Spacings of this machine"));
    presets_->setToolTip(tr("Spacings of this machine: shaft, cage, pole pass, mesh, twice the mains"));
    presets_->setPopupMode(QToolButton::InstantPopup);
    presets_->setFocusPolicy(Qt::StrongFocus);
    menu_ = new QMenu(presets_);
    presets_->setMenu(menu_);
    pairsName_ = new QLabel(tr("pairs"), this);
    pairs_ = countBox(name + QStringLiteral("Pairs"), tr("Pairs of sidebands"), kMostPairs, this);
    difference_ = new QLabel(this);
    difference_->setObjectName(name + QStringLiteral("Difference"));
    difference_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    auto* row = new HeadFlow(this);
    int at = 0;
    for (QWidget* part : std::initializer_list<QWidget*>{carrierName_, carrier_, secondName_, second_,
                                                         harmonicsName_, harmonics_, spacingName_, spacing_,
                                                         presets_, pairsName_, pairs_, difference_})
        row->insertWidget(at++, part);
    row->setTailWidth(30 * fontMetrics().averageCharWidth());
    connect(carrier_, &QDoubleSpinBox::valueChanged, this,
            [this](double value) { emit carrierChanged(value / factor_); });
    connect(second_, &QDoubleSpinBox::valueChanged, this,
            [this](double value) { emit secondChanged(value / factor_); });
    connect(spacing_, &QDoubleSpinBox::valueChanged, this, &CursorStrip::tell);
    connect(harmonics_, &QSpinBox::valueChanged, this, &CursorStrip::tell);
    connect(pairs_, &QSpinBox::valueChanged, this, &CursorStrip::tell);
    connect(menu_, &QMenu::aboutToShow, this, &CursorStrip::fillSpacings);
}

QDoubleSpinBox* CursorStrip::hertzBox(const QString& name, const QString& says) {
    auto* box = new QDoubleSpinBox(this);
    box->setObjectName(name);
    box->setAccessibleName(says);
    box->setToolTip(
        tr("%1; the arrows move it by a tenth of a line, Page Up and Page Down by a line").arg(says));
    box->setRange(0, kMostHz);
    box->setDecimals(3);
    box->setKeyboardTracking(false);
    box->setCorrectionMode(QAbstractSpinBox::CorrectToNearestValue);
    return box;
}

void CursorStrip::tell() {
    emit cursorChanged(harmonics_->value(), pairs_->value(), spacing_->value() / factor_);
}

void CursorStrip::show(const SpectrumCursor& cursor, std::optional<double> carrierHz, double shaftHz,
                       double stepHz, Units units) {
    const bool two = cursor.kind == CursorKind::Two, sides = cursor.kind == CursorKind::Sidebands;
    const bool comb = cursor.kind == CursorKind::Harmonics;
    carrierHz_ = carrierHz.value_or(0);
    const ShownUnit unit = shownUnit(QStringLiteral("Hz"), units);
    factor_ = unit.factor;
    const auto set = [&](QDoubleSpinBox* box, double hz, bool shown) {
        const QSignalBlocker quiet(box);
        box->setVisible(shown);
        box->setSuffix(QChar(' ') + unit.unit);
        box->setSingleStep(stepHz / 10 * factor_);
        box->setValue(hz * factor_);
    };
    set(carrier_, carrierHz_, true);
    set(second_, cursor.second.value_or(0), two);
    set(spacing_, cursor.spacingHz > 0 ? cursor.spacingHz : shaftHz, sides);
    const QSignalBlocker quietHarmonics(harmonics_), quietPairs(pairs_);
    harmonics_->setValue(cursor.harmonics);
    pairs_->setValue(cursor.pairs);
    carrierName_->setText(two ? QStringLiteral("A") : tr("carrier"));
    secondName_->setVisible(two);
    difference_->setVisible(two);
    for (QWidget* part : std::initializer_list<QWidget*>{harmonicsName_, harmonics_})
        part->setVisible(comb);
    for (QWidget* part : std::initializer_list<QWidget*>{spacingName_, presets_, pairsName_, pairs_})
        part->setVisible(sides);
    setVisible(cursor.kind != CursorKind::Single);
}

void CursorStrip::setSpacings(std::vector<NamedSpacing> spacings) {
    spacings_ = std::move(spacings);
}

void CursorStrip::fillSpacings() {
    menu_->clear();
    for (const NamedSpacing& spacing : spacings_) {
        QAction* action = menu_->addAction(tr("%1: %2 Hz").arg(spacing.name).arg(fixedText(spacing.hz, 3)));
        connect(action, &QAction::triggered, this,
                [this, hz = spacing.hz] { spacing_->setValue(hz * factor_); });
    }
    if (spacings_.empty()) menu_->addAction(tr("The shaft's speed is not known"))->setEnabled(false);
}

void CursorStrip::setDifference(const QString& words) {
    difference_->setText(words);
}

}  // namespace fettle
