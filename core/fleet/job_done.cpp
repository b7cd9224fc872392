#include "core/fleet/job_done.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "core/base/text.h"
#include "core/fleet/reports.h"
#include "core/fleet/site_calendar.h"
#include "core/fleet/who.h"
#include "core/machine/path.h"
#include "core/store/day.h"

namespace fettle {

namespace {

std::string markOf(const Job& job) {
    return fmt::format("job {} done", job.id);
}

bool isAboutGrease(const Job& job) {
    return std::any_of(job.findings.begin(), job.findings.end(), [](const std::string& text) {
        return jobFinding(text).fault == "bearing_dry_or_worn";
    });
}

JobDone doneBy(const Event& event) {
    const std::string text = oneLine(event.text, 120);
    return {event.time, event.kind == "greasing", event.kind + (text.empty() ? "" : ": " + text)};
}

}  // namespace

JobFinding jobFinding(const std::string& text) {
    const std::size_t at = text.find('@');
    if (at == text.npos) return {std::string(trimmed(text)), ""};
    return {std::string(trimmed(text.substr(0, at))), std::string(trimmed(text.substr(at + 1)))};
}

std::string toText(const JobFinding& finding) {
    return finding.fault + " @ " + finding.at;
}

bool isOfJob(const Job& job, const std::string& fault, const std::string& at) {
    return std::any_of(job.findings.begin(), job.findings.end(), [&](const std::string& text) {
        const JobFinding finding = jobFinding(text);
        return finding.fault == fault && (finding.at == at || placesMeet(finding.at, at));
    });
}

std::optional<JobDone> doneOf(const Job& job, const std::vector<Event>& events) {
    const std::string mark = markOf(job);
    const Event* told = nullptr;
    for (const Event& event : events)
        if ((event.text == mark || event.text.starts_with(mark + ":")) && (!told || event.id >= told->id))
            told = &event;  // what was told last holds
    if (told) return doneBy(*told);
    const bool grease = isAboutGrease(job);
    for (const Event& event : events) {
        const bool work = event.kind == "repair" || event.kind == "part" || event.kind == "cleaning" ||
                          (grease && event.kind == "greasing");
        if (work && event.time >= job.createdAt) return doneBy(event);
    }
    return std::nullopt;
}

Result<Instant> momentOf(FleetFile& fleet, const std::string& on) {
    if (const auto time = parseUtc(on)) return *time;
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto next = datePlus(on, 1);
    if (!next)
        return fail(ErrorKind::Invalid, "", "day of the work",
                    "\"" + oneLine(on, 40) + "\" is no day as 2026-05-04 and no UTC time");
    const auto end = startOfDate(site->timeZone, *next);
    if (!end) return fail(end.error());
    return *end - std::chrono::seconds(1);
}

Status keepDone(FleetFile& fleet, const Job& job, const WorkDone& work, const std::string& by) {
    const auto time = momentOf(fleet, work.on);
    if (!time) return fail(time.error());
    Event event;
    event.machine = job.machine;
    event.time = *time;
    event.kind = work.kind;
    event.text = markOf(job) + (trimmed(work.text).empty() ? "" : ": " + work.text);
    event.by = orLoginName(by);
    return keepEvent(fleet, event, nowUtc()).map([](std::int64_t) {});
}

}  // namespace fettle
