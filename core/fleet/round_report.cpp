#include "core/fleet/round_report.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "core/base/text.h"
#include "core/fleet/job_dates.h"
#include "core/fleet/reliability.h"
#include "core/fleet/report_blind.h"
#include "core/fleet/round_desk.h"
#include "core/fleet/sheet_content.h"
#include "core/fleet/sheet_dates.h"
#include "core/fleet/sheet_words.h"
#include "core/fleet/site_calendar.h"
#include "core/round/words.h"
#include "core/store/day.h"

namespace fettle {

namespace {

// The round as it is reported: kept, or drawn up now.
struct Told {
    RoundList list;
    RoundState state;
    RoundProgress progress;
    std::optional<RoundEntry> entry;

    std::optional<std::int64_t> id() const {
        return entry ? std::optional(entry->id) : std::optional<std::int64_t>();
    }
};

Told toldOf(KeptRound kept) {
    return {std::move(kept.list), std::move(kept.state), std::move(kept.progress), std::move(kept.entry)};
}

Result<Told> wantedRound(FleetFile& fleet, const ReportRequest& request, const Progress& progress,
                         const CancelToken& cancel) {
    if (request.round) return keptRound(fleet, *request.round).map(toldOf);
    auto current = currentRound(fleet);
    if (!current) return fail(current.error());
    if (*current) return toldOf(std::move(**current));
    auto now = listNow(fleet, "", progress, cancel);
    if (!now) return fail(now.error());
    Told told{std::move(*now), {}, {}, {}};
    told.progress = progressOf(told.list, told.state);
    return told;
}

std::string findingWords(const RoundMachine& machine) {
    return machine.findings.empty() ? "asked for by a person" : findingName(machine.findings.front().finding);
}

ReportAside asideOf(const RoundMachine& machine, std::string words) {
    return {machine.tag,     machine.service,       machine.area,
            machine.urgency, findingWords(machine), std::move(words)};
}

// "put off to 1 June 2026: stop in June"
std::string spelledDecision(const Decision& decision) {
    Decision spelled = decision;
    spelled.deferTo = spelledDate(decision.deferTo);
    return decisionWords(spelled);
}

// Rounds kept by older versions named a sensor check by its code.
std::string unseenText(const RoundMachine& machine) {
    constexpr std::string_view old = "ski slope on ", plain = "drowned below 10 Hz on ";
    std::string text = machine.unseenWords.empty() ? machine.unseenReason : machine.unseenWords;
    for (std::size_t at = text.find(old); at != std::string::npos; at = text.find(old, at))
        text.replace(at, old.size(), plain);
    return text.find(plain) == text.npos ? text : text + "; see that the node sits firmly";
}

void setDates(const SheetContent& sheet, ReportJob& job) {
    if (sheet.dates.size() < 2) return;
    const SheetDate &order = sheet.dates[0], &due = sheet.dates[1];
    job.orderBy = order.date;
    job.orderWords = order.words;
    job.doBy = due.date;
    job.doByLabel = due.label;
    job.doByWords = due.date.empty() ? due.words : spelledDate(due.date);
    job.overdue = due.overdue;
}

// That it is the first round is said once, in the head.
std::string changedWords(const std::string& changed) {
    constexpr std::string_view first = "First round";
    if (!changed.starts_with(first)) return changed;
    return capitalised(std::string(trimmed(changed.substr(std::min(first.size() + 1, changed.size())))));
}

ReportJob jobOf(const SheetContent& sheet, const RoundMachine& machine) {
    ReportJob job;
    job.tag = sheet.tag;
    job.asset = sheet.asset;
    job.service = sheet.service;
    job.area = sheet.area;
    job.criticality = sheet.criticality;
    job.urgency = machine.urgency;
    const std::string age = ageLead(sheet.asOf, sheet.madeOn);  // said once, in the head
    job.firstLine = sheet.firstLine.substr(sheet.firstLine.starts_with(age) ? age.size() : 0);
    job.finding = sheet.faultName + (sheet.atWords.empty() ? "" : ", " + sheet.atWords);
    job.firm = sheet.firm;
    setDates(sheet, job);
    job.priority = int(parseInteger(sheet.priority.substr(0, sheet.priority.find(' '))).value_or(4));
    job.job = sheet.job;
    job.untilThen = sheet.untilThen;
    job.stopAtOnceIf = sheet.stopAtOnceIf;
    job.moreFindings = sheet.otherFindings.size();
    job.changed = changedWords(machine.changed);
    job.howBad = sheet.howBad;
    addEffort(sheet.need, job.effort);
    return job;
}

// Urgency, then the site's priority, then the day; the order of the list for what is alike.
void setInOrder(std::vector<ReportJob>& work) {
    const auto key = [](const ReportJob& job) {
        return std::tuple(groupOf(job.urgency), job.priority, job.doBy.empty() ? "9" : job.doBy);
    };
    std::stable_sort(work.begin(), work.end(),
                     [&](const ReportJob& a, const ReportJob& b) { return key(a) < key(b); });
    for (std::size_t i = 0; i < work.size(); ++i)
        work[i].place = int(i) + 1;
}

void sumUp(RoundReport& report) {
    EffortSums urgencies, areas;
    for (const ReportJob& job : report.work) {
        urgencies.add(job.urgency, job.place, job.doBy, job.effort);
        areas.add(job.area, job.place, job.doBy, job.effort);
    }
    report.byUrgency = urgencies.all();
    report.byArea = areas.all();
}

class Gathering {
  public:
    Gathering(FleetFile& fleet, const Told& told, const std::string& today)
        : fleet_(fleet), told_(told), today_(today), held_(decisionsThatHold(told.state)) {}

