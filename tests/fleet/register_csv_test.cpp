// The register as a table, out and in again; what changed between descriptions. Source: the project's own
// format; RFC 4180 for quotes.
#include "core/fleet/register_csv.h"

#include <gmock/gmock.h>

#include <algorithm>

#include "core/fleet/description_changes.h"
#include "core/machine/machine.h"

namespace fettle {
namespace {

using testing::HasSubstr;

const char* const kTrain =
    R"({ "tag": "KL-ID-01", "asset": "0010023", "service": "fan; \"kiln\", induced draught",
  "mains_hz": 50, "standby": false, "driver": { "kind": "induction", "power_kw": 75.5, "poles": 4, "thermal_class": "N",
    "bearings": { "DE": { "designation": "6316" }, "4/5~": { "designation": "NU 318", "orders": { "bpfo": 5.1, "bpfi": 7.9 } } } },
  "shafts": [ { "id": "1", "of": "driver" }, { "id": "2" }, { "id": "3", "of": "driven" } ],
  "gears": [ { "id": "G1", "from": "1", "to": "2", "teeth": [21, 67] } ],
  "belts": [ { "id": "B1", "from": "2", "to": "3", "pulley_mm": [200, 315] } ],
  "driven": { "kind": "fan", "blades": 12 }, "site_key": "007", "seen": true, "empty": [], "none": {},
  "note": "=1+1", "lines": "a\nb",
  "points": [ { "id": "M-DE", "at": "driver DE", "usable_hz": [2, 4000], "noise_per_rt_hz": 3e-4,
    "channels": [ { "name": "1", "quantity": "acceleration", "unit": "1" } ] } ] })";

nlohmann::json plain(const std::string& text) {
    return nlohmann::json::parse(text);
}

TEST(RegisterCsv, OutAndInAgainIsTheSame) {
    const Json train = Json::parse(kTrain);
    const Json small = Json::parse(
        R"({ "tag": "M2", "mains_hz": 60, "driver": { "rated_rpm": 1750 }, "points": [ { "id": "P", "at": "driver", "channels": [ { "name": "x" } ] } ] })");
    const std::string csv = machinesAsCsv({train, small});
    EXPECT_EQ(csv.find("tag,"), 0u);
    EXPECT_THAT(csv, HasSubstr("driver/bearings/DE/designation"));
    const auto back = machinesOfCsv(csv, "register.csv");
    ASSERT_TRUE(back) << back.error().sentence();
    ASSERT_EQ(back->size(), 2u);
    EXPECT_EQ(plain((*back)[0].json), plain(train.dump()));
    EXPECT_EQ(plain((*back)[1].json), plain(small.dump()));
    EXPECT_TRUE(parseMachine((*back)[0].json, "x")) << parseMachine((*back)[0].json, "x").error().sentence();
    EXPECT_EQ(csv.find(",=1"), std::string::npos);  // a spreadsheet would work it out
}

// What a column could not give back stands as JSON with what holds it; a key that is no name for a column, by
// signs. The null in a list was found by the fuzzer.
TEST(RegisterCsv, OddKeysAndValuesComeBackToo) {
    std::string deep = "1";
    for (int i = 0; i < 20; ++i)
        deep = R"({"k":)" + deep + "}";
    const std::string json =
        R"({ "tag": "A", "site": null, "area": "null", "mains_hz": null, "poles": "null", "belts": [ { "creep_pct": [null] }, { "creep_pct": ["null", 2] } ],
        "more": { "site": 5, "path": null, "interval_min": true, "large": 18446744073709551615, "0": 1, "12": [2],
                  "": "empty", " a ": 1, "b\nc\u007f": 2, "~/~x41~e": 3, "'=1": 4 },
        "'=1": "x", "7": "y", "\t": "z", "": "none", "text": "\u007f", "deep": )" +
        deep + ", \"long\": [0" +
        [] {
            std::string rest;
            for (int i = 1; i < 1200; ++i)
                rest += "," + std::to_string(i);
            return rest;
        }() +
        "] }";
    const std::string text = machinesAsCsv({Json::parse(json)});
    EXPECT_EQ(std::count(text.begin(), text.end(), '\n'), 2);
    EXPECT_THAT(text, HasSubstr("belts/0/creep_pct/0,belts/1/creep_pct/0,"));
    const auto back = machinesOfCsv(text, "r.csv");
    ASSERT_TRUE(back) << back.error().sentence();
    EXPECT_EQ(plain(back->at(0).json), plain(json));
}

