#include "core/diagnosis/sensor_checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/dsp/integrate.h"
#include "core/dsp/statistics.h"

namespace fettle {

namespace {

// Thresholds: common practice, no source, but chosen so that Gaussian noise of any length passes every check.
constexpr std::size_t kClippedRun = 2;     // neighbouring samples at the extreme value ..
constexpr std::size_t kClippedPlaces = 3;  // .. in so many places
constexpr double kHeldShare = 0.02;        // of samples that stand in runs of kHeldRun equal ones
constexpr std::size_t kHeldRun = 16;
constexpr std::size_t kCoarseSteps = 24;  // different values within the middle of the record
constexpr double kSkiRatio = 6;           // 2-10 Hz velocity over 10-1000 Hz velocity

struct Runs {
    std::size_t atLow = 0, atHigh = 0;  // runs of >= kClippedRun samples at the extreme
    std::size_t held = 0;               // samples in long runs of one value
};

Runs countRuns(const std::vector<double>& x, double low, double high) {
    Runs runs;
    for (std::size_t from = 0; from < x.size();) {
        std::size_t to = from + 1;
        while (to < x.size() && x[to] == x[from])
            ++to;
        if (to - from >= kClippedRun) {
            runs.atLow += x[from] == low;
            runs.atHigh += x[from] == high;
        }
        if (to - from >= kHeldRun) runs.held += to - from;
        from = to;
    }
    return runs;
}

// Different values among the samples, counted up to a few more than matter.
std::size_t differentValues(const std::vector<double>& x) {
    std::vector<double> seen;
    for (const double v : x) {
        const auto at = std::lower_bound(seen.begin(), seen.end(), v);
        if (at == seen.end() || *at != v) seen.insert(at, v);
        if (seen.size() > kCoarseSteps) break;
    }
    return seen.size();
}

class Checker {
  public:
    Checker(const Channel& channel, SensorCheck& check) : channel_(channel), check_(check) {}
    void note(const char* code, std::string detail) const {
        check_.notes.push_back({code, channel_.name, std::move(detail)});
    }

  private:
    const Channel& channel_;
    SensorCheck& check_;
};

void checkExtremes(const Channel& channel, const ChannelRole& role, const Runs& runs, double low, double high,
                   const Checker& say) {
    const bool runsAtEnds = runs.atLow + runs.atHigh >= kClippedPlaces;
    const double range = role.point && role.point->range ? *role.point->range / role.toG : channel.fullScale;
    const bool atRange = range > 0 && std::max(high, -low) >= 0.999 * range;
    if (runsAtEnds || atRange)
        say.note("clipped",
                 fmt::format("the record stands at its extreme ({:.3g} and {:.3g} {}) in {} places{}", low,
                             high, channel.unit, runs.atLow + runs.atHigh,
                             atRange ? ", the end of the stated range" : ""));
}

}  // namespace

SensorCheck checkSensor(const Channel& channel, const ChannelRole& role, const ChannelViews* views) {
    SensorCheck check;
    const Checker say(channel, check);
    const auto& x = channel.samples;
    if (!role.channel)
        say.note("unknown_channel",
                 fmt::format("no channel \"{}\" at point \"{}\" in the machine description; taken for {}",
                             channel.name, channel.point, role.quantity));
    if (x.empty()) {
        say.note("short", "no samples");
        check.unfit = true;
        return check;
    }
    const auto [low, high] = std::minmax_element(x.begin(), x.end());
    if (*low == *high) {
        say.note("flat", fmt::format("every sample is {:.4g} {}", *low, channel.unit));
        check.unfit = true;
        return check;
    }
    const Runs runs = countRuns(x, *low, *high);
    const std::size_t values = differentValues(x);
    if (values <= kCoarseSteps) {
        say.note("coarse",
                 fmt::format("only {} different values: the range is far too wide for this signal", values));
    } else {
        checkExtremes(channel, role, runs, *low, *high, say);
        if (double(runs.held) > kHeldShare * double(x.size()))
            say.note("held", fmt::format("{} of {} samples repeat the one before them in runs of {} or more",
                                         runs.held, x.size(), kHeldRun));
    }
    if (!views || views->samplesUsed == 0) {
        if (role.quantity == "acceleration") {
            say.note("short", fmt::format("{} samples are too few for any spectrum", x.size()));
            check.unfit = true;
        }
        return check;
    }
    const double slow = velocityRms(views->spectrum, 2, 10), quick = velocityRms(views->spectrum, 10, 1000);
    if (slow > kSkiRatio * quick && slow > 1)
        say.note("ski_slope",
                 fmt::format("velocity below 10 Hz is {:.1f} times that above: sensor settling, a knock or "
                             "a loose mount",
                             slow / std::max(quick, 1e-9)));
    return check;
}

bool speaksOfSensor(const std::string& code) {
    for (const char* other :
         {"unknown_channel", "short", "coarse", "sample_rate", "speed_disagrees", "unsteady"})
        if (code == other) return false;
    return true;
}

}  // namespace fettle
