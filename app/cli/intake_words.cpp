#include "app/cli/intake_words.h"

#include <fmt/format.h>

#include <cstdio>

#include "app/cli/answer.h"
#include "app/cli/load.h"
#include "core/base/text.h"
#include "core/fleet/alert_post.h"

namespace fettle {

void tellRefused(const Refusal& refusal) {
    tell(refusal.kind + ": " +
         Error{ErrorKind::Invalid, refusal.path, refusal.place, refusal.rule}.sentence());
}

void tellWaitingAlerts(FleetFile& fleet) {
    const auto waiting = alertsToSend(fleet);
    if (!waiting) return tell("note: alerts: " + waiting.error().sentence());
    if (*waiting == 0) return;
    tell(fmt::format("{} to be sent; what is due is sent by: fettle-cli alerts {} --run",
                     counted(*waiting, "alert waits", "alerts wait"), oneLine(fleet.path())));
}

void tellTaken(const std::vector<std::string>& paths) {
    for (const std::string& path : paths)
        if (path == oneLine(path, path.size())) print(path + "\n");
    std::fflush(stdout);
}

}  // namespace fettle
