#include "app/cli/export_span.h"

#include <algorithm>

#include "core/fleet/site_calendar.h"

namespace fettle {

namespace {

Status setDays(ExportSpan& span, const std::string& timeZone) {
    if (!span.firstDay.empty()) {
        const auto from = startOfDate(timeZone, span.firstDay);
        if (!from) return fail(from.error());
        span.from = *from;
    }
    if (span.lastDay.empty()) return {};
    const auto after = datePlus(span.lastDay, 1);
    if (!after) return fail(after.error());
    const auto end = startOfDate(timeZone, *after);
    if (!end) return fail(end.error());
    span.until = *end - std::chrono::milliseconds(1);
    return {};
}

}  // namespace

Status monthByMonth(FleetFile& fleet, const MachineEntry& machine, const ExportSpan& span,
                    const std::function<Status(Instant from, Instant until)>& part) {
    constexpr std::chrono::days month{31};
    const auto first = fleet.recordings().first(machine.id), newest = fleet.recordings().newest(machine.id);
    if (!first || !newest) return fail(first ? newest.error() : first.error());
    if (!*first || !*newest) return {};
    const Instant last = std::min(span.until, **newest);
    for (Instant from = std::max(span.from, **first); from <= last; from += month) {
        const Instant until = std::min(last, from + month - std::chrono::milliseconds(1));
        if (auto good = part(from, until); !good) return good;
    }
    return {};
}

Result<ExportSpan> exportSpanOf(FleetFile& fleet, const std::string& machine, const std::string& firstDay,
                                const std::string& lastDay) {
    ExportSpan span;
    span.machine = machine;
    span.firstDay = firstDay;
    span.lastDay = lastDay;
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    if (auto good = setDays(span, site->timeZone); !good) return fail(good.error());
    if (machine.empty()) {
        auto all = fleet.machines().all();
        if (!all) return fail(all.error());
        span.machines = std::move(*all);
        return span;
    }
    auto one = fleet.machines().byTag(machine);
    if (!one) return fail(one.error());
    span.machines.push_back(std::move(*one));
    return span;
}

}  // namespace fettle
