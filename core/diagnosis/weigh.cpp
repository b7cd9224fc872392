#include "core/diagnosis/weigh.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace fettle {

namespace {

double decibans(double e) {
    return 10 * std::log10(e);
}

// The unknown cage shift on a grid with its prior.
struct ShiftGrid {
    std::vector<double> shift, prior;
};

// Fine enough that the fastest moving line steps by less than a bin.
ShiftGrid shiftGrid(const Family& family, double shaftHz, double df, std::size_t bins,
                    const WeighingSettings& s) {
    double fastest = 0;
    for (const FamilyLine& line : family.lines)
        if (line.order * shaftHz < double(bins) * df)
            fastest = std::max(fastest, std::abs(line.slope) * shaftHz);
    const double step = s.gridStepBins * df / std::max(fastest, 1e-9);
    const int half = std::clamp(int(std::ceil(s.shiftReach / step)), 10, 4000);
    ShiftGrid grid;
    double normal = 0;
    for (int i = -half; i <= half; ++i) {
        const double c = s.shiftReach * i / half;
        grid.shift.push_back(c);
        grid.prior.push_back(std::exp(-0.5 * c * c / (s.shiftSpread * s.shiftSpread)));
        normal += grid.prior.back();
    }
    const double even = (1 - s.shiftNormalShare) / double(grid.shift.size());
    for (double& p : grid.prior)
        p = s.shiftNormalShare * p / normal + even;
    return grid;
}

double lineHz(const FamilyLine& line, double shift, double shaftHz) {
    return shaftHz * (line.order + line.slope * shift);
}

std::size_t binOf(double hz, double df) {
    return hz <= 0 ? 0 : std::size_t(hz / df + 0.5);
}

constexpr std::size_t kTogether = 4;  // lines whose e-values are multiplied in float, which holds four

// Bins of every line at every shift, and where the first carrier cannot be parted from an ordinary line.
struct LineBins {
    std::size_t lines = 0;           // a multiple of kTogether: the last ones stand at the neutral position
    std::vector<std::uint32_t> bin;  // [line x shifts + shift]
    std::vector<char> capped;        // per shift
};

LineBins lineBins(const Family& family, const ShiftGrid& grid, const ChannelEvidence& channel,
                  double shaftHz) {
    const double df = channel.views->df;
    const auto outside = std::uint32_t(channel.views->bins);  // one neutral position past the end
    const std::size_t shifts = grid.shift.size();
    LineBins bins;
    bins.lines = (family.lines.size() + kTogether - 1) / kTogether * kTogether;
    bins.bin.assign(bins.lines * shifts, outside);
    for (std::size_t i = 0; i < family.lines.size(); ++i) {
        std::uint32_t* bin = &bins.bin[i * shifts];
        for (std::size_t s = 0; s < shifts; ++s) {
            const double at = lineHz(family.lines[i], grid.shift[s], shaftHz) / df + 0.5;
            bin[s] = std::uint32_t(std::int32_t(std::clamp(at, 0.0, double(outside))));
        }
    }
    for (std::size_t s = 0; s < shifts; ++s) {
        const std::size_t k = bins.bin[s];
        bins.capped.push_back(k < outside && channel.blocked.bins[k]);
    }
    return bins;
}

struct Best {
    double value = -1;
    std::size_t variant = 0, hearing = 0, view = 0, shift = 0;
    double c = 0;
    bool capped = false;
};

// The product over lines at every shift, in one view.
void products(const Family& family, const LineBins& bins, const std::vector<float>& factor, double wCut,
              std::vector<double>& product) {
    const std::size_t shifts = bins.capped.size();
    product.assign(shifts, 1.0);
    for (std::size_t i = 0; i < bins.lines; i += kTogether) {
        std::array<float, kTogether> w{};
        for (std::size_t j = 0; j < kTogether && i + j < family.lines.size(); ++j)
            w[j] = float(family.lines[i + j].w * wCut);
        const std::uint32_t* bin = &bins.bin[i * shifts];
        const auto beyond = std::uint32_t(factor.size() - 1);
        for (std::size_t s = 0; s < shifts; ++s) {
            float together = 1;
            for (std::size_t j = 0; j < kTogether; ++j)
                together *= 1 - w[j] + w[j] * factor[std::min(bin[j * shifts + s], beyond)];
            product[s] *= double(together);
        }
    }
}

// Adds omega x sum over shifts of prior x product, and keeps the largest term.
double searchView(const std::vector<double>& product, const LineBins& bins, const ShiftGrid& grid,
                  double prior, Best here, Best& best) {
    double sum = 0;
    for (std::size_t s = 0; s < product.size(); ++s) {
        const bool capped = bins.capped[s] && product[s] > 1;
        const double term = prior * grid.prior[s] * (capped ? 1.0 : product[s]);
        sum += term;
        if (term > best.value) {
            best = here;
            best.value = term;
            best.shift = s;
            best.c = grid.shift[s];
            best.capped = capped;
        }
    }
    return sum;
}

// Bins of which the centre is within half of a frequency.
struct BinRange {
    std::size_t first, last;  // [first, last)
};

BinRange binsAround(double hz, double half, double df, std::size_t bins) {
    const double low = std::max(0.0, std::ceil((hz - half) / df)), high = std::floor((hz + half) / df) + 1;
    const auto last = high <= 0 ? std::size_t(0) : std::min(bins, std::size_t(high));
    return {std::min(last, std::size_t(low)), last};
}

// A carrier and its nearest shaft sidebands: neutral everywhere.
void claimLine(const LineRow& row, const std::string& at, ChannelEvidence& channel, double shaftHz,
               double spreadHz, const WeighingSettings& settings) {
    const double df = channel.views->df;
    const auto reason = channel.blocked.addReason(fmt::format("{} of {}", row.name, at));
    for (int j = -settings.claimSidebands; j <= settings.claimSidebands; ++j) {
        const double centre = row.expectedHz + j * shaftHz;
        const double half = settings.maskBins * df + std::abs(row.order + j) * spreadHz;
        channel.blocked.block(centre, half, df, reason);
        const BinRange range = binsAround(centre, half, df, channel.views->bins);
        for (auto& factors : channel.factors)
            for (std::size_t k = range.first; k < std::min(range.last, factors.size()); ++k)
                factors[k] = 1;
    }
}

// Whole shaft orders away from a carrier: neutral where a view shows a line. Left alone where the record is
// too short for it: the positions would cover more than a stated share of every shaft order.
void claimFartherSidebands(const LineRow& row, const std::string& at, ChannelEvidence& channel,
                           double shaftHz, const WeighingSettings& settings) {
    const double df = channel.views->df, half = settings.sideLineBins * df;
    const double covered = (2 * half + df) * row.harmonic / shaftHz;
    if (covered > settings.sideLineCover) return;
    neutralWhereFound(channel, row.expectedHz, shaftHz, half,
                      fmt::format("a shaft sideband of {} of {}", row.name, at));
}

}  // namespace

