// Why: the spans of spectra are what remains of thinned years, so `check` asks whether they still say what
// the spectra say: none is below a spectrum that is kept, none counts fewer than are kept, a day is nowhere
// below its hours. Series that wait to be built are passed over.
#pragma once

#include <functional>
#include <string>

#include "core/base/progress.h"
#include "core/store/database.h"

namespace fettle {

// `found` gets each fault and says whether to go on.
using SpanFault = std::function<bool(const std::string& place, const std::string& rule)>;
Status checkSpans(Database& database, const SpanFault& found, const CancelToken& cancel);

}  // namespace fettle
