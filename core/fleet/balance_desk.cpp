#include "core/fleet/balance_desk.h"

#include <algorithm>

#include "core/fleet/machine_desk.h"
#include "core/fleet/site_calendar.h"
#include "core/store/day.h"

namespace fettle {

namespace {

constexpr std::size_t kMostRecordings = 40;
constexpr Instant kEver{std::chrono::days(365 * 200)};

const Channel* channelOf(const Recording& recording, const std::string& name) {
    for (const Channel& channel : recording.channels)
        if (channel.name == name) return &channel;
    return nullptr;
}

Status addEntries(FleetFile& fleet, const std::string& tag, BalanceDesk& desk) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto entries = fleet.workshop().list(tag, "balance");
    if (!entries) return fail(entries.error());
    for (const WorkshopEntry& entry : *entries) {
        BalanceEntry one{entry.id, entry.changedAt, entry.closedAt, entry.name, "", {}};
        if (auto job = readBalance(entry.json, entry.name))
            one.job = std::move(*job);
        else
            one.trouble = job.error().sentence();
        if (entry.closedAt && one.trouble.empty()) {
            const auto date = dateIn(site->timeZone, *entry.closedAt);
            if (!date) return fail(date.error());
            if (auto saved = influenceToSave(one.job, *date)) desk.saved.push_back(std::move(*saved));
        }
        desk.entries.push_back(std::move(one));
    }
    return {};
}

Status addRecordings(FleetFile& fleet, std::int64_t machine, BalanceDesk& desk) {
    auto all = fleet.recordings().list(machine, Instant{}, kEver);
    if (!all) return fail(all.error());
    std::reverse(all->begin(), all->end());
    for (RecordingEntry& entry : *all) {
        if (desk.recordings.size() == kMostRecordings) break;
        if (entry.channels.size() >= 2 && entry.hasWaveform) desk.recordings.push_back(std::move(entry));
    }
    return {};
}

}  // namespace

Result<BalanceDesk> balanceDesk(FleetFile& fleet, const std::string& tag) {
    BalanceDesk desk;
    const auto entry = fleet.machines().byTag(tag);
    if (!entry) return fail(entry.error());
    const auto machine = describedAt(fleet, tag, nowUtc());
    if (!machine) return fail(machine.error());
    desk.proposedDriver = proposedJob(**machine, "driver");
    desk.proposedDriven = proposedJob(**machine, "driven");
    desk.hasDriven = (*machine)->driven.known;
    const auto channels = fleet.trends().channels(entry->id);
    if (!channels) return fail(channels.error());
    for (const ChannelEntry& channel : *channels)
        if (channel.quantity == "acceleration" || channel.quantity == "velocity")
            desk.channels.push_back(channel.point + " " + channel.name);
    if (auto good = addEntries(fleet, tag, desk); !good) return fail(good.error());
    if (auto good = addRecordings(fleet, entry->id, desk); !good) return fail(good.error());
    return desk;
}

Result<std::int64_t> keepBalance(FleetFile& fleet, std::int64_t id, const BalanceJob& job, bool close) {
    WorkshopEntry entry;
    entry.id = id;
    entry.machine = job.machine;
    entry.kind = "balance";
    entry.name = job.name;
    entry.json = balanceJson(job);
    if (close) entry.closedAt = nowUtc();
    return fleet.workshop().put(entry);
}

Result<RecordedReading> onceOfRecording(FleetFile& fleet, std::int64_t recording, const std::string& channel,
                                        const std::string& tachometer) {
    const auto found = fleet.recordings().recording(recording);
    if (!found) return fail(found.error());
    const Channel *signal = channelOf(**found, channel), *mark = channelOf(**found, tachometer);
    if (!signal || !mark || signal == mark)
        return fail(ErrorKind::Invalid, (*found)->file, channel + ", " + tachometer,
                    "must be two channels of this recording");
    if ((*found)->simultaneous == Simultaneous::No)
        return fail(ErrorKind::Invalid, (*found)->file, "",
                    "its channels were taken one after the other: there is no phase between them");
    auto once = onceAsTurned(signal->samples, signal->unit, mark->samples, signal->sampleRateHz);
    if (!once) return fail(once.error());
    return RecordedReading{std::move(*once), (*found)->loadPct};
}

}  // namespace fettle