    Status addMachines(RoundReport& report, const Progress& progress, const CancelToken& cancel) {
        const auto& machines = told_.list.machines;
        report.machines = machines.size();
        for (std::size_t i = 0; i < machines.size(); ++i) {
            if (cancel.cancelled())
                return fail(ErrorKind::Cancelled, fleet_.path(), "", "stopped on request");
            if (progress) progress(i, machines.size(), machines[i].tag);
            if (auto good = add(machines[i], report); !good) return good;
        }
        setInOrder(report.work);
        sumUp(report);
        return {};
    }

  private:
    Status add(const RoundMachine& machine, RoundReport& report) {
        switch (groupOf(machine.urgency)) {
            case 0:
            case 1:
                ++(machine.urgency == "act" ? report.act : report.plan);
                return addListed(machine, report);
            case 2:
                ++report.watch;
                return addWatched(machine, report);
            case 3:
                ++report.unseen;
                addUnseen(machine, report);
                return {};
            default:
                ++report.leave;
        }
        return {};
    }
    // Whether the engineer's decision takes it out of this week's work.
    bool setAside(const RoundMachine& machine, RoundReport& report) const {
        const auto held = held_.find(machine.tag);
        if (held == held_.end() || held->second->kind == DecisionKind::Accept) return false;
        const bool defer = held->second->kind == DecisionKind::Defer;
        (defer ? report.deferred : report.disputed)
            .push_back(asideOf(machine, spelledDecision(*held->second)));
        return true;
    }
    Status addListed(const RoundMachine& machine, RoundReport& report) {
        if (setAside(machine, report)) return {};
        const auto sheet = sheetContent(fleet_, told_.list, told_.id(), {machine.tag, 1, {}, today_});
        if (!sheet) return fail(sheet.error());
        ReportJob job = jobOf(*sheet, machine);
        if (auto good = addOthers(machine, job.effort); !good) return good;
        job.decided = held_.count(machine.tag) ? "accepted" : "not decided yet";
        report.work.push_back(std::move(job));
        return {};
    }
    // What the machine's other findings ask for comes on top.
    Status addOthers(const RoundMachine& machine, ReportEffort& effort) const {
        for (std::size_t i = 2; i <= machine.findings.size(); ++i) {
            if (groupOf(machine.findings[i - 1].finding.urgency) > 1) continue;
            const auto sheet = sheetContent(fleet_, told_.list, told_.id(), {machine.tag, i, {}, today_});
            if (!sheet) return fail(sheet.error());
            addEffort(sheet->need, effort);
        }
        return {};
    }
    Status addWatched(const RoundMachine& machine, RoundReport& report) {
        if (!setAside(machine, report))
            report.watched.push_back(asideOf(machine, changedWords(machine.changed)));
        return {};
    }
    void addUnseen(const RoundMachine& machine, RoundReport& report) const {
        static const std::map<std::string, std::string> owners{
            {"idle", "production"}, {"not_judged", "the engineer"}, {"not_fitted", "the engineer"}};
        const auto owner = owners.find(machine.unseenReason);
        const auto& answered = told_.state.unseenAnswered;
        report.notSeen.push_back(
            {machine.tag, machine.service, machine.area, machine.unseenReason, unseenText(machine),
             owner == owners.end() ? "whoever keeps the sensors" : owner->second, machine.foundBefore,
             std::count(answered.begin(), answered.end(), machine.tag) > 0});
    }

