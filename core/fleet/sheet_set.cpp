#include "core/fleet/sheet_set.h"

#include "core/base/file_name.h"
#include "core/fleet/round_desk.h"
#include "core/fleet/site_calendar.h"

namespace fettle {

std::vector<std::string> SheetSet::machines() const {
    std::vector<std::string> tags;
    for (const RoundMachine& machine : list.machines)
        if (machine.urgency == "act" || machine.urgency == "plan") tags.push_back(machine.tag);
    return tags;
}

Result<SheetSet> sheetSet(FleetFile& fleet) {
    auto kept = currentRound(fleet);
    if (!kept) return fail(kept.error());
    if (*kept) return SheetSet{std::move((*kept)->list), (*kept)->entry.id};
    auto now = listNow(fleet);
    if (!now) return fail(now.error());
    return SheetSet{std::move(*now), std::nullopt};
}

Result<std::string> todayOf(FleetFile& fleet, Instant now) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    return dateIn(site->timeZone, now);
}

std::string sheetFileName(const std::string& tag, const std::string& extension, std::set<std::string>& used) {
    return fileNameFrom(tag, used) + extension;
}

}  // namespace fettle
