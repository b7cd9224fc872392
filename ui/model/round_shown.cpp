#include "ui/model/round_shown.h"

#include <QDate>
#include <QDateTime>
#include <QTimeZone>

#include "ui/model/words.h"

namespace fettle {

namespace {

Result<std::optional<KeptRound>> wanted(FleetFile& fleet, std::optional<std::int64_t> id) {
    if (!id) return currentRound(fleet);
    auto kept = keptRound(fleet, *id);
    if (!kept) return fail(kept.error());
    return std::optional<KeptRound>(std::move(*kept));
}

void take(KeptRound kept, RoundShown& shown) {
    shown.entry = std::move(kept.entry);
    shown.list = std::move(kept.list);
    shown.state = std::move(kept.state);
    shown.progress = std::move(kept.progress);
}

// Without recordings there is no day to end with: an empty list, not a failure.
Status takeDraft(FleetFile& fleet, const CancelToken& cancel, RoundShown& shown) {
    if (shown.machinesInRegister == 0 || shown.recordings == 0) return {};
    auto list = listNow(fleet, "", {}, cancel);
    if (!list) return fail(list.error());
    shown.list = std::move(*list);
    shown.refresh();
    return {};
}

Status count(FleetFile& fleet, RoundShown& shown) {
    const auto machines = fleet.machines().all();
    if (!machines) return fail(machines.error());
    for (const MachineEntry& machine : *machines)
        if (machine.removedOn.empty()) ++shown.machinesInRegister;
    const auto recordings = fleet.recordings().count();
    if (!recordings) return fail(recordings.error());
    shown.recordings = *recordings;
    return {};
}

}  // namespace

void RoundShown::refresh() {
    progress = progressOf(list, state);
}

Instant endOfDay(const std::string& isoDate, const std::string& timeZone) {
    const QDate day = QDate::fromString(QString::fromStdString(isoDate), Qt::ISODate);
    QTimeZone zone(QByteArray::fromStdString(timeZone));
    if (!zone.isValid()) zone = QTimeZone::utc();
    return Instant(std::chrono::milliseconds(day.addDays(1).startOfDay(zone).toMSecsSinceEpoch()));
}

Result<RoundShown> readRound(FleetFile& fleet, std::optional<std::int64_t> id, const CancelToken& cancel) {
    RoundShown shown;
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    shown.site = site->site;
    if (auto counted = count(fleet, shown); !counted) return fail(counted.error());
    auto rounds = fleet.rounds().all();
    if (!rounds) return fail(rounds.error());
    shown.rounds = std::move(*rounds);
    auto kept = wanted(fleet, id);
    if (!kept) return fail(kept.error());
    if (*kept)
        take(std::move(**kept), shown);
    else if (auto drafted = takeDraft(fleet, cancel, shown); !drafted)
        return fail(drafted.error());
    if (shown.list.until.empty()) return shown;
    shown.end = endOfDay(shown.list.until, site->timeZone);
    auto promise = listPromise(fleet, shown.list);
    if (!promise) return fail(promise.error());
    shown.promise = std::move(*promise);
    return shown;
}

}  // namespace fettle
