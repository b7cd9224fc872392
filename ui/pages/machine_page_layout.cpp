#include <QComboBox>
#include <QEvent>
#include <QHBoxLayout>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QTabWidget>
#include <QVBoxLayout>
#include <utility>

#include "ui/pages/compare_strip.h"
#include "ui/pages/machine_history.h"
#include "ui/pages/machine_page.h"
#include "ui/pages/page_parts.h"
#include "ui/pages/recording_bench.h"
#include "ui/panels/history_list.h"
#include "ui/panels/nameplate_line.h"
#include "ui/plot/orbit_plot.h"

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
    channelBox_ = box(QStringLiteral("channelBox"), tr("Channel of waterfall, trend and spectra"), this);
    history_ = new MachineHistory(work_, selection_, theme_, channelBox_, this);
    spectrum_ = new SpectrumPlot(theme_, selection_, QStringLiteral("spectrum"), tr("Spectrum"), this);
    envelope_ =
        new SpectrumPlot(theme_, selection_, QStringLiteral("envelope"), tr("Envelope spectrum"), this);
    waveform_ = new WaveformPlot(theme_, this);
    orbit_ = new OrbitPlot(theme_, this);
    panel_ = new EvidencePanel(theme_, selection_, this);
    log_ = new HistoryList(work_, selection_, theme_, this);
    buildControls();
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(10, 6, 0, 4);
    column->setSpacing(4);
    column->addWidget(buildHead());
    column->addWidget(new ThinRule(theme_, this));
    across_ = splitter(Qt::Horizontal, QStringLiteral("machineAcross"), this);
    upright_ = splitter(Qt::Vertical, QStringLiteral("machineUpright"), this);
    historyTabs_ = tabWidget(QStringLiteral("historyTabs"), upright_);
    buildRecording();
    for (QWidget* part : std::initializer_list<QWidget*>{history_->waterfalls(), history_->trends(),
                                                         historyTabs_, recording_})
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

// Plots of a recording, as tabs or beside each other, and at their right where it is largest.
void MachinePage::buildRecording() {
    recording_ = splitter(Qt::Horizontal, QStringLiteral("recordingAcross"), upright_);
    tabs_ = tabWidget(QStringLiteral("recordingTabs"), recording_);
    beside_ = splitter(Qt::Horizontal, QStringLiteral("recordingBeside"), recording_);
    lastBeside_ = tabWidget(QStringLiteral("recordingLast"), beside_);
    for (QTabWidget* tabs : {tabs_, lastBeside_})
        tabs->setMinimumWidth(22 * fontMetrics().height());
    compare_ = new CompareStrip(recording_);
    compare_->hide();
    for (QWidget* part : std::initializer_list<QWidget*>{tabs_, beside_, compare_})
        recording_->addWidget(part);
    recording_->setStretchFactor(0, 1);
    recording_->setStretchFactor(1, 1);
    bench_ = new RecordingBench(work_, selection_, theme_,
                                {*spectrum_, *envelope_, *waveform_, *orbit_, *compare_}, this);
}

QWidget* MachinePage::buildHead() {
    auto* head = new QWidget(this);
    auto* row = new QHBoxLayout(head);
    row->setContentsMargins(0, 0, 10, 0);
    nameplate_ = new NameplateLine(theme_, head);
    sheetButton_ = new QPushButton(tr("Findings &sheet…"), head);
    sheetButton_->setObjectName(QStringLiteral("machineSheet"));
    noteButton_ = new QPushButton(tr("Note or eve&nt…"), head);
    noteButton_->setObjectName(QStringLiteral("machineNote"));
    row->addWidget(nameplate_, 1);
    row->addWidget(noteButton_, 0, Qt::AlignTop);
    row->addWidget(sheetButton_, 0, Qt::AlignTop);
    return head;
}

void MachinePage::buildControls() {
    spectrumBox_ = box(QStringLiteral("spectrumKind"), tr("Kind of spectrum"), spectrum_);
    spectrum_->addControl(spectrumBox_);
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

// Beside each other waveform and orbit take turns: each plot keeps the width its controls want.
void MachinePage::placePlots(bool beside) {
    const std::pair<PlotFrame*, QString> plots[] = {{spectrum_, tr("Spectrum")},
                                                    {envelope_, tr("Envelope")},
                                                    {waveform_, tr("Waveform")},
                                                    {orbit_, tr("Orbit")}};
    for (const auto& [plot, name] : plots) {
        const bool alone = beside && (plot == spectrum_ || plot == envelope_);
        plot->setTitle(alone ? name : QString());  // a tab says it already
        if (!beside) {
            tabs_->addTab(plot, name);
        } else if (!alone) {
            lastBeside_->addTab(plot, name);
        } else {
            beside_->insertWidget(plot == spectrum_ ? 0 : 1, plot);
            plot->show();
        }
    }
    (beside ? lastBeside_ : tabs_)->addTab(log_, tr("History"));
    tabs_->setVisible(!beside);
    beside_->setVisible(beside);
    beside_->setSizes({9999, 9999, 9999});  // shared out alike, as far as each can be narrow
}

void MachinePage::placeHistory(bool asTabs) {
    if (asTabs) {
        historyTabs_->addTab(history_->waterfalls(), tr("Waterfall"));
        historyTabs_->addTab(history_->trends(), tr("Trend"));
        upright_->setSizes({420, 420, 420});
    } else {
        upright_->insertWidget(0, history_->waterfalls());
        upright_->insertWidget(1, history_->trends());
        history_->waterfalls()->show();
        history_->trends()->show();
        upright_->setSizes({330, 330, 0, 400});
    }
    historyTabs_->setVisible(asTabs);
    // Over the trend its time labels serve both.
    history_->labelTimes(asTabs);
    history_->axis().align();
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
