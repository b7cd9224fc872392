// Why: what grows with what. A tool that is quick on ten machines may drown in a thousand, one that is quick
// in its first year in its fourth. Told: the time of an examination against the length of the record and
// against its channels; of the round's list against the machines; of the questions a page asks against the
// weeks of history behind them. Beside each time stands what it is to the line before: 2 where it doubles
// along. Records and fleets are simulated and seeded. Units: milliseconds, best of several. Thread: one.
#pragma once

#include <string>

namespace fettle::bench {

struct CurveOptions {
    std::string folder;  // fleet files are made there and removed again; empty: examinations alone
    int repeats = 5;
};
int curves(const CurveOptions& options);  // prints tables; the exit code

}  // namespace fettle::bench
