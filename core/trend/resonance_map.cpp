#include "core/trend/resonance_map.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "core/trend/median.h"
#include "core/trend/speed_map.h"

namespace fettle {

namespace {

constexpr double kSmallShare = 0.25;  // of the largest order anywhere
constexpr double kGapBins = 1.5;      // speeds missing that a reader should know of
constexpr double kGapShare = 0.02;    // of the highest speed
constexpr double kShouldersHz = 1.0;

std::vector<int> ordersOf(const ResonanceOptions& options) {
    std::set<int> orders(options.moreOrders.begin(), options.moreOrders.end());
    for (int order = 1; order <= options.highestOrder; ++order)
        orders.insert(order);
    return {orders.begin(), orders.end()};
}

// A top and how far the track falls to its left and right.
struct Top {
    std::size_t at = 0, left = 0, right = 0;  // left, right: last index not yet 3 dB down
    double leftDb = 0, rightDb = 0;
    bool leftDown = false, rightDown = false;
};

// Falls until the track rises above the top again or ends.
void walk(const std::vector<double>& db, std::size_t at, int way, double leastDb, double& fell, bool& down,
          std::size_t& edge) {
    edge = at;
    for (auto i = std::ptrdiff_t(at) + way; i >= 0 && i < std::ptrdiff_t(db.size()); i += way) {
        const double drop = db[at] - db[std::size_t(i)];
        if (drop < 0) return;
        fell = std::max(fell, drop);
        if (drop >= leastDb) down = true;
        if (!down) edge = std::size_t(i);
    }
}

std::vector<Top> topsOf(const std::vector<double>& db, double leastDb) {
    std::vector<Top> tops;
    for (std::size_t i = 1; i + 1 < db.size(); ++i) {
        Top top{i, i, i, 0, 0, false, false};
        walk(db, i, -1, leastDb, top.leftDb, top.leftDown, top.left);
        walk(db, i, 1, leastDb, top.rightDb, top.rightDown, top.right);
        if (!top.leftDown || !top.rightDown) continue;
        // Of a flat top the middle one.
        if (!tops.empty() && top.at <= tops.back().right) {
            if (db[top.at] > db[tops.back().at]) tops.back() = top;
            continue;
        }
        tops.push_back(top);
    }
    return tops;
}

// Where the track is 3 dB down, between the last bin that is not and the first that is.
double downAt(const SpeedMap& map, const OrderTrack& track, const Top& top, bool left, double leastDb) {
    const std::size_t in = left ? top.left : top.right, out = left ? in - 1 : in + 1;
    const double inRpm = map.bins[track.bins[in]].middle(), outRpm = map.bins[track.bins[out]].middle();
    const double inDb = track.db[top.at] - track.db[in], outDb = track.db[top.at] - track.db[out];
    const double share = outDb > inDb ? std::clamp((leastDb - inDb) / (outDb - inDb), 0.0, 1.0) : 1;
    return inRpm + share * (outRpm - inRpm);
}

// The top between bins: parabola through three.
double topRpm(const SpeedMap& map, const OrderTrack& track, std::size_t at) {
    const double a = track.db[at - 1], b = track.db[at], c = track.db[at + 1];
    const double bend = a - 2 * b + c;
    const double shift = bend < 0 ? std::clamp(0.5 * (a - c) / bend, -0.5, 0.5) : 0;
    const double here = map.bins[track.bins[at]].middle();
    const double next = map.bins[track.bins[shift > 0 ? at + 1 : at - 1]].middle();
    return here + std::abs(shift) * (next - here);
}

std::size_t countIn(const SpeedMap& map, double fromRpm, double toRpm) {
    std::size_t count = 0;
    for (const SpeedBin& bin : map.bins)
        if (bin.middle() >= fromRpm && bin.middle() <= toRpm) count += bin.count;
    return count;
}

class Search {
  public:
    Search(const std::vector<ChannelSpectra>& channels, const ResonanceOptions& options, ResonanceMap& result)
        : channels_(channels), options_(options), orders_(ordersOf(options)), result_(result) {}

