// Why: what was asked for, told, and kept beside the machines' history, as tables like the others of
// export_tables.h: alert rules, alerts, what of them was sent, requests, steps of jobs, photographs,
// balancing and trials, reading rules, verdicts that weighing again changed. Where alerts are sent is left
// out: it is one user's on one computer, and a program's arguments may hold a secret. Thread: as the
// FleetFile. Errors: those of the stores.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "app/cli/export_span.h"
#include "core/base/json_object.h"

namespace fettle {

using ExportRow = std::function<void(const std::vector<Json>&)>;

struct MoreTable {
    std::string name;
    std::vector<std::string> columns;
    Status (*fill)(FleetFile&, const ExportSpan&, const ExportRow&);
};

const std::vector<MoreTable>& moreTables();

}  // namespace fettle
