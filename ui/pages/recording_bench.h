// Why: what a recording's plots are compared with and marked by has one place of its own: the reference kept
// per machine, the band of the sound machine, the ranges of any bearing, the orbit, and the twins and the
// train on one key. The page says what is shown now; the bench asks FleetWork for the rest and hands it to
// the plots. A newer recording overtakes what was asked for an older one. Thread: the window's.
#pragma once

#include <QObject>
#include <QPointer>
#include <memory>
#include <optional>

#include "core/diagnosis/examination.h"
#include "ui/model/reference_book.h"
#include "ui/model/selection.h"
#include "ui/pages/recording_requests.h"
#include "ui/work/fleet_work.h"

class QMenu;

namespace fettle {

class CompareStrip;
class SideSpectra;

struct BenchPlots {
    SpectrumPlot& spectrum;
    SpectrumPlot& envelope;
    WaveformPlot& waveform;
    OrbitPlot& orbit;
    CompareStrip& compare;
};

// What the page shows now.
struct BenchView {
    std::string tag;
    std::shared_ptr<const Machine> machine;
    ChannelEntry channel;
    Instant time{};             // of the recording, where it is known
    double speedShare = 0.002;  // how unsure the speed is
    RecordingPlots plots;
    QTimeZone zone = QTimeZone::utc();
};

class RecordingBench : public QObject {
    Q_OBJECT
  public:
    RecordingBench(FleetWork& work, Selection& selection, const Theme& theme, BenchPlots plots,
                   QObject* parent);

    void clear();  // another machine
    void show(BenchView view);
    void setQuantity(const QString& key);  // velocity | displacement | plain
    void setChosen(const Hypothesis* hypothesis);
    void setReferences(ReferenceBook references) { references_ = std::move(references); }
    void keepReference();
    void removeReference();
    void compareNext(int steps);  // opens the comparison, then goes from place to place
    void closeComparison();
    void showBelow();  // the places compared below each other; compares first where nothing is
    void showBearing(const QString& at);               // of the train; empty: none
    bool showDesignation(const QString& designation);  // of the table; false: it has none
    // Those of the machine as registered first, then all of the table whose inner build is known.
    static QStringList knownDesignations(const Machine* machine);

  signals:
    void goTo(const QString& tag, const QString& channel, std::int64_t recording, Instant time);

  private:
    void fillMenu(SpectrumPlot& plot);
    void fillBearings(QMenu& menu);
    void showSubject();
    void askReference();
    std::optional<KeptReference> reference() const;  // of the machine and point shown
    QString nameOf(const KeptReference& reference) const;
    // `time`: of the recording, where it has to be that one.
    void overlay(std::int64_t recording, const std::string& channel, const QString& name,
                 std::optional<Instant> time = {});
    void takeOverlay(const RecordingPlots& plots, const QString& name);
    void clearOverlay();
    void askBands();
    void showBands();
    void askOrbit();
    void askSides();
    void overlaySide(int row);
    void showVariant(const BearingVariant& variant, double ratio, const QString& name);
    void showRanges();
    static SpectrumPtr ofQuantity(const RecordingPlots& plots, const QString& quantity);
    bool envelopeSeen() const;  // and no spectrum
    QString channelWords(const ChannelEntry& channel) const;

    FleetWork& work_;
    Selection& selection_;
    const Theme& theme_;
    BenchPlots to_;
    std::optional<BenchView> view_;
    QString quantity_ = QStringLiteral("velocity");
    ReferenceBook references_;
    bool showReference_ = true, showBand_ = false, comparing_ = false;
    bool belowWanted_ = false;  // once the places are read
    QPointer<SideSpectra> below_;
    RecordingPlots over_;  // laid over
    QString overName_;
    int overlays_ = 0;  // asked for or cleared: an answer to an older one is dropped
    std::optional<SoundBands> bands_;
    std::optional<BearingVariant> variant_;
    double ratio_ = 1;  // of the variant's shaft to the driver's
    QString variantName_;
};

}  // namespace fettle
