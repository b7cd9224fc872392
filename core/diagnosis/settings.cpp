#include "core/diagnosis/settings.h"

#include <fmt/format.h>

#include <cstdint>

#include "core/diagnosis/cage_comb.h"
#include "core/diagnosis/family.h"
#include "core/diagnosis/half_orders.h"
#include "core/diagnosis/unknown_bearing.h"

namespace fettle {

namespace {

constexpr const char* kVersion = "0.1.0";

// FNV-1a, 64 bit (Fowler, Noll and Vo, draft-eastlake-fnv).
std::uint64_t checksum(const std::string& text) {
    std::uint64_t hash = 14695981039346656037u;
    for (const char c : text)
        hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211u;
    return hash;
}

// Every line of every family, by a made-up bearing whose orders all differ.
std::string familyText() {
    const BearingVariant bearing{"", {3.1, 4.9, 2.2, 0.3875}, 8, "", true};
    std::string text;
    for (const BearingElement element : kBearingElements)
        for (const FamilyLine& line : bearingFamily(element, bearing).lines)
            text += fmt::format("{} {} {} {};", line.name, line.order, line.slope, line.w);
    return text + unknownBearingText() + halfOrdersText() + cageCombText();
}

}  // namespace

std::string WeighingSettings::engine() const {
    std::string text;
    for (const double field : {kappa,
                               floorWidthHz,
                               leastHz,
                               envelopeTopHz,
                               narrowestBandHz,
                               carriersABand,
                               double(fewestReferences),
                               maskBins,
                               shiftNormalShare,
                               shiftSpread,
                               shiftReach,
                               gridStepBins,
                               claimStopsDban,
                               double(claimSidebands),
                               sideLineBins,
                               sideLineCover,
                               double(mostPolePass),
                               polePassSpreadHz,
                               findingDban,
                               fewestTurns,
                               speedReachGiven,
                               mainsSpreadHz})
        text += fmt::format("{} ", field);
    return fmt::format("{} {:016x}", kVersion, checksum(text + familyText()));
}

}  // namespace fettle
