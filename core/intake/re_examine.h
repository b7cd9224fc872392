// Why: after the engine or a description changed, what is kept raw is weighed again, and what came out
// differently is kept beside what stood before. Resumable: a run that was cut short is carried on, what it
// had weighed stays; recordings whose waveform is no longer kept stay as they were weighed and are counted.
// Thread: on the caller's, with workers of its own, each with a connection of its own; callbacks come on the
// caller's thread. Memory: 32 bytes a recording that is kept raw, and results that wait as in import. Errors:
// NotFound for a tag that is not in the register; else what stops everything, what was acknowledged stays.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/intake/import.h"

namespace fettle {

struct ReExamineReport {
    std::optional<std::int64_t> run;  // core/store/re_examination_store.h; empty: there was nothing to do
    std::size_t weighed = 0, alreadyCurrent = 0;
    std::size_t withoutWaveform = 0;   // keep the verdict of the engine that had weighed them
    std::size_t changed = 0;           // recordings of which something came out differently
    std::vector<std::string> refused;  // sentences: recordings that no longer fit their machine's description
    bool cancelled = false;
};

// Of one machine (empty: all), with the description that holds at each recording's time. Of the options:
// threads, batch, evenCurrent, acknowledged (told "TAG 2026-05-04T06:20:00Z"), progress, cancel.
Result<ReExamineReport> reExamine(FleetFile& fleet, const std::string& tag,
                                  const ImportOptions& options = {});

}  // namespace fettle
