#include "core/fleet/sheet_set.h"

#include <algorithm>

#include "core/fleet/round_desk.h"

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

std::string sheetFileName(const std::string& tag, const std::string& extension) {
    std::string name = tag;
    std::replace_if(
        name.begin(), name.end(),
        [](char c) { return (c >= 0 && c < 32) || std::string("/\\:*?\"<>|").find(c) != std::string::npos; },
        '_');
    if (name.empty() || name[0] == '.') name = "_" + name;
    return name + extension;
}

}  // namespace fettle
