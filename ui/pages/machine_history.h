// Why: the past of one machine: waterfall (in colours or as traces) over trend (over time or against speed,
// load or heat), on one time axis and one selection, with the controls of both. It asks for what it shows,
// coarse before whole, and shows whatever came last; the page places its two parts and says which machine and
// which channel. Thread: the window's.
#pragma once

#include <QObject>
#include <optional>

#include "ui/model/selection.h"
#include "ui/pages/history_requests.h"
#include "ui/pages/machine_requests.h"
#include "ui/panels/quantity_picker.h"
#include "ui/plot/switched_plots.h"
#include "ui/plot/time_axis.h"
#include "ui/work/fleet_work.h"

class QComboBox;
class QPushButton;

namespace fettle {

class Cascade;
class Waterfall;

class MachineHistory : public QObject {
    Q_OBJECT
  public:
    MachineHistory(FleetWork& work, Selection& selection, const Theme& theme, QComboBox* channelBox,
                   QWidget* parent);

    TimeAxis& axis() { return *axis_; }
    SwitchedPlots* waterfalls() { return waterfalls_; }
    SwitchedPlots* trends() { return trends_; }
    void labelTimes(bool labelled);  // of the raster, where no trend stands below it

    void clear(const QString& words);  // no machine, or not yet read
    void say(const QString& words);    // instead of both
    void setMachine(const MachineFacts& facts);
    void setChannel(const ChannelEntry& channel);
    // The trend of what changed, in place of what was chosen until it is no longer wanted (null).
    void follow(const ChangeFacts* change);

  signals:
    void baselineWanted();

  private:
    void build(QComboBox* channelBox);
    void connectParts();
    void addActions(QWidget& at);
    void fillKinds();
    void fillQuantities();
    void chooseFollowed();
    void askFurther();
    void askWaterfall();
    void askWhole();
    void askTrend();
    void askPast();
    void showTrends();
    void showTrendWords();
    void showForm();
    void showSpan();
    void chooseSpan(int at);
    TrendRequest trendRequest() const;
    WaterfallRequest waterfallRequest() const;
    QString channelName() const;

    FleetWork& work_;
    Selection& selection_;
    const Theme& theme_;
    QWidget* page_;
    TimeAxis* axis_;
    SwitchedPlots *waterfalls_, *trends_;
    Waterfall* waterfall_;
    Cascade* cascade_;
    TrendPlot* trend_;
    ScatterPlot* scatter_;
    QComboBox *kindBox_, *axisBox_, *formBox_, *againstBox_, *chartBox_, *spanBox_;
    QPushButton* baselineButton_;
    QuantityPicker* picker_;
    std::optional<MachineFacts> facts_;
    std::optional<ChannelEntry> channel_;
    std::vector<HistoryQuantity> further_;
    std::optional<ChangeFacts> followed_;    // what follow asked for
    QStringList followedKeys_, keysBefore_;  // chosen for it, and instead of what
    TrendAnswer answer_;
    PastAnswer past_;
};

}  // namespace fettle
