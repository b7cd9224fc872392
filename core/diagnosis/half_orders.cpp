#include "core/diagnosis/half_orders.h"

#include <fmt/format.h>

namespace fettle {

namespace {

constexpr int kPartsOfAnOrder = 2;
constexpr double kMostCover = 0.09;  // of every shaft order: short records need their positions

}  // namespace

void neutralHalfOrders(const Rates& rates, ChannelEvidence& evidence, const WeighingSettings& settings) {
    const double df = evidence.views->df, half = settings.sideLineBins * df;
    if ((2 * half + df) / rates.shaftHz > kMostCover) return;
    neutralWhereFound(evidence, rates.shaftHz / kPartsOfAnOrder, rates.shaftHz, half,
                      "half orders of the shaft");
}

std::string halfOrdersText() {
    return fmt::format("half orders {} {}", kPartsOfAnOrder, kMostCover);
}

}  // namespace fettle
