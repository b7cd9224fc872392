#include "core/fleet/sheet_content.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/json_object.h"
#include "core/diagnosis/blind_rows.h"
#include "core/diagnosis/wording.h"
#include "core/fleet/cured_before.h"
#include "core/fleet/grams.h"
#include "core/fleet/job_done.h"
#include "core/fleet/sheet_change.h"
#include "core/fleet/sheet_dates.h"
#include "core/fleet/sheet_figures.h"
#include "core/fleet/sheet_recording.h"
#include "core/fleet/sheet_words.h"
#include "core/fleet/sheet_work.h"

namespace fettle {

namespace {

constexpr std::size_t kMostBlind = 8;
// As a family words them.
constexpr std::string_view kWouldSpeak = "would speak against it: ", kDrawsTheSame = "draws the same: ";

// A machine put on the list by hand has a sheet without a finding.
RoundFinding byHandFinding(const RoundMachine& row) {
    RoundFinding told;
    told.finding.urgency = row.urgency;
    told.finding.sentence = row.byHandWhy.empty() ? "Put on the list by hand."
                                                  : "Put on the list by hand: " + row.byHandWhy + ".";
    told.finding.provedOn = kByHand;
    told.finding.severity = {"zone", row.zone, {}, row.limit, row.unit, ""};
    return told;
}

Status chooseFinding(SheetCase& sheet, std::size_t asked) {
    auto& findings = sheet.row.findings;
    if (findings.empty() && sheet.row.listedBy == ListedBy::Hand)
        findings.push_back(byHandFinding(sheet.row));
    if (findings.empty())
        return fail(
            ErrorKind::NotFound, "", sheet.row.tag,
            "has no finding in the " + roundWords(sheet.period) + ": there is nothing to put on a sheet");
    sheet.number = std::max<std::size_t>(asked, 1);
    if (sheet.number > findings.size())
        return fail(ErrorKind::NotFound, "", sheet.row.tag,
                    fmt::format("has no finding {}; it has {}", asked, findings.size()));
    sheet.told = findings[sheet.number - 1];
    return {};
}

// The finding as the round tells it, with its rows from the week's examination.
void addRows(SheetCase& sheet) {
    sheet.finding = sheet.told.finding;
    if (sheet.told.change) sheet.finding.weightDban.reset();  // of the change, which has no lines
    if (!sheet.week) return;
    for (const Hypothesis& h : sheet.week->considered) {
        if (h.fault != sheet.finding.fault || h.at != sheet.finding.at) continue;
        sheet.finding.best = h.best;
        sheet.finding.recording = h.recording;
        sheet.finding.recordingCount = h.recordingCount;
        sheet.finding.meanDban = h.meanDban;
        sheet.finding.weightDban = h.weightDban;
        sheet.finding.against = h.against;
        sheet.finding.rivals = h.rivals;
    }
}

// The newest job for this finding.
Status addJob(FleetFile& fleet, SheetCase& sheet) {
    const auto jobs = fleet.log().jobs(sheet.row.tag);
    if (!jobs) return fail(jobs.error());
    for (const Job& job : *jobs)
        if (isOfJob(job, sheet.finding.fault, sheet.finding.at)) sheet.job = job;
    return {};
}

Status addGiven(FleetFile& fleet, SheetCase& sheet) {
    const auto history = fleet.machines().history(sheet.row.tag);
    if (!history) return fail(history.error());
    if (history->empty()) return {};
    const auto json = parseJson(history->back().json, sheet.row.tag);
    if (!json) return fail(json.error());
    sheet.criticalityGiven = json->contains("criticality");
    sheet.standbyGiven = json->contains("standby");
    return {};
}

Status addRegister(FleetFile& fleet, SheetCase& sheet) {
    auto entry = fleet.machines().byTag(sheet.row.tag);
    if (!entry) return fail(entry.error());
    sheet.entry = std::move(*entry);
    auto machine = fleet.machines().describedOn(sheet.row.tag, sheet.period.lastDay);
    if (!machine) return fail(machine.error());
    sheet.machine = std::move(*machine);
    auto governing = governingOf(fleet, sheet.entry, *sheet.machine, sheet.period);
    if (!governing) return fail(governing.error());
    sheet.governing = std::move(*governing);
    auto events = fleet.log().events(sheet.row.tag);
    if (!events) return fail(events.error());
    sheet.events = std::move(*events);
    const auto record = siteRecord(fleet);
    if (!record) return fail(record.error());
    sheet.record = *record;
    const auto own = siteRecord(fleet, sheet.told.finding.fault);
    if (!own) return fail(own.error());
    if (!sheet.told.finding.fault.empty()) sheet.faultRecord = *own;
    return {};
}

Status addPast(FleetFile& fleet, SheetCase& sheet) {
    const auto channels = fleet.trends().channels(sheet.entry.id);
    if (!channels) return fail(channels.error());
    for (const ChannelEntry& channel : *channels) {
        if (channel.point != sheet.governing.point || channel.name != sheet.governing.channel) continue;
        auto past = trendPast(fleet, sheet.row.tag, *sheet.machine, channel, Quantity::VelocityRms,
                              sheet.period.lastDay);
        if (!past) return fail(past.error());
        if (past->baseline || !sheet.past.baseline) sheet.past = std::move(*past);
    }
    return {};
}

// As the grams: of a level that stands in a zone.
Status addCuredBefore(FleetFile&, SheetCase& sheet) {
    if (sheet.told.finding.severity.kind != "zone") return {};
    auto cure = curedBefore(sheet.events, sheet.governing, sheet.period);
    if (!cure) return fail(cure.error());
    if (*cure) sheet.curedWords = std::move((*cure)->sentence);
    return {};
}

// 1x in grams beside a level that a rotor makes; a bearing's sheet has no use for it.
Status addMass(FleetFile& fleet, SheetCase& sheet) {
    if (sheet.told.finding.severity.kind != "zone") return {};
    auto now = massNow(fleet, sheet.row.tag, sheet.period.lastDay);
    if (!now) return fail(now.error());
    if (*now) sheet.massWords = std::move((*now)->sentence);
    return {};
}

Result<SheetCase> gather(FleetFile& fleet, const RoundList& list, std::optional<std::int64_t> round,
                         const SheetRequest& request) {
    SheetCase sheet;
    const RoundMachine* row = rowOf(list, request.machine);
    if (!row)
        return fail(ErrorKind::NotFound, fleet.path(), request.machine,
                    "is not in the round to " + list.until);
    sheet.row = *row;
    sheet.engine = list.engine;
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    sheet.site = site->site;
    const auto period = periodTo(*site, list.until);
    if (!period) return fail(period.error());
    sheet.period = *period;
    sheet.today = request.today;
    if (auto good = chooseFinding(sheet, request.finding); !good) return fail(good.error());
    if (auto good = addWeek(fleet, round, sheet); !good) return fail(good.error());
    addRows(sheet);
    for (auto step :
         {addRegister, addPast, addChangeDays, addGiven, addRecording, addJob, addCuredBefore, addMass})
        if (auto good = step(fleet, sheet); !good) return fail(good.error());
    return sheet;
}

void addHead(const SheetCase& sheet, SheetContent& out) {
    out.tag = sheet.row.tag;
    out.asset = sheet.row.asset;
    out.service = sheet.row.service.empty() ? sheet.row.tag : sheet.row.service;
    out.site = sheet.entry.site.empty() ? sheet.site : sheet.entry.site;
    out.area = sheet.row.area;
    out.criticality = sheet.row.criticality;
    out.job = jobWords(sheet.job);
    out.round = roundWords(sheet.period);
    out.asOf = sheet.period.lastDay;
    out.madeOn = sheet.today.empty() ? sheet.period.lastDay : sheet.today;
    out.ageNote = ageWords(sheet);
    out.engine = sheet.engine;
}

// A person's word is not dressed up as a measurement.
void addAskedFor(const SheetCase& sheet, SheetContent& out) {
    out.faultName = "asked for by a person";
    out.urgencyWords = askedForWords(sheet.row);
    out.howSure = askedForSureWords(sheet.row);
}

void addFinding(const SheetCase& sheet, SheetContent& out) {
    const Hypothesis& h = sheet.told.finding;
    out.number = sheet.number;
    out.ofFindings = sheet.row.findings.size();
    out.fault = h.fault;
    out.faultName = h.fault.empty() ? "raised vibration, cause not named" : faultName(h.fault);
    out.at = h.at;
    out.atWords = placeWords(*sheet.machine, h.at);
    out.urgency = h.urgency.empty() ? sheet.row.urgency : h.urgency;
    out.verdict = verdictWords(sheet);
    out.firm = sheet.firm();
    out.howSure = howSureWords(sheet.finding, sheet.told.change.has_value());
    out.siteRecord = siteRecordWords(sheet.record, sheet.faultRecord, out.faultName);
    out.provedOn = h.provedOn.empty() ? "not stated" : h.provedOn;
    out.howBad = howBadWords(sheet);
    if (!sheet.curedWords.empty()) out.howBad += " " + sheet.curedWords;
    if (!sheet.massWords.empty()) out.howBad += " " + sheet.massWords;
    out.severityKind = h.severity.kind;
    out.severityValue = h.severity.value;
    out.unit = h.severity.unit.empty() ? "mm/s" : h.severity.unit;
    out.level = h.severity.level ? h.severity.level : sheet.governing.level;
    out.limit = h.severity.limit ? h.severity.limit : sheet.governing.limit;
    out.growthPerWeek = sheet.told.growthPerWeek;
    out.limitDate = limitDateWords(sheet.told, sheet.day());
}

std::string rowsNoteOf(const SheetCase& sheet) {
    if (sheet.byHandOnly()) return "Nothing measured is claimed here, so there are no lines to add up.";
    if (!sheet.finding.weightDban && sheet.told.change)
        return "This finding rests on a change against its own baseline, so there are no lines to add up.";
    if (!sheet.finding.weightDban)
        return "This finding has no weight: it rests on level and pattern, so there are no lines to add up.";
    std::string note = sheet.finding.best.view;
    if (sheet.finding.recordingCount > 1)
        note += fmt::format("; the strongest of {} recordings", sheet.finding.recordingCount);
    return sheet.recordingMoment.empty() ? note : note + ", " + sheet.recordingMoment;
}

void addWhy(const SheetCase& sheet, SheetContent& out) {
    out.rows = arithmeticOf(sheet.finding);
    out.rowsNote = rowsNoteOf(sheet);
    for (const std::string& text : sheet.finding.against)
        if (text.starts_with(kWouldSpeak))
            out.wouldSpeakAgainst.push_back(text.substr(kWouldSpeak.size()));
        else if (text.starts_with(kDrawsTheSame))
            out.rivals.push_back(text.substr(kDrawsTheSame.size()) + " (draws the same)");
        else
            out.against.push_back(text);
    for (const Rival& r : sheet.finding.rivals)
        out.rivals.push_back(fmt::format("{}, {}, {:.0f} decibans before claims: {}", faultName(r.fault),
                                         placeWords(*sheet.machine, r.at), r.weightDban, r.lines));
    out.spectrum = spectrumOf(sheet);
    out.trend = trendOf(sheet);
}

// A default is not told as if somebody had said it.
std::string givenWords(const SheetCase& sheet) {
    std::string words = sheet.criticalityGiven ? ", criticality " + sheet.row.criticality : "";
    if (sheet.standbyGiven) words += sheet.entry.standby ? ", standby there" : ", no standby";
    return words;
}

void addWork(const SheetCase& sheet, const Advice& advice, const JobDatesTable& dates, SheetContent& out) {
    out.parts = partsOf(sheet, advice);
    out.dates = datesOf(sheet, dates, needsParts(advice), !out.parts.empty());
    out.ownDue = ownDue(sheet, dates);
    out.urgencyWords = urgencyWords(out.urgency, out.dates[1]);
    if (sheet.byHandOnly()) addAskedFor(sheet, out);
    out.firstLine =
        firstLineOf(sheet, filledIn(advice.job, sheet), filledIn(advice.inspect, sheet), dates, out.dates);
    for (std::size_t i = 1; i <= sheet.row.findings.size(); ++i)
        if (i != sheet.number) out.otherFindings.push_back(otherWords(sheet, i, dates));
    out.leadTime = fmt::format("lead time of {} days assumed; ask the stores", dates.leadDays());
    out.priority = fmt::format("{} of 4 (1 is first; by urgency{})",
                               dates.priority(out.urgency, sheet.row.criticality, sheet.entry.standby),
                               givenWords(sheet));
    out.steps = stepsOf(sheet, advice);
    out.need = needOf(sheet, advice);
    out.isolation = isolationBoxes();
    out.untilThen = untilThenOf(sheet, advice);
    out.stopAtOnceIf = filledIn(advice.stop, sheet);
    out.ifLeft = filledIn(advice.left, sheet);
    out.measureAfter = filledIn(advice.measure, sheet);
    out.cured = curedOf(sheet, advice);
}

void addBlind(const SheetCase& sheet, SheetContent& out) {
    const std::vector<BlindSpot> none;
    std::vector<BlindRow> rows = blindRows(sheet.week ? sheet.week->blind : none);
    std::stable_partition(rows.begin(), rows.end(), [&](const BlindRow& row) {
        return std::count(row.faults.begin(), row.faults.end(), sheet.finding.fault) > 0;
    });
    for (const BlindRow& row : rows) {
        if (out.blind.size() == kMostBlind) break;
        std::string what =
            blindWhat(row, [&](const std::string& at) { return placeWords(*sheet.machine, at); });
        out.blind.push_back({what.empty() ? "anything" : std::move(what), row.why, row.cure});
    }
    if (rows.size() > kMostBlind)
        out.blindNote = fmt::format("and {} more, on the page of the machine", rows.size() - kMostBlind);
    else if (rows.empty())
        out.blindNote = "No blind spot is known for these recordings; that proves nothing.";
    else
        out.blindNote = "What is not named here may still be missed.";
}

}  // namespace

Result<SheetContent> sheetContent(FleetFile& fleet, const RoundList& list, std::optional<std::int64_t> round,
                                  const SheetRequest& request) {
    const auto advice = AdviceTable::load();
    if (!advice) return fail(advice.error());
    const auto dates = JobDatesTable::load();
    if (!dates) return fail(dates.error());
    const auto sheet = gather(fleet, list, round, request);
    if (!sheet) return fail(sheet.error());
    SheetContent out;
    addHead(*sheet, out);
    addFinding(*sheet, out);
    addWhy(*sheet, out);
    const Advice& what = sheet->byHandOnly() ? advice->byHand() : advice->of(sheet->finding.fault);
    addWork(*sheet, what, *dates, out);
    out.partBoxes = advice->partBoxes();
    addBlind(*sheet, out);
    out.cautions = cautions();
    out.fields = returnFields(*sheet, what);
    return out;
}

Result<SheetContent> sheetContent(FleetFile& fleet, const SheetRequest& request) {
    if (request.round) {
        const auto kept = keptRound(fleet, *request.round);
        if (!kept) return fail(kept.error());
        return sheetContent(fleet, kept->list, kept->entry.id, request);
    }
    const auto current = currentRound(fleet);
    if (!current) return fail(current.error());
    if (*current) return sheetContent(fleet, (*current)->list, (*current)->entry.id, request);
    const auto now = listNow(fleet);
    if (!now) return fail(now.error());
    return sheetContent(fleet, *now, std::nullopt, request);
}

}  // namespace fettle
