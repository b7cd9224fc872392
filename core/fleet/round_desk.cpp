#include "core/fleet/round_desk.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "core/base/text.h"
#include "core/diagnosis/settings.h"
#include "core/exchange/examination_json.h"
#include "core/exchange/round_json.h"
#include "core/fleet/machine_week.h"
#include "core/fleet/nodes.h"
#include "core/fleet/site_calendar.h"
#include "core/fleet/who.h"
#include "core/store/day.h"

namespace fettle {

namespace {

struct Gathered {
    RoundList list;
    std::vector<MachineWeek> weeks;
};

Result<std::string> lastDayOf(FleetFile& fleet, const SiteSettings& site, const std::string& until) {
    if (!until.empty()) return datePlus(until, 0);
    const auto newest = fleet.recordings().newest();
    if (!newest) return fail(newest.error());
    return dateIn(site.timeZone, newest->value_or(nowUtc()));
}

// The newest kept round that ended before; null: none.
Result<std::optional<RoundList>> roundBefore(FleetFile& fleet, const std::string& until) {
    const auto all = fleet.rounds().all();
    if (!all) return fail(all.error());
    const RoundEntry* last = nullptr;
    for (const RoundEntry& entry : *all)
        if (entry.until < until && (!last || entry.until >= last->until)) last = &entry;
    if (!last) return std::nullopt;
    auto kept = keptRound(fleet, last->id);
    if (!kept) return fail(kept.error());
    return std::move(kept->list);
}

// From the day after the last round; of a first round, from its first day.
Result<Instant> workSince(const std::optional<RoundList>& last, const SiteSettings& site,
                          const Period& period) {
    if (!last) return period.from;
    const auto after = datePlus(last->until, 1);
    if (!after) return fail(after.error());
    return startOfDate(site.timeZone, *after);
}

Result<std::vector<MachineWeek>> weeksOf(FleetFile& fleet, const Period& period, Instant since,
                                         const Progress& progress, const CancelToken& cancel) {
    auto machines = fleet.machines().all();
    if (!machines) return fail(machines.error());
    std::erase_if(*machines, [&](const MachineEntry& m) {
        return !m.removedOn.empty() && m.removedOn <= period.firstDay;
    });
    std::vector<MachineWeek> weeks;
    for (std::size_t i = 0; i < machines->size(); ++i) {
        if (cancel.cancelled()) return fail(ErrorKind::Cancelled, fleet.path(), "", "stopped on request");
        if (progress) progress(i, machines->size(), (*machines)[i].tag);
        const auto history = fleet.machines().history((*machines)[i].tag);
        if (!history) return fail(history.error());
        if (history->empty() || history->front().from > period.lastDay)
            continue;  // not yet there in that week
        auto week = machineWeek(fleet, (*machines)[i], period, since);
        if (!week) return fail(week.error());
        weeks.push_back(std::move(*week));
    }
    return weeks;
}

// Nothing younger than this is thinned (core/store/retention_rules.cpp): the list of today asks nothing.
constexpr std::chrono::days kNeverThinned{8};

Result<std::int64_t> thinnedIn(FleetFile& fleet, const Period& period) {
    const auto newest = fleet.recordings().newest();
    if (!newest) return fail(newest.error());
    if (!*newest || period.from > **newest - kNeverThinned) return 0;
    return fleet.retention().examinationsThinned(period.from, period.last());
}

// Of a day of which the others were thinned the strongest recording is left.
Result<std::string> thinnedWords(FleetFile& fleet, const Period& period) {
    const auto thinned = thinnedIn(fleet, period);
    if (!thinned) return fail(thinned.error());
    if (*thinned == 0) return std::string();
    return fmt::format(
        "the examinations of {} recordings of this week were thinned by retention; it is weighed by those "
        "left, "
        "the strongest of each day, so weights lean high and the share of chance entries does not hold",
        *thinned);
}

Result<Gathered> gatherNow(FleetFile& fleet, const std::string& until, const Progress& progress,
                           const CancelToken& cancel) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto lastDay = lastDayOf(fleet, *site, until);
    if (!lastDay) return fail(lastDay.error());
    const auto period = periodTo(*site, *lastDay);
    if (!period) return fail(period.error());
    const auto last = roundBefore(fleet, *lastDay);
    if (!last) return fail(last.error());
    const auto since = workSince(*last, *site, *period);
    if (!since) return fail(since.error());
    auto weeks = weeksOf(fleet, *period, *since, progress, cancel);
    if (!weeks) return fail(weeks.error());
    const auto doubts = nodeDoubts(fleet, *period);
    if (!doubts) return fail(doubts.error());
    for (MachineWeek& week : *weeks)
        if (const auto at = doubts->find(week.tag); at != doubts->end()) week.nodes = at->second;
    RoundSettings settings;
    settings.from = period->firstDay;
    settings.until = period->lastDay;
    settings.end = period->end;
    settings.alpha = site->alpha;
    Gathered all{makeRound(*weeks, settings, *last ? &**last : nullptr), std::move(*weeks)};
    if (all.list.engine.empty()) all.list.engine = WeighingSettings().engine();
    const auto thinned = thinnedWords(fleet, *period);
    if (!thinned) return fail(thinned.error());
    if (!thinned->empty()) all.list.warnings.push_back(*thinned);
    return all;
}

// As all of it was at one moment.
Result<Gathered> gather(FleetFile& fleet, const std::string& until, const Progress& progress,
                        const CancelToken& cancel) {
    Result<Gathered> all = Gathered{};
    const auto read = fleet.atOneMoment([&]() -> Status {
        all = gatherNow(fleet, until, progress, cancel);
        return all ? Status{} : fail(all.error());
    });
    if (!read) return fail(read.error());
    return all;
}

RoundRow rowOf(const RoundMachine& machine, const std::vector<MachineWeek>& weeks) {
    RoundRow row{machine.tag,
                 machine.urgency,
                 toText(machine.listedBy),
                 machine.weightDban,
                 machine.inSample,
                 roundMachineAsText(machine),
                 ""};
    if (machine.urgency == "leave") return row;
    const auto week =
        std::find_if(weeks.begin(), weeks.end(), [&](const MachineWeek& w) { return w.tag == machine.tag; });
    if (week != weeks.end() && week->week) row.examinationJson = examinationAsText(*week->week);
    return row;
}

std::uint64_t freshSeed() {
    std::random_device device;
    return std::uint64_t(device()) << 32 | device();
}

Result<RoundList> listOf(const RoundEntry& entry, const std::vector<RoundRow>& rows,
                         const std::string& file) {
    RoundList list;
    list.from = entry.from;
    list.until = entry.until;
    list.alpha = entry.alpha;
    list.listNeedsDban = entry.listNeedsDban;
    list.engine = entry.engine;
    for (const RoundRow& row : rows) {
        auto machine = roundMachineFromText(row.json, file);
        if (!machine) return fail(machine.error());
        machine->inSample = row.inSample;
        list.machines.push_back(std::move(*machine));
    }
    return list;
}

Error invalid(const std::string& place, std::string rule) {
    return {ErrorKind::Invalid, "", place, std::move(rule)};
}

// The machine in a round that still takes answers.
Result<const RoundMachine*> machineIn(const KeptRound& kept, const std::string& tag) {
    if (kept.entry.closedAt)
        return fail(invalid("round to " + kept.entry.until, "is closed and never changes"));
    for (const RoundMachine& m : kept.list.machines)
        if (m.tag == tag) return &m;
    return fail(ErrorKind::NotFound, "", tag, "is not in the round to " + kept.entry.until);
}

Status checkDecision(const KeptRound& kept, const Decision& decision) {
    const auto machine = machineIn(kept, decision.machine);
    if (!machine) return fail(machine.error());
    const std::string& urgency = (*machine)->urgency;
    if (urgency == "unseen")
        return fail(invalid(decision.machine, "is unseen: the round asks for a reason, not a decision"));
    if (urgency == "leave")
        return fail(invalid(decision.machine,
                            "is on leave: it is accepted with the block, or put on the list by hand"));
    if (decision.kind == DecisionKind::Accept || decision.kind == DecisionKind::Withdraw) return {};
    if (trimmed(decision.reason).empty())
        return fail(invalid(decision.machine, "a reason is needed to " + toText(decision.kind)));
    if (decision.kind == DecisionKind::Dispute) return {};
    const auto later = daysBetween(kept.entry.until, decision.deferTo);
    if (!later) return fail(later.error());
    if (*later <= 0)
        return fail(invalid(decision.deferTo, "is not after the round, which ends " + kept.entry.until));
    return {};
}

Result<KeptRound> stillOpen(FleetFile& fleet, std::int64_t round) {
    auto kept = keptRound(fleet, round);
    if (kept && kept->entry.closedAt)
        return fail(invalid("round to " + kept->entry.until, "is closed and never changes"));
    return kept;
}

}  // namespace

