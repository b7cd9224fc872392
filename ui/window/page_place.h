// Why: the page shown is always a function of (fleet file, machine, time, fault); this is that function's
// argument, as the command line gives it and as the window remembers it. Plain data.
#pragma once

#include <QString>
#include <optional>

#include "core/base/time.h"

namespace fettle {

struct PagePlace {
    QString page;  // round machine register; empty: machine where one is named, else round
    QString machine, at, fault;
    std::optional<Instant> time;
    QString dialog;  // import refused event start close keys help about new sheet; empty: none
};

}  // namespace fettle
