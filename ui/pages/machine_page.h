// Why: one machine as the engineer looks at it: nameplate line across the top, waterfall over trend on one
// time axis (tabs in a low window), below them the chosen recording as spectrum, envelope and waveform (tabs,
// side by side where there is room), on the right the evidence panel (a tab in a narrow window). What is
// shown follows from the Selection alone: without a recording the week up to the chosen moment (the newest
// where none is), with one that recording. All reading and computing runs on FleetWork; a newer request
// overtakes an older one of its kind. Thread: the window's.
#pragma once

#include <QWidget>
#include <memory>

#include "ui/model/selection.h"
#include "ui/pages/machine_requests.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QComboBox;
class QPushButton;
class QScrollArea;
class QSplitter;
class QTabWidget;

namespace fettle {

class HistoryList;
class MachineHistory;
class CompareStrip;
class NameplateLine;
class OrbitPlot;
class RecordingBench;

class MachinePage : public QWidget {
    Q_OBJECT
  public:
    MachinePage(FleetWork& work, Selection& selection, const Theme& theme, QWidget* parent = nullptr);
    ~MachinePage() override;

    HistoryList& log() { return *log_; }  // what was noted of the machine
    RecordingBench& bench() { return *bench_; }
    void showTwins();  // below each other; waits until the machine is read

  signals:
    void sheetWanted(const QString& tag);
    void noteWanted(const QString& tag);
    void asksWanted();  // what is asked for, of the fleet
    void baselineWanted(const QString& tag);
    void troubled(const QString& sentence);

  protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

  private:
    void build();
    QWidget* buildHead();
    void buildControls();
    void connectParts();
    void arrange();  // by width and height, see machine_page_layout.cpp
    void placePanel(bool amongTabs, bool anew);
    void placePlots(bool beside);
    void placeHistory(bool asTabs);

    void machineChanged();
    void recordingChanged();
    void faultChanged();
    void channelChanged();

    void askFacts();
    void takeFacts(MachineFacts facts);
    void askContent();
    void takeContent(std::shared_ptr<const PanelContent> content, Instant until);
    void askWeights();
    void askPlots();
    void showPlots(const RecordingPlots& plots);
    void showSpectrum();
    void showMarks();
    void showWhereLinesStand(const std::vector<LineMark>& marks);
    void buildRecording();
    void connectRecording();
    void showOnBench();
    void sayEverywhere(const QString& words);
    void sayBelow(const QString& words);

    const ChannelEntry* channel() const;
    const ChannelEntry& firstChannel() const;
    const Hypothesis* chosen() const;
    std::optional<std::int64_t> shownRecording() const;
    void chooseFault();
    void followFault();
    void showStrongest();
    void chooseTab();
    void pickBearing(const QString& at);
    void pickPoint(const QString& id);

    FleetWork& work_;
    Selection& selection_;
    const Theme& theme_;
    MachineHistory* history_;
    HistoryList* log_;
    NameplateLine* nameplate_;
    QPushButton *sheetButton_, *noteButton_;
    SpectrumPlot *spectrum_, *envelope_;
    WaveformPlot* waveform_;
    OrbitPlot* orbit_;
    CompareStrip* compare_;
    RecordingBench* bench_;
    EvidencePanel* panel_;
    QComboBox *channelBox_, *spectrumBox_;
    QSplitter *across_ = nullptr, *upright_, *beside_, *recording_;
    QTabWidget *tabs_, *historyTabs_, *lastBeside_;
    QScrollArea* scroll_;
    std::optional<MachineFacts> facts_;
    RecordingPlots plots_;
    QString tabChosenFor_, zoomedFor_;  // fault for which a tab, a part of the spectrum was chosen last
    int arranged_ = -1;
    bool twinsWanted_ = false;
};

}  // namespace fettle
