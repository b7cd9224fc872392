#include "core/trend/speed_map.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/trend/median.h"

namespace fettle {

namespace {

constexpr double kPerBin = 6;
constexpr double kWidths[] = {5, 10, 20, 25, 50, 100};
constexpr std::size_t kFloorLines = 15;  // to either side
constexpr double kNearLines = 2.5;       // an order so near stands there itself
constexpr std::size_t kFewestWithout = 3;

float medianFloat(std::vector<float>& values) {
    const auto middle = values.begin() + std::ptrdiff_t(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

void gather(const std::vector<const SpeedSpectrum*>& spectra, SpeedMap& map) {
    std::vector<float> values;
    for (std::size_t line = 0; line < map.lines; ++line) {
        values.clear();
        for (const SpeedSpectrum* one : spectra)
            values.push_back(one->lines[line]);
        map.most.push_back(*std::max_element(values.begin(), values.end()));
        map.middle.push_back(medianFloat(values));
    }
}

// Largest line where the order stands in one recording, and the median about it.
struct AtOrder {
    double level = 0, floor = 0;
};
AtOrder atOrder(const SpeedSpectrum& one, int order) {
    const double step = one.topHz / double(one.lines.size());
    const auto last = std::ptrdiff_t(one.lines.size()) - 1;
    const auto at = std::ptrdiff_t(order * one.rpm / 60 / step);
    const auto within = [&](std::ptrdiff_t k) { return std::clamp<std::ptrdiff_t>(k, 0, last); };
    const auto far = std::ptrdiff_t(kFloorLines);
    AtOrder found;
    std::vector<double> around;
    for (std::ptrdiff_t k = within(at - far); k <= within(at + far); ++k) {
        const auto value = double(one.lines[std::size_t(k)]);
        if (std::abs(k - at) <= 1)
            found.level = std::max(found.level, value);
        else
            around.push_back(value);
    }
    found.floor = around.empty() ? 0 : medianOf(std::move(around));
    return found;
}

bool fits(const SpeedSpectrum& one, const SpeedMap& map) {
    return one.rpm > 0 && one.lines.size() == map.lines && one.topHz == map.topHz;
}

std::optional<std::size_t> binOf(const SpeedMap& map, double rpm) {
    const auto bin = std::find_if(map.bins.begin(), map.bins.end(),
                                  [&](const SpeedBin& one) { return rpm >= one.fromRpm && rpm < one.toRpm; });
    if (bin == map.bins.end()) return std::nullopt;
    return std::size_t(bin - map.bins.begin());
}

void evenOut(std::vector<double>& values) {
    const std::vector<double> raw = values;
    for (std::size_t i = 1; i + 1 < raw.size(); ++i)
        values[i] = medianOf({raw[i - 1], raw[i], raw[i + 1]});
}

}  // namespace

double binWidth(const std::vector<SpeedSpectrum>& spectra) {
    double least = 1e300, most = 0;
    for (const SpeedSpectrum& one : spectra) {
        least = std::min(least, one.rpm);
        most = std::max(most, one.rpm);
    }
    const double wanted = (most - least) / std::max(1.0, double(spectra.size()) / kPerBin);
    for (const double width : kWidths)
        if (width >= wanted) return width;
    return kWidths[std::size(kWidths) - 1];
}

SpeedMap speedMapOf(const ChannelSpectra& channel, double widthRpm) {
    SpeedMap map;
    map.channel = channel.channel;
    std::map<long, std::vector<const SpeedSpectrum*>> byBin;
    for (const SpeedSpectrum& one : channel.spectra) {
        if (!(one.rpm > 0) || one.lines.empty()) continue;
        if (map.lines == 0) {
            map.lines = one.lines.size();
            map.topHz = one.topHz;
        }
        // Another make of spectrum (another node) does not fit this grid.
        if (!fits(one, map)) continue;
        byBin[std::lround(std::floor(one.rpm / widthRpm))].push_back(&one);
    }
    for (const auto& [bin, spectra] : byBin) {
        map.bins.push_back({double(bin) * widthRpm, double(bin + 1) * widthRpm, spectra.size()});
        gather(spectra, map);
    }
    return map;
}

OrderTrack orderTrack(const ChannelSpectra& channel, const SpeedMap& map, int order, std::size_t fewest) {
    std::vector<std::vector<double>> levels(map.bins.size()), floors(map.bins.size());
    for (const SpeedSpectrum& one : channel.spectra) {
        if (!fits(one, map) || order * one.rpm / 60 >= map.topHz) continue;
        const auto bin = binOf(map, one.rpm);
        const AtOrder at = atOrder(one, order);
        if (!bin || !(at.level > 0)) continue;
        levels[*bin].push_back(at.level);
        floors[*bin].push_back(at.floor);
    }
    OrderTrack track;
    for (std::size_t bin = 0; bin < map.bins.size(); ++bin) {
        if (levels[bin].size() < fewest) continue;
        const double level = medianOf(levels[bin]), floor = medianOf(floors[bin]);
        track.bins.push_back(bin);
        track.level.push_back(level);
        track.db.push_back(20 * std::log10(level) - 40 * std::log10(map.bins[bin].middle()));
        track.overFloorDb.push_back(floor > 0 ? 20 * std::log10(level / floor) : 200);
    }
    evenOut(track.db);
    return track;
}

std::optional<double> levelWithoutOrders(const SpeedMap& map, double hz, const std::vector<int>& orders) {
    const double step = map.topHz / double(map.lines);
    const auto line = std::min(std::ptrdiff_t(hz / step), std::ptrdiff_t(map.lines) - 1);
    std::vector<double> levels;
    for (std::size_t bin = 0; bin < map.bins.size(); ++bin) {
        const bool near = std::any_of(orders.begin(), orders.end(), [&](int order) {
            return order * map.bins[bin].fromRpm / 60 < hz + kNearLines * step &&
                   order * map.bins[bin].toRpm / 60 > hz - kNearLines * step;
        });
        if (near) continue;
        const float* row = map.middle.data() + bin * map.lines;
        const auto from = std::max<std::ptrdiff_t>(0, line - 1);
        const auto to = std::min<std::ptrdiff_t>(std::ptrdiff_t(map.lines) - 1, line + 1);
        levels.push_back(double(*std::max_element(row + from, row + to + 1)));
    }
    if (levels.size() < kFewestWithout) return std::nullopt;
    return medianOf(std::move(levels));
}

}  // namespace fettle
