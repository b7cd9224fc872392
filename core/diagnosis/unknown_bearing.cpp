#include "core/diagnosis/unknown_bearing.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "core/base/text.h"
#include "core/diagnosis/stage.h"
#include "core/machine/resource.h"

namespace fettle {

namespace {

constexpr const char* kFault = "bearing_unknown";
constexpr std::array<double, 8> kW = {.9, .8, .7, .5, .4, .4, .3, .3};  // of the harmonics, as of a race
constexpr double kLeastOrder = 2.2, kMostOrder = 15;
constexpr double kWholeShare = 0.02, kHalfShare = 0.01;  // relative distance kept from whole and half orders
constexpr double kRareEnough = 0.02;                     // rank p of the first line
constexpr double kUnlistedShare = 0.1;  // prior where the component's own bearings are described
constexpr double kStepBins = 2;         // at the highest harmonic: a rank looks one bin to either side
constexpr double kFitShare = 0.02;      // of a designation's order
constexpr std::size_t kMostDesignations = 6;

bool leftOut(double order) {
    return std::abs(order - std::round(order)) < kWholeShare * order ||
           std::abs(order - std::floor(order) - 0.5) < kHalfShare * order;
}

struct Found {
    double term = 0, hz = 0;  // the largest term of the mean, and where
    std::size_t evidence = 0, view = 0;
};

// Factors of one view as a comb of lines at h x hz; beyond the view its last entry, 1.
double product(const std::vector<float>& factor, double df, double hz) {
    const double bin = hz / df;
    const std::size_t beyond = factor.size() - 1;
    double together = 1;
    for (std::size_t h = 0; h < kW.size(); ++h) {
        const auto k = std::size_t(double(h + 1) * bin + 0.5);
        together *= (1 - kW[h]) + kW[h] * double(factor[k < beyond ? k : beyond]);
    }
    return together;
}

struct Grid {
    double leastHz = 0, stepHz = 0;
    std::size_t count = 0;

