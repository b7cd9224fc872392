#include "core/machine/bearing.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <numbers>
#include <optional>

#include "core/base/text.h"
#include "core/machine/resource.h"

namespace fettle {

namespace {
constexpr const char* kTable = "bearings.json";

// "NU 316 ECM" -> {"NU", "316"}; "6205 2RS" -> {"", "6205"}. Letters first, then digits; what follows is a
// suffix.
struct BasicDesignation {
    std::string letters, digits;
};

BasicDesignation basicOf(const std::string& designation) {
    BasicDesignation basic;
    const std::string_view text = trimmed(designation);
    std::size_t i = 0;
    const auto at = [&](int (*is)(int)) {
        return i < text.size() && is(static_cast<unsigned char>(text[i]));
    };
    for (; at(std::isalpha); ++i)
        basic.letters += static_cast<char>(std::toupper(text[i]));
    while (i < text.size() && (text[i] == ' ' || text[i] == '-'))
        ++i;
    for (; at(std::isdigit); ++i)
        basic.digits += text[i];
    return basic;
}

BearingVariant variantOf(JsonObject& row, TurningRing turning) {
    BearingGeometry geometry;
    geometry.rollingElements = row.integer("rolling_elements", 3, 300, true).value_or(3);
    geometry.elementMm = row.number("element_mm", 0.1, 1000, true).value_or(1);
    geometry.pitchMm = row.number("pitch_mm", 0.5, 20000, true).value_or(2);
    geometry.contactDeg = row.number("contact_deg", 0, 85).value_or(0);
    if (const std::string rule = ruleBroken(geometry); !rule.empty())
        row.report().broken(row.place("pitch_mm"), rule);
    BearingVariant variant = asVariant(geometry, turning);
    variant.source = row.text("source", true);
    row.text("sure", true);
    return variant;
}

// All rows where no designation is asked for.
std::vector<BearingVariant> rowsOf(const std::optional<std::string>& designation, JsonObject& table,
                                   TurningRing turning) {
    std::vector<BearingVariant> variants;
    const auto rows = table.list("bearings");
    for (std::size_t i = 0; i < rows.size(); ++i) {
        JsonObject row(*rows[i], table.place("bearings") + "/" + std::to_string(i), table.report());
        BearingVariant variant = variantOf(row, turning);
        const std::string of = row.text("designation", true);
        if (!designation || of == *designation) variants.push_back(std::move(variant));
    }
    return variants;
}
}  // namespace

BearingOrders ordersOf(const BearingGeometry& geometry, TurningRing turning) {
    const double contact = geometry.contactDeg * std::numbers::pi / 180;
    const double r = geometry.elementMm / geometry.pitchMm * std::cos(contact);
    BearingOrders orders;
    orders.bpfo = geometry.rollingElements * (1 - r) / 2;
    orders.bpfi = geometry.rollingElements * (1 + r) / 2;
    orders.bsf = geometry.pitchMm / (2 * geometry.elementMm) * (1 - r * r);
    orders.ftf = (turning == TurningRing::Inner ? 1 - r : 1 + r) / 2;
    return orders;
}

std::string ruleBroken(const BearingGeometry& geometry) {
    if (geometry.elementMm >= geometry.pitchMm)
        return fmt::format("element_mm {} must be smaller than pitch_mm {}", geometry.elementMm,
                           geometry.pitchMm);
    const double most = std::numbers::pi / std::asin(geometry.elementMm / geometry.pitchMm);
    if (geometry.rollingElements <= most * 1.001) return "";
    return fmt::format("{} elements of {} mm do not fit round a pitch circle of {} mm, at most {} do",
                       geometry.rollingElements, geometry.elementMm, geometry.pitchMm, std::floor(most));
}

BearingVariant asVariant(const BearingGeometry& geometry, TurningRing turning) {
    BearingVariant variant;
    variant.name =
        fmt::format("{} x {} mm on {} mm", geometry.rollingElements, geometry.elementMm, geometry.pitchMm);
    if (geometry.contactDeg > 0) variant.name += fmt::format(", {} degrees", geometry.contactDeg);
    variant.orders = ordersOf(geometry, turning);
    variant.rollingElements = geometry.rollingElements;
    return variant;
}

Result<std::vector<BearingVariant>> typicalVariants(const std::string& designation, TurningRing turning) {
    const auto document = loadResource(kTable);
    if (!document) return fail(document.error());
    JsonReport report{kTable, {}, {}};
    JsonObject table(*document, "", report);
    const BasicDesignation basic = basicOf(designation);
    auto variants = rowsOf(basic.letters + basic.digits, table, turning);
    const auto passedOver = table.texts("prefixes_passed_over");
    if (variants.empty() &&
        std::find(passedOver.begin(), passedOver.end(), basic.letters) != passedOver.end())
        variants = rowsOf(basic.digits, table, turning);
    if (report.error) return fail(*report.error);
    return variants;
}

Result<std::vector<BearingVariant>> allTypicalVariants() {
    const auto document = loadResource(kTable);
    if (!document) return fail(document.error());
    JsonReport report{kTable, {}, {}};
    JsonObject table(*document, "", report);
    auto variants = rowsOf(std::nullopt, table, TurningRing::Inner);
    if (report.error) return fail(*report.error);
    return variants;
}

}  // namespace fettle
