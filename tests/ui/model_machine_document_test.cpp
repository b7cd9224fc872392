// The register's form edits the description itself: unknown keys survive, troubles stand at their places.
#include "ui/model/machine_document.h"

#include <gtest/gtest.h>

#include <QSignalSpy>

#include "ui/model/json_table_model.h"

namespace fettle {
namespace {

constexpr const char* kText =
    R"({"tag": "KL-ID-01", "mains_hz": 50, "paint": {"colour": "grey"},
        "driver": {"poles": 4, "rated_rpm": 1484, "bearings": {"DE": {"designation": "6316", "grease": "EP2"}}},
        "points": [{"id": "M-DE", "at": "driver DE", "battery": "D",
                    "channels": [{"name": "x", "quantity": "acceleration", "unit": "g"}]}]})";

class Document : public testing::Test {
  protected:
    void SetUp() override { ASSERT_TRUE(document_.load(kText, "KL-ID-01.json")); }
    std::string at(const std::string& pointer) { return document_.text(pointer).toStdString(); }
    MachineDocument document_;
};

TEST_F(Document, KeysThatNobodyKnowsStayWhereTheyWere) {
    document_.setText("/service", "kiln fan", FieldKind::Text);
    document_.setText("/driver/power_kw", "75", FieldKind::Number);
    const auto again = parseJson(document_.json(), "again");
    ASSERT_TRUE(again);
    EXPECT_EQ((*again)["paint"]["colour"], "grey");
    EXPECT_EQ((*again)["driver"]["bearings"]["DE"]["grease"], "EP2");
    EXPECT_EQ((*again)["points"][0]["battery"], "D");
    EXPECT_EQ((*again)["driver"]["power_kw"], 75);
    EXPECT_TRUE(document_.changed());
    EXPECT_TRUE(document_.sound());
}

TEST_F(Document, NumbersAreReadWithPointOrCommaAndWholeOnesStayWhole) {
    document_.setText("/driver/power_kw", "75,5", FieldKind::Number);
    EXPECT_EQ(at("/driver/power_kw"), "75.5");
    document_.setText("/driver/poles", "6", FieldKind::Number);
    EXPECT_TRUE(document_.find("/driver/poles")->is_number_integer());
    EXPECT_EQ(document_.machine()->driver.poles, 6);
}

TEST_F(Document, WhatIsNoNumberIsKeptAsTypedAndNamedAtItsPlace) {
    document_.setText("/driver/poles", "four", FieldKind::Number);
    EXPECT_EQ(at("/driver/poles"), "four");
    EXPECT_NE(document_.troubleAt("/driver/poles"), "");
    EXPECT_EQ(document_.troubleAt("/driver/rated_rpm"), "");
    EXPECT_FALSE(document_.sound());
    document_.setText("/driver/poles", "4", FieldKind::Number);
    EXPECT_TRUE(document_.sound());
}

TEST_F(Document, SeveralTroublesAreFoundAtOnce) {
    document_.setText("/mains_hz", "500", FieldKind::Number);
    document_.setText("/driver/power_kw", "-1", FieldKind::Number);
    document_.setText("/points/0/channels/0/quantity", "smell", FieldKind::Choice);
    EXPECT_NE(document_.troubleAt("/mains_hz"), "");
    EXPECT_NE(document_.troubleAt("/driver/power_kw"), "");
    EXPECT_NE(document_.troubleAt("/points"), "");
}

TEST_F(Document, AnEmptyFieldIsNoKeyAndAPairGoesWithItsSecondHalf) {
    document_.setText("/points/0/usable_hz/1", "4000", FieldKind::Number);
    EXPECT_TRUE(document_.find("/points/0/usable_hz/0")->is_null());
    EXPECT_FALSE(document_.sound());
    document_.setText("/points/0/usable_hz/0", "2", FieldKind::Number);
    EXPECT_TRUE(document_.sound());
    document_.setText("/points/0/usable_hz/0", "", FieldKind::Number);
    document_.setText("/points/0/usable_hz/1", "", FieldKind::Number);
    EXPECT_EQ(document_.find("/points/0/usable_hz"), nullptr);
    document_.setText("/driver/rated_rpm", "", FieldKind::Number);
    EXPECT_EQ(document_.find("/driver/rated_rpm"), nullptr);
}

