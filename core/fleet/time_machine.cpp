#include "core/fleet/time_machine.h"

#include <algorithm>
#include <limits>
#include <map>

#include "core/base/text.h"
#include "core/fleet/reliability.h"
#include "core/fleet/round_desk.h"
#include "core/fleet/site_calendar.h"

namespace fettle {

namespace {

Result<int> siteDay(const std::string& timeZone, Instant time) {
    const auto date = dateIn(timeZone, time);
    if (!date) return fail(date.error());
    return dayNumber(*date);
}

bool isFailure(const Event& event) {
    return event.kind == "repair" || event.kind == "part" || event.kind == "cleaning";
}

// Rounds made for days of the past, each once.
class Walk {
  public:
    Walk(FleetFile& fleet, std::string tag, const CancelToken& cancel)
        : fleet_(fleet), tag_(std::move(tag)), cancel_(cancel) {}

    Result<DayOnList> on(int day) {
        if (const auto known = asked_.find(day); known != asked_.end()) return known->second;
        const auto list = listNow(fleet_, dateOfDay(day), {}, cancel_);
        if (!list) return fail(list.error());
        DayOnList state;
        state.day = day;
        for (const RoundMachine& machine : list->machines)
            if (machine.tag == tag_) state = dayOnList(machine, day);
        asked_[day] = state;
        return state;
    }
    Result<std::int64_t> thinned(int day) { return thinnedInWeek(fleet_, dateOfDay(day)); }
    std::vector<DayOnList> all() const {
        std::vector<DayOnList> days;
        for (const auto& [day, state] : asked_)
            days.push_back(state);
        return days;
    }

  private:
    FleetFile& fleet_;
    std::string tag_;
    const CancelToken& cancel_;
    std::map<int, DayOnList> asked_;
};

// Week ends back from the day before the failure, oldest first.
std::vector<int> weekEndsTo(int before, int after, int firstRecorded) {
    std::vector<int> ends;
    for (int day = before - 1; day > after && day >= firstRecorded; day -= 7)
        if (ends.size() < kMostWeeksBack) ends.push_back(day);
    std::reverse(ends.begin(), ends.end());
    return ends;
}

Result<Warning> warningOf(Walk& walk, const Failure& failure, int after, int firstRecorded,
                          const Progress& progress) {
    Warning warning{failure, 0, {}, 0, 0};
    const std::vector<int> ends = weekEndsTo(failure.day, after, firstRecorded);
    if (ends.empty()) return warning;
    warning.askedFrom = ends.front();
    std::optional<int> first;
    for (std::size_t i = 0; i < ends.size(); ++i) {
        if (progress) progress(i, ends.size(), dateOfDay(ends[i]));
        const auto state = walk.on(ends[i]);
        if (!state) return fail(state.error());
        if (state->listed && !first) first = ends[i];
        const auto thinned = walk.thinned(ends[i]);
        if (!thinned) return fail(thinned.error());
        ++warning.weeksAsked;
        warning.weeksThinned += *thinned > 0;
    }
    for (int day = first.value_or(0) - 6; first && day < *first; ++day)
        if (day > after && day >= firstRecorded)
            if (const auto state = walk.on(day); !state) return fail(state.error());
    warning.result = firstListed(walk.all(), after, failure.day, ends);
    return warning;
}

Result<int> firstRecordedDay(FleetFile& fleet, const std::string& tag, const std::string& timeZone) {
    const auto machine = fleet.machines().byTag(tag);
    if (!machine) return fail(machine.error());
    const auto channels = fleet.trends().channels(machine->id);
    if (!channels) return fail(channels.error());
    std::optional<Instant> first;
    for (const ChannelEntry& channel : *channels) {
        const auto trend = fleet.trends().trend(channel.id, Quantity::AccelerationRms, Instant{},
                                                Instant{} + std::chrono::hours(24 * 365 * 200));
        if (!trend) return fail(trend.error());
        if (!trend->empty() && (!first || trend->front().time < *first)) first = trend->front().time;
    }
    if (!first) return fail(ErrorKind::NotFound, fleet.path(), tag, "was never recorded");
    return siteDay(timeZone, *first);
}

}  // namespace

Result<std::vector<Failure>> failuresOf(FleetFile& fleet, const std::string& tag) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto events = fleet.log().events(tag);
    if (!events) return fail(events.error());
    std::vector<Failure> all;
    for (const Event& event : *events) {
        if (!isFailure(event)) continue;
        const auto day = siteDay(site->timeZone, event.time);
        if (!day) return fail(day.error());
        all.push_back({*day, event.kind + (event.text.empty() ? "" : ": " + oneLine(event.text, 120))});
    }
    const auto answers = answersOf(fleet);
    if (!answers) return fail(answers.error());
    for (const Answer& answer : *answers)
        if (answer.machine == tag && (answer.outcome == "confirmed" || answer.outcome == "another_fault"))
            all.push_back(
                {answer.day, "reported " + answer.outcome + ": " + answer.fault + " " + oneLine(answer.at)});
    std::stable_sort(all.begin(), all.end(),
                     [](const Failure& a, const Failure& b) { return a.day < b.day; });
    std::vector<Failure> oneADay;
    for (Failure& failure : all) {
        if (oneADay.empty() || oneADay.back().day != failure.day)
            oneADay.push_back(std::move(failure));
        else
            oneADay.back().words += "; " + failure.words;
    }
    return oneADay;
}

Result<std::vector<Warning>> warningsOf(FleetFile& fleet, const std::string& tag, const std::string& before,
                                        const Progress& progress, const CancelToken& cancel) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto firstDay = firstRecordedDay(fleet, tag, site->timeZone);
    if (!firstDay) return fail(firstDay.error());
    auto failures = failuresOf(fleet, tag);
    if (!failures) return fail(failures.error());
    int asked = std::numeric_limits<int>::min();
    if (!before.empty()) {
        const auto day = dayNumber(before);
        if (!day) return fail(day.error());
        asked = *day;
        std::erase_if(*failures, [&](const Failure& one) { return one.day >= asked; });
        failures->push_back({asked, "asked for"});
    }
    if (failures->empty())
        return fail(ErrorKind::NotFound, fleet.path(), tag,
                    "has no confirmed report, repair, part or cleaning; --before DAY asks for a day");
    Walk walk(fleet, tag, cancel);
    std::vector<Warning> warnings;
    int after = std::numeric_limits<int>::min();
    for (const Failure& failure : *failures) {
        if (before.empty() || failure.day == asked) {
            auto warning = warningOf(walk, failure, after, *firstDay, progress);
            if (!warning) return fail(warning.error());
            warnings.push_back(std::move(*warning));
        }
        after = failure.day;
    }
    return warnings;
}

}  // namespace fettle
