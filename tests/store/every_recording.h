// Why: what retention says is held against everything there is, read plainly and slowly: all recordings of a
// machine in the order of time, those of which nothing is left too, with what is left of each and its rank.
#pragma once

#include "core/store/database.h"
#include "core/store/retention_store.h"

namespace fettle::store_test {

inline std::vector<KeptRecording> everyRecording(const std::string& path, std::int64_t machine) {
    auto database = Database::open(path, Access::ReadOnly).value();
    Statement rows(
        *database,
        "SELECT r.id, r.time, r.point, r.running, r.file, coalesce(w.bytes, 0), "
        "coalesce(s.bytes, 0), coalesce(length(e.json), 0), v.dban, t.level FROM recording r "
        "LEFT JOIN (SELECT recording, sum(length(data)) AS bytes FROM waveform GROUP BY recording) w "
        "ON w.recording = r.id "
        "LEFT JOIN (SELECT recording, sum(length(lines)) AS bytes FROM spectrum GROUP BY recording) "
        "s ON s.recording = r.id "
        "LEFT JOIN examination e ON e.recording = r.id "
        "LEFT JOIN (SELECT recording, max(weight_dban) AS dban FROM weight GROUP BY recording) v "
        "ON v.recording = r.id "
        "LEFT JOIN (SELECT recording, max(velocity_rms_mm_s) AS level FROM trend GROUP BY recording) "
        "t ON t.recording = r.id "
        "WHERE r.machine = ? ORDER BY r.time, r.id");
    rows.bind(machine);
    return allRows<KeptRecording>(rows,
                                  [](Statement& row, KeptRecording& one) {
                                      row.into(one.id, one.time, one.point, one.running, one.file,
                                               one.bytes[0], one.bytes[1], one.bytes[2], one.evidenceDban,
                                               one.levelMmS);
                                  })
        .value();
}

}  // namespace fettle::store_test