Result<RoundList> listNow(FleetFile& fleet, const std::string& until, const Progress& progress,
                          const CancelToken& cancel) {
    auto all = gather(fleet, until, progress, cancel);
    if (!all) return fail(all.error());
    return std::move(all->list);
}

Result<std::int64_t> thinnedInWeek(FleetFile& fleet, const std::string& until) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto period = periodTo(*site, until);
    if (!period) return fail(period.error());
    return thinnedIn(fleet, *period);
}

namespace {

// A round of a far week could not be withdrawn and would stand in the way of the weeks before it.
constexpr int kMostDaysAhead = 7;

Status checkNotAhead(FleetFile& fleet, const std::string& until) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto newest = fleet.recordings().newest();
    if (!newest) return fail(newest.error());
    const Instant now = nowUtc();
    const auto latest = dateIn(site->timeZone, std::max(now, newest->value_or(now)));
    if (!latest) return fail(latest.error());
    const auto ahead = daysBetween(*latest, until);
    if (!ahead) return fail(ahead.error());
    if (*ahead <= kMostDaysAhead) return {};
    return fail(invalid("round to " + until,
                        fmt::format("ends more than {} days after {}, the later of today and the newest "
                                    "recording: it can be listed, not opened yet",
                                    kMostDaysAhead, *latest)));
}

