// What alert rules read of recordings: bounded questions along the clustered keys, none of them a scan.
#include <algorithm>
#include <map>

#include "core/store/alert_store.h"
#include "core/store/database.h"

namespace fettle {

namespace {

constexpr const char* kWorstChannel =
    "SELECT t.velocity_rms_mm_s, t.next_limit_mm_s, t.zone FROM recording_channel r "
    "JOIN trend t ON t.channel = r.channel AND t.time = ?1 AND t.recording = ?2 WHERE r.recording = ?2 "
    "AND t.velocity_rms_mm_s IS NOT NULL ORDER BY t.zone DESC, t.velocity_rms_mm_s DESC LIMIT 1";

Status addLevel(Database& database, AlertStore::Heard& heard) {
    Statement row(database, kWorstChannel);
    if (row.bind(heard.time, heard.id).next()) row.into(heard.levelMmS, heard.nextLimitMmS, heard.zone);
    return row.status();
}

}  // namespace

Result<std::vector<AlertStore::Heard>> AlertStore::heard(std::int64_t machine, const std::string& point,
                                                         Instant from, Instant until, std::size_t most) {
    Statement rows(
        database_,
        "SELECT id, time FROM recording WHERE machine=? AND time BETWEEN ? AND ? AND point=? "
        "AND running IN ('running', 'running_unloaded', 'unsteady') ORDER BY time DESC, id DESC LIMIT ?");
    rows.bind(machine, from, until, point, most);
    auto all = allRows<Heard>(rows, [](Statement& row, Heard& one) { row.into(one.id, one.time); });
    if (!all) return all;
    for (Heard& one : *all)
        if (auto good = addLevel(database_, one); !good) return fail(good.error());
    return all;
}

Result<std::vector<AlertStore::Weighed>> AlertStore::weighed(std::int64_t machine, Instant time,
                                                             std::int64_t recording) {
    Statement rows(database_,
                   "SELECT h.fault, h.at, w.weight_dban FROM weight w JOIN hypothesis h ON h.id = "
                   "w.hypothesis WHERE w.machine=? AND w.time=? AND w.recording=?");
    rows.bind(machine, time, recording);
    return allRows<Weighed>(rows,
                            [](Statement& row, Weighed& one) { row.into(one.fault, one.at, one.dban); });
}

Result<std::vector<AlertStore::LastHeard>> AlertStore::lastHeard(std::int64_t machine, Instant until) {
    Statement rows(database_,
                   "SELECT c.point, (SELECT time FROM trend WHERE channel = c.id AND time <= ?1 "
                   "ORDER BY time DESC LIMIT 1) AS newest FROM channel c WHERE c.machine = ?2 AND newest IS "
                   "NOT NULL");
    rows.bind(until, machine);
    auto channels =
        allRows<LastHeard>(rows, [](Statement& row, LastHeard& one) { row.into(one.point, one.time); });
    if (!channels) return channels;
    std::map<std::string, Instant> newest;
    for (const LastHeard& one : *channels)
        newest[one.point] = std::max(newest[one.point], one.time);
    std::vector<LastHeard> points;
    for (const auto& [point, time] : newest)
        points.push_back({point, time});
    return points;
}

}  // namespace fettle
