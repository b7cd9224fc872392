// Why: the p-value of a line is its rank among positions that have nothing to do with it. It needs no model
// of the noise: uniform for any one chance line, however tonal the spectrum. Source: rank (conformal)
// p-values, e.g. Vovk, Gammerman and Shafer, Algorithmic Learning in a Random World (2005), ch. 2;
// calibrator: Vovk and Wang, Ann. Statist. 49 (2021) 1736-1754, section 2.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace fettle {

struct Ranking {
    std::vector<float> p;       // rank p-value of each position; 1 where below `first`
    std::vector<float> factor;  // kappa p^(kappa - 1); one entry more, 1, for what lies beyond
    std::string unusable;       // too few references, or most of them tied; then p and factor are all 1
};

// Ranks peaks[k] = max(z[k-1], z[k], z[k+1]) among reference positions: k >= first and not masked, without
// k's own peak (k - 3 .. k + 3): p = (1 + number of references >= peaks[k]) / (1 + number of references).
// `masked` has at least z.size() entries.
Ranking rankPositions(std::span<const float> z, std::span<const std::uint16_t> masked, std::size_t first,
                      int fewestReferences, double kappa);

}  // namespace fettle