// The rule of opening: one open at a time, one a week, over machines.
Status checkOpening(FleetFile& fleet, const RoundList& list) {
    if (list.machines.empty())
        return fail(invalid("round to " + list.until, "no machine is registered for that week"));
    const auto all = fleet.rounds().all();
    if (!all) return fail(all.error());
    for (const RoundEntry& entry : *all)
        if (entry.until == list.until)
            return fail(invalid("round to " + list.until, "was kept already and never changes"));
    return {};
}

}  // namespace

Result<KeptRound> openRound(FleetFile& fleet, const std::string& until, const Progress& progress,
                            const CancelToken& cancel) {
    const auto open = fleet.rounds().openOne();
    if (!open) return fail(open.error());
    if (*open) return fail(invalid("round to " + (*open)->until, "is still open: decide and close it first"));
    if (!until.empty())
        if (auto good = checkNotAhead(fleet, until); !good) return fail(good.error());
    auto all = gather(fleet, until, progress, cancel);
    if (!all) return fail(all.error());
    if (auto good = checkOpening(fleet, all->list); !good) return fail(good.error());
    RoundEntry entry;
    entry.from = all->list.from;
    entry.until = all->list.until;
    entry.engine = all->list.engine;
    entry.alpha = all->list.alpha;
    entry.listNeedsDban = all->list.listNeedsDban;
    entry.sampleSeed = freshSeed();
    entry.openedAt = nowUtc();
    drawSample(all->list, entry.sampleSeed);
    std::vector<RoundRow> rows;
    for (const RoundMachine& machine : all->list.machines)
        rows.push_back(rowOf(machine, all->weeks));
    const auto id = fleet.rounds().open(entry, rows);
    if (!id) return fail(id.error());
    return keptRound(fleet, *id);
}

Result<KeptRound> keptRound(FleetFile& fleet, std::int64_t id) {
    const auto entry = fleet.rounds().entry(id);
    if (!entry) return fail(entry.error());
    const auto rows = fleet.rounds().rows(id);
    if (!rows) return fail(rows.error());
    auto list = listOf(*entry, *rows, fleet.path());
    if (!list) return fail(list.error());
    auto state = fleet.rounds().state(id);
    if (!state) return fail(state.error());
    KeptRound kept{*entry, std::move(*list), std::move(*state), {}};
    kept.progress = progressOf(kept.list, kept.state);
    return kept;
}

