// Why: what the grid and gravity say of the fleet's nodes, asked of what every recording left in the fleet
// file: the mains as each one read it by its stated sample rate, and the mean of each axis. A node is a point
// of a machine from the day its present sensor was fitted. Behind an inverter there is no grid to read: said,
// not guessed. Fleet files whose recordings were examined before the mains was kept say that too. Days by the
// site's calendar, times UTC. Thread: as the FleetFile; reads only. Errors: those of the stores and of the
// site's time zone.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/fleet/machine_week.h"
#include "core/round/grid_clock.h"
#include "core/round/node_pose.h"
#include "core/store/fleet_file.h"

namespace fettle {

struct NodeAnswer {
    std::string machine, point, at;
    std::string node;            // its number; empty: the register names none
    std::string fittedFrom;      // the day since when, where the register says it
    std::size_t recordings = 0;  // in the period
    GridVerdict grid;
    std::string noGrid;  // why the mains tells nothing; empty: it does
    NodePose pose;
    std::vector<std::string> doubts;  // sentences; empty: nothing against it
};

struct NodesAnswer {
    Period period;
    std::vector<NodeAnswer> nodes;  // by machine and point
};
inline constexpr int kNodeHistoryDays = 42;  // in which the beginning of an error is looked for

// Of the `days` days to `until` (empty: of the newest recording).
Result<NodesAnswer> nodesOf(FleetFile& fleet, const std::string& until = "", int days = 7);
Result<NodesAnswer> nodesIn(FleetFile& fleet, const Period& period);
// With the site's clock.
std::string movedWords(const PoseMove& move, const Period& period);
// What a round is told of them, by tag.
Result<std::map<std::string, std::vector<NodeDoubt>>> nodeDoubts(FleetFile& fleet, const Period& period);

}  // namespace fettle