    double hz(std::size_t i) const { return leastHz + double(i) * stepHz; }
    std::size_t firstFrom(double atHz) const {
        return std::size_t(std::max(0.0, std::ceil((atHz - leastHz) / stepHz)));
    }
};

Grid gridOf(double shaftHz, double df) {
    Grid grid;
    grid.leastHz = kLeastOrder * shaftHz;
    grid.stepHz = kStepBins * df / double(kW.size());
    grid.count = std::size_t((kMostOrder - kLeastOrder) * shaftHz / grid.stepHz) + 1;
    return grid;
}

// Sum over the grid of one view; `found` keeps the largest.
double searchView(const ChannelEvidence& channel, std::size_t index, double shaftHz, double prior,
                  double rareFactor, Found here, Found& found) {
    const std::vector<float>& factor = channel.factors[index];
    const double df = channel.views->df;
    const Grid grid = gridOf(shaftHz, df);
    const auto least = float(rareFactor);
    const std::size_t last = std::min(factor.size() - 1, std::size_t(kMostOrder * shaftHz / df) + 1);
    double sum = 0;
    for (auto k = std::size_t(grid.leastHz / df); k < last; ++k) {
        if (factor[k] < least) continue;
        const std::size_t end = std::min(grid.count, grid.firstFrom((double(k) + 0.5) * df));
        for (std::size_t i = grid.firstFrom((double(k) - 0.5) * df); i < end; ++i) {
            const double hz = grid.hz(i);
            if (leftOut(hz / shaftHz)) continue;
            const double term = prior * product(factor, df, hz) / double(grid.count);
            sum += term;
            if (term <= found.term) continue;
            found = here;
            found.term = term;
            found.hz = hz;
        }
    }
    return sum;
}

LineRow rowOf(const ChannelEvidence& channel, const Found& found, int h, double shaftHz) {
    const std::string name = fmt::format("{} x the comb", h);
    return lineRow({name, h * found.hz / shaftHz, 0, kW[std::size_t(h - 1)], true, h}, 0, shaftHz, 1, channel,
                   found.view, false);
}

Weighing weighingOf(double e, const Found& found, const std::vector<ChannelEvidence>& evidence,
                    double shaftHz) {
    Weighing w;
    w.weightDban = 10 * std::log10(std::max(e, 1e-4));
    w.searchDban = w.weightDban;
    if (found.hz <= 0) return w;  // no position was rare enough: nothing but the search
    const ChannelEvidence& channel = evidence[found.evidence];
    w.channel = found.evidence;
    w.view = channel.channelName + ", " + channel.views->envelopes[found.view].name;
    w.variant = fmt::format("order {:.3f}", found.hz / shaftHz);
    for (int h = 1; h <= int(kW.size()); ++h) {
        w.rows.push_back(rowOf(channel, found, h, shaftHz));
        w.searchDban -= w.rows.back().weightDban;
    }
    return w;
}

// "6205 outer race" for every size of the register's table whose lines would stand at this order.
std::vector<std::string> designationsThatFit(double order) {
    std::vector<std::string> fits;
    const auto table = sharedResource("bearings.json");
    if (!table || !(*table)->contains("bearings")) return fits;
    for (const Json& row : (**table)["bearings"]) {
        BearingGeometry g;
        g.rollingElements = row.value("rolling_elements", 0);
        g.elementMm = row.value("element_mm", 0.0);
        g.pitchMm = row.value("pitch_mm", 0.0);
        g.contactDeg = row.value("contact_deg", 0.0);
        if (!ruleBroken(g).empty()) continue;
        const BearingOrders orders = ordersOf(g);
        const std::pair<double, const char*> lines[] = {
            {orders.bpfo, "outer race"}, {orders.bpfi, "inner race"}, {2 * orders.bsf, "rolling element"}};
        for (const auto& [at, name] : lines) {
            const std::string text = row.value("designation", std::string()) + " " + name;
            if (std::abs(order / at - 1) < kFitShare &&
                std::find(fits.begin(), fits.end(), text) == fits.end())
                fits.push_back(text);
        }
    }
    return fits;
}

std::string fitText(double order) {
    std::vector<std::string> fits = designationsThatFit(order);
    if (fits.empty()) return "no size of the bearing table fits this order within 2 %";
    const std::size_t more = fits.size() > kMostDesignations ? fits.size() - kMostDesignations : 0;
    fits.resize(fits.size() - more);
    return "fits within 2 %: " + joined(fits, ", ") + (more ? fmt::format(" and {} more", more) : "");
}

// Channels by the component they sit on, with the shaft that turns there.
struct Component {
    std::size_t shaft = 0;
    std::vector<std::size_t> evidence;
};

std::map<std::string, Component> componentsOf(const Machine& machine, const PreparedRecording& prepared) {
    std::map<std::string, Component> components;
    for (std::size_t i = 0; i < prepared.evidence.size(); ++i) {
        const Point* point = prepared.roles[prepared.views[i].channel].point;
        const auto place = point ? machine.placeOf(point->at) : std::nullopt;
        if (!place) continue;
        Component& one = components[place->component];
        one.shaft = place->shaft;
        one.evidence.push_back(i);
    }
    return components;
}

bool isDescribed(const Machine& machine, const std::string& component) {
    return std::any_of(machine.bearings.begin(), machine.bearings.end(), [&](const BearingPlace& place) {
        return place.component == component && !place.bearing.variants.empty();
    });
}

}  // namespace

std::vector<Hypothesis> unknownBearings(const Machine& machine, const PreparedRecording& prepared,
                                        const std::vector<ChannelEvidence>& evidence,
                                        const WeighingSettings& settings) {
    std::vector<Hypothesis> all;
    const double rareFactor = settings.kappa * std::pow(kRareEnough, settings.kappa - 1);
    for (const auto& [name, component] : componentsOf(machine, prepared)) {
        const double shaftHz = prepared.rates.shaftHz * machine.shafts[component.shaft].ratio;
        double e = 0;
        Found found;
        for (const std::size_t i : component.evidence)
            for (std::size_t v = 0; v < evidence[i].factors.size(); ++v) {
                const double prior =
                    evidence[i].views->envelopes[v].omega / double(component.evidence.size());
                e += searchView(evidence[i], v, shaftHz, prior, rareFactor, {0, 0, i, v}, found);
            }
        if (isDescribed(machine, name)) e *= kUnlistedShare;
        Hypothesis h;
        h.fault = kFault;
        h.at = name;
        h.provedOn = "simulation only";
        h.recordingCount = 1;
        h.best = weighingOf(e, found, evidence, shaftHz);
        h.weightDban = h.beforeClaimsDban = h.best.weightDban;
        h.severity = bearingStage(h.best, prepared.views[h.best.channel]);
        if (h.severity.value == "late") h.severity.value = "developed";  // it may be another machine's
        if (h.weightDban >= settings.findingDban) h.why = fitText(found.hz / shaftHz);
        all.push_back(std::move(h));
    }
    return all;
}

std::string unknownBearingText() {
    std::string text;
    for (const double w : kW)
        text += fmt::format("{} ", w);
    return text + fmt::format("{} {} {} {} {} {} {}", kLeastOrder, kMostOrder, kWholeShare, kHalfShare,
                              kRareEnough, kUnlistedShare, kStepBins);
}

}  // namespace fettle
