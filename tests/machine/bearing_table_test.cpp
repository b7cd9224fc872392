// The table of common sizes: orders of every row, and how a plate's designation finds it.
#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

#include "core/machine/bearing.h"

namespace fettle {
namespace {

std::vector<BearingVariant> typical(const std::string& designation,
                                    TurningRing turning = TurningRing::Inner) {
    const auto variants = typicalVariants(designation, turning);
    if (variants) return *variants;
    ADD_FAILURE() << variants.error().sentence();
    return {};
}

struct TypicalRow {
    const char* designation;
    int elements;
    BearingOrders orders;  // bpfo, bpfi, bsf, ftf
};

// Orders computed with NumPy 1.24.2 from typical sizes (from memory, doubtful: makers differ).
const std::vector<TypicalRow>& typicalRows() {
    static const std::vector<TypicalRow> rows = {
        {"6203", 8, {3.0531, 4.9469, 1.9937, 0.3816}},  {"6204", 8, {3.0522, 4.9478, 1.9916, 0.3815}},
        {"6205", 9, {3.5722, 5.4278, 2.3220, 0.3969}},  {"6206", 9, {3.5682, 5.4318, 2.3112, 0.3965}},
        {"6207", 9, {3.5653, 5.4347, 2.3035, 0.3961}},  {"6208", 9, {3.6071, 5.3930, 2.4205, 0.4008}},
        {"6209", 9, {3.6208, 5.3792, 2.4614, 0.4023}},  {"6210", 10, {4.0929, 5.9071, 2.6652, 0.4093}},
        {"6211", 10, {4.0782, 5.9218, 2.6199, 0.4078}}, {"6212", 10, {4.0662, 5.9338, 2.5838, 0.4066}},
        {"6305", 7, {2.5740, 4.4260, 1.7575, 0.3677}},  {"6306", 8, {3.0588, 4.9412, 2.0074, 0.3824}},
        {"6307", 8, {3.0613, 4.9387, 2.0132, 0.3827}},  {"6308", 8, {3.0719, 4.9281, 2.0390, 0.3840}},
        {"6309", 8, {3.0366, 4.9634, 1.9555, 0.3796}},  {"6310", 8, {3.0475, 4.9525, 1.9807, 0.3809}},
        {"6311", 8, {3.0565, 4.9435, 2.0019, 0.3821}},  {"6312", 8, {3.0642, 4.9358, 2.0203, 0.3830}},
        {"6313", 8, {3.0708, 4.9292, 2.0361, 0.3838}},  {"6314", 8, {3.0764, 4.9236, 2.0499, 0.3845}},
        {"6315", 8, {3.0813, 4.9187, 2.0621, 0.3852}},  {"6316", 8, {3.0856, 4.9144, 2.0729, 0.3857}},
        {"6317", 8, {3.0894, 4.9106, 2.0827, 0.3862}},  {"6318", 8, {3.0929, 4.9071, 2.0913, 0.3866}},
        {"6319", 8, {3.0959, 4.9041, 2.0992, 0.3870}},  {"6320", 8, {3.0727, 4.9273, 2.0409, 0.3841}},
        {"6322", 8, {3.0566, 4.9434, 2.0020, 0.3821}}};
    return rows;
}

TEST(BearingTable, EveryTypicalSizeHasItsOrders) {
    for (const TypicalRow& row : typicalRows()) {
        SCOPED_TRACE(row.designation);
        const auto variants = typical(row.designation);
        ASSERT_FALSE(variants.empty());
        EXPECT_EQ(variants[0].rollingElements, row.elements);
        EXPECT_NEAR(variants[0].orders.bpfo, row.orders.bpfo, 1.01e-4);
        EXPECT_NEAR(variants[0].orders.bpfi, row.orders.bpfi, 1.01e-4);
        EXPECT_NEAR(variants[0].orders.bsf, row.orders.bsf, 1.01e-4);
        EXPECT_NEAR(variants[0].orders.ftf, row.orders.ftf, 1.01e-4);
    }
}

TEST(BearingTable, NoSizeOfTheTableIsTakenAsConfirmed) {
    for (const TypicalRow& row : typicalRows())
        for (const BearingVariant& variant : typical(row.designation)) {
            EXPECT_FALSE(variant.confirmed) << row.designation;
            EXPECT_NE(variant.source.find("typical, confirm"), std::string::npos) << row.designation;
        }
}

// The pitch of 39.04 mm (1.537 in) belongs to the published CWRU list, the 38.5 mm is (25 + 52) / 2.
TEST(BearingTable, SeveralGeometriesOfOneDesignation) {
    const auto of6205 = typical("6205");
    ASSERT_EQ(of6205.size(), 2u);
    EXPECT_NEAR(of6205[0].orders.bpfo, 3.5722, 1e-4);
    EXPECT_NEAR(of6205[1].orders.bpfo, 3.5848, 1e-4);
    EXPECT_EQ(of6205[1].name, "9 x 7.94 mm on 39.04 mm");
    EXPECT_EQ(typical("61804 2RS").size(), 1u);  // BPFO 5.611, worked out from 13 x 3.5 on 25.6 mm
    EXPECT_NEAR(typical("6804")[0].orders.bpfo, 5.6113, 1e-4);
    EXPECT_NEAR(typical("UC204")[0].orders.bpfo, 3.0831, 1e-4);
    const auto of6203 = typical("6203");
    ASSERT_EQ(of6203.size(), 2u);
    EXPECT_NEAR(of6203[0].orders.bpfo, 3.0530, 1e-4);     // CWRU fan end
    EXPECT_NEAR(of6203[1].orders.bpfo, 3.0542907, 1e-6);  // Paderborn
}

// Suffixes for clearance, seals, shields, cages and grease do not change the inner build (ISO 15, common
// practice).
TEST(BearingTable, SuffixesArePassedOver) {
    const std::vector<std::pair<std::string, std::string>> same = {
        {"6316-2Z/C3", "6316"}, {"6316 C3", "6316"}, {"6205 2RS", "6205"},     {"6203ZZ", "6203"},
        {"6205.2RSR", "6205"},  {" 6310 ", "6310"},  {"6205N/6205NR", "6205"}, {"6309-2RS1", "6309"},
        {"S6205", "6205"},      {"W 6204", "6204"}};
    for (const auto& [plate, basic] : same) {
        const auto found = typical(plate), expected = typical(basic);
        ASSERT_EQ(found.size(), expected.size()) << plate;
        EXPECT_EQ(found[0].name, expected[0].name) << plate;
    }
}

TEST(BearingTable, UnknownDesignationsFindNothing) {
    for (const char* plate : {"NU 316 ECM", "22218", "22218 EK", "7316", "16205", "62052RS", "620", "NU6205",
                              "", "bearing", "62/22", "\xff\xfe", "6205999999999999999999999"})
        EXPECT_TRUE(typical(plate).empty()) << plate;
}

TEST(BearingTable, TurningOuterRingReachesTheTable) {
    const double inner = typical("6306")[0].orders.ftf,
                 outer = typical("6306", TurningRing::Outer)[0].orders.ftf;
    EXPECT_NEAR(inner + outer, 1, 1e-12);
}

}  // namespace
}  // namespace fettle