    void run() {
        for (std::size_t i = 0; i < channels_.size(); ++i)
            for (const int order : orders_)
                follow(channels_[i], result_.channels[i], order);
        group();
        makeBands();
    }

  private:
    void follow(const ChannelSpectra& channel, const SpeedMap& map, int order) {
        const OrderTrack track = orderTrack(channel, map, order, options_.fewestInBin);
        for (const double level : track.level)
            largest_ = std::max(largest_, level);
        if (track.bins.size() < options_.fewestBins) return;
        for (const Top& top : topsOf(track.db, options_.leastDb)) {
            if (track.overFloorDb[top.at] < options_.aboveFloorDb) continue;
            Crossing one;
            one.channel = map.channel;
            one.order = order;
            one.rpm = topRpm(map, track, top.at);
            one.hz = order * one.rpm / 60;
            one.fromRpm = downAt(map, track, top, true, options_.leastDb);
            one.toRpm = downAt(map, track, top, false, options_.leastDb);
            one.riseDb = std::min(top.leftDb, top.rightDb);
            one.level = track.level[top.at];
            one.recordings = countIn(map, one.fromRpm, one.toRpm);
            if (!isFixed(map, one)) crossings_.push_back(one);
        }
    }
    bool isFixed(const SpeedMap& map, const Crossing& one) {
        const auto without = levelWithoutOrders(map, one.hz, orders_);
        if (!without || 20 * std::log10(*without / one.level) < -options_.fixedDb) return false;
        const bool known =
            std::any_of(result_.fixed.begin(), result_.fixed.end(), [&](const FixedLine& line) {
                return line.channel == one.channel && std::abs(line.hz - one.hz) < 2 * kShouldersHz;
            });
        if (!known) result_.fixed.push_back({one.channel, one.hz, *without});
        return true;
    }
    // Crossings at one frequency, the strongest first.
    void group() {
        std::sort(crossings_.begin(), crossings_.end(),
                  [](const Crossing& a, const Crossing& b) { return a.level > b.level; });
        for (const Crossing& one : crossings_) {
            const auto home = std::find_if(
                result_.resonances.begin(), result_.resonances.end(), [&](const Resonance& resonance) {
                    return std::abs(resonance.crossings.front().hz / one.hz - 1) <= options_.sameHz;
                });
            if (home == result_.resonances.end())
                result_.resonances.push_back({0, 0, {one}, 0, 0});
            else
                home->crossings.push_back(one);
        }
        for (Resonance& resonance : result_.resonances)
            finish(resonance);
        std::erase_if(result_.resonances, [&](const Resonance& one) {
            return one.crossings.size() == 1 && one.crossings.front().riseDb < options_.loneDb;
        });
    }
    static void finish(Resonance& resonance) {
        std::vector<double> hz, sharp;
        std::set<int> orders;
        std::set<std::string> channels;
        for (const Crossing& one : resonance.crossings) {
            hz.push_back(one.hz);
            if (one.toRpm > one.fromRpm) sharp.push_back(one.rpm / (one.toRpm - one.fromRpm));
            orders.insert(one.order);
            channels.insert(one.channel);
        }
        resonance.hz = medianOf(hz);
        resonance.sharpness = sharp.empty() ? 0 : medianOf(sharp);
        resonance.orders = orders.size();
        resonance.channels = channels.size();
    }
    // The strongest channel of each order of each resonance.
    void makeBands() {
        for (const Resonance& resonance : result_.resonances) {
            std::set<int> done;
            for (const Crossing& one : resonance.crossings) {
                if (!done.insert(one.order).second) continue;
                result_.bands.push_back({one.fromRpm, one.toRpm, one.order, resonance.hz, one.riseDb,
                                         one.level, one.recordings, resonance.orders, resonance.channels,
                                         one.level < kSmallShare * largest_});
            }
        }
        std::sort(result_.bands.begin(), result_.bands.end(),
                  [](const SkipBand& a, const SkipBand& b) { return a.level > b.level; });
    }