LineRow lineRow(const FamilyLine& line, double shift, double shaftHz, double wCut,
                const ChannelEvidence& channel, std::size_t viewIndex, bool capped) {
    const View& view = channel.views->envelopes[viewIndex];
    const double df = channel.views->df;
    LineRow row;
    row.name = line.name;
    row.order = line.order + line.slope * shift;
    row.expectedHz = lineHz(line, shift, shaftHz);
    row.w = line.w * wCut;
    row.carrier = line.carrier;
    row.harmonic = line.harmonic;
    const std::size_t k = binOf(row.expectedHz, df);
    if (k >= view.top) {
        row.why = "beyond the view";
        return row;
    }
    if (channel.blocked.bins[k]) {
        row.why = "shared with " + channel.blocked.why(k);
        return row;
    }
    if (capped) {
        row.why = "its first carrier cannot be parted from an ordinary line";
        return row;
    }
    std::size_t top = k;
    for (std::size_t j = k > 0 ? k - 1 : 0; j <= k + 1 && j < view.top; ++j)
        if (view.z[j] > view.z[top]) top = j;
    row.foundHz = double(top) * df;
    row.aboveFloorDb = 10 * std::log10(std::max(1e-6, double(view.z[top])));
    row.rankP = view.rankP[k];
    const float factor = channel.factors[viewIndex][k];
    if (factor == 1 && k < channel.sideLines.size() && channel.sideLines[k]) {
        row.why = "shared with " + channel.blocked.reasons[channel.sideLines[k] - 1u];
        return row;
    }
    row.weightDban = decibans((1 - row.w) + row.w * double(factor));
    row.state = row.weightDban > 0 ? LineState::Found : LineState::Absent;
    return row;
}

