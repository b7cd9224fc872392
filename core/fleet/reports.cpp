#include "core/fleet/reports.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/text.h"
#include "core/fleet/advice.h"
#include "core/fleet/site_calendar.h"

namespace fettle {

namespace {

constexpr std::chrono::days kClocksDiffer{1};

tl::unexpected<Error> broken(const std::string& place, std::string rule) {
    return fail(ErrorKind::Invalid, "", place, std::move(rule));
}

bool hasPlace(const Machine& machine, const std::string& at) {
    const std::string first = at.substr(0, at.find(" or "));
    for (const Point& point : machine.points)
        if (point.id == at || point.at == at) return true;
    for (const BearingPlace& bearing : machine.bearings)
        if (bearing.at == first) return true;
    const auto place = machine.placeOf(first);
    return place && (place->position.empty() || place->position == "DE" || place->position == "NDE");
}

Status checkPlaceAndTime(FleetFile& fleet, const std::string& tag, const std::string& at, Instant time,
                         Instant now) {
    const auto machine = fleet.machines().describedAt(tag);
    if (!machine) return fail(machine.error());
    if (!at.empty() && !hasPlace(**machine, at))
        return broken("place", fmt::format("\"{}\" is no place of {}", oneLine(at, 80), oneLine(tag, 80)));
    if (time > now + kClocksDiffer) return broken("time", formatUtc(time) + " is in the future");
    return {};
}

bool isAlike(const Feedback& a, const Feedback& b, const std::string& timeZone) {
    const auto day = dateIn(timeZone, a.time), other = dateIn(timeZone, b.time);
    return a.machine == b.machine && a.fault == b.fault && a.at == b.at && a.outcome == b.outcome &&
           a.by == b.by && day && other && *day == *other;
}

}  // namespace

Result<std::int64_t> keepEvent(FleetFile& fleet, const Event& event, Instant now) {
    if (auto good = checkPlaceAndTime(fleet, event.machine, event.at, event.time, now); !good)
        return fail(good.error());
    if (event.kind == "note" && trimmed(event.text).empty()) return broken("text", "a note needs words");
    return fleet.log().addEvent(event);
}

Result<KeptReport> keepReport(FleetFile& fleet, const Feedback& report, Instant now) {
    const auto advice = AdviceTable::load();
    if (!advice) return fail(advice.error());
    const auto& known = advice->of(report.fault).faults;
    if (std::find(known.begin(), known.end(), report.fault) == known.end() || report.fault == "*")
        return broken("fault", fmt::format("\"{}\" is no fault key", oneLine(report.fault, 80)));
    if (auto good = checkPlaceAndTime(fleet, report.machine, report.at, report.time, now); !good)
        return fail(good.error());
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto reports = fleet.log().feedback();
    if (!reports) return fail(reports.error());
    for (const Feedback& one : *reports)
        if (isAlike(one, report, site->timeZone)) return KeptReport{one.id, true};
    const auto id = fleet.log().addFeedback(report);
    if (!id) return fail(id.error());
    return KeptReport{*id, false};
}

}  // namespace fettle
