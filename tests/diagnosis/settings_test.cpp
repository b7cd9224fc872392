// A weight can be traced to the settings that made it: no setting can change without the checksum changing.
#include <gtest/gtest.h>

#include <set>

#include "core/diagnosis/settings.h"

namespace fettle {
namespace {

// Binds every field by position: a field added to the settings does not compile here until it is taken in.
template <class Change>
int forEveryField(WeighingSettings& s, Change change) {
    auto& [kappa, floorWidthHz, leastHz, envelopeTopHz, narrowestBandHz, carriersABand, fewestReferences,
           maskBins, shiftNormalShare, shiftSpread, shiftReach, gridStepBins, claimStopsDban, claimSidebands,
           sideLineBins, sideLineCover, mostPolePass, polePassSpreadHz, findingDban, fewestTurns,
           speedReachGiven, mainsSpreadHz] = s;
    int fields = 0;
    for (double* field :
         {&kappa, &floorWidthHz, &leastHz, &envelopeTopHz, &narrowestBandHz, &carriersABand, &maskBins,
          &shiftNormalShare, &shiftSpread, &shiftReach, &gridStepBins, &claimStopsDban, &sideLineBins,
          &sideLineCover, &polePassSpreadHz, &findingDban, &fewestTurns, &speedReachGiven, &mainsSpreadHz}) {
        const double before = *field;
        *field += 1e-9 * std::max(1.0, before);
        change();
        *field = before;
        ++fields;
    }
    for (int* field : {&fewestReferences, &claimSidebands, &mostPolePass}) {
        ++*field;
        change();
        --*field;
        ++fields;
    }
    return fields;
}

TEST(Settings, EveryFieldChangesTheChecksum) {
    WeighingSettings settings;
    std::set<std::string> engines{settings.engine()};
    const int fields = forEveryField(settings, [&] { engines.insert(settings.engine()); });
    EXPECT_EQ(engines.size(), std::size_t(fields) + 1);
    EXPECT_EQ(settings.engine(), WeighingSettings().engine());
}

TEST(Settings, EngineIsVersionAndChecksumAndStaysTheSame) {
    const std::string engine = WeighingSettings().engine();
    EXPECT_EQ(engine, WeighingSettings().engine());
    const std::size_t space = engine.find(' ');
    ASSERT_NE(space, std::string::npos) << engine;
    EXPECT_NE(engine.substr(0, space).find('.'), std::string::npos) << engine;
    const std::string sum = engine.substr(space + 1);
    EXPECT_GE(sum.size(), 8u);
    EXPECT_EQ(sum.find_first_not_of("0123456789abcdef"), std::string::npos) << engine;
}

}  // namespace
}  // namespace fettle
