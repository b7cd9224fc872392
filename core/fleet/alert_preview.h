// Why: what the rules say of a moment, of the past above all, is asked without consequences: nothing is
// written, nothing sent, and the alerts that stand are not looked at. Each is told with where and when it
// would have gone as the delivery is set now. Thread: as the FleetFile, which may be read-only. Errors: those
// of the stores, and of a delivery that cannot be read.
#pragma once

#include <vector>

#include "core/base/json_object.h"
#include "core/fleet/alerts.h"

namespace fettle {

struct PreviewedAlert {
    Alert alert;                    // without an id
    std::vector<std::string> ways;  // as AlertWays names them; empty: listed alone
    Instant due{};                  // when it would have been sent, the hour's number of messages aside
};

struct AlertPreview {
    Instant asOf{};
    std::size_t machines = 0;            // looked at
    std::vector<PreviewedAlert> alerts;  // gravest first
};

Result<AlertPreview> previewAlerts(FleetFile& fleet, Instant asOf);

Json toJson(const PreviewedAlert& alert);
// "C-SHAKE  Zone D  since 2026-05-05T06:20:00Z  Vibration at ...; to mail a@site.example on 2026-..."
std::string lineOf(const PreviewedAlert& alert);

}  // namespace fettle
