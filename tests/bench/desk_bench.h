// Why: a desk that stutters is not used: how long it takes from the request for a page until it is on the
// screen, and until everything on it has been read and painted; how long the ledger takes to scroll, to
// filter and to sort; how long a frame of the waterfall over its trend takes while it is shifted and zoomed.
// Measured in the real window, off screen, by the clock, on a fleet file like that of large_fleet.h.
#pragma once

#include <string>

namespace fettle::bench {

struct DeskBenchOptions {
    std::string fleet;
    int turns = 5, frames = 40;
    int width = 1280, height = 800;
};
int deskBench(const DeskBenchOptions& options);  // prints a table; exit code

}  // namespace fettle::bench
