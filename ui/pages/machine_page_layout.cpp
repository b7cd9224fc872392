#include <QComboBox>
#include <QEvent>
#include <QHBoxLayout>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QTabWidget>
#include <QVBoxLayout>
#include <utility>

#include "ui/pages/machine_page.h"
#include "ui/pages/page_parts.h"
#include "ui/panels/nameplate_line.h"
#include "ui/plot/time_axis.h"
#include "ui/plot/waterfall.h"

namespace fettle {

namespace {

constexpr int kPanelBesideEms = 64;   // from this width on the panel stands beside the plots
constexpr int kPlotsBesideEms = 105;  // from this width on the three plots of a recording do
constexpr int kPanelEms = 31;
constexpr int kLowEms = 38;  // lower than that waterfall and trend take turns

enum Arrangement { Narrow, Usual, Wide, kArrangements };

QComboBox* box(const QString& name, const QString& says, QWidget* parent) {
    auto* combo = new QComboBox(parent);
    combo->setObjectName(name);
    combo->setAccessibleName(says);
    combo->setToolTip(says);
    combo->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    return combo;
}

QSplitter* splitter(Qt::Orientation orientation, const QString& name, QWidget* parent) {
    auto* made = new QSplitter(orientation, parent);
    made->setObjectName(name);
    made->setChildrenCollapsible(false);
    return made;
}

QTabWidget* tabWidget(const QString& name, QWidget* parent) {
    auto* made = new QTabWidget(parent);
    made->setObjectName(name);
    setQuietTabs(*made);
    return made;
}

}  // namespace

void MachinePage::build() {
    axis_ = new TimeAxis(selection_, this);
    waterfall_ = new Waterfall(theme_, *axis_, selection_, this);
    trend_ = new TrendPlot(theme_, *axis_, selection_, this);
    spectrum_ = new SpectrumPlot(theme_, selection_, QStringLiteral("spectrum"), tr("Spectrum"), this);
    envelope_ =
        new SpectrumPlot(theme_, selection_, QStringLiteral("envelope"), tr("Envelope spectrum"), this);
    waveform_ = new WaveformPlot(theme_, this);
    panel_ = new EvidencePanel(theme_, selection_, this);
    buildControls();
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(10, 6, 0, 4);
    column->setSpacing(4);
    column->addWidget(buildHead());
    column->addWidget(new ThinRule(theme_, this));
    across_ = splitter(Qt::Horizontal, QStringLiteral("machineAcross"), this);
    upright_ = splitter(Qt::Vertical, QStringLiteral("machineUpright"), this);
    beside_ = splitter(Qt::Horizontal, QStringLiteral("recordingBeside"), upright_);
    historyTabs_ = tabWidget(QStringLiteral("historyTabs"), upright_);
    tabs_ = tabWidget(QStringLiteral("recordingTabs"), upright_);
    for (QWidget* part : std::initializer_list<QWidget*>{waterfall_, trend_, historyTabs_, tabs_, beside_})
        upright_->addWidget(part);
    for (int i = 0; i < upright_->count(); ++i)
        upright_->setStretchFactor(i, 1);
    scroll_ = new QScrollArea(across_);
    scroll_->setFrameStyle(QFrame::NoFrame);
    scroll_->setWidgetResizable(true);
    scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll_->setWidget(upright_);
    across_->addWidget(scroll_);
    across_->addWidget(panel_);
    across_->setStretchFactor(0, 1);
    across_->setStretchFactor(1, 0);
    column->addWidget(across_, 1);
}

QWidget* MachinePage::buildHead() {
    auto* head = new QWidget(this);
    auto* row = new QHBoxLayout(head);
    row->setContentsMargins(0, 0, 10, 0);
    nameplate_ = new NameplateLine(theme_, head);
    sheetButton_ = new QPushButton(tr("Findings &sheet…"), head);
    sheetButton_->setObjectName(QStringLiteral("machineSheet"));
    noteButton_ = new QPushButton(tr("Note or e&vent…"), head);
    noteButton_->setObjectName(QStringLiteral("machineNote"));
    row->addWidget(nameplate_, 1);
    row->addWidget(noteButton_, 0, Qt::AlignTop);
    row->addWidget(sheetButton_, 0, Qt::AlignTop);
    return head;
}

void MachinePage::buildControls() {
    channelBox_ =
        box(QStringLiteral("channelBox"), tr("Channel of waterfall, trend and spectra"), waterfall_);
    kindBox_ = box(QStringLiteral("waterfallKind"), tr("Kind of spectra in the waterfall"), waterfall_);
    axisBox_ = box(QStringLiteral("waterfallAxis"), tr("Upright axis of the waterfall"), waterfall_);
    axisBox_->addItems({tr("in Hz"), tr("in orders")});
    quantityBox_ = box(QStringLiteral("trendQuantity"), tr("Quantity of the trend"), trend_);
    for (std::size_t i = 0; i < kQuantities; ++i)
        quantityBox_->addItem(quantityName(Quantity(i)), int(i));
    spectrumBox_ = box(QStringLiteral("spectrumKind"), tr("Kind of spectrum"), spectrum_);
    waterfall_->addControl(axisBox_);
    waterfall_->addControl(kindBox_);
    waterfall_->addControl(channelBox_);
    trend_->addControl(quantityBox_);
    spectrum_->addControl(spectrumBox_);
    waterfall_->setTitle({});
    trend_->setTitle({});
}

void MachinePage::arrange() {
    const int em = fontMetrics().height();
    const int across = width() < kPanelBesideEms * em   ? Narrow
                       : width() < kPlotsBesideEms * em ? Usual
                                                        : Wide;
    const bool low = height() < kLowEms * em;
    upright_->setMinimumHeight((low ? 22 : 32) * em);
    const int wanted = across + (low ? kArrangements : 0);
    if (wanted == arranged_) return;
    const int before = std::exchange(arranged_, wanted);
    if (before < 0 || low != (before >= kArrangements)) placeHistory(low);
    if (before >= 0 && before % kArrangements == across) return;
    QWidget* current = tabs_->currentWidget();
    placePanel(across == Narrow, before < 0 || current == panel_);
    placePlots(across == Wide);
    if (across == Narrow) current = panel_;
    if (across == Usual && (before < 0 || current == panel_)) current = envelope_;
    if (across != Wide) tabs_->setCurrentWidget(current);
}

void MachinePage::placePanel(bool amongTabs, bool anew) {
    const int ems = kPanelEms * fontMetrics().height();
    if (amongTabs) {
        tabs_->insertTab(0, panel_, tr("Evidence"));
        panel_->setMinimumWidth(0);
        return;
    }
    across_->addWidget(panel_);
    panel_->setMinimumWidth(ems);
    panel_->show();
    if (anew) across_->setSizes({width() - ems, ems});
}

void MachinePage::placePlots(bool beside) {
    const std::pair<PlotFrame*, QString> plots[] = {
        {spectrum_, tr("Spectrum")}, {envelope_, tr("Envelope")}, {waveform_, tr("Waveform")}};
    for (const auto& [plot, name] : plots) {
        plot->setTitle(beside ? name : QString());  // a tab says it already
        if (!beside) {
            tabs_->addTab(plot, name);
            continue;
        }
        beside_->addWidget(plot);
        plot->show();
    }
    tabs_->setVisible(!beside);
    beside_->setVisible(beside);
}

void MachinePage::placeHistory(bool asTabs) {
    if (asTabs) {
        historyTabs_->addTab(waterfall_, tr("Waterfall"));
        historyTabs_->addTab(trend_, tr("Trend"));
        upright_->setSizes({420, 420, 420});
    } else {
        upright_->insertWidget(0, waterfall_);
        upright_->insertWidget(1, trend_);
        waterfall_->show();
        trend_->show();
        upright_->setSizes({330, 330, 0, 400, 400});
    }
    historyTabs_->setVisible(asTabs);
    // Over the trend its time labels serve both.
    waterfall_->labelTimes(asTabs);
    axis_->align();
}

void MachinePage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

void MachinePage::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange && across_) arrange();
}

}  // namespace fettle
