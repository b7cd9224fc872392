// Why: unbalance, misalignment, looseness and their like raise the same few lines; what is raised is a matter
// of change and zone, what raises it a matter of pattern. Each feature of the pattern speaks for or against
// each cause by a table that a site may edit (resources/tables/causes.json, every row with its source); the
// sums, with a prior, give shares that add up to 1. A share is no weight and no probability of a fault: it
// shares out a level that is there. What the channels cannot part is only ever called possible, with the test
// that decides. Units: decibans. Thread: const after making. Errors: those of the table.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"

namespace fettle {

// A value of the table's feature `key`; features that could not be measured are not given.
struct CauseFeature {
    std::string key;
    double value = 0;
};

struct Cause {
    std::string fault, name, test;
    double prior = 0;
    bool neverNamed = false;  // possible at most
};

// What one feature said: as many decibans as there are causes.
struct CauseRow {
    std::string words, unit, source;
    double value = 0;
    std::vector<double> dban;
};

struct CauseShares {
    std::vector<double> shares;  // in the order of the causes, summing to 1
    std::vector<CauseRow> rows;
    std::size_t largest() const;
};

class CauseTable {
  public:
    static Result<CauseTable> load();

    const std::vector<Cause>& causes() const { return causes_; }
    const Cause* cause(const std::string& fault) const;  // null: not in the table
    // Features whose key the table does not have say nothing.
    CauseShares sharesOf(const std::vector<CauseFeature>& features) const;

  private:
    struct Feature {
        std::string key, words, unit, source;
        std::vector<double> edges;
        std::vector<std::vector<double>> dban;  // a cause each: one more than edges
    };
    friend class CauseReading;
    std::vector<Cause> causes_;
    std::vector<Feature> features_;
    double capDban_ = 10;
};

}  // namespace fettle