    const std::vector<ChannelSpectra>& channels_;
    const ResonanceOptions& options_;
    std::vector<int> orders_;
    ResonanceMap& result_;
    std::vector<Crossing> crossings_;
    double largest_ = 0;
};

std::string lackingOf(const ResonanceMap& map, const SpeedMap& longest, const ResonanceOptions& options) {
    if (map.recordings == 0) return "not enough speeds: no running recording has a speed and a spectrum";
    const auto held = std::count_if(longest.bins.begin(), longest.bins.end(),
                                    [&](const SpeedBin& bin) { return bin.count >= options.fewestInBin; });
    const double range = (map.mostRpm - map.leastRpm) / ((map.mostRpm + map.leastRpm) / 2);
    if (std::size_t(held) >= options.fewestBins && range >= options.leastRange) return "";
    return fmt::format(
        "not enough speeds: {} {} between {:.0f} and {:.0f} r/min; a map takes at least {:.0f} % "
        "of range, and {} recordings at each of {} speeds",
        map.recordings, map.recordings == 1 ? "recording" : "recordings", map.leastRpm, map.mostRpm,
        100 * options.leastRange, options.fewestInBin, options.fewestBins);
}

void sayUnseen(const SpeedMap& longest, double leastRpm, double mostRpm, ResonanceMap& map) {
    const auto say = [&](double from, double to) {
        map.unseen.push_back(fmt::format("{:.0f} to {:.0f} r/min was not run in this time", from, to));
    };
    const double width = longest.bins.front().toRpm - longest.bins.front().fromRpm;
    if (leastRpm > 0 && map.leastRpm - leastRpm > kGapBins * width) say(leastRpm, map.leastRpm);
    for (std::size_t i = 1; i < longest.bins.size(); ++i)
        if (longest.bins[i].fromRpm - longest.bins[i - 1].toRpm >
            std::max((kGapBins - 1) * width, kGapShare * map.mostRpm))
            say(longest.bins[i - 1].toRpm, longest.bins[i].fromRpm);
    if (mostRpm > 0 && mostRpm - map.mostRpm > kGapBins * width) say(map.mostRpm, mostRpm);
    map.unseen.push_back(fmt::format(
        "a natural frequency that no order met between {:.0f} and {:.0f} r/min leaves no trace; load and "
        "product change with speed and are not parted from it",
        map.leastRpm, map.mostRpm));
}

}  // namespace

ResonanceMap resonanceMap(const std::vector<ChannelSpectra>& channels, double leastRpm, double mostRpm,
                          const ResonanceOptions& options) {
    ResonanceMap map;
    map.leastRpm = 1e300;
    const ChannelSpectra* longest = nullptr;
    for (const ChannelSpectra& channel : channels)
        if (!longest || channel.spectra.size() > longest->spectra.size()) longest = &channel;
    if (longest) map.recordings = longest->spectra.size();
    for (const ChannelSpectra& channel : channels)
        for (const SpeedSpectrum& one : channel.spectra) {
            map.leastRpm = std::min(map.leastRpm, one.rpm);
            map.mostRpm = std::max(map.mostRpm, one.rpm);
        }
    if (map.recordings == 0) map.leastRpm = 0;
    const double width = longest && map.recordings > 0 ? binWidth(longest->spectra) : 10;
    std::size_t at = 0;
    for (const ChannelSpectra& channel : channels) {
        if (&channel == longest) at = map.channels.size();
        map.channels.push_back(speedMapOf(channel, width));
    }
    map.lacking = lackingOf(map, map.channels.empty() ? SpeedMap() : map.channels[at], options);
    if (!map.lacking.empty()) return map;
    sayUnseen(map.channels[at], leastRpm, mostRpm, map);
    Search(channels, options, map).run();
    return map;
}

}  // namespace fettle
