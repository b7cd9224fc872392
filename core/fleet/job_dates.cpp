#include "core/fleet/job_dates.h"

#include <algorithm>

#include "core/machine/resource.h"

namespace fettle {

namespace {

constexpr const char* kDatesFile = "job_dates.json";
constexpr int kLastPriority = 4;
constexpr int kMostDays = 3660;

// Any other criticality counts as B, as it does for urgency.
std::string known(const std::string& criticality) {
    return criticality == "A" || criticality == "C" ? criticality : "B";
}

}  // namespace

Result<JobDatesTable> JobDatesTable::load() {
    const auto json = loadResource(kDatesFile);
    if (!json) return fail(json.error());
    JsonReport report{kDatesFile, {}, {}};
    JobDatesTable table;
    {
        JsonObject root(*json, "", report);
        for (const char* told : {"schema", "about", "lead_about", "inspect_about", "priority_about"})
            root.raw(told);
        table.leadDays_ = root.integer("lead_days", 0, kMostDays, true).value_or(0);
        table.inspectShare_ = root.number("inspect_share", 0, 1, true).value_or(1);
        for (const Json* item : root.list("rows")) {
            JsonObject row(*item, "/rows", report);
            table.run_.push_back({row.text("kind", true), row.text("value", true),
                                  row.text("criticality", true),
                                  row.integer("run_days", 0, kMostDays, true).value_or(0)});
        }
        for (const Json* item : root.list("priority")) {
            JsonObject row(*item, "/priority", report);
            table.priority_.push_back({row.text("urgency", true), row.text("criticality", true),
                                       row.integer("priority", 1, kLastPriority, true).value_or(1)});
        }
    }
    if (report.error) return fail(*report.error);
    return table;
}

std::optional<int> JobDatesTable::runDays(const Severity& severity, const std::string& criticality) const {
    for (const RunRow& row : run_)
        if (row.kind == severity.kind && row.value == severity.value && row.criticality == known(criticality))
            return row.days;
    return std::nullopt;
}

std::optional<int> JobDatesTable::inspectDays(const Severity& severity,
                                              const std::string& criticality) const {
    const auto days = runDays(severity, criticality);
    if (!days) return std::nullopt;
    return std::max(1, int(*days * inspectShare_));
}

int JobDatesTable::priority(const std::string& urgency, const std::string& criticality, bool standby) const {
    for (const PriorityRow& row : priority_)
        if (row.urgency == urgency && row.criticality == known(criticality))
            return std::min(row.priority + (standby ? 1 : 0), kLastPriority);
    return kLastPriority;
}

}  // namespace fettle