Result<std::optional<KeptRound>> currentRound(FleetFile& fleet) {
    const auto all = fleet.rounds().all();
    if (!all) return fail(all.error());
    if (all->empty()) return std::nullopt;
    const auto open = std::find_if(all->begin(), all->end(), [](const auto& r) { return !r.closedAt; });
    auto kept = keptRound(fleet, open == all->end() ? all->back().id : open->id);
    if (!kept) return fail(kept.error());
    return std::move(*kept);
}

Status decide(FleetFile& fleet, std::int64_t round, const Decision& decision) {
    const auto kept = keptRound(fleet, round);
    if (!kept) return fail(kept.error());
    if (auto good = checkDecision(*kept, decision); !good) return good;
    Decision signedOne = decision;
    if (signedOne.kind != DecisionKind::Defer) signedOne.deferTo.clear();
    if (signedOne.at == Instant{}) signedOne.at = nowUtc();
    signedOne.by = orLoginName(decision.by);
    return fleet.rounds().decide(round, signedOne).map([](std::int64_t) {});
}

Status markOpened(FleetFile& fleet, std::int64_t round, const std::string& machine) {
    const auto kept = keptRound(fleet, round);
    if (!kept) return fail(kept.error());
    const auto found = machineIn(*kept, machine);
    if (!found) return fail(found.error());
    if (!(*found)->inSample) return fail(invalid(machine, "is not one of the round's sample"));
    return fleet.rounds().markOpened(round, machine);
}

Status answerUnseen(FleetFile& fleet, std::int64_t round, const std::string& machine,
                    const std::string& reason, const std::string& by) {
    const auto kept = keptRound(fleet, round);
    if (!kept) return fail(kept.error());
    const auto found = machineIn(*kept, machine);
    if (!found) return fail(found.error());
    if ((*found)->urgency != "unseen") return fail(invalid(machine, "was seen in this round"));
    const std::string why = trimmed(reason).empty() ? (*found)->unseenReason : reason;
    return fleet.rounds().answerUnseen(round, machine, why, orLoginName(by));
}

Status acceptLeave(FleetFile& fleet, std::int64_t round, const std::string& by) {
    const auto kept = stillOpen(fleet, round);
    if (!kept) return fail(kept.error());
    if (mayAcceptLeave(kept->list, kept->state)) return fleet.rounds().acceptLeave(round, orLoginName(by));
    const RoundProgress& p = kept->progress;
    return fail(invalid("round to " + kept->entry.until,
                        fmt::format("{} of the {} machines of the sample were opened; leave is accepted as a "
                                    "block after all of them",
                                    p.sampleOpened, p.sample)));
}

Status closeRound(FleetFile& fleet, std::int64_t round, const std::string& by) {
    const auto kept = stillOpen(fleet, round);
    if (!kept) return fail(kept.error());
    if (!kept->progress.missing.empty())
        return fail(invalid("round to " + kept->entry.until,
                            "cannot be closed yet: " + joined(kept->progress.missing, "; ")));
    return fleet.rounds().close(round, orLoginName(by));
}

Result<SiteRecord> siteRecord(FleetFile& fleet, const std::string& fault) {
    const auto reports = fleet.log().feedback();
    if (!reports) return fail(reports.error());
    SiteRecord record;
    for (const Feedback& report : *reports) {
        if (!fault.empty() && report.fault != fault) continue;
        record.opened += report.outcome != "not_opened";
        record.confirmed += report.outcome == "confirmed";
    }
    return record;
}

Result<std::string> listPromise(FleetFile& fleet, const RoundList& list) {
    const auto record = siteRecord(fleet);
    if (!record) return fail(record.error());
    const auto listed = std::count_if(list.machines.begin(), list.machines.end(),
                                      [](const RoundMachine& m) { return m.listedBy == ListedBy::Evidence; });
    const double one = list.alpha > 0 ? std::floor(1 / list.alpha + 1e-9) : 0;
    const std::string share = fmt::format("at most 1 in {:.0f} on average over rounds is chance", one);
    std::string promise = listed ? fmt::format("of the {} listed on evidence, {}", listed, share)
                                 : "none is listed on evidence; of those that are, " + share;
    if (record->opened > 0)
        promise += fmt::format("; {} of {} confirmed here so far", record->confirmed, record->opened);
    return promise;
}

}  // namespace fettle
