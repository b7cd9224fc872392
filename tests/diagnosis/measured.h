// Why: the families' tests all ask the same: does a seeded fault raise the measure, the more the worse, and
// do its rivals leave it alone? Values are means over seeds and channels, so that one draw decides nothing.
#pragma once

#include <gmock/gmock.h>

#include <string>
#include <vector>

#include "core/diagnosis/measures.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle::made {

inline FamilyReport reportOf(const Machine& machine, const RecordingPtr& recording,
                             const std::vector<Hypothesis>& weighed = {}) {
    return measuresOf(machine, prepare(machine, recording, {}), weighed);
}

inline FamilyReport reportOf(const sim::SimulationSetup& setup) {
    return reportOf(setup.machine, made(setup).recording);
}

// Mean over channels of one measure; nothing where it was not taken.
inline std::optional<double> valueIn(const FamilyReport& report, const std::string& fault,
                                     const std::string& name) {
    double sum = 0;
    int count = 0;
    for (const FaultMeasure& m : report.measures)
        if (m.fault == fault && m.name == name) {
            sum += m.value;
            ++count;
        }
    if (count == 0) return std::nullopt;
    return sum / count;
}

struct Followed {
    std::string fault, name;
};

inline double meanOf(const sim::SimulationSetup& setup, const Followed& followed) {
    double sum = 0;
    constexpr int kSeeds = 3;
    for (int seed = 1; seed <= kSeeds; ++seed) {
        auto one = setup;
        one.seed = std::uint64_t(seed);
        const auto value = valueIn(reportOf(one), followed.fault, followed.name);
        EXPECT_TRUE(value) << followed.fault << " " << followed.name << " was not measured";
        sum += value.value_or(0);
    }
    return sum / kSeeds;
}

// At severity 0, 0.25 .. 1.
inline std::vector<double> overSeverity(const sim::SimulationSetup& setup, const std::string& kind,
                                        const std::string& at, const Followed& followed) {
    std::vector<double> values{meanOf(setup, followed)};
    for (const double severity : {0.25, 0.5, 0.75, 1.0})
        values.push_back(meanOf(with(setup, kind, at, severity), followed));
    return values;
}

// Never falling, and by `rise` from sound to severity 1.
inline void expectRises(const std::vector<double>& values, double rise) {
    SCOPED_TRACE(testing::PrintToString(values));
    for (std::size_t i = 1; i < values.size(); ++i)
        EXPECT_GT(values[i], values[i - 1]);
    EXPECT_GT(values.back() - values.front(), rise);
}

// A rival at severity 0.75 moves the measure by less than `most`.
inline void expectLeavesAlone(const sim::SimulationSetup& setup, const std::string& rival,
                              const std::string& at, const Followed& followed, double most) {
    const double sound = meanOf(setup, followed), with_ = meanOf(with(setup, rival, at, 0.75), followed);
    EXPECT_LT(with_ - sound, most) << rival << ": " << sound << " to " << with_;
}

inline const BlindSpot* blindFor(const FamilyReport& report, const std::string& fault) {
    for (const BlindSpot& spot : report.blind)
        if (spot.fault == fault) return &spot;
    return nullptr;
}

inline const Hypothesis* named(const FamilyReport& report, const std::string& fault) {
    for (const Hypothesis& h : report.hypotheses)
        if (h.fault == fault && !h.sentence.empty()) return &h;
    return nullptr;
}

}  // namespace fettle::made
