#include "tests/bench/stages.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/diagnosis/examine.h"
#include "core/diagnosis/hypotheses.h"
#include "core/diagnosis/levels.h"
#include "core/diagnosis/sensor_checks.h"
#include "core/diagnosis/speed.h"
#include "core/dsp/local_floor.h"
#include "tests/bench/bare_transforms.h"
#include "tests/bench/stopwatch.h"

namespace fettle::bench {

namespace {

// What the stages are run on.
class Subject {
  public:
    Subject(const BenchCase& subject, int repeats)
        : machine_(subject.machine),
          recording_(subject.recording),
          samples_(recording_->channels[0].samples),
          rateHz_(recording_->channels[0].sampleRateHz),
          repeats_(repeats),
          prepared_(prepare(machine_, recording_, {})),
          bare_(machine_, *recording_) {}

    double transforms() {
        return best([&] { bare_.run(); });
    }
    // The bands' squared envelopes and their spectra, transforms and all.
    double envelopes() {
        FftVector<float> samples(samples_.begin(), samples_.begin() + std::ptrdiff_t(views().samplesUsed));
        FftVector<std::complex<float>> half;
        BandEnvelope envelope;
        return best([&] {
            forwardReal(samples, half);
            for (const View& view : views().envelopes) {
                if (view.whitened && &view == firstWhitened()) prewhiten(half);
                envelope.spectrum(half, views().df, view.band, settings_.envelopeTopHz);
            }
        });
    }
    double floors() {
        const auto width = std::size_t(settings_.floorWidthHz / views().df);
        std::vector<float> out(views().plainZ.size());
        return best([&] {
            overLocalFloor(views().plainZ, width, out);
            for (const View& view : views().envelopes)
                overLocalFloor(view.z, width, std::span(out).first(view.top));
        });
    }
    double allViews() {
        double narrowest = rateHz_;
        for (const View& view : views().envelopes)
            narrowest = std::min(narrowest, view.band.highHz - view.band.lowHz);
        // A carrier that asks for the bands that the examination had.
        const double carrier = 0.99 * narrowest / settings_.carriersABand;
        return best([&] { (void)makeViews(samples_, rateHz_, carrier, settings_); });
    }
    double checksAndLevels() {
        const Channel& channel = recording_->channels[0];
        const ChannelRole role = roleOf(machine_, *recording_, 0);
        return best([&] {
            (void)checkSensor(channel, role, &views());
            (void)levelsOf(machine_, channel, role, &views());
        });
    }
    double speed() {
        return best([&] {
            (void)findSpeed(
                {machine_, *recording_, recording_->speedRpm, prepared_.views, prepared_.flux, settings_});
        });
    }
    double ranks() {
        ChannelViews views = prepared_.views[0];
        return best([&] { rankViews(views, prepared_.evidence[0].blocked.bins, settings_); });
    }
    double weighing() {
        const AskedBearings asked = askBearings(machine_, prepared_);
        return best([&] {
            std::vector<ChannelEvidence> evidence = prepared_.evidence;
            (void)explainAway(asked.hypotheses, evidence, prepared_.rates, settings_);
        });
    }

  private:
    template <class Work>
    double best(Work work) {
        work();  // plans and tables are made on the first run
        return bestMs(repeats_, work);
    }
    const ChannelViews& views() const { return prepared_.views[0]; }
    const View* firstWhitened() const {
        for (const View& view : views().envelopes)
            if (view.whitened) return &view;
        return nullptr;
    }

    const Machine& machine_;
    RecordingPtr recording_;
    const std::vector<double>& samples_;
    double rateHz_;
    int repeats_;
    WeighingSettings settings_;
    PreparedRecording prepared_;
    BareTransforms bare_;
};

}  // namespace

std::vector<Stage> stagesOf(const BenchCase& subject, int repeats) {
    // Before anything is held that an examination would find in its way.
    (void)examine(subject.machine, {subject.recording});
    const double whole = bestMs(repeats, [&] { (void)examine(subject.machine, {subject.recording}); });
    Subject run(subject, repeats);
    const double transforms = run.transforms(), envelopes = run.envelopes();
    const double floors = run.floors(), views = run.allViews();
    std::vector<Stage> stages = {{"bare transforms", transforms},
                                 {"envelopes, besides their transforms", envelopes - transforms},
                                 {"local floors", floors},
                                 {"rest of the views", views - envelopes - floors},
                                 {"sensor checks and levels", run.checksAndLevels()},
                                 {"speed", run.speed()},
                                 {"ranks", run.ranks()},
                                 {"weighing and explaining away", run.weighing()}};
    double rest = whole;
    for (const Stage& stage : stages)
        rest -= stage.ms;
    stages.push_back({"rest", rest});
    stages.push_back({"the whole examination", whole});
    return stages;
}

std::string tableOf(const std::vector<Stage>& stages) {
    std::string text = fmt::format("{:<38} {:>8} {:>8} {:>12}\n", "stage", "ms", "share", "x transforms");
    for (const Stage& stage : stages)
        text += fmt::format("{:<38} {:>8.3f} {:>7.1f}% {:>12.2f}\n", stage.name, stage.ms,
                            100 * stage.ms / stages.back().ms, stage.ms / stages.front().ms);
    return text;
}

}  // namespace fettle::bench