TEST_F(Document, WhatIsNoDescriptionIsRefusedAndChangesNothing) {
    EXPECT_FALSE(document_.load("{ nonsense", "x.json"));
    EXPECT_FALSE(document_.load("[1, 2]", "x.json"));
    EXPECT_EQ(at("/tag"), "KL-ID-01");
}

TEST_F(Document, ANewMachineLacksItsTagAndSpeedAndSaysSo) {
    document_.startNew("Hollin Edge", "kiln", 50);
    EXPECT_NE(document_.troubleAt("/tag"), "");
    document_.setText("/tag", "KL-FN-09", FieldKind::Text);
    EXPECT_FALSE(document_.sound());
    document_.setText("/driver/poles", "4", FieldKind::Number);
    EXPECT_TRUE(document_.sound()) << document_.troubles().front().place;
}

TEST_F(Document, BearingsAreATableOverTheDescription) {
    JsonTableModel table(document_, bearingRows(),
                         {{"@component", "On", "", FieldKind::Choice},
                          {"@position", "Position", "", FieldKind::Choice},
                          {"/designation", "Designation", "", FieldKind::Text},
                          {"/orders/bpfo", "BPFO", "", FieldKind::Number},
                          {"@known", "Looked for", "", FieldKind::Text}});
    ASSERT_EQ(table.rowCount(), 1);
    EXPECT_EQ(table.index(0, 2).data().toString(), "6316");
    EXPECT_NE(table.index(0, 4).data().toString(), "");
    const int added = table.add(0);
    ASSERT_EQ(table.rowCount(), 2);
    EXPECT_EQ(table.index(added, 1).data().toString(), "NDE");
    EXPECT_TRUE(table.setData(table.index(added, 2), "6314", Qt::EditRole));
    EXPECT_EQ(at("/driver/bearings/NDE/designation"), "6314");
    EXPECT_TRUE(table.setData(table.index(added, 0), "driven", Qt::EditRole));
    EXPECT_EQ(at("/driven/bearings/NDE/designation"), "6314");
    EXPECT_FALSE(table.setData(table.index(0, 0), "nowhere", Qt::EditRole));
    EXPECT_TRUE(table.setData(table.index(0, 3), "3.1", Qt::EditRole));
    EXPECT_NE(table.troubles().join(""), "");  // bpfo without bpfi
    table.remove(0);
    EXPECT_EQ(document_.find("/driver/bearings/DE"), nullptr);
}

TEST_F(Document, ChannelsKnowTheirPointAndCanMoveToAnother) {
    document_.put("/points/1", {{"id", "M-NDE"}, {"at", "driver NDE"}});
    JsonTableModel table(
        document_, pointRows("channels", {{"name", "x"}, {"quantity", "acceleration"}, {"unit", "g"}}),
        {{"@point", "Point", "", FieldKind::Choice}, {"/name", "Channel", "", FieldKind::Text}});
    ASSERT_EQ(table.rowCount(), 1);
    EXPECT_EQ(table.choices(0), (QStringList{"M-DE", "M-NDE"}));
    const int added = table.add(0);
    EXPECT_EQ(table.index(added, 1).data().toString(), "y");
    EXPECT_TRUE(table.setData(table.index(added, 0), "M-NDE", Qt::EditRole));
    EXPECT_EQ(at("/points/1/channels/0/name"), "y");
    EXPECT_EQ(document_.find("/points/0/channels")->size(), 1u);
    EXPECT_TRUE(document_.sound());
}

}  // namespace
}  // namespace fettle
