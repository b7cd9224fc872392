#include "core/diagnosis/which_end.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>

#include "core/base/text.h"
#include "core/diagnosis/view_lines.h"
#include "core/dsp/spectrum.h"
#include "core/machine/path.h"

namespace fettle {

namespace {

constexpr int kFirstHarmonics = 3;
constexpr double kPartedDban = 10;  // of one end, and over the other
constexpr double kLouder = 2;       // 6 dB
constexpr double kFoundDban = 20;

// All that was weighed of one fault at one place.
using Weighed = std::vector<const Hypothesis*>;
using AllWeighed = std::map<std::pair<std::string, std::string>, Weighed>;

AllWeighed weighedIn(const std::vector<Examination>& parts) {
    AllWeighed all;
    for (const Examination& part : parts)
        for (const Hypothesis& h : part.considered)
            if (h.weightDban) all[{h.fault, h.at}].push_back(&h);
    return all;
}

double meanDban(const Weighed& weighed) {
    double e = 0;
    for (const Hypothesis* h : weighed)
        e += std::pow(10.0, *h->weightDban / 10);
    return 10 * std::log10(e / double(weighed.size()));
}

struct Decision {
    std::string end, words;
};

std::string positionOf(const std::string& at) {
    return at.substr(at.rfind(' ') + 1);
}

std::string others(const std::vector<std::string>& ends, const std::string& end) {
    std::vector<std::string> names;
    for (const std::string& one : ends)
        if (one != end) names.push_back(positionOf(one));
    return joined(names, " and ");
}

// Where recordings of the same week part the orders.
std::optional<Decision> byLines(const AllWeighed& all, const std::string& fault,
                                const std::vector<std::string>& ends) {
    std::vector<std::pair<double, std::string>> weights;
    for (const std::string& end : ends) {
        const auto found = all.find({fault, end});
        if (found == all.end()) return std::nullopt;
        weights.push_back({meanDban(found->second), end});
    }
    std::sort(weights.rbegin(), weights.rend());
    if (weights[0].first < kPartedDban || weights[0].first < weights[1].first + kPartedDban)
        return std::nullopt;
    const std::string& end = weights[0].second;
    return Decision{end, fmt::format("Nearly the same bearing sits at {}; a recording long enough to part "
                                     "them has the lines at the orders of {}.",
                                     others(ends, end), positionOf(end))};
}

struct Loudness {
    double g = 0;
    std::string end, point;
};

// Median of what was heard at the points of one end.
std::optional<Loudness> loudnessAt(const Machine& machine, const Weighed& weighed, const std::string& end) {
    std::vector<double> levels;
    std::string point;
    for (const Hypothesis* h : weighed) {
        const Point* heard = machine.pointById(h->best.point);
        if (!heard || heard->at != end || h->best.levelG <= 0) continue;
        levels.push_back(h->best.levelG);
        point = heard->id;
    }
    if (levels.empty()) return std::nullopt;
    const auto middle = levels.begin() + std::ptrdiff_t(levels.size() / 2);
    std::nth_element(levels.begin(), middle, levels.end());
    return Loudness{*middle, end, point};
}

std::vector<Loudness> loudnesses(const Machine& machine, const Weighed& weighed,
                                 const std::vector<std::string>& ends) {
    std::vector<Loudness> all;
    for (const std::string& end : ends)
        if (auto one = loudnessAt(machine, weighed, end)) all.push_back(std::move(*one));
    std::sort(all.begin(), all.end(), [](const Loudness& a, const Loudness& b) { return a.g > b.g; });
    return all;
}

std::optional<Decision> byLevels(const std::vector<Loudness>& levels, const std::vector<std::string>& ends) {
    if (levels.size() < ends.size() || levels[0].g < kLouder * levels[1].g) return std::nullopt;
    return Decision{levels[0].end,
                    fmt::format("The same bearing sits at {}; its lines are {:.1f} times as high at {} as "
                                "at {}.",
                                others(ends, levels[0].end), levels[0].g / levels[1].g, levels[0].point,
                                levels[1].point)};
}

std::string undecidedWords(const Machine& machine, const std::vector<Loudness>& levels,
                           const std::vector<std::string>& ends) {
    std::vector<std::string> names, unheard;
    for (const std::string& end : ends) {
        names.push_back(positionOf(end));
        const bool point = std::any_of(machine.points.begin(), machine.points.end(),
                                       [&](const Point& p) { return p.at == end; });
        if (!point) unheard.push_back(positionOf(end));
    }
    const std::string same = joined(names, " and ") + " have the same bearing";
    if (levels.size() >= ends.size()) return same + " and their points read nearly alike: order for both.";
    return fmt::format("{}: order for both, or tell them apart by a reading at {}.", same,
                       unheard.empty() ? "each end in one week" : joined(unheard, " and "));
}

}  // namespace

double swingG(const Weighing& weighed, const ChannelViews& views) {
    const View* view = viewNamed(views, weighed.view);
    if (!view || views.df <= 0) return 0;
    double z = 0, n = 0;
    for (const LineRow& row : weighed.rows) {
        if (!row.carrier || row.harmonic > kFirstHarmonics || row.state == LineState::LeftOut) continue;
        z += std::pow(10.0, row.aboveFloorDb / 10);
        ++n;
    }
    const double width = view->band.highHz - view->band.lowHz;
    if (n == 0 || width <= 0) return 0;
    const double level = bandRms(views.spectrum, view->band.lowHz, view->band.highHz);
    return level * std::pow(4 * z / n * views.df / width, 0.25);
}

EndsOfWeek::EndsOfWeek(const Machine& machine, const std::vector<Examination>& parts) {
    const AllWeighed all = weighedIn(parts);
    std::map<std::string, std::pair<double, Decision>> decided;  // of a place, by its strongest fault
    for (const auto& [key, weighed] : all) {
        const auto ends = placesIn(key.second);
        if (ends.size() < 2) continue;
        const double weight = meanDban(weighed);
        const auto levels = loudnesses(machine, weighed, ends);
        words_[key] = undecidedWords(machine, levels, ends);
        auto decision = byLines(all, key.first, ends);
        if (!decision && weight >= kFoundDban) decision = byLevels(levels, ends);
        if (!decision) continue;
        auto& [strongest, kept] = decided[key.second];
        if (kept.end.empty() || weight > strongest) {
            strongest = weight;
            kept = *decision;
        }
    }
    for (const auto& [key, weighed] : all) {
        const auto ends = placesIn(key.second);
        const auto decision = decided.find(key.second);
        if (ends.size() > 1 && decision == decided.end())
            for (const std::string& end : ends)
                places_[{key.first, end}] = key.second;
        if (decision == decided.end()) continue;
        const Decision& one = decision->second.second;
        places_[key] = one.end;
        words_[{key.first, one.end}] = one.words;
    }
}

std::string EndsOfWeek::placeOf(const std::string& fault, const std::string& at) const {
    const auto found = places_.find({fault, at});
    return found == places_.end() ? at : found->second;
}

std::string EndsOfWeek::words(const std::string& fault, const std::string& at) const {
    const auto found = words_.find({fault, at});
    return found == words_.end() ? "" : found->second;
}

}  // namespace fettle
