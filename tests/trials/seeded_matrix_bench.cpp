#include "tests/trials/seeded_matrix_bench.h"

#include <fmt/format.h>

#include <filesystem>

#include "core/fleet/machine_week.h"
#include "core/round/evidence.h"
#include "tests/trials/made_store.h"

namespace fettle::trials {

namespace {

constexpr int kFirstWeek = 3;          // of the scenario's weather
constexpr int kDaysAWeek = 5;          // on which a node sends each of its captures
constexpr double kListNeedsDban = 30;  // 1 of 100 machines at alpha 0.1: e >= 100 / 0.1
constexpr double kFindingDban = 20;

void store(FleetFile& fleet, const MadeWeek& made) {
    const MachineEntry entry = wanted(fleet.machines().byTag(made.machine.tag));
    std::vector<NewRecording> rows;
    for (const RecordingPtr& recording : made.recordings)
        rows.push_back(storedRow(made.machine, entry.id, recording));
    wanted(fleet.recordings().putAll(rows));
}

// One of a hundred machines, the only one that might be listed.
Verdict verdictOf(const MachineWeek& week, const Period& period) {
    const RoundSettings settings{period.firstDay, period.lastDay, period.end, 0.1, kFindingDban, 7};
    std::vector<Hypothesis> hypotheses;
    if (week.week) hypotheses = hypothesesOf(*week.week);
    ListCut cut;
    cut.hasDban = machineDban(hypotheses).value_or(0);
    cut.needsDban = kListNeedsDban;
    cut.listed = cut.hasDban >= cut.needsDban;
    return judge(week, hypotheses, cut, settings, UrgencyRule());
}

// The week's recordings put into the file, and what the round makes of it.
CellVerdict told(const std::string& path, const MadeWeek& made, const std::string& lastDay) {
    const auto fleet = wanted(FleetFile::open(path));
    store(*fleet, made);
    const Period period = wanted(periodTo(wanted(fleet->site()), lastDay));
    const MachineEntry entry = wanted(fleet->machines().byTag(made.machine.tag));
    CellVerdict cell;
    cell.week = wanted(machineWeek(*fleet, entry, period, period.from));
    cell.verdict = verdictOf(cell.week, period);
    return cell;
}

}  // namespace

MatrixBench::MatrixBench(const sim::Scenario& scenario, const BenchOrder& order, const std::string& folder)
    : scenario_(scenario), order_(order) {
    tag_ = fmt::format("{} {} {}", scenario.machines[order.like].machine.tag, order.node, order.noiseFactor);
    path_ = fmt::format("{}/{} {} {}.fettle", folder, order.like, order.node, order.noiseFactor);
    const auto fleet = wanted(FleetFile::create(path_, {}));
    const MadeWeek sound = madeWeek(scenario, weeksFrom(0, order.baselineWeeks));
    wanted(fleet->machines().put(sound.description, tag_));
    store(*fleet, sound);
}

MatrixBench::~MatrixBench() {
    std::filesystem::remove(path_);
}

WeekOrder MatrixBench::weeksFrom(int first, int count) const {
    WeekOrder order;
    order.like = order_.like;
    order.tag = tag_;
    order.noiseFactor = order_.noiseFactor;
    order.nodeKind = order_.node;
    order.weeksIn = std::size_t(kFirstWeek + first);
    order.weeks = count;
    order.perNode = kDaysAWeek;
    order.everyDay = true;
    return order;
}

CellVerdict MatrixBench::weekWith(const std::vector<sim::Condition>& conditions, std::uint64_t key) const {
    WeekOrder order = weeksFrom(order_.baselineWeeks, 1);
    order.conditions = conditions;
    order.key = key;
    const std::string path = path_ + ".week";
    std::filesystem::copy_file(path_, path, std::filesystem::copy_options::overwrite_existing);
    const int lastDay = 7 * int(order.weeksIn) + 6;
    CellVerdict cell =
        told(path, madeWeek(scenario_, order), formatDate(scenario_.start + std::chrono::days(lastDay)));
    std::filesystem::remove(path);
    return cell;
}

}  // namespace fettle::trials
