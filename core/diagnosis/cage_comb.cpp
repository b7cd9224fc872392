#include "core/diagnosis/cage_comb.h"

#include <fmt/format.h>

#include <cmath>

#include "core/diagnosis/view_lines.h"

namespace fettle {

namespace {

constexpr double kOnCombBins = 3;
constexpr int kFirstBetween = 3, kFromCarrier = 3;  // cage turns from its own first lines and from a cluster
constexpr int kFewestBetween = 3;
constexpr double kGoesOnShare = 0.6;
constexpr double kLineW = 0.5;

// Lines of the comb where an element draws none: between the cage's first ones and the element's cluster, and
// between that and the next.
bool goesOn(double cageOrder, int cluster, double shaftHz, const ChannelEvidence& channel, std::size_t view) {
    int read = 0, found = 0;
    for (int h = kFirstBetween; h <= 2 * cluster - kFromCarrier; ++h) {
        if (std::abs(h - cluster) < kFromCarrier) continue;
        const LineRow row =
            lineRow({"", h * cageOrder, 0, kLineW, false, h}, 0, shaftHz, 1, channel, view, false);
        read += row.state != LineState::LeftOut;
        found += row.state == LineState::Found;
    }
    return read >= kFewestBetween && found >= kGoesOnShare * read;
}

}  // namespace

std::optional<double> cageCombOf(const BearingWeighed& element, const BearingWeighed& cage,
                                 const std::vector<ChannelEvidence>& evidence, double driverHz) {
    const double shaftHz = driverHz * element.hypothesis.shaftRatio;
    if (element.found.rows.empty() || cage.found.rows.empty() || shaftHz <= 0) return std::nullopt;
    const double cageOrder = cage.found.rows[0].order, carrier = element.found.rows[0].order;
    const double times = std::round(carrier / cageOrder);
    const ChannelEvidence& channel = evidence[element.found.channel];
    if (std::abs(carrier - times * cageOrder) * shaftHz > kOnCombBins * channel.views->df)
        return std::nullopt;
    const View* view = viewNamed(*channel.views, element.found.view);
    if (!view) return std::nullopt;
    const auto index = std::size_t(view - channel.views->envelopes.data());
    if (!goesOn(cageOrder, int(times), shaftHz, channel, index)) return std::nullopt;
    return cageOrder * shaftHz;
}

void claimComb(double cageHz, const std::string& at, std::vector<ChannelEvidence>& evidence,
               const WeighingSettings& settings) {
    for (ChannelEvidence& channel : evidence)
        neutralWhereFound(channel, 0, cageHz, settings.maskBins * channel.views->df,
                          fmt::format("the cage's comb of {}", at));
}

std::string cageCombText() {
    return fmt::format("cage comb {} {} {} {} {} {}", kOnCombBins, kFirstBetween, kFromCarrier,
                       kFewestBetween, kGoesOnShare, kLineW);
}

}  // namespace fettle
