#include "core/diagnosis/urgency.h"

#include "core/machine/resource.h"

namespace fettle {

namespace {
const std::vector<std::string> kWords = {"leave", "watch", "plan", "act"};
constexpr const char* kUrgencyFile = "urgency.json";
}  // namespace

int urgencyRank(const std::string& urgency) {
    for (std::size_t i = 0; i < kWords.size(); ++i)
        if (kWords[i] == urgency) return int(i);
    return -1;
}

Result<UrgencyTable> UrgencyTable::load() {
    const auto json = sharedResource(kUrgencyFile);
    if (!json) return fail(json.error());
    JsonReport report{kUrgencyFile, {}, {}};
    UrgencyTable table;
    {
        JsonObject root(**json, "", report);
        root.raw("schema");
        root.raw("about");
        root.raw("grey_only_about");
        table.greyOnlyMost_ = root.word("grey_only_most", kWords, true);
        for (const Json* item : root.list("rows")) {
            JsonObject row(*item, "/rows", report);
            table.rows_.push_back({row.text("kind", true), row.text("value", true),
                                   row.text("criticality", true), row.word("urgency", kWords, true)});
        }
    }
    if (report.error) return fail(*report.error);
    return table;
}

std::string UrgencyTable::urgencyOf(const Severity& severity, const std::string& criticality,
                                    bool greyOnly) const {
    for (const Row& row : rows_) {
        if (row.kind != severity.kind || row.value != severity.value || row.criticality != criticality)
            continue;
        return greyOnly && urgencyRank(row.urgency) > urgencyRank(greyOnlyMost_) ? greyOnlyMost_
                                                                                 : row.urgency;
    }
    return "leave";
}

}  // namespace fettle