Weighing weigh(const BearingHypothesis& hypothesis, const std::vector<ChannelEvidence>& evidence,
               double driverHz, const WeighingSettings& settings) {
    const double shaftHz = driverHz * hypothesis.shaftRatio;
    double e = 0;
    Best best;
    std::vector<double> product;
    for (std::size_t v = 0; v < hypothesis.variants.size(); ++v) {
        const Family& family = hypothesis.variants[v];
        for (std::size_t h = 0; h < hypothesis.hearings.size(); ++h) {
            const Hearing& hearing = hypothesis.hearings[h];
            const ChannelEvidence& channel = evidence[hearing.channel];
            const ChannelViews& views = *channel.views;
            const ShiftGrid grid = shiftGrid(family, shaftHz, views.df, views.bins, settings);
            const LineBins bins = lineBins(family, grid, channel, shaftHz);
            for (std::size_t i = 0; i < views.envelopes.size(); ++i) {
                const double prior =
                    views.envelopes[i].omega * hearing.share / double(hypothesis.variants.size());
                products(family, bins, channel.factors[i], hearing.wCut, product);
                e += searchView(product, bins, grid, prior, Best{0, v, h, i, 0, 0, false}, best);
            }
        }
    }
    const Hearing& hearing = hypothesis.hearings[best.hearing];
    const ChannelEvidence& channel = evidence[hearing.channel];
    Weighing result;
    result.weightDban = decibans(e);
    result.cageShift = best.c;
    result.variant = hypothesis.variants[best.variant].variant;
    result.channel = hearing.channel;
    result.view = channel.channelName + ", " + channel.views->envelopes[best.view].name;
    double sum = 0;
    for (const FamilyLine& line : hypothesis.variants[best.variant].lines) {
        result.rows.push_back(lineRow(line, best.c, shaftHz, hearing.wCut, channel, best.view, best.capped));
        sum += result.rows.back().weightDban;
    }
    result.searchDban = result.weightDban - sum;
    return result;
}

void neutralWhereFound(ChannelEvidence& channel, double startHz, double shaftHz, double halfWidthHz,
                       const std::string& reason) {
    const double df = channel.views->df;
    const std::size_t bins = channel.views->bins;
    const auto index = channel.blocked.addReason(reason);
    channel.sideLines.resize(bins, 0);
    for (double centre = startHz - std::floor(startHz / shaftHz) * shaftHz; centre < double(bins) * df;
         centre += shaftHz) {
        const BinRange range = binsAround(centre, halfWidthHz, df, bins);
        for (std::size_t k = range.first; k < range.last; ++k)
            if (!channel.sideLines[k]) channel.sideLines[k] = index;
        for (auto& factors : channel.factors)
            for (std::size_t k = range.first; k < std::min(range.last, factors.size()); ++k)
                factors[k] = std::min(factors[k], 1.0f);
    }
}

void claim(const BearingHypothesis& hypothesis, const Weighing& found, std::vector<ChannelEvidence>& evidence,
           const Rates& rates, const WeighingSettings& settings) {
    const double shaftHz = rates.shaftHz * hypothesis.shaftRatio;
    for (ChannelEvidence& channel : evidence)
        for (const LineRow& row : found.rows) {
            if (row.carrier || row.state == LineState::Found)  // sidebands by cage orders too
                claimLine(row, hypothesis.at, channel, shaftHz, rates.shaftSpreadHz, settings);
            if (row.carrier) claimFartherSidebands(row, hypothesis.at, channel, shaftHz, settings);
        }
}

}  // namespace fettle
