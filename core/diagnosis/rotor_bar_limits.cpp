#include "core/diagnosis/rotor_bar_limits.h"

#include "core/machine/resource.h"

namespace fettle {

namespace {
constexpr const char* kFile = "rotor_bar_limits.json";
}

Result<RotorBarLimits> RotorBarLimits::load() {
    const auto json = sharedResource(kFile);
    if (!json) return fail(json.error());
    JsonReport report{kFile, {}, {}};
    RotorBarLimits limits;
    {
        JsonObject root(**json, "", report);
        root.raw("schema");
        root.raw("about");
        limits.basis = root.text("basis", true);
        for (const Json* item : root.list("rows")) {
            JsonObject row(*item, "/rows", report);
            limits.rows.push_back({row.word("value", {"watch", "suspect", "probable"}, true),
                                   row.number("below_db", 0, 120, true).value_or(0),
                                   row.boolean("count_bars").value_or(false)});
        }
    }
    if (report.error) return fail(*report.error);
    return limits;
}

const RotorBarLimits::Row* RotorBarLimits::rowOf(double belowDb) const {
    const Row* gravest = nullptr;
    for (const Row& row : rows)
        if (belowDb < row.belowDb && (!gravest || row.belowDb < gravest->belowDb)) gravest = &row;
    return gravest;
}

}  // namespace fettle
