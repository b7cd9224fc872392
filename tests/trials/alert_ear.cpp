#include "tests/trials/alert_ear.h"

#include <algorithm>
#include <filesystem>

#include "core/base/json_object.h"
#include "tests/trials/made_store.h"

namespace fettle::trials {

namespace {
constexpr double kDayMin = 24 * 60;
}

AlertEar::AlertEar(const WeekMaker& maker, int perWeek, std::string path)
    : path_(std::move(path)), machine_(maker.machine()), fleet_(wanted(FleetFile::create(path_, {}))) {
    Json description = wanted(parseJson(maker.description(), machine_.tag));
    for (Json& point : description["points"])
        point["interval_min"] = 7 * kDayMin / perWeek;
    wanted(fleet_->machines().put(description.dump(), path_));
    id_ = wanted(fleet_->machines().byTag(machine_.tag)).id;
}

AlertEar::~AlertEar() {
    fleet_.reset();
    std::error_code ignored;
    std::filesystem::remove(path_, ignored);
}

void AlertEar::store(NewRecording row) {
    row.machine = id_;
    wanted(fleet_->recordings().putAll({std::move(row)}));
}

std::vector<Alert> AlertEar::hear(const RecordingPtr& recording) {
    store(storedRow(machine_, id_, recording));
    return look(*recording->time + std::chrono::minutes(1));
}

std::vector<Alert> AlertEar::look(Instant now) {
    const AlertsRaised raised = wanted(raiseAlerts(*fleet_, {AlertRun::Which::New, now}));
    grown_ += raised.grown;
    if (raised.raised + raised.grown == 0) return {};
    std::vector<Alert> fresh;
    for (const Alert& alert : wanted(fleet_->alerts().alerts(false))) {
        if (!alert.acknowledged) wantedDone(acknowledgeAlert(*fleet_, alert.id, "trial", "heard", now));
        if (alert.id > last_) fresh.push_back(alert);
    }
    for (const Alert& alert : fresh)
        last_ = std::max(last_, alert.id);
    return fresh;
}

}  // namespace fettle::trials
