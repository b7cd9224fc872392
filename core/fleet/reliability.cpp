#include "core/fleet/reliability.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/diagnosis/wording.h"
#include "core/fleet/round_desk.h"
#include "core/fleet/site_calendar.h"

namespace fettle {

namespace {

KeptEntry entryOf(const RoundMachine& machine, const RoundState& state) {
    KeptEntry entry;
    entry.machine = machine.tag;
    entry.onEvidence = machine.listedBy == ListedBy::Evidence;
    const bool opened =
        std::find(state.opened.begin(), state.opened.end(), machine.tag) != state.opened.end();
    entry.sampleOpened = machine.inSample && opened;
    for (const RoundFinding& finding : machine.findings)
        entry.findings.push_back({finding.finding.fault, finding.finding.at});
    return entry;
}

Result<KeptWeek> weekOf(FleetFile& fleet, const RoundEntry& round) {
    const auto kept = keptRound(fleet, round.id);
    if (!kept) return fail(kept.error());
    const auto first = dayNumber(round.from), last = dayNumber(round.until);
    if (!first) return fail(first.error());
    if (!last) return fail(last.error());
    KeptWeek week{*first, *last, round.alpha, {}};
    for (const RoundMachine& machine : kept->list.machines) {
        KeptEntry entry = entryOf(machine, kept->state);
        if (entry.onEvidence || entry.sampleOpened) week.entries.push_back(std::move(entry));
    }
    return week;
}

std::string faultLine(const FaultRecord& record) {
    const std::string name = record.fault.empty() ? "all faults together" : faultName(record.fault);
    std::string line = fmt::format("{}: confirmed {}", name, shareWords(record.confirmedOfOpened()));
    std::vector<std::string> rest;
    if (record.anotherFault) rest.push_back(fmt::format("{} another fault", record.anotherFault));
    if (record.notFound) rest.push_back(fmt::format("{} nothing found", record.notFound));
    if (record.notOpened) rest.push_back(fmt::format("{} not opened", record.notOpened));
    return line + (rest.empty() ? "" : "; " + joined(rest, ", "));
}

std::string listLine(const ListRecord& list) {
    return fmt::format(
        "listed on evidence: {} time{} ({} entr{} in {} round{}); answered {}: {} confirmed, {} "
        "another fault, {} nothing found",
        list.listings, list.listings == 1 ? "" : "s", list.entries, list.entries == 1 ? "y" : "ies",
        list.rounds, list.rounds == 1 ? "" : "s", list.answered(), list.confirmed, list.anotherFault,
        list.notFound);
}

std::string promiseLine(const ListRecord& list) {
    const std::string promise = fmt::format(
        "promised: at most {:.0f} % of the list is chance, on average over rounds", 100 * list.alpha);
    if (list.roundsAnswered == 0) return promise + "; measured: nothing yet, no entry was answered";
    return promise + fmt::format(
                         "; measured: nothing found behind {:.0f} % of the answered entries, mean over "
                         "{} round{}",
                         100 * list.meanNotFound, list.roundsAnswered, list.roundsAnswered == 1 ? "" : "s");
}

std::string sampleLine(const ListRecord& list) {
    if (list.sampleMachines == 0)
        return "sample of leave machines: none opened yet, nothing is known of misses";
    return fmt::format("sample of leave machines: {} opened, {} times in all; had something: {}",
                       list.sampleMachines, list.sampleOpenings, shareWords(list.missed()));
}

}  // namespace

Result<std::vector<Answer>> answersOf(FleetFile& fleet) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto reports = fleet.log().feedback();
    if (!reports) return fail(reports.error());
    std::vector<Answer> answers;
    for (const Feedback& report : *reports) {
        const auto date = dateIn(site->timeZone, report.time);
        if (!date) return fail(date.error());
        const auto day = dayNumber(*date);
        if (!day) return fail(day.error());
        answers.push_back({report.machine, report.fault, report.at, report.outcome, *day});
    }
    return answers;
}

Result<SiteReliability> siteReliability(FleetFile& fleet) {
    const auto answers = answersOf(fleet);
    if (!answers) return fail(answers.error());
    auto rounds = fleet.rounds().all();
    if (!rounds) return fail(rounds.error());
    std::stable_sort(rounds->begin(), rounds->end(),
                     [](const RoundEntry& a, const RoundEntry& b) { return a.until < b.until; });
    std::vector<KeptWeek> weeks;
    for (const RoundEntry& round : *rounds) {
        auto week = weekOf(fleet, round);
        if (!week) return fail(week.error());
        weeks.push_back(std::move(*week));
    }
    SiteReliability record{siteRecordOf(*answers), faultRecords(*answers), listRecord(weeks, *answers), "",
                           ""};
    if (!rounds->empty()) {
        record.firstRound = rounds->front().until;
        record.lastRound = rounds->back().until;
    }
    return record;
}

std::vector<std::string> reliabilityWords(const SiteReliability& record) {
    std::vector<std::string> lines;
    for (const FaultRecord& fault : record.faults)
        lines.push_back(faultLine(fault));
    if (record.faults.empty())
        lines.push_back("no finding was reported on yet");
    else
        lines.push_back(faultLine(record.site));
    if (record.list.rounds == 0) {
        lines.push_back("no round is kept yet: nothing is known of the list");
        return lines;
    }
    lines.push_back(listLine(record.list));
    lines.push_back(promiseLine(record.list));
    lines.push_back(sampleLine(record.list));
    return lines;
}

}  // namespace fettle
