#include "app/cli/compare_fleet.h"

#include <fmt/format.h>

#include <algorithm>

#include "app/cli/answer.h"
#include "app/cli/load.h"
#include "app/cli/open_fleet.h"
#include "core/fleet/machine_desk.h"
#include "core/fleet/machine_week.h"
#include "core/fleet/round_desk.h"

namespace fettle {

namespace {

// The week as weighed, with the findings that are on the list.
Result<std::optional<Examination>> shownOf(FleetFile& fleet, const RoundMachine& row, const Period& period) {
    const auto entry = fleet.machines().byTag(row.tag);
    if (!entry) return fail(entry.error());
    auto weighed = weighedIn(fleet, entry->id, period.from, period.last());
    if (!weighed) return fail(weighed.error());
    if (weighed->empty()) return std::nullopt;
    const auto machine = fleet.machines().describedOn(row.tag, period.lastDay);
    if (!machine) return fail(machine.error());
    auto span = joinRunning(*machine, *weighed);
    if (!span) return fail(span.error());
    Examination shown;
    if (*span) shown = std::move((*span)->examination);
    for (const OneWeighed& one : *weighed)
        if (!isRunning(one.running))
            shown.recordings.insert(shown.recordings.end(), one.examination.recordings.begin(),
                                    one.examination.recordings.end());
    shown.findings.clear();
    for (const RoundFinding& told : row.findings)
        shown.findings.push_back(told.finding);
    return shown;
}

const SampleMachine* sampleOf(const SampleFolder& sample, const std::string& tag) {
    const auto found = std::find_if(sample.machines.begin(), sample.machines.end(),
                                    [&](const SampleMachine& m) { return m.tag == tag; });
    return found == sample.machines.end() ? nullptr : &*found;
}

Status addMachine(FleetFile& fleet, const RoundMachine& row, const Period& period,
                  const SampleMachine& sample, CompareReport& report) {
    const auto machine = fleet.machines().describedOn(row.tag, period.lastDay);
    if (!machine) return fail(machine.error());
    const auto shown = shownOf(fleet, row, period);
    if (!shown) return fail(shown.error());
    if (*shown)
        report.add(sample, **machine, **shown);
    else
        report.addUnheard(sample, **machine);
    return {};
}

void printLists(const RoundList& list) {
    const auto count = [&](const char* urgency) {
        return std::count_if(list.machines.begin(), list.machines.end(),
                             [&](const RoundMachine& m) { return m.urgency == urgency; });
    };
    print(fmt::format("Round {} to {}: {} act, {} plan, {} watch, {} unseen, {} leave.\n", list.from,
                      list.until, count("act"), count("plan"), count("watch"), count("unseen"),
                      count("leave")));
}

}  // namespace

namespace {

int compareWeek(FleetFile& fleet, const SampleFolder& sample, const std::string& until, bool brief,
                Tally& sum) {
    const auto list = listNow(fleet, until);
    if (!list) return couldNotRun(list.error());
    const auto site = fleet.site();
    if (!site) return couldNotRun(site.error());
    const auto period = periodTo(*site, list->until);
    const auto days = periodTo({}, list->until);  // stories have dates in UTC
    if (!period || !days) return couldNotRun(period ? days.error() : period.error());
    CompareReport report(sample.start, {days->from, days->end}, brief);
    if (!brief) printLists(*list);
    for (const RoundMachine& row : list->machines)
        if (const SampleMachine* of = sampleOf(sample, row.tag))
            if (auto good = addMachine(fleet, row, *period, *of, report); !good)
                return couldNotRun(good.error());
    report.close();
    sum.add(report.tally());
    return kDone;
}

}  // namespace

int compareFleet(const SampleFolder& sample, const std::string& fleetPath, const std::string& until,
                 bool everyWeek) {
    const auto fleet = openFleet(fleetPath, false);
    if (!fleet) return kCouldNotRun;
    Tally sum;
    if (!everyWeek) return compareWeek(*fleet, sample, until, false, sum);
    for (int week = 1; week <= sample.weeks; ++week) {
        const Instant last = sample.start + std::chrono::days(7 * week - 1);
        if (const int done = compareWeek(*fleet, sample, formatDate(last), true, sum); done != kDone)
            return done;
    }
    printSum(sum);
    return kDone;
}

}  // namespace fettle
