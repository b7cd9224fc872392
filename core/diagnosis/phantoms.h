// Why: the bound on chance is measured, not believed. A phantom is a bearing that the machine does not have:
// whatever it weighs is chance (or a line nobody listed). Its share at 10, 20 and 30 decibans must stay under
// 10, 1 and 0.1 %. Phantoms are real sizes, random geometries, and both on foreign combs (a neighbour's shaft
// 1 % off, a belt's, an inverter's). A phantom whose carrier lies within the search of the same element of a
// bearing the machine does have is not drawn: its lines may be true. True families of the machine claim their
// lines first, as in an examination. Interval: 95 % Wilson with the sample cut to its effective size, trials
// clustered by recording (Kish, Survey Sampling (1965), design effect; Wilson, JASA 22 (1927) 209-212).
#pragma once

#include <cstdint>
#include <vector>

#include "core/base/progress.h"
#include "core/diagnosis/prepare.h"

namespace fettle {

struct PhantomOptions {
    std::size_t perRecording = 200;  // phantom bearings a recording, four families each
    std::uint64_t seed = 1;
    bool ignoreSpeed = false;
    int threads = 1;
    WeighingSettings settings = {};
    Progress progress = {};
    CancelToken cancel = {};
};

struct PhantomShare {
    double atDban = 0, bound = 0;  // 10 -> 0.1
    std::size_t reached = 0;
    double share = 0, low = 0, high = 0;
    std::size_t recordings = 0;  // in how many clusters any reached it
};

struct PhantomCurve {
    std::string fault;
    std::size_t trials = 0, recordings = 0;
    double largestDban = 0;
    std::vector<PhantomShare> shares;  // at 10, 20, 30 decibans
    std::vector<double> shareAtLeast;  // [w]: share of w decibans or more, w = 0 .. kCurveToDban
};
inline constexpr int kCurveToDban = 40;

struct PhantomResult {
    std::vector<PhantomCurve> curves;  // one a family
    std::vector<std::string> skipped;  // recordings on which nothing can be weighed, with the reason
};

// Of one machine after another: a fleet's recordings never stand in memory together.
class PhantomTally {
  public:
    explicit PhantomTally(PhantomOptions options);
    // `cluster`: what these recordings share (a machine: its unlisted lines stand in all of them); empty:
    // each file is one of its own. Error: cancelled.
    Status add(const Machine& machine, const std::vector<RecordingPtr>& recordings,
               const std::string& cluster = "");
    PhantomResult result() const;

  private:
    struct Weighed {
        std::string cluster, file;
        std::vector<std::vector<double>> weights;  // an element
    };
    PhantomOptions options_;
    std::vector<BearingVariant> sizes_;
    std::vector<Weighed> weighed_;
    std::vector<std::string> skipped_;
};

Result<PhantomResult> measurePhantoms(const Machine& machine, const std::vector<RecordingPtr>& recordings,
                                      const PhantomOptions& options = {});

}  // namespace fettle
