#include "ui/pages/evidence_requests.h"

#include <QStringList>
#include <algorithm>

#include "core/diagnosis/settings.h"
#include "core/exchange/round_json.h"
#include "core/fleet/grease.h"
#include "core/fleet/machine_desk.h"
#include "core/fleet/site_calendar.h"
#include "ui/model/numbers.h"
#include "ui/model/words.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr std::size_t kMostNeighbours = 3;

QString dayWords(int day) {
    return dateText(dateOfDay(day));
}

QString leavesWords(const LeavesWith& one) {
    if (one.itself)
        return tr("Leaves with the machine's own stops in %1 of %2; by chance alone: %3.")
            .arg(one.left)
            .arg(one.stops)
            .arg(one.chance, 0, 'g', 2);
    return tr("Leaves with %1 in %2 of %3 stops; by chance alone: %4.")
        .arg(shown(one.machine))
        .arg(one.left)
        .arg(one.stops)
        .arg(one.chance, 0, 'g', 2);
}

QString resultWords(const Warning& warning) {
    const FirstListed& result = warning.result;
    const QString what = tr("%1, %2").arg(dayWords(warning.failure.day), shown(warning.failure.words));
    if (warning.askedFrom == 0) return tr("%1: nothing was recorded since the event before it.").arg(what);
    if (!result.first)
        return tr("%1: the rule would not have listed it at any of the %2 week ends from %3.")
            .arg(what)
            .arg(result.roundsAsked)
            .arg(dayWords(warning.askedFrom));
    return tr("%1: the rule would first have listed it on %2, %3 days before (%4), and at %5 of %6 week ends "
              "from then on.")
        .arg(what, dayWords(result.first->day))
        .arg(result.daysBefore)
        .arg(shown(result.first->words))
        .arg(result.roundsListed)
        .arg(result.roundsAsked);
}

QString warningWords(const Warning& warning) {
    const QString words = resultWords(warning);
    if (warning.weeksThinned == 0) return words;
    return tr("%1 Of the %2 weeks asked, %3 had recordings thinned by retention: verdicts there stand on "
              "those left, the strongest of each day, so weights lean high.")
        .arg(words)
        .arg(warning.weeksAsked)
        .arg(warning.weeksThinned);
}

Result<std::optional<RoundEntry>> newestRound(FleetFile& fleet) {
    auto open = fleet.rounds().openOne();
    if (!open || *open) return open;
    auto all = fleet.rounds().all();
    if (!all) return fail(all.error());
    if (all->empty()) return std::nullopt;
    return all->back();
}

}  // namespace

Status addPanelFacts(FleetFile& fleet, const std::string& tag, Instant until, PanelContent& content) {
    if (!content.machine) {
        auto machine = describedAt(fleet, tag, until);
        if (!machine) return fail(machine.error());
        content.machine = std::move(*machine);
    }
    if (auto table = UrgencyTable::load()) content.urgencies = std::move(*table);
    const auto entry = fleet.machines().byTag(tag);
    if (!entry) return fail(entry.error());
    auto reached = fleet.recordings().weightsReached(entry->id, WeighingSettings().findingDban, until);
    if (!reached) return fail(reached.error());
    content.reached = std::move(*reached);
    return {};
}

Result<std::optional<RoundStanding>> roundStanding(FleetFile& fleet, const std::string& tag) {
    const auto round = newestRound(fleet);
    if (!round) return fail(round.error());
    if (!*round) return std::nullopt;
    const auto rows = fleet.rounds().rows((*round)->id);
    if (!rows) return fail(rows.error());
    const auto row =
        std::find_if(rows->begin(), rows->end(), [&](const RoundRow& r) { return r.machine == tag; });
    if (row == rows->end()) return std::nullopt;
    RoundStanding standing{(*round)->until, row->listedBy, row->urgency, (*round)->listNeedsDban, {}};
    const auto machine = roundMachineFromText(row->json);
    if (!machine) return fail(machine.error());
    if (machine->weightDban) standing.weightDban = *machine->weightDban + machine->priorDban;
    return standing;
}

Result<FaultHistory> faultHistory(FleetFile& fleet, const std::string& tag) {
    const auto heard = greasingsHeard(fleet, tag);
    if (!heard) return fail(heard.error());
    FaultHistory history;
    for (const GreasingHeard& one : *heard)
        history.greasings.push_back(one.where.empty() ? one.witness.words
                                                      : one.where + ": " + one.witness.words);
    return history;
}

Result<std::vector<Warning>> firstListedOf(FleetFile& fleet, const std::string& tag,
                                           const CancelToken& cancel) {
    const auto failures = failuresOf(fleet, tag);
    if (!failures) return fail(failures.error());
    if (!failures->empty()) {
        auto warnings = warningsOf(fleet, tag, "", {}, cancel);
        if (warnings) std::reverse(warnings->begin(), warnings->end());
        return warnings;
    }
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto entry = fleet.machines().byTag(tag);
    if (!entry) return fail(entry.error());
    const auto newest = fleet.recordings().newest(entry->id);
    if (!newest) return fail(newest.error());
    if (!*newest) return std::vector<Warning>{};
    const auto day =
        dateIn(site->timeZone, **newest).and_then([](const std::string& date) { return datePlus(date, 1); });
    if (!day) return fail(day.error());
    return warningsOf(fleet, tag, *day, {}, cancel);
}

QString whoseLineWords(const WhoseLine& found, double hz, const Units& units) {
    const ShownUnit unit = shownUnit(QStringLiteral("Hz"), units);
    QStringList words{
        tr("%1 %2 on %3: there in %4 of %5 recordings.")
            .arg(fixedText(unit.shown(hz), units.perMinute ? 0 : 1), unit.unit, shown(found.where))
            .arg(found.there)
            .arg(found.recordings)};
    if (!found.own.empty())
        words
            << tr("A line of its own stands in the same cells (%1), so nothing from elsewhere can be parted "
                  "from it here.")
                   .arg(shown(found.own));
    std::size_t told = 0;
    for (const LeavesWith& one : found.machines)
        if (one.stops > 0 && told < kMostNeighbours) {
            words << leavesWords(one);
            ++told;
        }
    if (told == 0) words << tr("No stop of this machine or its neighbours tells whose it is.");
    return words.join(u' ');
}

QString firstListedWords(const std::vector<Warning>& warnings) {
    QStringList words;
    for (const Warning& warning : warnings)
        words << warningWords(warning);
    return words.isEmpty() ? tr("Nothing was recorded yet.") : words.join(u'\n');
}

}  // namespace fettle
