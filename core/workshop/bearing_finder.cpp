#include "core/workshop/bearing_finder.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <map>
#include <set>

#include "core/base/text.h"
#include "core/machine/resource.h"

namespace fettle {

namespace {

constexpr const char* kBuilds = "bearings.json";
constexpr const char* kSizes = "bearing_sizes.json";
constexpr double kSameMm = 0.5;
constexpr double kFirstCode = 4;  // bore = 5 x code from 04 on

// "NU 316 ECM" -> {"NU", "316"}
struct Basic {
    std::string letters, digits;
};

Basic basicOf(const std::string& designation) {
    Basic basic;
    const std::string text(trimmed(designation));
    std::size_t i = 0;
    for (; i < text.size() && std::isalpha(static_cast<unsigned char>(text[i])); ++i)
        basic.letters += char(std::toupper(text[i]));
    while (i < text.size() && (text[i] == ' ' || text[i] == '-'))
        ++i;
    for (; i < text.size() && std::isdigit(static_cast<unsigned char>(text[i])); ++i)
        basic.digits += text[i];
    return basic;
}

std::string compact(const std::string& text) {
    std::string out;
    for (const char c : text)
        if (c != ' ' && c != '-') out += char(std::toupper(static_cast<unsigned char>(c)));
    return out;
}

double boreOf(int code) {
    static const double first[] = {10, 12, 15, 17};
    return code < kFirstCode ? first[code] : 5.0 * code;
}

// One kind of bearing whose number is `start` and a bore code: its type and dimension series.
struct Series {
    std::string letters, start, type, dimensions;
    bool width = true;
};

struct SizeTable {
    std::vector<Series> series;
    std::map<std::string, std::map<int, BearingSize>> sizes;  // by dimension series and bore code
};

void readSeries(JsonObject& table, SizeTable& out) {
    const auto rows = table.list("series");
    for (std::size_t i = 0; i < rows.size(); ++i) {
        JsonObject row(*rows[i], table.place("series") + "/" + std::to_string(i), table.report());
        Series series{row.text("letters"), row.text("start", true), row.text("type", true),
                      row.text("dimensions", true), row.boolean("width").value_or(true)};
        out.series.push_back(std::move(series));
    }
}

void readSizes(JsonObject& table, SizeTable& out) {
    JsonObject all(table.raw("outer_width_mm"), table.place("outer_width_mm"), table.report());
    std::set<std::string> names;
    for (const Series& series : out.series)
        names.insert(series.dimensions);
    for (const std::string& name : names) {
        JsonObject codes(all.raw(name), all.place(name), table.report());
        for (int code = 0; code <= 30; ++code) {
            const std::string key = std::to_string(code);
            if (!codes.has(key)) continue;
            const auto pair = codes.numbers(key, 2, 1, 1000);
            if (pair.size() == 2) out.sizes[name][code] = {boreOf(code), pair[0], pair[1]};
        }
    }
}

Result<SizeTable> sizeTable() {
    const auto document = loadResource(kSizes);
    if (!document) return fail(document.error());
    JsonReport report{kSizes, {}, {}};
    SizeTable out;
    {
        JsonObject table(*document, "", report);
        for (const char* known : {"schema", "about", "source", "sure"})
            table.raw(known);
        readSeries(table, out);
        readSizes(table, out);
    }
    if (report.error) return fail(*report.error);
    return out;
}

struct Fitted {
    const Series* series = nullptr;
    int code = 0;
};

Fitted fitted(const SizeTable& table, const Basic& basic) {
    for (const Series& series : table.series) {
        const bool same = basic.letters == series.letters && basic.digits.starts_with(series.start) &&
                          basic.digits.size() == series.start.size() + 2;
        if (same) return {&series, std::stoi(basic.digits.substr(series.start.size()))};
    }
    return {};
}

std::optional<BearingSize> sizeIn(const SizeTable& table, const std::string& designation) {
    const Fitted fit = fitted(table, basicOf(designation));
    if (!fit.series) return std::nullopt;
    const auto& codes = table.sizes.at(fit.series->dimensions);
    const auto found = codes.find(fit.code);
    if (found == codes.end()) return std::nullopt;
    BearingSize size = found->second;
    if (!fit.series->width) size.widthMm = 0;
    return size;
}

std::string typeIn(const SizeTable& table, const std::string& designation) {
    const Fitted fit = fitted(table, basicOf(designation));
    return fit.series ? fit.series->type : std::string();
}

Result<std::vector<KnownBearing>> builds(const SizeTable& sizes) {
    const auto document = loadResource(kBuilds);
    if (!document) return fail(document.error());
    JsonReport report{kBuilds, {}, {}};
    std::vector<KnownBearing> all;
    {
        JsonObject table(*document, "", report);
        const auto rows = table.list("bearings");
        for (std::size_t i = 0; i < rows.size(); ++i) {
            JsonObject row(*rows[i], table.place("bearings") + "/" + std::to_string(i), report);
            const BearingGeometry build{row.integer("rolling_elements", 3, 300, true).value_or(3),
                                        row.number("element_mm", 0.1, 1000, true).value_or(1),
                                        row.number("pitch_mm", 0.5, 20000, true).value_or(2),
                                        row.number("contact_deg", 0, 85).value_or(0)};
            const std::string name = row.text("designation", true);
            all.push_back({name, typeIn(sizes, name), sizeIn(sizes, name), build, ordersOf(build),
                           row.text("source", true)});
        }
    }
    if (report.error) return fail(*report.error);
    return all;
}

std::string nameOf(const Series& series, int code) {
    return series.letters + series.start + (code < 10 ? "0" : "") + std::to_string(code);
}

bool near(const std::optional<double>& wanted, double size) {
    return !wanted || (size > 0 && std::abs(*wanted - size) <= kSameMm);
}

double orderOf(const BearingOrders& orders, BearingLine line) {
    switch (line) {
        case BearingLine::OuterRace:
            return orders.bpfo;
        case BearingLine::InnerRace:
            return orders.bpfi;
        case BearingLine::RollingElement:
            return 2 * orders.bsf;
        case BearingLine::Cage:
            break;
    }
    return orders.ftf;
}

}  // namespace

std::string typeOf(const std::string& designation) {
    const auto table = sizeTable();
    return table ? typeIn(*table, designation) : std::string();
}

Result<std::optional<BearingSize>> sizeOf(const std::string& designation) {
    const auto table = sizeTable();
    if (!table) return fail(table.error());
    return sizeIn(*table, designation);
}

Result<std::vector<KnownBearing>> knownBearings() {
    const auto table = sizeTable();
    if (!table) return fail(table.error());
    auto all = builds(*table);
    if (!all) return all;
    std::set<std::string> built;
    for (const KnownBearing& bearing : *all)
        built.insert(bearing.designation);
    for (const Series& series : table->series)
        for (const auto& [code, size] : table->sizes.at(series.dimensions)) {
            const std::string name = nameOf(series, code);
            if (!built.count(name))
                all->push_back({name, series.type, sizeIn(*table, name), std::nullopt, std::nullopt, {}});
        }
    std::stable_sort(all->begin(), all->end(), [](const KnownBearing& a, const KnownBearing& b) {
        if (a.build.has_value() != b.build.has_value()) return a.build.has_value();
        return a.designation < b.designation;
    });
    return all;
}

std::vector<KnownBearing> findBearings(const std::vector<KnownBearing>& all, const BearingWish& wish) {
    const std::string part = compact(wish.part);
    const Basic basic = basicOf(wish.part);
    const bool sized = wish.boreMm || wish.outerMm || wish.widthMm;
    std::vector<KnownBearing> found;
    for (const KnownBearing& bearing : all) {
        // "6316-2Z/C3" asks for 6316 as well.
        const bool named =
            part.empty() || bearing.designation.find(part) != std::string::npos ||
            (part.size() > bearing.designation.size() && bearing.designation == basic.letters + basic.digits);
        const bool fits = !sized || (bearing.size && near(wish.boreMm, bearing.size->boreMm) &&
                                     near(wish.outerMm, bearing.size->outerMm) &&
                                     near(wish.widthMm, bearing.size->widthMm));
        if (named && fits) found.push_back(bearing);
    }
    return found;
}

std::vector<OrderFit> fitOrder(const std::vector<KnownBearing>& all, double order, double tolerance,
                               int most) {
    std::vector<OrderFit> fits;
    if (!(order > 0) || !std::isfinite(order)) return fits;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (!all[i].orders) continue;
        for (const BearingLine line :
             {BearingLine::OuterRace, BearingLine::InnerRace, BearingLine::RollingElement, BearingLine::Cage})
            for (int k = 1; k <= (line == BearingLine::Cage ? 1 : most); ++k) {
                const double expected = k * orderOf(*all[i].orders, line);
                const double slip = order / expected - 1;
                if (std::abs(slip) <= tolerance) fits.push_back({i, line, k, expected, slip});
            }
    }
    std::stable_sort(fits.begin(), fits.end(), [](const OrderFit& a, const OrderFit& b) {
        return std::abs(a.slip) < std::abs(b.slip);
    });
    return fits;
}

}  // namespace fettle