// A spreadsheet of a land with a decimal comma parts fields by semicolons.
TEST(RegisterCsv, SemicolonsAndDecimalCommas) {
    const auto back =
        machinesOfCsv("tag;driver/power_kw;driver/poles;mains_hz;service\nA;7,5;4;50;\"a; b\"\n", "r.csv");
    ASSERT_TRUE(back);
    const auto machine = plain(back->at(0).json);
    EXPECT_EQ(machine["driver"]["power_kw"], 7.5);
    EXPECT_EQ(machine["driver"]["poles"], 4);
    EXPECT_EQ(machine["service"], "a; b");
}

TEST(RegisterCsv, ABadRowIsNamedAndTheOthersStand) {
    const auto back = machinesOfCsv("tag,mains_hz\nA,50\nB,50,7\n\"C,50\nD,50\n", "r.csv");
    ASSERT_TRUE(back);
    ASSERT_EQ(back->size(), 4u);
    EXPECT_FALSE((*back)[0].json.empty());
    EXPECT_THAT((*back)[1].refusal.sentence(), HasSubstr("line 3"));
    EXPECT_THAT((*back)[2].refusal.sentence(), HasSubstr("quote"));
    EXPECT_FALSE((*back)[3].json.empty());
    EXPECT_EQ(machinesOfCsv("tag,mains_hz\nA,50\n,\n , \n", "r.csv")->size(), 1u);  // left by a spreadsheet
}

TEST(RegisterCsv, AKeyIsNoFormulaForASpreadsheetEither) {
    const std::string json = R"({ "tag": "A", "=1+1": "x", "-k": { "+p": 2 } })";
    const std::string text = machinesAsCsv({Json::parse(json)});
    EXPECT_THAT(text, HasSubstr(",'=1+1"));
    EXPECT_THAT(text, HasSubstr(",'-k/+p"));
    EXPECT_EQ(plain(machinesOfCsv(text, "r.csv")->at(0).json), plain(json));
}

