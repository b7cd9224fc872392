// Why: recordings as universal files, data set 58 (text) or 58b (bytes), which measuring programs of every
// kind read: one data set a channel, real double precision, evenly spaced. 58b holds every sample bit for
// bit; text holds 13 digits. The increment has six digits as the format wants them, or eight where six would
// not give the rate back. Description: machine, point, channel; date in UTC; response entity the point where
// its name fits; direction of channels x, y, z. Text of users becomes printable ASCII that no reader takes
// for a mark. Memory: one line at a time. Thread: pure. Errors: those of the sink. Source: as
// core/signal/uff_function.h.
#pragma once

#include <functional>
#include <string_view>

#include "core/base/result.h"
#include "core/signal/recording.h"

namespace fettle {

enum class UffText { Columns, Binary };
using ByteSink = std::function<Status(std::string_view)>;

Status writeUff(const Recording& recording, UffText form, const ByteSink& sink);

}  // namespace fettle
