#include "core/fleet/alert_preview.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/text.h"
#include "core/fleet/alert_text.h"
#include "core/fleet/alert_ways.h"
#include "core/fleet/site_calendar.h"

namespace fettle {

namespace {

class Previewing {
  public:
    Previewing(FleetFile& fleet, Instant asOf) : fleet_(fleet) { preview_.asOf = asOf; }

    Result<AlertPreview> look() {
        if (auto good = begin(); !good) return fail(good.error());
        const auto machines = fleet_.machines().all();
        if (!machines) return fail(machines.error());
        for (const MachineEntry& machine : *machines)
            if (auto good = lookAt(machine); !good) return fail(good.error());
        std::stable_sort(
            preview_.alerts.begin(), preview_.alerts.end(),
            [](const PreviewedAlert& a, const PreviewedAlert& b) { return isGraver(a.alert, b.alert); });
        return std::move(preview_);
    }

  private:
    Status begin();
    Status lookAt(const MachineEntry& machine);
    Status add(const Alert& alert);

    FleetFile& fleet_;
    AlertPreview preview_;
    std::vector<AlertRule> rules_;
    AlertWays ways_;
    std::string timeZone_, day_;
};

Status Previewing::begin() {
    auto rules = fleet_.alerts().rules();
    if (!rules) return fail(rules.error());
    auto ways = alertWays(fleet_);
    if (!ways) return fail(ways.error());
    const auto site = fleet_.site();
    if (!site) return fail(site.error());
    const auto day = dateIn(site->timeZone, preview_.asOf);
    if (!day) return fail(day.error());
    rules_ = std::move(*rules);
    ways_ = std::move(*ways);
    timeZone_ = site->timeZone;
    day_ = *day;
    return {};
}

Status Previewing::lookAt(const MachineEntry& machine) {
    if (!machine.removedOn.empty() && machine.removedOn <= day_) return {};
    const auto heard = heardMachine(fleet_, machine, rules_, preview_.asOf);
    if (!heard) return heard.error().kind == ErrorKind::NotFound ? Status{} : fail(heard.error());
    ++preview_.machines;
    const AlertsNow met = alertsNow(rules_, *heard, preview_.asOf, true);
    for (const AlertStep& step : alertSteps(met, {}, *heard, preview_.asOf, true))
        if (auto good = add(step.alert); !good) return good;
    return {};
}

Status Previewing::add(const Alert& alert) {
    PreviewedAlert one{alert, {}, preview_.asOf};
    if (alert.deliver != "list") {
        const auto due = dueTime(alert.deliver, ways_, timeZone_, preview_.asOf);
        if (!due) return fail(due.error());
        one.due = *due;
        one.ways = ways_.names();
    }
    preview_.alerts.push_back(std::move(one));
    return {};
}

}  // namespace

Result<AlertPreview> previewAlerts(FleetFile& fleet, Instant asOf) {
    return Previewing(fleet, asOf).look();
}

Json toJson(const PreviewedAlert& one) {
    Json json = toJson(one.alert);
    for (const char* key :
         {"id", "state", "raised", "seen", "ended", "acknowledged", "acknowledged_by", "acknowledged_why"})
        json.erase(key);
    json["to"] = one.ways;
    json["due"] = one.ways.empty() ? Json() : Json(formatUtc(one.due));
    return json;
}

std::string lineOf(const PreviewedAlert& one) {
    const Alert& a = one.alert;
    const std::string line = fmt::format("{}  {}  since {}  {}", oneLine(a.machine), oneLine(a.rule),
                                         formatUtc(a.since), oneLine(a.words));
    if (one.ways.empty()) return line + "; listed alone";
    return fmt::format("{}; to {} at {}", line, oneLine(joined(one.ways, ", ")), formatUtc(one.due));
}

}  // namespace fettle
