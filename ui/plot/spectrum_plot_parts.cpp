#include <qwt_plot.h>

#include <QAction>
#include <QActionGroup>
#include <QComboBox>
#include <QMenu>
#include <QToolButton>
#include <cmath>

#include "ui/plot/cursor_strip.h"
#include "ui/plot/cursor_table.h"
#include "ui/plot/line_item.h"
#include "ui/plot/overlay_items.h"
#include "ui/plot/plot_tool.h"
#include "ui/plot/spectrum_plot.h"

namespace fettle {

namespace {

const QString kArrowRoom = QStringLiteral("  ");  // the menu's arrow stands there
constexpr double kSameSpeed = 0.002;  // share by which two speeds may differ and still be drawn as they are

QToolButton* menuTool(const QString& text, const QString& name, const QString& help, QWidget* parent) {
    QToolButton* button = plotTool(text + kArrowRoom, name, help, parent);
    button->setPopupMode(QToolButton::InstantPopup);
    auto* menu = new QMenu(button);
    menu->setObjectName(name + QStringLiteral("Menu"));
    button->setMenu(menu);
    return button;
}

// One of several, in a menu.
QActionGroup* choices(QMenu& menu, const QString& name, const QStringList& texts) {
    auto* group = new QActionGroup(&menu);
    for (int i = 0; i < texts.size(); ++i) {
        QAction* action = menu.addAction(texts[i]);
        action->setObjectName(name + QString::number(i));
        action->setCheckable(true);
        action->setData(i);
        group->addAction(action);
    }
    return group;
}

}  // namespace

void SpectrumPlot::addControls() {
    kindBox_ = new QComboBox(this);
    kindBox_->setObjectName(objectName() + QStringLiteral("CursorKind"));
    kindBox_->setAccessibleName(tr("Kind of cursor"));
    kindBox_->setToolTip(tr("Kind of cursor; Shift and click sets B, or the spacing of the sidebands"));
    kindBox_->addItem(tr("one cursor"), int(CursorKind::Single));
    kindBox_->addItem(tr("two cursors"), int(CursorKind::Two));
    kindBox_->addItem(tr("harmonics"), int(CursorKind::Harmonics));
    kindBox_->addItem(tr("sidebands"), int(CursorKind::Sidebands));
    connect(kindBox_, &QComboBox::activated, this,
            [this] { setCursorKind(CursorKind(kindBox_->currentData().toInt())); });
    ordersButton_ = plotTool(tr("orders"), objectName() + QStringLiteral("Orders"),
                             tr("Frequency axis in orders of the shaft"), this);
    ordersButton_->setCheckable(true);
    connect(ordersButton_, &QToolButton::toggled, this, &SpectrumPlot::setOrders);
    tableButton_ = plotTool(tr("table"), objectName() + QStringLiteral("Table"),
                            tr("Table of the cursor's lines"), this);
    tableButton_->setCheckable(true);
    connect(tableButton_, &QToolButton::toggled, this, &SpectrumPlot::showTable);
    overlayButton_ =
        menuTool(tr("overlay"), objectName() + QStringLiteral("Overlay"),
                 tr("What is laid over the spectrum: reference, sound band, bearing lines"), this);
    addControl(tableButton_);
    addControl(overlayButton_);
    addControl(kindBox_);
    addControl(ordersButton_);
    addControl(amplitudeMenu());
    showAmplitudeChoice();
}

QToolButton* SpectrumPlot::amplitudeMenu() {
    const QString name = objectName() + QStringLiteral("Amplitude");
    amplitudeButton_ = menuTool({}, name, tr("How the amplitude is read, and its scale"), this);
    QMenu& menu = *amplitudeButton_->menu();
    readings_ = choices(menu, name + QStringLiteral("Reading"),
                        {tr("r.m.s."), tr("peak"), tr("peak to peak"), tr("density (mean square per Hz)")});
    menu.addSeparator();
    scales_ =
        choices(menu, name + QStringLiteral("Scale"), {tr("linear"), tr("logarithmic"), tr("decibels")});
    connect(readings_, &QActionGroup::triggered, this, [this](const QAction* action) {
        setAmplitude({LineReading(action->data().toInt()), amplitude_.scale});
    });
    connect(scales_, &QActionGroup::triggered, this, [this](const QAction* action) {
        setAmplitude({amplitude_.reading, AmplitudeScale(action->data().toInt())});
    });
    return amplitudeButton_;
}

// In words on its button; what the data cannot be read as is not offered.
void SpectrumPlot::showAmplitudeChoice() {
    const QStringList names = {tr("r.m.s."), tr("peak"), tr("p-p"), tr("PSD")};
    const QStringList scales = {QString(), tr("log"), tr("dB")};
    const bool fixed = data_ && data_->decibels;
    amplitudeButton_->setVisible(!fixed);
    readings_->actions()[int(LineReading::Density)]->setEnabled(data_ && data_->bandwidthHz > 0);
    readings_->setEnabled(reading_.readable());
    readings_->actions()[int(amplitude_.reading)]->setChecked(true);
    scales_->actions()[int(amplitude_.scale)]->setChecked(true);
    const QString name = names[int(amplitude_.reading)], scale = scales[int(amplitude_.scale)];
    amplitudeButton_->setText((scale.isEmpty() ? name : tr("%1, %2").arg(name, scale)) + kArrowRoom);
}

void SpectrumPlot::addCursorParts() {
    strip_ = new CursorStrip(objectName() + QStringLiteral("Cursor"), this);
    addStrip(strip_);
    connect(strip_, &CursorStrip::carrierChanged, this, [this](double hz) { selection_.setCursorHz(hz); });
    connect(strip_, &CursorStrip::secondChanged, this, [this](double hz) { setSecondHz(hz); });
    connect(strip_, &CursorStrip::cursorChanged, this, [this](int harmonics, int pairs, double spacingHz) {
        cursor_.harmonics = harmonics;
        cursor_.pairs = pairs;
        cursor_.spacingHz = spacingHz;
        showCursor();
    });
    table_ = new CursorTable(objectName() + QStringLiteral("Lines"), this);
    setSide(table_);
    table_->hide();
    connect(table_, &CursorTable::placeChosen, this, [this](double hz) {
        across_.bring(hz);
        showAcross();
    });
}

void SpectrumPlot::showTable(bool shown) {
    table_->setVisible(shown);
    tableButton_->setChecked(shown);
    showCursor();
}

void SpectrumPlot::setSpacings(std::vector<NamedSpacing> spacings) {
    strip_->setSpacings(std::move(spacings));
}

void SpectrumPlot::setReference(std::shared_ptr<const SpectrumReference> reference) {
    if (!reference && !reference_) return;
    reference_ = reference && reference->data ? std::move(reference) : nullptr;
    rebuild();
}

void SpectrumPlot::setBand(std::shared_ptr<const SpectrumBandData> band) {
    if (band == band_) return;
    band_ = std::move(band);
    rebuild();
}

void SpectrumPlot::setRanges(std::vector<DefectBand> ranges, const QString& of) {
    if (ranges.empty() && ranges_.empty()) return;
    ranges_ = std::move(ranges);
    rangesOf_ = of;
    rebuild();
}

double SpectrumPlot::stretch() const {
    const double here = data_ ? data_->shaftHz : 0, there = reference_ ? reference_->data->shaftHz : 0;
    if (!(here > 0) || !(there > 0) || std::abs(here - there) < kSameSpeed * here) return 1;
    return here / there;
}

void SpectrumPlot::rebuildOverlays() {
    SeriesPtr series;
    shownReference_.clear();
    if (reference_ && data_ && reference_->data->decibels == data_->decibels) {
        shownReference_ = SpectrumReading(*reference_->data, amplitude_, selection_.units())
                              .shown(reference_->data->values);
        auto made = std::make_shared<Series>();
        made->dx = reference_->data->dfHz * stretch() / unitHz();
        made->y = shownReference_;
        series = made;
    }
    referenceCurve_->setSeries(series);
    const bool banded = band_ && data_ && band_->unit == data_->unit && !band_->middle.empty() &&
                        (data_->decibels || amplitude_.reading != LineReading::Density);
    if (banded)
        bandItem_->setBand(reading_.shown(band_->low), reading_.shown(band_->middle),
                           reading_.shown(band_->high),
                           band_->topHz / double(band_->middle.size()) / unitHz());
    else
        bandItem_->clear();
    rangeItem_->setRanges(ranges_, unitHz());
    rebuildLegend();
}

void SpectrumPlot::rebuildLegend() {
    std::vector<LegendEntry> entries;
    if (referenceCurve_->series())
        entries.push_back(
            {LegendEntry::Line, colour(Role::SecondCurve),
             stretch() == 1 ? reference_->name : tr("%1, drawn at this speed").arg(reference_->name)});
    if (!bandItem_->empty()) entries.push_back({LegendEntry::Area, colour(Role::MutedInk), band_->name});
    if (!ranges_.empty()) entries.push_back({LegendEntry::Range, colour(Role::Accent), rangesOf_});
    legend_->setEntries(std::move(entries));
}

QStringList SpectrumPlot::legend() const {
    QStringList texts;
    for (const LegendEntry& entry : legend_->entries())
        texts << entry.text;
    return texts;
}

}  // namespace fettle
