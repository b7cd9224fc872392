// Why: after one balancing a machine's 1x can be told in grams at the plane: how much has built up today, how
// fast, and by when it wants cleaning. The scale comes from the machine's newest closed balance job: its
// coefficient, where a sensor of the job is a channel of the fleet file and was read in mm/s r.m.s.;
// otherwise from what the correction made of the node's own 1x. Days are those of like speed and load; the
// build-up counts from the day after the balancing, or the last cleaning. Days by the site's calendar.
// Thread: as the FleetFile; reads only. Errors: those of the stores; a machine without such a job has none.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/store/fleet_file.h"
#include "core/trend/forecast.h"
#include "core/workshop/grams.h"

namespace fettle {

struct MassNow {
    std::string job, balancedOn;  // its name; "2026-03-02"
    std::string where;            // "M-DE x"
    std::string plane;            // its name; of two planes the one that acts more there
    double radiusMm = 0;
    bool byCoefficient = false;  // else by the known mass of the correction
    int day = 0;                 // the newest with a value
    double levelMmS = 0;         // 1x r.m.s., median of the week
    MassInterval mass;
    std::vector<DayValue> days;  // grams since balancing or cleaning
    std::optional<Growth> growth;
    std::optional<double> limitG;  // at which 1x alone is at the zone boundary
    std::string limitName;         // "B/C 4.5 mm/s"
    std::optional<LimitDate> date;
    std::string sentence;  // all of it in words
};

// `until`: "2026-05-10", the last day looked at; empty: of the newest recording. Empty: no closed balance
// job, or none from which 1x can be told in grams.
Result<std::optional<MassNow>> massNow(FleetFile& fleet, const std::string& tag,
                                       const std::string& until = "");

}  // namespace fettle