// More columns than a spreadsheet has: the rest stands in fewer cells, and all of it comes back.
TEST(RegisterCsv, VeryManyColumnsComeBackToo) {
    Json json = Json::parse(R"({ "tag": "A", "more": [] })");
    for (int i = 0; i < 900; ++i) {
        Json& row = json["more"].emplace_back(Json::object());
        for (int key = 0; key < 20; ++key)
            row["k" + std::to_string(key)] = i * key;
    }
    const std::string text = machinesAsCsv({json});
    EXPECT_LT(std::count(text.begin(), text.begin() + long(text.find('\n')), ','), 16'384);
    EXPECT_EQ(plain(machinesOfCsv(text, "r.csv")->at(0).json), plain(json.dump()));
    std::string wide = "tag";
    for (int i = 0; i < 16'384; ++i)
        wide += ",c" + std::to_string(i);
    EXPECT_THAT(machinesOfCsv(wide + "\nA\n", "r.csv").error().sentence(), HasSubstr("16384 columns"));
}

// 0xFC is a small u with two dots in ISO 8859-1 and nothing in UTF-8.
TEST(RegisterCsv, LettersThatAreNoUtf8AreRefusedWithTheirPlace) {
    const auto back = machinesOfCsv(
        "tag,service,mains_hz\nA,L\xfc"
        "fter,50\nB,L\xc3\xbc"
        "fter,50\n",
        "r.csv");
    ASSERT_TRUE(back);
    EXPECT_TRUE(back->at(0).json.empty());
    EXPECT_THAT(back->at(0).refusal.sentence(), HasSubstr("line 2, column 2: is not plain UTF-8 text"));
    EXPECT_EQ(plain(back->at(1).json)["service"],
              "L\xc3\xbc"
              "fter");
    EXPECT_THAT(machinesOfCsv("tag,gr\xf6\xdf"
                              "e\nA,1\n",
                              "r.csv")
                    .error()
                    .sentence(),
                HasSubstr("line 1, column 2: is not plain UTF-8 text"));
}

TEST(RegisterCsv, ATableWithoutRowsSaysSo) {
    for (const char* text : {"tag,mains_hz\n", "tag,mains_hz\n,\n\n"}) {
        const auto back = machinesOfCsv(text, "r.csv");
        ASSERT_FALSE(back);
        EXPECT_THAT(back.error().sentence(), HasSubstr("has no rows below its head"));
    }
}

TEST(RegisterCsv, HowFarAListCountsIsTold) {
    const auto back = machinesOfCsv("tag,points/0/id,points/1000000000/id\nA,P,Q\n", "r.csv");
    ASSERT_TRUE(back);
    EXPECT_THAT(back->at(0).refusal.sentence(),
                HasSubstr("line 2, column 3: counts farther than 999, the last element of a list"));
}

TEST(RegisterCsv, WhatIsNoTableIsRefused) {
    for (const std::string& text :
         {std::string(), std::string("\n"), std::string("a,b\n1,2\n"), std::string("tag,tag\n"),
          std::string("tag,\nA,1\n"), std::string("tag\nA"), std::string("tag,\0x\n", 8),
          std::string("tag,a/b/c/d/e/f/g/h/i/j/k/l/m/n\n")})
        EXPECT_FALSE(machinesOfCsv(text, "r.csv")) << text;
    const auto clash = machinesOfCsv("tag,driver,driver/poles\nA,big,4\n", "r.csv");
    ASSERT_TRUE(clash);
    EXPECT_TRUE(clash->at(0).json.empty());
    const auto other = machinesOfCsv("tag,driver/poles,driver\nA,4,big\n", "r.csv");
    EXPECT_THAT(other->at(0).refusal.sentence(), HasSubstr("line 2, column 3"));
    // Deeper than JSON may be, once it is put together.
    const std::string cell = std::string(60, '[') + "1" + std::string(60, ']');
    const auto deep = machinesOfCsv("tag,a/b/c/d/e/f/g/h\nA," + cell + "\n", "r.csv");
    EXPECT_TRUE(deep->at(0).json.empty()) << deep->at(0).refusal.sentence();
    // Few cells that would ask for a great many elements.
    std::string head = "tag", row = "A";
    for (int i = 0; i < 60; ++i)
        head += ",a" + std::to_string(i) + "/999/999/999/x", row += ",1";
    EXPECT_THAT(machinesOfCsv(head + "\n" + row + "\n", "r.csv")->at(0).refusal.sentence(),
                HasSubstr("elements"));
    // A list as long as the highest number said, not longer than a description may be.
    const auto far = machinesOfCsv("tag,points/999999999/id\nA,P\n", "r.csv");
    ASSERT_TRUE(far);
    EXPECT_LT(far->at(0).json.size(), 1000u);
}

TEST(DescriptionChanges, ElementsAreToldApartByTheirId) {
    const Json before =
        Json::parse(R"({ "driver": { "power_kw": 75, "bearings": { "DE": { "designation": "6316" } } },
        "points": [ { "id": "A", "mount": "frame" } ] })");
    const Json after =
        Json::parse(R"({ "driver": { "power_kw": 90, "bearings": { "DE": { "designation": "6317" } } },
        "points": [ { "id": "B", "mount": "foot" }, { "id": "A", "mount": "frame" } ] })");
    std::set<std::string> lines;
    for (const DescriptionChange& change : changesBetween(before, after))
        lines.insert(change.place + ": " + change.before + " > " + change.after);
    EXPECT_EQ(lines, (std::set<std::string>{"driver/power_kw: 75 > 90",
                                            "driver/bearings/DE/designation: 6316 > 6317",
                                            "points/B/id:  > B", "points/B/mount:  > foot"}));
    EXPECT_TRUE(changesBetween(before, before).empty());
}

TEST(DescriptionChanges, NodesAndDescriptionsStandByTheirDays) {
    const std::vector<DescriptionEntry> history = {
        {"", R"({ "tag": "A", "points": [ { "id": "P", "node": [ { "id": "1" } ] } ] })", "", ""},
        {"2026-05-08",
         R"({ "tag": "A", "asset": "9", "points": [ { "id": "P", "node": [ { "id": "1", "to": "2026-03-01" },
              { "id": "2", "from": "2026-03-02" } ] } ] })",
         "", ""}};
    const auto changes = changesThroughTime(history);
    ASSERT_EQ(changes.size(), 3u);
    EXPECT_EQ(changes[0].day, "2026-03-01");
    EXPECT_EQ(changes[0].before, "1");
    EXPECT_EQ(changes[1].day, "2026-03-02");
    EXPECT_EQ(changes[1].after, "2");
    EXPECT_EQ(changes[2].day, "2026-05-08");
    EXPECT_EQ(changes[2].place, "asset");
}

}  // namespace
}  // namespace fettle
