// Bearings by part of a designation, by size and by order. Sources beside the numbers.
#include "core/workshop/bearing_finder.h"

#include <gmock/gmock.h>

#include <set>

namespace fettle {
namespace {

using testing::Contains;

std::vector<KnownBearing> all() {
    auto known = knownBearings();
    EXPECT_TRUE(known) << (known ? "" : known.error().sentence());
    return known ? *known : std::vector<KnownBearing>{};
}

std::set<std::string> names(const std::vector<KnownBearing>& bearings) {
    std::set<std::string> out;
    for (const KnownBearing& bearing : bearings)
        out.insert(bearing.designation);
    return out;
}

struct SizeRow {
    const char* designation;
    double bore, outer, width;
};

// Source: ISO 15 boundary dimensions, from memory, sure.
TEST(BearingFinder, SizesFollowFromTheDesignation) {
    const SizeRow rows[] = {{"6203", 17, 40, 12},      {"6205 2RS", 25, 52, 15}, {"6316-2Z/C3", 80, 170, 39},
                            {"6322", 110, 240, 50},    {"6000", 10, 26, 8},      {"NU 316 ECM", 80, 170, 39},
                            {"22218 EK", 90, 160, 40}, {"7206", 30, 62, 16},     {"22308", 40, 90, 33},
                            {"30208", 40, 80, 0}};
    for (const SizeRow& row : rows) {
        const auto size = sizeOf(row.designation);
        ASSERT_TRUE(size) << size.error().sentence();
        ASSERT_TRUE(*size) << row.designation;
        EXPECT_EQ((*size)->boreMm, row.bore) << row.designation;
        EXPECT_EQ((*size)->outerMm, row.outer) << row.designation;
        EXPECT_EQ((*size)->widthMm, row.width) << row.designation;
    }
    for (const char* none : {"", "6", "ABC", "99999", "6299", "63 16", "631"})
        EXPECT_FALSE(sizeOf(none).value().has_value()) << none;
    EXPECT_EQ(typeOf("NU316"), "cylindrical_roller");
    EXPECT_EQ(typeOf("22218"), "spherical_roller");
    EXPECT_EQ(typeOf("6316"), "deep_groove");
    EXPECT_EQ(typeOf("hello"), "");
}

TEST(BearingFinder, ByPartOfTheDesignation) {
    const auto found = names(findBearings(all(), {"31", {}, {}, {}}));
    EXPECT_THAT(found, Contains("6316"));
    EXPECT_THAT(found, Contains("NU316"));
    EXPECT_FALSE(found.count("6205"));
    EXPECT_EQ(names(findBearings(all(), {"6316-2Z/C3", {}, {}, {}})), std::set<std::string>{"6316"});
    EXPECT_EQ(findBearings(all(), {"nu 31", {}, {}, {}}).empty(), false);
    EXPECT_TRUE(findBearings(all(), {"no such", {}, {}, {}}).empty());
}

// 25 x 52 x 15 is dimension series 02, 25 x 62 x 17 series 03 (ISO 15).
TEST(BearingFinder, BySizes) {
    const auto found = names(findBearings(all(), {"", 25, 52, 15}));
    EXPECT_THAT(found, Contains("6205"));
    EXPECT_THAT(found, Contains("7205"));
    EXPECT_FALSE(found.count("6305"));
    EXPECT_EQ(names(findBearings(all(), {"62", 25, {}, {}})), std::set<std::string>{"6205"});
    EXPECT_TRUE(findBearings(all(), {"", 26.2, 52, 15}).empty());
}

// The published multiples of the drive-end bearing of the CWRU bearing data rig: 3.5848 outer, 5.4152 inner,
// 4.7135 rolling element (twice the spin), 0.39828 cage.
TEST(BearingFinder, ByAnOrderFoundInASpectrum) {
    const auto known = all();
    const std::pair<double, BearingLine> published[] = {{3.5848, BearingLine::OuterRace},
                                                        {5.4152, BearingLine::InnerRace},
                                                        {4.7135, BearingLine::RollingElement},
                                                        {0.39828, BearingLine::Cage}};
    for (const auto& [order, line] : published) {
        bool there = false;
        for (const OrderFit& fit : fitOrder(known, order, 0.001))
            there = there || (known[fit.bearing].designation == "6205" && fit.line == line &&
                              fit.multiple == 1 && std::abs(fit.slip) < 1e-3);
        EXPECT_TRUE(there) << order;
    }
}

TEST(BearingFinder, SaysTheSlipAndTheMultipleNearestFirst) {
    const KnownBearing one{"T", "", {}, {}, BearingOrders{3.0, 5.0, 2.0, 0.375}, ""};
    const auto fits = fitOrder({one}, 6.06);
    ASSERT_EQ(fits.size(), 1u);
    EXPECT_EQ(fits[0].line, BearingLine::OuterRace);
    EXPECT_EQ(fits[0].multiple, 2);
    EXPECT_NEAR(fits[0].slip, 0.01, 1e-12);
    EXPECT_TRUE(fitOrder({one}, 6.2).empty());
    EXPECT_EQ(fitOrder({one}, 6.2, 0.04).size(), 1u);
    EXPECT_TRUE(fitOrder({one}, 0.75).empty());  // twice a cage's order is not looked for
    const auto near = fitOrder(all(), 3.0856);   // 6316, 8 x 28.575 on 125 mm: 8/2 (1 - 28.575/125)
    ASSERT_GT(near.size(), 2u);
    for (std::size_t i = 1; i < near.size(); ++i)
        EXPECT_LE(std::abs(near[i - 1].slip), std::abs(near[i].slip));
}

TEST(BearingFinder, NonsenseFindsNothing) {
    for (const double order : {0.0, -1.0, std::nan(""), 1e300, HUGE_VAL})
        EXPECT_TRUE(fitOrder(all(), order).empty()) << order;
    EXPECT_TRUE(fitOrder({}, 3.0).empty());
}

}  // namespace
}  // namespace fettle
