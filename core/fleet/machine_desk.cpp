#include "core/fleet/machine_desk.h"

#include <algorithm>

#include "core/diagnosis/combine.h"
#include "core/exchange/examination_json.h"
#include "core/fleet/site_calendar.h"
#include "core/machine/path.h"

namespace fettle {

bool isRunning(const std::string& state) {
    return state == "running" || state == "running_unloaded" || state == "unsteady";
}

namespace {

Result<Examination> readBack(FleetFile& fleet, std::int64_t recording, const std::string& json) {
    auto one = examinationFromText(json, fleet.path());
    if (one) return one;
    Error error = one.error();
    error.place = "examination of recording " + std::to_string(recording) + ", " + error.place;
    return fail(std::move(error));
}

}  // namespace

Result<std::shared_ptr<const Machine>> describedAt(FleetFile& fleet, const std::string& tag, Instant time) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto day = dateIn(site->timeZone, time);
    if (!day) return fail(day.error());
    return fleet.machines().describedOn(tag, *day);
}

Result<std::vector<OneWeighed>> weighedIn(FleetFile& fleet, std::int64_t machine, Instant from,
                                          Instant until) {
    const auto kept = fleet.recordings().examinations(machine, from, until);
    if (!kept) return fail(kept.error());
    std::vector<OneWeighed> all;
    for (const RecordingStore::Weighed& one : *kept) {
        auto examination = readBack(fleet, one.recording, one.json);
        if (!examination) return fail(examination.error());
        all.push_back({one.recording, one.time, one.running, std::move(*examination)});
    }
    return all;
}

Result<std::optional<SpanExamination>> joinRunning(std::shared_ptr<const Machine> machine,
                                                   std::vector<OneWeighed> weighed) {
    SpanExamination span;
    std::vector<Examination> parts;
    for (OneWeighed& one : weighed) {
        if (!isRunning(one.running)) continue;
        span.recordingIds.push_back(one.recording);
        span.times.push_back(one.time);
        parts.push_back(std::move(one.examination));
    }
    if (parts.empty()) return std::nullopt;
    auto joint = combine(*machine, parts);
    if (!joint) return fail(joint.error());
    span.examination = std::move(*joint);
    span.machine = std::move(machine);
    return span;
}

Result<std::optional<SpanExamination>> examinationOfSpan(FleetFile& fleet, const std::string& tag,
                                                         Instant from, Instant until) {
    const auto entry = fleet.machines().byTag(tag);
    if (!entry) return fail(entry.error());
    const auto machine = describedAt(fleet, tag, until);
    if (!machine) return fail(machine.error());
    auto weighed = weighedIn(fleet, entry->id, from, until);
    if (!weighed) return fail(weighed.error());
    return joinRunning(*machine, std::move(*weighed));
}

Result<Examination> examinationOf(FleetFile& fleet, std::int64_t recording) {
    const auto json = fleet.recordings().examinationJson(recording);
    if (!json) return fail(json.error());
    return readBack(fleet, recording, *json);
}

Result<RecordingDetail> detailOf(FleetFile& fleet, std::int64_t recording, const std::string& channel,
                                 const std::string& view) {
    const auto kept = fleet.recordings().recording(recording);
    if (!kept) return fail(kept.error());
    const auto machine = describedAt(fleet, (*kept)->machine, *(*kept)->time);
    if (!machine) return fail(machine.error());
    return detailOf(**machine, *kept, channel, view);
}

Result<std::vector<WeightAt>> weightHistory(FleetFile& fleet, const std::string& tag,
                                            const std::string& fault, const std::string& at, Instant from,
                                            Instant until) {
    const auto machine = fleet.machines().byTag(tag);
    if (!machine) return fail(machine.error());
    const auto weights = fleet.recordings().weights(machine->id, from, until, fault);
    if (!weights) return fail(weights.error());
    std::vector<WeightAt> history;
    for (const WeightEntry& w : *weights)
        if (placesMeet(w.at, at)) history.push_back({w.time, w.recording, w.weightDban});
    std::sort(history.begin(), history.end(),
              [](const WeightAt& a, const WeightAt& b) { return a.time < b.time; });
    return history;
}

}  // namespace fettle
