#include "core/fleet/sheet_recording.h"

#include <algorithm>

#include "core/exchange/examination_json.h"
#include "core/fleet/machine_desk.h"
#include "core/fleet/sheet_change.h"
#include "core/fleet/sheet_figures.h"
#include "core/fleet/site_calendar.h"

namespace fettle {

namespace {

struct Candidate {
    std::int64_t id = 0;
    std::string file, facts;
};

// What was measured, to the last digit: two days do not agree in it.
std::string textOf(const RecordingFacts& facts) {
    Examination alone;
    alone.recordings = {facts};
    return toJson(alone)["recordings"].dump(-1, ' ', false, Json::error_handler_t::replace);
}

Result<std::vector<Candidate>> candidatesOf(FleetFile& fleet, const SheetCase& sheet) {
    const auto entry = fleet.machines().byTag(sheet.row.tag);
    if (!entry) return fail(entry.error());
    const auto weighed = weighedIn(fleet, entry->id, sheet.period.from, sheet.period.last());
    if (!weighed) return fail(weighed.error());
    std::vector<Candidate> all;
    for (const OneWeighed& one : *weighed)
        if (isRunning(one.running) && one.examination.recordings.size() == 1)
            all.push_back(
                {one.recording, one.examination.recordings[0].file, textOf(one.examination.recordings[0])});
    return all;
}

// Both run in the order of time, so that of two alike the first stands for the first.
std::vector<std::int64_t> matchedByFacts(const Examination& week, const std::vector<Candidate>& candidates) {
    std::vector<std::int64_t> ids;
    std::vector<bool> taken(candidates.size(), false);
    for (const RecordingFacts& facts : week.recordings) {
        const std::string text = textOf(facts);
        ids.push_back(0);
        for (std::size_t i = 0; i < candidates.size() && ids.back() == 0; ++i) {
            if (taken[i] || candidates[i].file != facts.file || candidates[i].facts != text) continue;
            taken[i] = true;
            ids.back() = candidates[i].id;
        }
    }
    return ids;
}

// Weighed anew since then: the facts differ, but a name with as many recordings as then has the same ones.
void matchByOrder(const Examination& week, const std::vector<Candidate>& candidates,
                  std::vector<std::int64_t>& ids) {
    for (std::size_t i = 0; i < ids.size(); ++i) {
        if (ids[i] != 0) continue;
        const std::string& file = week.recordings[i].file;
        const auto isOfFile = [&](const auto& one) { return one.file == file; };
        const auto before =
            std::count_if(week.recordings.begin(), week.recordings.begin() + long(i), isOfFile);
        const auto then = std::count_if(week.recordings.begin(), week.recordings.end(), isOfFile);
        if (then != std::count_if(candidates.begin(), candidates.end(), isOfFile)) continue;
        auto found = std::find_if(candidates.begin(), candidates.end(), isOfFile);
        for (long skip = 0; skip < before; ++skip)
            found = std::find_if(found + 1, candidates.end(), isOfFile);
        ids[i] = found->id;
    }
}

Status addKeptWeek(FleetFile& fleet, std::int64_t round, SheetCase& sheet) {
    const auto json = fleet.rounds().examinationJson(round, sheet.row.tag);
    if (!json && json.error().kind == ErrorKind::NotFound) return {};  // an unseen machine has none
    if (!json) return fail(json.error());
    auto week = examinationFromText(*json, fleet.path());
    if (!week) return fail(week.error());
    const auto candidates = candidatesOf(fleet, sheet);
    if (!candidates) return fail(candidates.error());
    sheet.weekIds = matchedByFacts(*week, *candidates);
    matchByOrder(*week, *candidates, sheet.weekIds);
    sheet.week = std::move(*week);
    return {};
}

// The one in which its own sidebands stand highest; false: none measured them.
bool chooseBarRecording(SheetCase& sheet) {
    std::optional<double> most;
    for (std::size_t i = 0; sheet.week && i < sheet.week->recordings.size(); ++i) {
        const FaultMeasure* measure = barMeasure(sheet.week->recordings[i]);
        if (!measure || i >= sheet.weekIds.size() || sheet.weekIds[i] == 0) continue;
        if (most && measure->value <= *most) continue;
        most = measure->value;
        sheet.finding.recording = i;
    }
    return most.has_value();
}

// A level has no rows: the newest recording of the point that governs shows it, of a change that of its
// point.
Status chooseLevelRecording(FleetFile& fleet, SheetCase& sheet) {
    const ChangeFacts* change = changeInAcceleration(sheet);
    const std::string& point = change ? change->point : sheet.governing.point;
    for (std::size_t i = 0; i < sheet.weekIds.size(); ++i) {
        if (sheet.weekIds[i] == 0) continue;
        const auto entry = fleet.recordings().entry(sheet.weekIds[i]);
        if (!entry) return fail(entry.error());
        if (entry->point == point) sheet.finding.recording = i;
    }
    return {};
}

}  // namespace

Status addWeek(FleetFile& fleet, std::optional<std::int64_t> round, SheetCase& sheet) {
    if (round && sheet.row.urgency != "leave") return addKeptWeek(fleet, *round, sheet);
    auto span = examinationOfSpan(fleet, sheet.row.tag, sheet.period.from, sheet.period.last());
    if (!span) return fail(span.error());
    if (!*span) return {};
    sheet.week = std::move((*span)->examination);
    sheet.weekIds = std::move((*span)->recordingIds);
    return {};
}

Status addRecording(FleetFile& fleet, SheetCase& sheet) {
    const bool bars = sheet.told.finding.fault == "rotor_bar" && chooseBarRecording(sheet);
    if (!sheet.finding.weightDban && !bars)
        if (auto good = chooseLevelRecording(fleet, sheet); !good) return good;
    if (sheet.finding.recording >= sheet.weekIds.size()) return {};
    const std::int64_t id = sheet.weekIds[sheet.finding.recording];
    if (id == 0) return {};
    const auto entry = fleet.recordings().entry(id);
    if (!entry) return fail(entry.error());
    sheet.recording = entry->hasWaveform ? id : 0;
    if (entry->thinnedAt) {
        const auto day = dateIn(sheet.period.timeZone, *entry->thinnedAt);
        if (!day) return fail(day.error());
        sheet.thinnedOn = *day;
    }
    sheet.recordingTime = formatUtc(entry->time);
    sheet.recordingMoment = momentIn(sheet.period.timeZone, entry->time);
    return {};
}

}  // namespace fettle
