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
        "SELECT r.id, r.time, r.point, r.running, r.file, "
        "coalesce((SELECT sum(length(w.data)) FROM waveform w WHERE w.recording = r.id), 0), "
        "coalesce(s.bytes, 0), coalesce(length(e.json), 0), v.dban, t.level FROM recording r "
        "LEFT JOIN examination e ON e.recording = r.id "
        "LEFT JOIN (SELECT s.recording, sum(length(s.lines)) AS bytes FROM channel c CROSS JOIN spectrum s "
        "ON s.channel = c.id WHERE c.machine = ?1 GROUP BY s.recording) s ON s.recording = r.id "
        "LEFT JOIN (SELECT recording, max(weight_dban) AS dban FROM weight WHERE machine = ?1 GROUP BY "
        "recording) v ON v.recording = r.id "
        "LEFT JOIN (SELECT t.recording, max(t.velocity_rms_mm_s) AS level FROM channel c CROSS JOIN trend t "
        "ON t.channel = c.id WHERE c.machine = ?1 GROUP BY t.recording) t ON t.recording = r.id "
        "WHERE r.machine = ?1 ORDER BY r.time, r.id");
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
