// Why: what severity 0 to 1 means for each kind, in one place. A scenario says "0.5"; a reader finds here
// what that is. Words for bearings: incipient 0.25, early 0.5, developed 0.75, late 1. Levels are at the
// source's own housing. They reach zone C or D of ISO 20816-3 (as remembered) near 0.5 to 1; all else is
// common practice, no source.
#pragma once

namespace fettle::sim::scale {

// mm/s r.m.s. at rated speed, at severity 1; in proportion below.
inline constexpr double kUnbalanceMmS = 10;
inline constexpr double kMisalignedTwiceMmS = 6, kMisalignedOnceMmS = 3, kMisalignedThriceMmS = 1.2;
inline constexpr double kLooseMmS = 7;  // of the truncated motion's 1x
inline constexpr double kTwiceMainsMmS = 5;
inline constexpr double kBladePassMmS = 4;
inline constexpr double kBeltMmS = 4;
inline constexpr double kFlowMmS = 3;  // random, below 1x

// Bearings: impact peak in g = kImpactLeastG x exp(kImpactGrowth x severity): 0.1, 0.36, 1.3, 4.5 g at the
// four words.
inline constexpr double kImpactLeastG = 0.03, kImpactGrowth = 5.0;
inline constexpr double kLateFrom = 0.75;   // above: rougher, less even, and the floor rises
inline constexpr double kLateFloorG = 0.5;  // r.m.s. added at severity 1
inline constexpr double kLateHeatK = 12;

inline constexpr double kDryFloorG = 0.4;  // r.m.s. added above 2 kHz
inline constexpr double kDryHeatK = 28;
inline constexpr double kOverheatK = 35;

inline constexpr double kCavitationG = 0.6;  // r.m.s., 2 to 8 kHz, at the pump
inline constexpr double kToothPeakG = 3;
inline constexpr double kMeshGrowth = 3;        // mesh amplitude x (1 + growth x severity)
inline constexpr double kMeshModulation = 0.7;  // amplitude modulation by the worn wheel's shaft

// Rotor bars: sidebands below the carrier at full load, dB: sound machines near -62, severity 1 at -30.
inline constexpr double kBarsLeastDb = -62, kBarsRangeDb = 32;
inline constexpr double kEccentricRangeDb = 25;  // added to f1 +- fr at severity 1

inline constexpr double kLooseNodeHz = 650, kLooseNodeLossShare = 0.6, kLooseNodeSwingG = 0.35;

}  // namespace fettle::sim::scale
