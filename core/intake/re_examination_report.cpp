#include "core/intake/re_examination_report.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "core/diagnosis/urgency.h"
#include "core/intake/verdict_changes.h"

namespace fettle {

namespace {

using Key = std::tuple<std::string, std::string, std::string>;

// Larger is worse.
auto badness(ChangeKind kind, const VerdictChange& change) {
    const int urgency = std::max(urgencyRank(change.oldUrgency), urgencyRank(change.newUrgency));
    return std::tuple(urgency, -int(kind), movedDban(change));
}

void gather(std::map<Key, ChangedVerdict>& verdicts, const VerdictChangeRow& row, ChangeKind kind) {
    const VerdictChange& change = row.change;
    ChangedVerdict& verdict = verdicts[{row.machine, change.fault, change.at}];
    const bool first = verdict.counts.all() == 0;
    verdict.counts.add(kind);
    verdict.mostDban = std::max(verdict.mostDban, movedDban(change));
    if (!first && badness(kind, change) <= badness(verdict.worst, verdict.example.change)) return;
    verdict.machine = row.machine;
    verdict.fault = change.fault;
    verdict.at = change.at;
    verdict.worst = kind;
    verdict.example = row;
}

bool isWorse(const ChangedVerdict& a, const ChangedVerdict& b) {
    const auto one = badness(a.worst, a.example.change), other = badness(b.worst, b.example.change);
    if (one != other) return one > other;
    return std::tie(a.machine, a.fault, a.at) < std::tie(b.machine, b.fault, b.at);
}

// Groups stand in the order of their worst verdict.
void addTo(std::vector<ChangedGroup>& groups, const std::string& name, const ChangedVerdict& verdict) {
    auto at =
        std::find_if(groups.begin(), groups.end(), [&](const ChangedGroup& g) { return g.name == name; });
    if (at == groups.end()) at = groups.insert(groups.end(), ChangedGroup{name, {}, 0, 0});
    ChangeCounts& counts = at->counts;
    counts.appeared += verdict.counts.appeared;
    counts.raised += verdict.counts.raised;
    counts.vanished += verdict.counts.vanished;
    counts.lowered += verdict.counts.lowered;
    counts.moved += verdict.counts.moved;
    ++at->verdicts;
    at->mostDban = std::max(at->mostDban, verdict.mostDban);
}

Result<ReExaminationRun> runOf(FleetFile& fleet, std::optional<std::int64_t> id) {
    if (id) return fleet.reExaminations().run(*id);
    const auto runs = fleet.reExaminations().runs();
    if (!runs) return fail(runs.error());
    if (!runs->empty()) return runs->front();
    return fail(ErrorKind::NotFound, fleet.path(), "", "nothing was weighed again in it yet");
}

}  // namespace

std::string toText(ChangeKind kind) {
    constexpr const char* kTexts[] = {"appeared", "raised", "vanished", "lowered", "moved"};
    return kTexts[std::size_t(kind)];
}

std::optional<ChangeKind> kindOf(const VerdictChange& change, double leastDban) {
    const int from = urgencyRank(change.oldUrgency), to = urgencyRank(change.newUrgency);
    if (from < 0 && to >= 0) return ChangeKind::Appeared;
    if (from >= 0 && to < 0) return ChangeKind::Vanished;
    if (to > from) return ChangeKind::Raised;
    if (to < from) return ChangeKind::Lowered;
    if (movedDban(change) >= leastDban) return ChangeKind::Moved;
    return std::nullopt;
}

void ChangeCounts::add(ChangeKind kind) {
    switch (kind) {
        case ChangeKind::Appeared:
            ++appeared;
            break;
        case ChangeKind::Raised:
            ++raised;
            break;
        case ChangeKind::Vanished:
            ++vanished;
            break;
        case ChangeKind::Lowered:
            ++lowered;
            break;
        case ChangeKind::Moved:
            ++moved;
            break;
    }
}

Result<ReExaminationDifference> differenceOf(FleetFile& fleet, std::optional<std::int64_t> run,
                                             double leastDban) {
    ReExaminationDifference difference;
    difference.leastDban = leastDban;
    auto found = runOf(fleet, run);
    if (!found) return fail(found.error());
    difference.run = std::move(*found);
    auto before = fleet.reExaminations().weighedBefore(difference.run.id);
    if (!before) return fail(before.error());
    difference.weighedBefore = std::move(*before);
    for (const WeighedBefore& one : difference.weighedBefore)
        difference.weighed += one.recordings;
    std::map<Key, ChangedVerdict> verdicts;
    const auto read = fleet.reExaminations().eachChange(difference.run.id, [&](const VerdictChangeRow& row) {
        if (const auto kind = kindOf(row.change, leastDban)) gather(verdicts, row, *kind);
    });
    if (!read) return fail(read.error());
    for (auto& [key, verdict] : verdicts)
        difference.verdicts.push_back(std::move(verdict));
    std::sort(difference.verdicts.begin(), difference.verdicts.end(), isWorse);
    for (const ChangedVerdict& verdict : difference.verdicts) {
        addTo(difference.families, verdict.fault, verdict);
        addTo(difference.machines, verdict.machine, verdict);
    }
    return difference;
}

}  // namespace fettle
