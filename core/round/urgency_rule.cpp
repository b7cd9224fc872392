#include "core/round/urgency_rule.h"

namespace fettle {

namespace {

// As the shipped table for criticality B; common practice, no source.
std::string builtIn(const Severity& severity, bool greyOnly) {
    const std::string& value = severity.value;
    std::string urgency = "leave";
    if (value == "early") urgency = "watch";
    if (value == "developed" || value == "C") urgency = "plan";
    if (value == "late" || value == "D") urgency = "act";
    return greyOnly ? calmerOf(urgency, "watch") : urgency;
}

}  // namespace

UrgencyRule::UrgencyRule() {
    auto table = UrgencyTable::load();
    if (table)
        table_ = std::move(*table);
    else
        problem_ = table.error().sentence() + "; urgency by the built-in table";
}

std::string UrgencyRule::of(const Severity& severity, const std::string& criticality, bool greyOnly) const {
    if (!table_) return builtIn(severity, greyOnly);
    const bool known = criticality == "A" || criticality == "C";
    return table_->urgencyOf(severity, known ? criticality : "B", greyOnly);
}

std::string calmerOf(const std::string& a, const std::string& b) {
    return urgencyRank(a) <= urgencyRank(b) ? a : b;
}

std::string graverOf(const std::string& a, const std::string& b) {
    return urgencyRank(a) >= urgencyRank(b) ? a : b;
}

}  // namespace fettle
