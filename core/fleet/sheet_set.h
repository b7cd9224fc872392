// Why: which machines of a round get a findings sheet, and how its file is called: the command and the
// desktop program that draws have to mean the same. Thread: as the FleetFile; reads only. Errors: those of
// the stores.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/base/time.h"
#include "core/round/round.h"
#include "core/store/fleet_file.h"

namespace fettle {

// The list that sheets are made from: the open or last kept round, else the week as it is now (`round`
// empty).
struct SheetSet {
    RoundList list;
    std::optional<std::int64_t> round;

    std::vector<std::string> machines() const;  // tags: to act or plan for, in the order of the list
};
Result<SheetSet> sheetSet(FleetFile& fleet);

// The site's day at this moment, for SheetRequest.today.
Result<std::string> todayOf(FleetFile& fleet, Instant now);

// "KL-ID-01.pdf"; signs that no file name holds become '_'. `extension` with its dot; `used`: as
// fileNameFrom.
std::string sheetFileName(const std::string& tag, const std::string& extension, std::set<std::string>& used);

}  // namespace fettle
