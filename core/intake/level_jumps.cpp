#include "core/intake/level_jumps.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/trend/median.h"

namespace fettle {

namespace {

constexpr std::size_t kRemembered = 10, kFewest = 5;
constexpr std::chrono::hours kLookBack{24 * 90};
constexpr double kAlike = 0.03;     // relative: how near to the factor the jump must be, at least
constexpr double kFarOut = 6;       // the factor is so many spreads away from 1
constexpr double kSpreadAt = 1.48;  // of a normal spread, over the median deviation

struct Factor {
    double value;
    const char* word;
};
constexpr Factor kFactors[] = {
    {1.41421356, "r.m.s. and peak"},
    {2, "peak and peak to peak, or the gain"},
    {2.82842712, "r.m.s. and peak to peak"},
    {9.80665, "g and m/s2"},
    {25.4, "inch and mm"},
    {1000, "g and mg"},
};

constexpr std::ptrdiff_t kFewKnown = 1;

// A machine that runs at two levels was at the other one not long ago.
bool isKnown(const std::vector<double>& logs, double now, double jump) {
    const auto near = [&](double log) { return std::abs(log - now) < std::abs(jump) / 2; };
    return std::count_if(logs.begin(), logs.end(), near) > kFewKnown;
}

}  // namespace

std::optional<std::string> jumpOf(const std::vector<double>& before, double now) {
    std::vector<double> logs;
    for (const double level : before)
        if (level > 0) logs.push_back(std::log(level));
    if (logs.size() < kFewest || !(now > 0)) return std::nullopt;
    const double middle = medianOf(logs);
    const double jump = std::log(now) - middle;
    if (isKnown(logs, std::log(now), jump)) return std::nullopt;
    for (double& level : logs)
        level = std::abs(level - middle);
    const double spread = std::max(kSpreadAt * medianOf(logs), kAlike / 2);
    for (const Factor& factor : kFactors) {
        const double size = std::log(factor.value);
        if (size < kFarOut * spread || std::abs(std::abs(jump) - size) > 2 * spread) continue;
        return fmt::format(
            "level about {}{:.3g} times that of the recordings before, as if {} were taken "
            "for each other",
            jump < 0 ? "1/" : "", factor.value, factor.word);
    }
    return std::nullopt;
}

Result<std::deque<double>> LevelJumps::stored(std::int64_t machine, const TrendRow& row, Quantity quantity) {
    std::deque<double> levels;
    const auto channels = fleet_.trends().channels(machine);
    if (!channels) return fail(channels.error());
    for (const ChannelEntry& channel : *channels) {
        if (channel.point != row.point || channel.name != row.channel) continue;
        const auto trend = fleet_.trends().trend(channel.id, quantity, row.time - kLookBack, row.time);
        if (!trend) return fail(trend.error());
        for (const TrendPoint& point : *trend)
            if (point.running == row.running) levels.push_back(point.value);
    }
    while (levels.size() > kRemembered)
        levels.pop_front();
    return levels;
}

Result<std::deque<double>*> LevelJumps::last(const NewRecording& recording, const TrendRow& row,
                                             Quantity quantity) {
    const Key key{recording.machine, row.point + "\n" + row.channel, quantity};
    const auto known = last_.find(key);
    if (known != last_.end()) return &known->second;
    auto levels = stored(recording.machine, row, quantity);
    if (!levels) return fail(levels.error());
    return &(last_[key] = std::move(*levels));
}

Result<std::string> LevelJumps::jumpOfLevel(const NewRecording& recording, const TrendRow& row,
                                            Quantity quantity) {
    const auto level = row.values[std::size_t(quantity)];
    if (row.running != "running" || !level) return std::string();
    const auto before = last(recording, row, quantity);
    if (!before) return fail(before.error());
    std::deque<double>& levels = **before;
    const auto jump = jumpOf({levels.begin(), levels.end()}, *level);
    levels.push_back(*level);
    if (levels.size() > kRemembered) levels.pop_front();
    return jump.value_or("");
}

Result<std::vector<std::string>> LevelJumps::of(const NewRecording& recording) {
    std::vector<std::string> words;
    for (const TrendRow& row : recording.trends) {
        const auto velocity = jumpOfLevel(recording, row, Quantity::VelocityRms);
        if (!velocity) return fail(velocity.error());
        const auto acceleration = jumpOfLevel(recording, row, Quantity::AccelerationRms);
        if (!acceleration) return fail(acceleration.error());
        if (!velocity->empty() && *velocity == *acceleration)
            words.push_back(
                fmt::format("{} {} {}: {}", recording.recording->machine, row.point, row.channel, *velocity));
    }
    return words;
}

}  // namespace fettle
