#include <algorithm>
#include <random>

#include "core/round/round.h"

namespace fettle {

namespace {

constexpr std::size_t kLeastSample = 15, kPercent = 3;

std::size_t sampleSize(std::size_t machines) {
    return std::min(machines, std::max(kLeastSample, (machines * kPercent + 99) / 100));
}

}  // namespace

// Each machine gets a number of its own, in the order of the tags; the smallest are the sample. The
// generator's numbers are fixed by the C++ standard, those of its distributions are not.
void drawSample(RoundList& list, std::uint64_t seed) {
    std::vector<RoundMachine*> leave;
    for (RoundMachine& m : list.machines) {
        m.inSample = false;
        if (m.urgency == "leave") leave.push_back(&m);
    }
    std::sort(leave.begin(), leave.end(),
              [](const RoundMachine* a, const RoundMachine* b) { return a->tag < b->tag; });
    std::mt19937_64 random(seed);
    std::vector<std::pair<std::uint64_t, RoundMachine*>> drawn;
    for (RoundMachine* m : leave)
        drawn.push_back({random(), m});
    std::stable_sort(drawn.begin(), drawn.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    for (std::size_t i = 0; i < sampleSize(drawn.size()); ++i)
        drawn[i].second->inSample = true;
}

}  // namespace fettle
