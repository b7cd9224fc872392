#include "core/fleet/retention_holds.h"

#include <algorithm>

#include "core/exchange/examination_json.h"
#include "core/fleet/machine_desk.h"
#include "core/fleet/site_calendar.h"
#include "core/fleet/trial_desk.h"
#include "core/store/day.h"
#include "core/workshop/balance_job.h"

namespace fettle {

namespace {

using std::chrono::days;

constexpr days kBalanceMargin{1};

// Notes and low batteries speak of no recording.
bool speaksOfMachine(const Event& event) {
    return event.kind != "note" && event.kind != "low_battery";
}

void addNamed(const BalanceJob& job, std::set<std::int64_t>& named) {
    named.insert(job.initial.recording);
    for (const BalanceRun& run : job.trials)
        named.insert(run.recording);
    if (job.check) named.insert(job.check->recording);
}

}  // namespace

Status HoldFinder::read() {
    const auto site = fleet_.site();
    if (!site) return fail(site.error());
    site_ = *site;
    const auto newest = fleet_.recordings().newest();
    if (!newest) return fail(newest.error());
    newest_ = std::min(newest->value_or(Instant{}), nowUtc());
    auto trials = trialSpans(fleet_, nowUtc());
    if (!trials) return fail(trials.error());
    trials_ = std::move(*trials);
    return readDocuments();
}

Status HoldFinder::readDocuments() {
    balances_.clear(), named_.clear(), answered_.clear(), jobs_.clear(), reports_.clear();
    const auto balances = fleet_.workshop().list("", "balance");
    if (!balances) return fail(balances.error());
    for (const WorkshopEntry& entry : *balances) {
        balances_[entry.machine].push_back(
            {entry.createdAt - kBalanceMargin, entry.changedAt + kBalanceMargin});
        if (const auto job = readBalance(entry.json, entry.name)) addNamed(*job, named_);
    }
    const auto requests = fleet_.requests().list("", true);
    if (!requests) return fail(requests.error());
    for (const Request& request : *requests)
        if (request.recording) answered_.insert(*request.recording);
    const auto refused = fleet_.retention().refusedPaths();
    if (!refused) return fail(refused.error());
    refused_ = {refused->begin(), refused->end()};
    const auto jobs = fleet_.log().jobs();
    if (!jobs) return fail(jobs.error());
    for (const Job& job : *jobs)
        jobs_[job.machine].push_back(job);
    const auto reports = fleet_.log().feedback();
    if (!reports) return fail(reports.error());
    for (const Feedback& report : *reports)
        reports_[report.machine].push_back(report.time);
    return {};
}

Result<Holds> HoldFinder::of(const MachineEntry& machine, const KeptOfMachine& kept) {
    Case one{machine, kept, {}, {}};
    if (kept.recordings.empty()) return one.holds;
    for (const auto part : {&HoldFinder::readWeights, &HoldFinder::addRounds, &HoldFinder::addFindings,
                            &HoldFinder::addBaselines, &HoldFinder::addJobs, &HoldFinder::addAnchors})
        if (auto good = (this->*part)(one); !good) return fail(good.error());
    addSpans(one);
    addSingle(one);
    return std::move(one.holds);
}

Result<HoldFinder::Span> HoldFinder::daysOf(const std::string& from, const std::string& until) const {
    const auto first = startOfDate(site_.timeZone, from);
    if (!first) return fail(first.error());
    const auto after = datePlus(until, 1);
    if (!after) return fail(after.error());
    const auto end = startOfDate(site_.timeZone, *after);
    if (!end) return fail(end.error());
    return Span{*first, *end - std::chrono::milliseconds(1)};
}

Status HoldFinder::addRounds(Case& one) {
    const auto rounds = fleet_.retention().roundsWith(one.machine.tag);
    if (!rounds) return fail(rounds.error());
    for (const RetentionStore::InRound& round : *rounds) {
        const auto span = daysOf(round.from, round.until);
        if (!span) return fail(span.error());
        if (auto good = addRound(one, round, *span); !good) return good;
    }
    return {};
}

Status HoldFinder::addRound(Case& one, const RetentionStore::InRound& round, const Span& span) {
    const bool looked = round.urgency != "leave" || round.inSample;
    if (round.open) addSpan(one, span, KeptFor::Round, looked ? kEverything : kAllButWaveform);
    if (!looked) return {};
    addNewest(one, span, KeptFor::Round);
    addStrongest(one, span);
    const auto files = shownIn(round.round, one.machine.tag);
    if (!files) return fail(files.error());
    for (const KeptRecording& recording : one.kept.recordings)
        if (span.holds(recording.time) &&
            std::find(files->begin(), files->end(), recording.file) != files->end())
            one.holds.add(recording.id, KeptFor::Round);
    return {};
}

// A file name that a gateway uses again and again within the week names all of them: more stays, never less.
Result<std::vector<std::string>> HoldFinder::shownIn(std::int64_t round, const std::string& tag) {
    const auto [at, fresh] = shown_.try_emplace({round, tag});
    if (!fresh) return at->second;
    const auto text = fleet_.rounds().examinationJson(round, tag);
    if (!text && text.error().kind == ErrorKind::NotFound) return at->second;
    if (!text) return fail(text.error());
    const auto week = examinationFromText(*text, fleet_.path());
    if (!week) return fail(week.error());
    for (const Hypothesis& finding : week->findings)
        if (finding.recording < week->recordings.size())
            at->second.push_back(week->recordings[finding.recording].file);
    return at->second;
}

void HoldFinder::addSpan(Case& one, const Span& span, KeptFor why,
                         const std::array<bool, kKeptKinds>& kinds) const {
    for (const KeptRecording& recording : one.kept.recordings)
        if (span.holds(recording.time)) one.holds.add(recording.id, why, kinds);
}

// The newest running one of each point, which shows what has a level and no rows.
void HoldFinder::addNewest(Case& one, const Span& span, KeptFor why) const {
    std::map<std::string, std::int64_t> newest;
    for (const KeptRecording& recording : one.kept.recordings)
        if (span.holds(recording.time) && isRunning(recording.running))
            newest[recording.point] = recording.id;
    for (const auto& [point, id] : newest)
        one.holds.add(id, why);
}

void HoldFinder::addAround(Case& one, Instant moment, KeptFor why) const {
    std::map<std::string, std::int64_t> before, after;
    for (const KeptRecording& recording : one.kept.recordings) {
        if (!isRunning(recording.running)) continue;
        if (recording.time <= moment)
            before[recording.point] = recording.id;
        else
            after.try_emplace(recording.point, recording.id);
    }
    for (const auto* side : {&before, &after})
        for (const auto& [point, id] : *side)
            one.holds.add(id, why);
}

Status HoldFinder::addAnchors(Case& one) {
    const auto events = fleet_.log().events(one.machine.tag);
    if (!events) return fail(events.error());
    for (const Event& event : *events)
        if (speaksOfMachine(event)) addAround(one, event.time, KeptFor::History);
    const auto photos = fleet_.photos().ofMachine(one.machine.tag);
    if (!photos) return fail(photos.error());
    for (const Photo& photo : *photos)
        for (const Event& event : *events)
            if (event.id == photo.event) addAround(one, event.time, KeptFor::History);
    if (const auto reports = reports_.find(one.machine.tag); reports != reports_.end())
        for (const Instant time : reports->second)
            addAround(one, time, KeptFor::History);
    if (const auto jobs = jobs_.find(one.machine.tag); jobs != jobs_.end())
        for (const Job& job : jobs->second)
            addAround(one, job.createdAt, KeptFor::History);
    const auto alerts = fleet_.retention().standingAlerts(one.machine.id);
    if (!alerts) return fail(alerts.error());
    for (const Instant since : *alerts)
        addAround(one, since, KeptFor::Finding);
    return {};
}

void HoldFinder::addSpans(Case& one) const {
    for (const TrialSpan& span : trials_)
        if (span.machine == one.machine.tag)
            addSpan(one, {span.from, span.until}, KeptFor::Trial, kEverything);
    if (const auto balances = balances_.find(one.machine.tag); balances != balances_.end())
        for (const Span& span : balances->second)
            addSpan(one, span, KeptFor::Balance, kEverything);
}

void HoldFinder::addSingle(Case& one) const {
    for (const KeptRecording& recording : one.kept.recordings) {
        if (named_.count(recording.id)) one.holds.add(recording.id, KeptFor::Balance);
        if (answered_.count(recording.id)) one.holds.add(recording.id, KeptFor::Request);
        if (refused_.count(recording.file)) one.holds.add(recording.id, KeptFor::Refusal);
    }
}

}  // namespace fettle
