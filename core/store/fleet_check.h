// Why: whether everything in a fleet file is whole is asked by `check`, before a backup is trusted and after
// a crash. Goes on after each fault it finds, as far as the file can be read.
#pragma once

#include "core/base/progress.h"
#include "core/store/database.h"

namespace fettle {

// See FleetFile::check.
Result<std::vector<std::string>> findFaults(Database& database, bool deep, const Progress& progress,
                                            const CancelToken& cancel);

}  // namespace fettle
