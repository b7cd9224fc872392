#include "core/fleet/verification.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "core/base/text.h"
#include "core/diagnosis/wording.h"
#include "core/fleet/cure_figures.h"
#include "core/fleet/machine_desk.h"
#include "core/fleet/site_calendar.h"
#include "core/machine/path.h"
#include "core/store/day.h"

namespace fettle {

namespace {

constexpr double kFreshDban = 20;

struct Known {
    std::string timeZone;
    Instant until{};  // UTC
};

Result<Known> knownAt(FleetFile& fleet, const std::string& until) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto newest = fleet.recordings().newest();
    if (!newest) return fail(newest.error());
    Known known{site->timeZone, newest->value_or(Instant{})};
    if (until.empty()) return known;
    const auto next = datePlus(until, 1);
    if (!next) return fail(next.error());
    const auto end = startOfDate(site->timeZone, *next);
    if (!end) return fail(end.error());
    known.until = std::min(known.until, *end - std::chrono::milliseconds(1));
    return known;
}

std::string nameOf(const JobFinding& finding) {
    Hypothesis h;
    h.fault = finding.fault;
    h.at = finding.at;
    return findingName(h);
}

// A week that told the ends apart beside one that did not is of the same bearing.
const Hypothesis* find(const std::vector<Hypothesis>& among, const std::string& fault,
                       const std::string& at) {
    auto found = std::find_if(among.begin(), among.end(),
                              [&](const Hypothesis& h) { return h.fault == fault && h.at == at; });
    if (found == among.end())
        found = std::find_if(among.begin(), among.end(),
                             [&](const Hypothesis& h) { return h.fault == fault && placesMeet(h.at, at); });
    return found == among.end() ? nullptr : &*found;
}

std::optional<double> weightIn(const Examination& examination, const CureFinding& finding) {
    const Hypothesis* h = find(examination.considered, finding.fault, finding.at);
    if (!h) h = find(examination.findings, finding.fault, finding.at);
    return h ? h->weightDban : std::nullopt;
}

bool isGrave(const Hypothesis& h) {
    if (h.weightDban) return *h.weightDban >= kFreshDban;
    return h.severity.kind == "zone" && (h.severity.value == "C" || h.severity.value == "D");
}

bool isOfJob(const CureCase& figures, const Hypothesis& h) {
    return std::any_of(figures.findings.begin(), figures.findings.end(),
                       [&](const CureFinding& f) { return f.fault == h.fault && placesMeet(f.at, h.at); });
}

// Of the recordings at these moments together.
Result<std::optional<Examination>> joinedAt(FleetFile& fleet, const std::string& tag, const MachineRuns& runs,
                                            const std::vector<Instant>& moments) {
    std::vector<OneWeighed> weighed;
    std::shared_ptr<const Machine> machine;
    for (const Instant moment : moments)
        for (const std::int64_t recording : runs.recordingsAt(moment)) {
            const auto entry = fleet.recordings().entry(recording);
            if (!entry) return fail(entry.error());
            auto one = examinationOf(fleet, recording);
            if (!one && one.error().kind == ErrorKind::NotFound) continue;  // thinned; what is left speaks
            if (!one) return fail(one.error());
            auto described = describedAt(fleet, tag, entry->time);
            if (!described) return fail(described.error());
            machine = std::move(*described);
            weighed.push_back({recording, entry->time, entry->running, std::move(*one)});
        }
    if (weighed.empty()) return std::nullopt;
    auto span = joinRunning(machine, std::move(weighed));
    if (!span) return fail(span.error());
    if (!*span) return std::nullopt;
    return std::move((*span)->examination);
}

Status addWeights(FleetFile& fleet, const JobVerification& v, const MachineRuns& runs, CureCase& figures) {
    const auto before = joinedAt(fleet, v.job.machine, runs, v.window.before);
    if (!before) return fail(before.error());
    const auto after = joinedAt(fleet, v.job.machine, runs, v.window.after);
    if (!after) return fail(after.error());
    if (!*before || !*after) return {};
    for (CureFinding& finding : figures.findings) {
        finding.weightBefore = weightIn(**before, finding);
        finding.weightAfter = weightIn(**after, finding);
    }
    for (const Hypothesis& h : (*after)->findings)
        if (isGrave(h) && !isOfJob(figures, h) && !find((*before)->findings, h.fault, h.at))
            figures.fresh.push_back(findingName(h));
    return {};
}

// A node that was moved or exchanged hears another machine.
std::string movedWords(const std::vector<Event>& events, const MachineRuns& runs,
                       const VerifyWindow& window) {
    if (window.before.empty() || window.after.empty()) return "";
    for (const Event& event : events) {
        const auto clock = clockIn(runs.timeZone, event.time);
        if (event.kind == "moved_node" && clock && *clock > window.before.front() &&
            *clock < window.after.back())
            return "the node was moved on " + formatDate(*clock) + ": before and after are not heard alike";
    }
    return "";
}

std::string notComparable(const VerifyWindow& window) {
    const bool none = window.state == VerifyState::NothingBefore || window.state == VerifyState::TooFew;
    return none ? window.words : "";
}

Result<CureCase> figuresOf(FleetFile& fleet, const JobVerification& v, const std::vector<Event>& events,
                           const MachineRuns& runs) {
    CureCase figures;
    figures.ofJob = v.job.id != 0;
    for (const std::string& text : v.job.findings) {
        const JobFinding finding = jobFinding(text);
        figures.findings.push_back({finding.fault, finding.at, nameOf(finding), {}, {}, {}});
    }
    figures.notComparable = notComparable(v.window);
    if (v.window.state != VerifyState::Complete) return figures;
    figures.notComparable = movedWords(events, runs, v.window);
    if (auto good = addLevels(fleet, v.job.machine, runs, v.window, figures); !good)
        return fail(good.error());
    if (auto good = addLines(fleet, events, runs, v.window, figures); !good) return fail(good.error());
    if (auto good = addWeights(fleet, v, runs, figures); !good) return fail(good.error());
    if (figures.notComparable.empty() &&
        std::none_of(figures.levels.begin(), figures.levels.end(),
                     [](const CureLevel& level) { return level.before && level.after; }))
        figures.notComparable = "no place was recorded both before and after the work";
    return figures;
}

std::vector<std::string> faultsOf(const Job& job) {
    std::vector<std::string> faults;
    for (const std::string& text : job.findings)
        faults.push_back(jobFinding(text).fault);
    return faults;
}

// What stood out in the week before, where no job says what the work was for.
Status addFindings(FleetFile& fleet, const MachineRuns& runs, JobVerification& v) {
    const auto before = joinedAt(fleet, v.job.machine, runs, v.window.before);
    if (!before) return fail(before.error());
    if (!*before) return {};
    for (const Hypothesis& h : (*before)->findings)
        if (isGrave(h)) v.job.findings.push_back(toText(JobFinding{h.fault, h.at}));
    return {};
}

// `v` with its job and when it was done. An event without findings of its own is compared by what stood out
// before it; a bearing's run-in is waited for where any bearing did.
Result<JobVerification> verified(FleetFile& fleet, JobVerification v, const std::vector<Event>& events,
                                 const std::string& until) {
    const auto known = knownAt(fleet, until);
    if (!known) return fail(known.error());
    const auto machine = fleet.machines().byTag(v.job.machine);
    if (!machine) return fail(machine.error());
    const auto clock = clockIn(known->timeZone, v.done->time);
    if (!clock) return fail(clock.error());
    v.doneOn = formatDate(*clock);
    const auto runs = MachineRuns::read(fleet, machine->id, known->timeZone, Instant{}, known->until);
    if (!runs) return fail(runs.error());
    const auto knownClock = clockIn(known->timeZone, known->until);
    if (!knownClock) return fail(knownClock.error());
    const auto window = [&] {
        VerifyOptions options;
        options.runInHours = runInHours(faultsOf(v.job), v.done->greasedOnly);
        return verifyWindow(runs->moments(), *clock, *knownClock, options);
    };
    v.window = window();
    if (v.job.findings.empty()) {
        if (auto good = addFindings(fleet, *runs, v); !good) return fail(good.error());
        v.window = window();
    }
    auto figures = figuresOf(fleet, v, events, *runs);
    if (!figures) return fail(figures.error());
    v.figures = std::move(*figures);
    if (v.window.state == VerifyState::Complete || !v.figures.notComparable.empty())
        v.verdict = judgeCure(v.figures);
    return v;
}

}  // namespace

std::string JobVerification::words() const {
    if (!done)
        return fmt::format("it is not known when it was done: jobs FLEET --id {} --on DATE tells it", job.id);
    if (verdict) return inWords(verdict->outcome) + ": " + verdict->reason;
    return window.words;
}

Result<JobVerification> verifyJob(FleetFile& fleet, const Job& job, const std::string& until) {
    JobVerification v;
    v.job = job;
    const auto events = fleet.log().events(job.machine);
    if (!events) return fail(events.error());
    v.done = doneOf(job, *events);
    if (!v.done) return v;
    return verified(fleet, std::move(v), *events, until);
}

Result<JobVerification> compareAround(FleetFile& fleet, const Event& event, const std::string& until) {
    JobVerification v;
    v.job.machine = event.machine;
    v.job.createdAt = event.time;
    v.done = JobDone{event.time, event.kind == "greasing",
                     event.kind + (event.text.empty() ? "" : ": " + oneLine(event.text, 120))};
    const auto events = fleet.log().events(event.machine);
    if (!events) return fail(events.error());
    return verified(fleet, std::move(v), *events, until);
}

}  // namespace fettle
