// Why: every weight stands on the shaft speed, so how often it is right when nobody gives it, how often it is
// said to be unknown, and how often it is sure and wrong are measured over simulated machines and open
// records. Right: within 0.1 % (simulated) or 0.3 % (open records, whose own speeds are no better) of the
// truth in the clock of the recording as used. Sure and wrong: farther off, and by more than it says of
// itself.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>

#include "core/diagnosis/prepare.h"
#include "core/signal/reader.h"
#include "core/simulate/fleet_state.h"
#include "tests/trials/trials.h"

namespace fettle::trials {

namespace {

constexpr double kSimulatedShare = 0.001, kOpenShare = 0.003;

struct Tally {
    int count = 0, right = 0, unknown = 0, wrong = 0, sure = 0, far = 0;

    void add(const SpeedResult& speed, double trueHz, double share) {
        ++count;
        if (!speed.rpm) {
            ++unknown;
            return;
        }
        const double off = std::abs(*speed.rpm / 60 / trueHz - 1);
        right += off <= share;
        wrong += off > share;
        sure += off > share && off > speed.plusMinusRpm / *speed.rpm;
        far += off > 0.003;
    }
    std::string text() const {
        const auto percent = [&](int n) { return 100.0 * n / std::max(1, count); };
        return fmt::format("{:5d}  right {:5.1f} %  unknown {:5.1f} %  wrong {:4.1f} %  sure and wrong {:4.1f} %"
                           "  beyond 0.3 % {:4.1f} %",
                           count, percent(right), percent(unknown), percent(wrong), percent(sure), percent(far));
    }
};

class Tallies {
  public:
    void add(const std::string& group, const SpeedResult& speed, double trueHz, double share) {
        if (!groups_.count(group)) order_.push_back(group);
        groups_[group].add(speed, trueHz, share);
    }
    void print() const {
        for (const std::string& group : order_)
            fmt::print("  {:<34}{}\n", group, groups_.at(group).text());
    }

  private:
    std::map<std::string, Tally> groups_;
    std::vector<std::string> order_;
};

std::string textAfter(const Arguments& arguments, const std::string& name, const std::string& otherwise) {
    for (std::size_t i = 0; i + 1 < arguments.size(); ++i)
        if (arguments[i] == name) return arguments[i + 1];
    return otherwise;
}

bool has(const Arguments& arguments, const std::string& name) {
    return std::find(arguments.begin(), arguments.end(), name) != arguments.end();
}

std::string told(const SpeedResult& speed, double trueHz) {
    if (!speed.rpm) return fmt::format("true {:.2f}; {}", trueHz * 60, speed.from);
    std::string text = fmt::format("true {:.2f}, said {:.2f} +- {:.2f} r/min ({:+.3f} %)", trueHz * 60, *speed.rpm,
                                   speed.plusMinusRpm, (*speed.rpm / 60 / trueHz - 1) * 100);
    for (const SpeedEstimate& e : speed.estimates)
        text += fmt::format("; {} {:.2f} +- {:.2f}", e.from, e.rpm, e.plusMinusRpm);
    return text;
}

RecordingPtr recordingOf(const sim::SimulationSetup& setup, const sim::SimulatedRecording& made) {
    auto recording = std::make_shared<Recording>();
    recording->file = "simulated";
    recording->point = setup.machine.points[setup.point].id;
    const double steps = std::ldexp(1.0, made.bits - 1);
    for (const sim::SimulatedChannel& from : made.channels) {
        Channel channel{from.name, recording->point, from.unit, made.rateHz, {}, from.scale};
        for (const std::int32_t sample : from.samples)
            channel.samples.push_back(sample / steps * from.scale);
        recording->channels.push_back(std::move(channel));
    }
    return recording;
}

// One simulated recording and what was made of it.
struct Simulated {
    PreparedRecording prepared;
    double trueHz = 0;  // of the shaft, in the clock of the recording as used
    double slip = 0, clockError = 0, rateError = 0;
    bool flux = false;
};

class SpeedTrial {
  public:
    explicit SpeedTrial(bool list) : list_(list) {}
    int simulated(const std::string& folder);
    int open(const std::string& folder);

  private:
    void one(const sim::FleetMachine& fleet, sim::SimulationSetup setup);
    void count(const std::string& what, const Simulated& s, double seconds);
    void piece(const Machine& machine, const RecordingPtr& recording, double seconds, double rpm);
    void printSlipAndClock() const;

    bool list_;
    Tallies tallies_;
    int slipKnown_ = 0, slipWrong_ = 0, offClocks_ = 0, corrected_ = 0, wronglyCorrected_ = 0;
};

void SpeedTrial::count(const std::string& what, const Simulated& s, double seconds) {
    const SpeedResult& speed = s.prepared.facts.speed;
    const auto add = [&](const std::string& group) { tallies_.add(group, speed, s.trueHz, kSimulatedShare); };
    add("all simulated");
    add(s.flux ? "with flux" : "vibration only");
    add(fmt::format("{}, {:.0f} s", s.flux ? "with flux" : "vibration only", seconds));
    if (s.clockError != 0) add("clock off by more than 0.1 %");
    const bool right = speed.rpm && std::abs(*speed.rpm / 60 / s.trueHz - 1) <= kSimulatedShare;
    if (list_ && !right) fmt::print("    {}: {}\n", what, told(speed, s.trueHz));
    const auto slip = slipOf(s.prepared.recording ? machineOf_ : machineOf_, speed, s.prepared.mains);
    if (slip && slip->known) {
        ++slipKnown_;
        slipWrong_ += std::abs(slip->share - s.slip) > 2e-4;
    }
    offClocks_ += std::abs(s.clockError) > 0.004;
    const bool changed = std::abs(s.rateError - s.clockError) > 1e-6;
    corrected_ += changed && std::abs(s.rateError) < 0.0015;
    wronglyCorrected_ += changed && std::abs(s.rateError) >= 0.0015;
}

}  // namespace

}  // namespace fettle::trials
