// Why: every number that weighing stands on, in one place, frozen with the engine: a checksum of all of them
// goes into every examination, so that a weight can be traced to the settings that made it. Units in the
// names; probabilities w and shares without unit.
#pragma once

#include <string>

namespace fettle {

struct WeighingSettings {
    double kappa =
        0.15;  // calibrator f(p) = kappa p^(kappa - 1); Vovk and Wang, Ann. Statist. 49 (2021), sec. 2
    double floorWidthHz = 20;      // sliding median
    double leastHz = 2;            // reference positions from here up
    double envelopeTopHz = 4500;   // of envelope spectra
    double narrowestBandHz = 900;  // and never narrower than carriersABand x the highest carrier
    double carriersABand = 6;
    int fewestReferences = 200;      // a view with fewer is left out
    double maskBins = 3.5;           // 2 (Hann) + 1 (max of three) + 1/2
    double shiftNormalShare = 0.7;   // prior of the cage shift: this share normal,
    double shiftSpread = 0.005;      // with this spread,
    double shiftReach = 0.03;        // the rest even over +- this: makers differ by so much
    double gridStepBins = 0.7;       // of the unknown, at the highest line
    double claimStopsDban = 10;      // explaining away goes on down to here
    int claimSidebands = 3;          // shaft sidebands j = -3..3 claimed with every line
    double sideLineBins = 2.5;       // half-width of a farther sideband of a claim
    double sideLineCover = 0.3;      // of every shaft order that the farther sidebands of a claim may cover
    int mostPolePass = 4;            // multiples of the pole-pass frequency kept out about every shaft order
    double polePassSpreadHz = 0.01;  // half-width a mains multiple adds to such a line
    double findingDban = 20;         // a finding from here up
    double fewestTurns = 15;         // shaft turns in a record below which narrow lines cannot be judged
    double speedReachGiven = 0.004;  // a given speed is refined within +- this share
    double mainsSpreadHz = 0.1;      // half-width of the grid's frequency

    // "0.1.0 1a2b3c4d": engine version and the checksum of all fields above and of the family tables.
    std::string engine() const;
};

}  // namespace fettle
