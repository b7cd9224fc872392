#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/machine/machine_parse.h"

namespace fettle::machine_parse {

namespace {

constexpr double kSameOrder = 0.001;  // relative: no record tells them apart
constexpr std::size_t kMostVariants = 16;

std::optional<BearingGeometry> readGeometry(JsonObject& object) {
    const auto count = object.integer("rolling_elements", 3, 300);
    const auto element = object.number("element_mm", 0.1, 1000);
    const auto pitch = object.number("pitch_mm", 0.5, 20000);
    const auto contact = object.number("contact_deg", 0, 85);
    if (!count && !element && !pitch) return std::nullopt;
    if (!count || !element || !pitch) {
        object.report().broken(object.place("rolling_elements"),
                               "rolling_elements, element_mm and pitch_mm are given together or not at all");
        return std::nullopt;
    }
    const BearingGeometry geometry{*count, *element, *pitch, contact.value_or(0)};
    const std::string rule = ruleBroken(geometry);
    if (rule.empty()) return geometry;
    object.report().broken(object.place("pitch_mm"), rule);
    return std::nullopt;
}

// What follows from bpfo and bpfi alone: the number of elements and r = d cos(contact) / D.
struct Implied {
    double elements = 0, r = 0;
};

// bpfo + bpfi = number of elements, exactly, in pure rolling.
std::optional<Implied> implied(JsonObject& orders, double bpfo, double bpfi) {
    const Implied found{std::round(bpfo + bpfi), (bpfi - bpfo) / (bpfo + bpfi)};
    if (bpfo >= bpfi) {
        orders.report().broken(orders.place("bpfo"),
                               fmt::format("is {}, must be less than bpfi {}", bpfo, bpfi));
        return std::nullopt;
    }
    const double most = std::min(0.02 * found.elements, 0.2);
    if (std::abs(bpfo + bpfi - found.elements) <= most && found.elements >= 3) return found;
    orders.report().broken(
        orders.place("bpfi"),
        fmt::format("bpfo + bpfi is {}, must be the number of rolling elements: a whole number, 3 or "
                    "more, to within 2 %",
                    bpfo + bpfi));
    return std::nullopt;
}

double readCage(JsonObject& object, const Implied& from, TurningRing turning) {
    const double expected = (turning == TurningRing::Inner ? 1 - from.r : 1 + from.r) / 2;
    const auto given = object.number("ftf", 0.05, 0.95);
    if (given && std::abs(*given / expected - 1) > 0.02)
        object.report().warn(object.place("ftf"),
                             fmt::format("is {}, the other orders imply {:.4f}", *given, expected));
    return given.value_or(expected);
}

// D/d = cos(contact) / r, so bsf = cos(contact) (1 - r^2) / (2 r): at most its value at contact angle 0.
double readSpin(JsonObject& object, const Implied& from) {
    const double most = (1 - from.r * from.r) / (2 * from.r);
    const auto given = object.number("bsf", 0.01, 200);
    if (!given)
        object.report().warn(object.place("bsf"),
                             fmt::format("not given, taken as {:.4f}: contact angle 0", most));
    if (given && *given > 1.5 * most)
        object.report().broken(
            object.place("bsf"),
            fmt::format("is {}, but with these bpfo and bpfi an element spins at most {:.4f} times: "
                        "give the spin frequency, not twice it",
                        *given, most));
    return given.value_or(most);
}

std::optional<BearingVariant> readOrders(JsonObject& bearing, TurningRing turning) {
    const Json& value = bearing.raw("orders");
    if (value.is_null()) return std::nullopt;
    JsonObject object(value, bearing.place("orders"), bearing.report());
    const auto bpfo = object.number("bpfo", 0.1, 300, true);
    const auto bpfi = object.number("bpfi", 0.1, 300, true);
    const auto from = bpfo && bpfi ? implied(object, *bpfo, *bpfi) : std::nullopt;
    const Implied sound = from.value_or(Implied{8, 0.25});
    BearingVariant variant;
    variant.name = "orders as given";
    variant.orders = {bpfo.value_or(3), bpfi.value_or(5), readSpin(object, sound),
                      readCage(object, sound, turning)};
    variant.rollingElements = static_cast<int>(sound.elements);
    return variant;
}

// Geometry, orders, or both where they differ: then one of them is wrong and neither is dropped.
std::vector<BearingVariant> readVariants(JsonObject& object, TurningRing turning) {
    std::vector<BearingVariant> variants;
    if (const auto geometry = readGeometry(object)) variants.push_back(asVariant(*geometry, turning));
    if (auto given = readOrders(object, turning)) {
        const double off = variants.empty() ? 1 : std::abs(variants[0].orders.bpfo / given->orders.bpfo - 1);
        if (!variants.empty() && off > 0.005)
            object.report().warn(
                object.place("orders"),
                fmt::format("bpfo {} does not fit the geometry, which gives {:.4f}: both are looked for",
                            given->orders.bpfo, variants[0].orders.bpfo));
        if (off > kSameOrder) variants.push_back(std::move(*given));
    }
    const std::string source = object.text("source");
    for (BearingVariant& variant : variants) {
        variant.source = source.empty() ? "register" : source;
        variant.confirmed = true;
    }
    return variants;
}

// A geometry that differs from one that is known by less than any record can tell is that one.
void addNew(std::vector<BearingVariant> more, std::vector<BearingVariant>& variants) {
    for (BearingVariant& one : more) {
        const bool known = std::any_of(variants.begin(), variants.end(), [&](const BearingVariant& other) {
            return one.rollingElements == other.rollingElements &&
                   std::abs(one.orders.bpfo / other.orders.bpfo - 1) <= kSameOrder;
        });
        if (!known) variants.push_back(std::move(one));
    }
}

// Other makers' builds of the same designation, as this site knows them: each like the bearing's own.
std::vector<BearingVariant> readOtherMakers(JsonObject& object, TurningRing turning) {
    std::vector<BearingVariant> all;
    const auto items = readList(object, "variants", kMostVariants);
    for (std::size_t i = 0; i < items.size(); ++i) {
        JsonObject item(*items[i], fmt::format("{}/{}", object.place("variants"), i), object.report());
        std::vector<BearingVariant> one = readVariants(item, turning);
        if (one.empty())
            item.report().broken(item.place("rolling_elements"), "a variant has a geometry or orders");
        all.insert(all.end(), one.begin(), one.end());
    }
    return all;
}

// `others`: geometries of the site's own are known besides.
void takeTypical(JsonObject& object, Bearing& bearing, bool others) {
    if (bearing.designation.empty() && others) return;
    if (bearing.designation.empty()) {
        bearing.whyNone = "no designation, geometry or orders are given";
        return;
    }
    auto typical = typicalVariants(bearing.designation, bearing.turning);
    if (!typical) {
        bearing.whyNone = typical.error().sentence();
        object.report().warn(object.place("designation"), bearing.whyNone);
        return;
    }
    bearing.variants = std::move(*typical);
    if (bearing.variants.empty() && !others)
        bearing.whyNone = "no geometry of " + bearing.designation + " is known";
}

Bearing readBearing(JsonObject& object) {
    Bearing bearing;
    bearing.designation = object.text("designation");
    bearing.type = object.word("type", {"deep_groove", "angular", "cylindrical_roller", "spherical_roller",
                                        "taper_roller", "sleeve"});
    bearing.rows = object.integer("rows", 1, 8).value_or(1);
    if (object.word("turning", {"inner", "outer"}) == "outer") bearing.turning = TurningRing::Outer;
    bearing.variants = readVariants(object, bearing.turning);
    auto otherMakers = readOtherMakers(object, bearing.turning);
    if (bearing.type == "sleeve") {
        bearing.variants.clear();
        bearing.whyNone = "plain bearing: no rolling elements";
        return bearing;
    }
    if (bearing.variants.empty()) takeTypical(object, bearing, !otherMakers.empty());
    addNew(std::move(otherMakers), bearing.variants);
    return bearing;
}

// A gearbox carries several shafts in one housing: a bearing may name its own.
std::size_t readShaft(JsonObject& object, std::size_t usual, const Machine& machine) {
    const std::string id = object.text("shaft");
    if (id.empty()) return usual;
    const auto found = machine.shaftById(id);
    if (!found) object.report().broken(object.place("shaft"), "no shaft is named \"" + id + "\"");
    return found.value_or(usual);
}
}  // namespace

void readBearings(const Json& bearings, const std::string& place, const std::string& component,
                  std::size_t shaft, Reading& reading) {
    if (bearings.is_null()) return;
    if (!bearings.is_object())
        return reading.report.broken(place, "must be an object of bearings by position: DE, NDE");
    for (const auto& item : bearings.items()) {
        const std::string itemPlace = place + "/" + item.key().substr(0, 100);
        if (item.key().empty() || item.key().size() > 40)
            reading.report.broken(place, "a position has 1 to 40 bytes: DE, NDE");
        if (reading.machine.bearings.size() >= kMostBearings)
            return reading.report.broken(place, fmt::format("more than {} bearings", kMostBearings));
        JsonObject object(item.value(), itemPlace, reading.report);
        const std::size_t own = readShaft(object, shaft, reading.machine);
        reading.machine.bearings.push_back(
            {component + " " + item.key(), own, component, readBearing(object)});
    }
}

}  // namespace fettle::machine_parse
