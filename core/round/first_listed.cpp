#include "core/round/first_listed.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/text.h"

namespace fettle {

DayOnList dayOnList(const RoundMachine& machine, int day) {
    DayOnList on;
    on.day = day;
    on.listed = machine.listedBy == ListedBy::Evidence || machine.listedBy == ListedBy::Change ||
                machine.listedBy == ListedBy::Zone;
    if (!on.listed) return on;
    std::vector<std::string> names;
    for (const RoundFinding& finding : machine.findings)
        names.push_back(findingName(finding.finding));
    on.words = fmt::format("{}, by {}", machine.urgency, toText(machine.listedBy));
    if (!names.empty()) on.words += ": " + joined(names, "; ");
    return on;
}

FirstListed firstListed(std::span<const DayOnList> asked, int after, int before,
                        std::span<const int> weekEnds) {
    FirstListed out;
    for (const DayOnList& one : asked)
        if (one.listed && one.day > after && one.day < before && (!out.first || one.day < out.first->day))
            out.first = one;
    if (out.first) out.daysBefore = before - out.first->day;
    const int from = out.first ? out.first->day : after + 1;
    for (const DayOnList& one : asked) {
        const bool isRound = std::find(weekEnds.begin(), weekEnds.end(), one.day) != weekEnds.end();
        if (!isRound || one.day < from || one.day >= before) continue;
        ++out.roundsAsked;
        out.roundsListed += one.listed;
    }
    return out;
}

}  // namespace fettle
