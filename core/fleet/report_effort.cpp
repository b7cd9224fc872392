#include "core/fleet/report_effort.h"

#include <algorithm>
#include <string_view>

#include "core/base/json_parts.h"
#include "core/base/text.h"

namespace fettle {

namespace {

std::string standstillOf(std::string_view state) {
    if (state.starts_with("stopped")) return "stopped";
    return state.find("stopped") == std::string_view::npos ? "running" : "partly";
}

void addTo(std::optional<double>& sum, const std::optional<double>& more) {
    if (more) sum = sum.value_or(0) + *more;
}

std::optional<double> times(const std::optional<double>& hours, const std::optional<int>& heads) {
    return hours && heads ? std::optional(*hours * *heads) : std::nullopt;
}

bool namesTrade(std::string_view trades, std::string_view trade) {
    return ("; " + std::string(trades) + ";").find("; " + std::string(trade) + ";") != std::string::npos;
}

}  // namespace

void addEffort(const SheetNeed& need, ReportEffort& effort) {
    const std::string standstill = standstillOf(need.machineState);
    if (effort.findings++ == 0)
        effort.standstill = standstill;
    else if (effort.standstill != standstill && effort.standstill != "stopped")
        effort.standstill = standstill == "stopped" ? "stopped" : "partly";
    for (const std::string_view trade : split(need.trades, ';'))
        if (const std::string one(trimmed(trade)); !one.empty() && !namesTrade(effort.trades, one))
            effort.trades += (effort.trades.empty() ? "" : "; ") + one;
    if (need.heads) effort.heads = std::max(effort.heads.value_or(0), *need.heads);
    addTo(effort.hoursLow, need.hoursLow);
    addTo(effort.hoursHigh, need.hoursHigh);
    addTo(effort.personHoursLow, times(need.hoursLow, need.heads));
    addTo(effort.personHoursHigh, times(need.hoursHigh, need.heads));
}

void EffortSums::add(const std::string& of, int place, const std::string& day, const ReportEffort& effort) {
    auto sum = std::find_if(sums_.begin(), sums_.end(), [&](const ReportSum& one) { return one.of == of; });
    if (sum == sums_.end()) {
        sums_.emplace_back().of = of;
        sum = std::prev(sums_.end());
    }
    sum->places.push_back(place);
    sum->unknown += !effort.personHoursLow || !effort.personHoursHigh;
    sum->standstills += effort.standstill == "stopped";
    sum->personHoursLow += effort.personHoursLow.value_or(0);
    sum->personHoursHigh += effort.personHoursHigh.value_or(0);
    if (!day.empty() && (sum->firstDay.empty() || day < sum->firstDay)) sum->firstDay = day;
}

Json toJson(const ReportEffort& effort) {
    return {{"findings", effort.findings},
            {"trades", effort.trades},
            {"standstill", effort.standstill},
            {"heads", orNull(effort.heads)},
            {"hours_low", orNull(effort.hoursLow)},
            {"hours_high", orNull(effort.hoursHigh)},
            {"person_hours_low", orNull(effort.personHoursLow)},
            {"person_hours_high", orNull(effort.personHoursHigh)}};
}

Json toJson(const ReportSum& sum, const char* ofKey) {
    return {{ofKey, orNull(sum.of)},
            {"places", sum.places},
            {"without_figures", sum.unknown},
            {"standstills", sum.standstills},
            {"person_hours_low", sum.personHoursLow},
            {"person_hours_high", sum.personHoursHigh},
            {"first_day", orNull(sum.firstDay)}};
}

}  // namespace fettle
