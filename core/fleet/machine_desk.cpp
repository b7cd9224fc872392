#include "core/fleet/machine_desk.h"

#include <algorithm>
#include <future>

#include "core/diagnosis/combine.h"
#include "core/exchange/examination_json.h"
#include "core/fleet/site_calendar.h"
#include "core/machine/path.h"

namespace fettle {

bool isRunning(const std::string& state) {
    return state == "running" || state == "running_unloaded" || state == "unsteady";
}

namespace {

constexpr std::size_t kReadTogether = 64;

Result<Examination> readBack(const std::string& file, std::int64_t recording, const std::string& json) {
    auto one = examinationFromText(json, file);
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
    std::vector<OneWeighed> all(kept->size());
    const auto read = [&](std::size_t first, std::size_t last) -> Status {
        for (std::size_t i = first; i < last; ++i) {
            const RecordingStore::Weighed& one = (*kept)[i];
            auto examination = readBack(fleet.path(), one.recording, one.json);
            if (!examination) return fail(examination.error());
            all[i] = {one.recording, one.time, one.running, std::move(*examination)};
        }
        return {};
    };
    // A week of a recording every twenty minutes is 20 MB of text: two read it in half the time.
    const std::size_t half = kept->size() < kReadTogether ? 0 : kept->size() / 2;
    auto other =
        half > 0 ? std::async(std::launch::async, read, std::size_t{0}, half) : std::future<Status>();
    const Status good = read(half, kept->size());
    if (other.valid())
        if (const Status first = other.get(); !first) return fail(first.error());
    if (!good) return fail(good.error());
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
    return readBack(fleet.path(), recording, *json);
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
