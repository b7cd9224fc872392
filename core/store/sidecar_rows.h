// Why: sidecars stay for ever, and one hardly differs from the one before it at its point: it is kept as what
// it changes of a pattern, an earlier one, at about a tenth of its bytes. A point's newest patterns are
// tried; where none fits the text becomes one. Short texts stand in the recording's own row, as all of files
// from before did. Comes back to the byte. Errors: Damaged for what cannot be unpacked. Thread: the file's.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/store/database.h"

namespace fettle {

// Whether it stands in the recording's own row.
bool isShortSidecar(std::string_view text);
// Of a recording that is put in already, by the point its sidecar named; in the caller's transaction.
Status putSidecar(Database& database, std::int64_t recording, std::int64_t machine, const std::string& point,
                  std::string_view text);
// JSON text as found, empty where there was none; nothing where there is no such recording.
Result<std::optional<std::string>> sidecarOf(Database& database, std::int64_t recording);

}  // namespace fettle