    FleetFile& fleet_;
    const Told& told_;
    std::string today_;
    std::map<std::string, const Decision*> held_;
};

std::string stateWords(const Told& told, const std::string& zone) {
    if (!told.entry) return "a draft: no round was opened, and nothing was decided";
    const RoundProgress& p = told.progress;
    if (!told.entry->closedAt)
        return fmt::format("still open: {} of {} listed decided, {} of {} unseen answered", p.decided,
                           p.listed, p.unseenDone, p.unseen);
    const auto day = dateIn(zone, *told.entry->closedAt);
    return fmt::format("closed on {} by {}", day ? spelledDate(*day) : "an unknown day",
                       oneLine(told.entry->closedBy));
}

std::string leaveWords(const Told& told, std::size_t leave) {
    if (leave == 0) return "No machine is on leave.";
    const RoundProgress& p = told.progress;
    const std::string sample = p.sample ? fmt::format("; of {} drawn at random {} were opened and looked at",
                                                      p.sample, p.sampleOpened)
                                        : std::string();
    return fmt::format("{} machine{} on leave: nothing measured asks for work there{}{}.", leave,
                       leave == 1 ? " is" : "s are", sample,
                       p.leaveAccepted ? ", and the rest was accepted as a block" : "");
}

// The kept round that ended last before this one.
Result<std::optional<RoundComparison>> sinceLast(FleetFile& fleet, const Told& told) {
    const auto all = fleet.rounds().all();
    if (!all) return fail(all.error());
    const RoundEntry* last = nullptr;
    for (const RoundEntry& entry : *all)
        if (entry.until < told.list.until && (!last || entry.until > last->until)) last = &entry;
    if (!last) return std::nullopt;
    const auto before = keptRound(fleet, last->id);
    if (!before) return fail(before.error());
    return compareRounds(before->list, before->state, told.list, told.state);
}

std::vector<std::string> limitsOf() {
    return {
        "The list tells what these sensors can hear. Leave proves no machine sound, and a fault that draws "
        "no "
        "vibration, flux or heat at a sensor is not in it.",
        "Windings, insulation, terminals and protection are not judged here, and a frame temperature is not "
        "a "
        "winding temperature.",
        "Entries by zone, by change and by hand carry no stated share of chance; those on evidence do, on "
        "average over rounds, not each week.",
        "Dates follow from how bad a finding is and how critical the machine is; they are no forecast of how "
        "long a part lasts.",
        "What happens between two recordings is not seen. Noise, smell, smoke, heat and what operators "
        "notice "
        "come before this list.",
    };
}

std::string ageWords(const std::string& until, const std::string& today) {
    const std::string lead = ageLead(until, today);
    if (lead.empty()) return "";
    return lead + fmt::format("This round is {} days old: order and open nothing on it alone.",
                              daysBetween(until, today).value_or(0));
}

Status addRest(FleetFile& fleet, const Told& told, RoundReport& report) {
    auto due = dueOf(fleet, told.list);
    if (!due) return fail(due.error());
    report.due = std::move(*due);
    auto changes = sinceLast(fleet, told);
    if (!changes) return fail(changes.error());
    report.changes = std::move(*changes);
    auto promise = listPromise(fleet, told.list);
    if (!promise) return fail(promise.error());
    report.promise = std::move(*promise);
    const auto record = siteReliability(fleet);
    if (!record) return fail(record.error());
    report.record = reliabilityWords(*record);
    if (!told.entry) return {};
    auto blind = reportBlind(fleet, told.list, told.entry->id);
    if (!blind) return fail(blind.error());
    report.blind = std::move(*blind);
    return {};
}

}  // namespace

Result<RoundReport> roundReport(FleetFile& fleet, const ReportRequest& request, const Progress& progress,
                                const CancelToken& cancel) {
    const auto told = wantedRound(fleet, request, progress, cancel);
    if (!told) return fail(told.error());
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    RoundReport report;
    report.site = site->site;
    report.from = told->list.from;
    report.until = told->list.until;
    report.madeOn = request.today.empty() ? told->list.until : request.today;
    report.engine = told->list.engine;
    report.state = stateWords(*told, site->timeZone);
    report.ageNote = ageWords(report.until, report.madeOn);
    Gathering gathering(fleet, *told, request.today);
    if (auto good = gathering.addMachines(report, progress, cancel); !good) return fail(good.error());
    if (auto good = addRest(fleet, *told, report); !good) return fail(good.error());
    report.leaveWords = leaveWords(*told, report.leave);
    report.limits = limitsOf();
    report.cautions = cautions();
    return report;
}

Result<RoundComparison> compareKept(FleetFile& fleet, std::int64_t before, std::int64_t after) {
    const auto first = keptRound(fleet, before);
    if (!first) return fail(first.error());
    const auto second = keptRound(fleet, after);
    if (!second) return fail(second.error());
    return compareRounds(first->list, first->state, second->list, second->state);
}

}  // namespace fettle
