// Source: R. B. Randall, Vibration-based Condition Monitoring (Wiley 2011), sections 2.2.2 and 5.3 (mesh
// harmonics for wear, sidebands of the damaged wheel's shaft, residual without the regular mesh); from
// memory.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/units.h"
#include "core/diagnosis/fault_family.h"
#include "core/diagnosis/line_reading.h"
#include "core/dsp/statistics.h"
#include "core/machine/forcing.h"
#include "core/machine/path.h"

namespace fettle {

namespace {

constexpr int kMeshHarmonics = 3, kSidebandMeshes = 2, kSidebands = 3, kCombLines = 6;
constexpr double kSidebandBins = 6;    // sidebands nearer than this run into each other
constexpr double kResidualFrom = 0.5;  // of the mesh: below are shafts, belts, mains
// A tooth that strikes is named without a baseline: a regular mesh leaves a residual as even as noise (3),
// and a comb of one wheel alone. Common practice, no source; the figures are round.
constexpr double kPeakyResidual = 6, kVeryPeaky = 12;
constexpr double kCombStandsDb = 12, kCombOverOtherDb = 6;
constexpr double kBearingFindingDban = 20;
constexpr int kCutSidebands = 4;  // shaft sidebands cut out with every mesh harmonic

std::vector<std::string> gearsOf(const Machine& machine) {
    std::vector<std::string> all;
    for (const Gear& gear : machine.gears)
        all.push_back(gear.id);
    return all;
}

const Gear& gearAt(const Listening& of) {
    return *std::find_if(of.machine.gears.begin(), of.machine.gears.end(),
                         [&](const Gear& gear) { return gear.id == of.at; });
}

const Shaft& shaftNamed(const Machine& machine, const std::string& id) {
    return machine.shafts[machine.shaftById(id).value_or(0)];
}

LineAt meshLine(const Listening& of, const Gear& gear, int h) {
    const double order = h * meshOrder(of.machine, gear);
    return {order * of.prepared.rates.shaftHz, order * of.prepared.rates.shaftSpreadHz};
}

double topOf(const Listening& of, const ChannelViews& views) {
    return usableTopHz(views, of.prepared.roles[views.channel].point);
}

// How many mesh harmonics this channel can carry; a blind spot where not even the first.
int harmonicsHeard(const Listening& of, const ChannelViews& views, double meshHz, FamilyReport& report) {
    const double top = topOf(of, views);
    if (meshHz < top) return std::min(kMeshHarmonics, int(top / meshHz));
    report.addBlind(
        of,
        fmt::format("mesh of {} at {:.0f} Hz lies above the {:.0f} Hz this channel can be read to", of.at,
                    meshHz, top),
        fmt::format("a sample rate of {:.0f} Hz or more and a stud or adhesive mount", 3 * meshHz));
    return 0;
}

// A point that is not on the box hears the mesh only weakly, and hardly a tooth: said once.
void sayIfFar(const Listening& of, FamilyReport& report) {
    const std::string way = wordsOf(nearestPath(of.machine, of.at));
    if (!way.empty()) report.addBlind(of, "heard " + way, "a sensor on the gearbox");
}

void measureMesh(const Listening& of, FamilyReport& report) {
    const Gear& gear = gearAt(of);
    for (const ChannelViews* views : of.near) {
        const int count = harmonicsHeard(of, *views, meshLine(of, gear, 1).hz, report);
        if (count == 0) continue;
        std::vector<LineAt> lines;
        for (int h = 1; h <= count; ++h)
            lines.push_back(meshLine(of, gear, h));
        report.add(of, count > 1 ? fmt::format("mesh 1-{} x", count) : "mesh 1 x", "g", views->channel,
                   linesG(*views, lines));
    }
    sayIfFar(of, report);
}

// Sidebands of one wheel's shaft over the mesh they stand beside.
double sidebandsDb(const Listening& of, const ChannelViews& views, const Gear& gear, double turnHz,
                   int meshes) {
    double side = 0, mesh = 0;
    for (int h = 1; h <= meshes; ++h) {
        const LineAt carrier = meshLine(of, gear, h);
        mesh += std::pow(lineG(views, carrier), 2);
        for (int j = 1; j <= kSidebands; ++j)
            for (const int sign : {-1, 1})
                side += std::pow(lineG(views, {carrier.hz + sign * j * turnHz, carrier.plusMinusHz}), 2);
    }
    return decibels(side / mesh);
}

// The narrowest band, not pre-whitened, that holds the mesh.
const View* meshBand(const ChannelViews& views, double meshHz) {
    const View* best = nullptr;
    const auto width = [](const View& v) { return v.band.highHz - v.band.lowHz; };
    for (const View& view : views.envelopes) {
        if (view.whitened || view.top == 0) continue;
        const bool holds = view.band.lowHz <= meshHz && meshHz <= view.band.highHz;
        if ((holds || view.band.level == 1) && (!best || width(view) < width(*best))) best = &view;
    }
    return best;
}

// Mean height of a wheel's own comb over the envelope's floor.
double combDb(const ChannelViews& views, const View& view, double turnHz) {
    double sum = 0;
    int lines = 0;
    for (int h = 1; h <= kCombLines; ++h) {
        const auto k = std::size_t(h * turnHz / views.df + 0.5);
        if (k < 1 || k + 1 >= view.top) break;
        const double z = *std::max_element(&view.z[k - 1], &view.z[k + 2]);
        sum += decibels(std::max(z, 1.0));
        ++lines;
    }
    return sum / lines;  // no line: not a number, which is not kept
}

// Its comb in dB; nothing where it was not read.
std::optional<double> measureWheel(const Listening& of, const ChannelViews& views, const std::string& shaft,
                                   FamilyReport& report) {
    const Gear& gear = gearAt(of);
    const double turn = shaftNamed(of.machine, shaft).ratio * of.prepared.rates.shaftHz;
    const LineAt mesh = meshLine(of, gear, 1);
    if (turn < kSidebandBins * views.df) {
        report.addBlind(of,
                        fmt::format("sidebands of {} lie {:.2f} Hz apart: they cannot be parted in {}", shaft,
                                    turn, secondsText(1 / views.df)),
                        "a recording of " + secondsText(kSidebandBins / turn) + " or more");
        return std::nullopt;
    }
    const int meshes = std::min(kSidebandMeshes, int(topOf(of, views) / (mesh.hz + kSidebands * turn)));
    if (meshes > 0)
        report.add(of, fmt::format("sidebands of {} beside mesh", shaft), "dB", views.channel,
                   sidebandsDb(of, views, gear, turn, meshes));
    const View* band = meshBand(views, mesh.hz);
    if (!band) return std::nullopt;
    const double comb = combDb(views, *band, turn);
    report.add(of, fmt::format("comb of {} in envelope", shaft), "dB", views.channel, comb);
    return comb;
}

void cut(FftVector<std::complex<float>>& bins, double df, double lowHz, double highHz) {
    const auto first = std::min(bins.size(), std::size_t(std::max(0.0, std::ceil(lowHz / df))));
    const auto last = std::min(bins.size(), std::size_t(std::max(0.0, highHz / df)) + 1);
    for (std::size_t k = first; k < last; ++k)
        bins[k] = 0;
}

// Kurtosis of what is left when all that a regular mesh makes is taken out.
double residualKurtosis(const Listening& of, const ChannelViews& views, const Gear& gear) {
    const std::vector<double>& all = of.prepared.recording->channels[views.channel].samples;
    FftVector<float> samples(all.begin(), all.begin() + std::ptrdiff_t(views.samplesUsed));
    FftVector<std::complex<float>> bins;
    forwardReal(samples, bins);
    cut(bins, views.df, 0, kResidualFrom * meshLine(of, gear, 1).hz);
    const double turns[] = {shaftNamed(of.machine, gear.from).ratio, shaftNamed(of.machine, gear.to).ratio};
    for (int h = 1; meshLine(of, gear, h).hz < views.spectrum.topHz(); ++h) {
        const LineAt mesh = meshLine(of, gear, h);
        const double half = halfWidthHz(views, mesh);
        for (const double turn : turns)
            for (int j = -kCutSidebands; j <= kCutSidebands; ++j) {
                const double hz = mesh.hz + j * turn * of.prepared.rates.shaftHz;
                cut(bins, views.df, hz - half, hz + half);
            }
    }
    inverseReal(bins, samples.size(), samples);
    return kurtosis(std::vector<double>(samples.begin(), samples.end()));
}

// A damaged bearing strikes too: then nothing is said of teeth.
bool bearingFound(const Listening& of) {
    return std::any_of(of.weighed.begin(), of.weighed.end(),
                       [](const Hypothesis& h) { return h.weightDban.value_or(0) >= kBearingFindingDban; });
}

struct Struck {
    std::string shaft;
    double combDb = 0, otherDb = 0, kurtosis = 0;
};

void addPossibleTooth(const Listening& of, const Struck& struck, FamilyReport& report) {
    if (struck.kurtosis < kPeakyResidual || struck.combDb < kCombStandsDb || bearingFound(of)) return;
    if (struck.combDb < struck.otherDb + kCombOverOtherDb || !report.hypotheses.empty()) return;
    Hypothesis h = possibleAt(of, "possible: a pattern, no baseline");
    h.severity = {"stage", struck.kurtosis < kVeryPeaky ? "early" : "developed", {}, {}, "", ""};
    h.sentence = fmt::format(
        "Possible damaged tooth on the wheel of {} in {}: it strikes once a turn (its comb stands {:.0f} dB "
        "over "
        "the envelope's floor, the other wheel's {:.0f}), and without the regular mesh the signal is peaky "
        "(kurtosis {:.1f}, noise has 3). No baseline yet; {}.",
        struck.shaft, of.at, struck.combDb, struck.otherDb, struck.kurtosis, of.family.test);
    report.hypotheses.push_back(std::move(h));
}

void measureTooth(const Listening& of, FamilyReport& report) {
    const Gear& gear = gearAt(of);
    sayIfFar(of, report);
    if (nearestPath(of.machine, of.at) > Path::ThroughCoupling) return;
    FamilyReport own;
    for (const ChannelViews* views : of.near) {
        if (harmonicsHeard(of, *views, meshLine(of, gear, 1).hz, report) == 0) continue;
        const auto from = measureWheel(of, *views, gear.from, report);
        const auto to = measureWheel(of, *views, gear.to, report);
        const double peaks = residualKurtosis(of, *views, gear);
        report.add(of, "residual kurtosis", "1", views->channel, peaks);
        if (from && to)
            addPossibleTooth(
                of, *from > *to ? Struck{gear.from, *from, *to, peaks} : Struck{gear.to, *to, *from, peaks},
                own);
    }
    report.hypotheses.insert(report.hypotheses.end(), own.hypotheses.begin(), own.hypotheses.end());
}

}  // namespace

FaultFamily gearMeshFamily() {
    return {
        "gear_mesh",
        "mesh and its harmonics, in g; the second and third grow first when flanks wear",
        "radial at spur gears, axial too at helical ones",
        "mesh rising with load alone; sidebands of one shaft rising faster than the mesh",
        "misaligned gear shafts (2 x mesh), load, a slot-passing or blade-pass line on the mesh",
        "a point on the box, sample rate 2.2 x mesh or more, like load",
        "oil analysis for wear metal, and a look at the flanks through the inspection cover under lock-out, "
        "decide",
        "R. B. Randall, Vibration-based Condition Monitoring (2011), section 2.2.2, from memory",
        "simulation only",
        gearsOf,
        measureMesh};
}

FaultFamily gearToothFamily() {
    return {
        "gear_tooth",
        "sidebands at the damaged wheel's shaft about the mesh, its comb in the envelope of the mesh band, a "
        "peaky residual",
        "as the mesh",
        "sidebands of both wheels alike; a residual as even as noise",
        "eccentric or misaligned wheel (few sidebands, no comb), a bearing of the same shaft, load swings",
        "a point on the box, record of 6 turns of the slow wheel or more",
        "a look at the teeth of the named wheel through the inspection cover under lock-out decides",
        "R. B. Randall, Vibration-based Condition Monitoring (2011), section 5.3, from memory",
        "simulation only",
        gearsOf,
        measureTooth};
}

}  // namespace fettle
