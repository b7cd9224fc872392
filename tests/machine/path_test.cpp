// How far a point is from a place follows from the train. Sources: common practice, no source (a coupling
// takes most of what a bearing hisses, a belt nearly all); grammar of `at` and `hears` as in the machine
// schema.
#include "core/machine/path.h"

#include <gmock/gmock.h>

#include "tests/machine/describe.h"

namespace fettle {
namespace {

using testing::ElementsAre;

Machine train(const std::string& more, const std::string& pointAt, const std::string& hears = "[]") {
    const std::string text =
        R"({ "driven": { "kind": "mill", "bearings": { "DE": { "designation": "6310" } } },)" + more +
        R"( "points": [ { "id": "P1", "at": ")" + pointAt + R"(", "hears": )" + hears +
        R"(, "channels": [ { "name": "x" } ] } ] })";
    return parsed(changed(text)).machine;
}

const std::string kTwoStages = R"(
    "shafts": [ { "id": "S1", "of": "driver" }, { "id": "S2" }, { "id": "S3", "of": "driven" } ],
    "gears": [ { "id": "G1", "from": "S1", "to": "S2", "teeth": [21, 67] },
               { "id": "G2", "from": "S2", "to": "S3", "teeth": [19, 77] } ],
    "intermediate": [ { "id": "box", "shaft": "S1", "bearings": { "DE": { "designation": "6310" },
        "output DE": { "designation": "6312", "shaft": "S3" } } } ],)";
const std::string kBelt = R"(
    "shafts": [ { "id": "S1", "of": "driver" }, { "id": "S2", "of": "driven" } ],
    "belts": [ { "id": "B1", "from": "S1", "to": "S2", "pulley_mm": [200, 400], "length_mm": 2500 } ],)";

Path pathTo(const Machine& machine, const std::string& at) {
    return pathBetween(machine, machine.points[0], at);
}

TEST(Path, OfAMotorAndWhatItDrivesDirectly) {
    const Machine machine = train("", "driver DE");
    EXPECT_EQ(pathTo(machine, "driver DE"), Path::OwnPlace);
    EXPECT_EQ(pathTo(machine, "driver NDE"), Path::SameHousing);
    EXPECT_EQ(pathTo(machine, "driver"), Path::SameHousing);
    EXPECT_EQ(pathTo(machine, "driven DE"), Path::ThroughCoupling);
}

TEST(Path, GoesThroughTheGearboxNotPastIt) {
    const Machine motor = train(kTwoStages, "driver DE");
    for (const char* inBox : {"box DE", "box output DE", "G1", "G2"})
        EXPECT_EQ(pathTo(motor, inBox), Path::ThroughCoupling) << inBox;
    EXPECT_EQ(pathTo(motor, "driven DE"), Path::ThroughCouplings);
    const Machine box = train(kTwoStages, "box DE");
    for (const char* inBox : {"box output DE", "G1", "G2"})
        EXPECT_EQ(pathTo(box, inBox), Path::SameHousing) << inBox;
    EXPECT_EQ(pathTo(box, "driver NDE"), Path::ThroughCoupling);
    EXPECT_EQ(pathTo(box, "driven DE"), Path::ThroughCoupling);
}

TEST(Path, AGearThatNoBoxIsDescribedForIsAHousingOfItsOwn) {
    const std::string gear = R"(
        "shafts": [ { "id": "S1", "of": "driver" }, { "id": "S2", "of": "driven" } ],
        "gears": [ { "id": "G1", "from": "S1", "to": "S2", "teeth": [21, 67] } ],)";
    EXPECT_EQ(pathTo(train(gear, "driver DE"), "G1"), Path::ThroughCoupling);
    EXPECT_EQ(pathTo(train(gear, "G1"), "G1"), Path::OwnPlace);
    EXPECT_EQ(pathTo(train(gear, "driver DE"), "driven DE"), Path::ThroughCouplings);
    EXPECT_EQ(housingOf(train(gear, "driver DE"), "G1"), "G1");
    EXPECT_EQ(housingOf(train(kTwoStages, "driver DE"), "G2"), "box");
}

// A belt pulls at the bearings of both pulleys; what lies behind it is heard only where somebody says so.
TEST(Path, ABeltPartsWhatItJoins) {
    const Machine machine = train(kBelt, "driver DE");
    EXPECT_EQ(pathTo(machine, "driven DE"), Path::ThroughBelt);
    EXPECT_FALSE(heardPath(machine, machine.points[0], "driven DE"));
    EXPECT_EQ(pathTo(machine, "B1"), Path::SameHousing);
    const Machine said = train(kBelt, "driver DE", R"([ { "at": "driven DE", "path": "through belt" } ])");
    EXPECT_EQ(heardPath(said, said.points[0], "driven DE"), Path::ThroughBelt);
}

TEST(Path, WhatTheDescriptionSaysGoesFirst) {
    const Machine machine = train(kTwoStages, "driver DE", R"([ { "at": "driven", "path": "same base" } ])");
    const Point& point = machine.points[0];
    EXPECT_EQ(heardPath(machine, point, "driven DE"), Path::SameBase);  // "driven" is all of it
    EXPECT_EQ(heardPath(machine, point, "driver DE"), Path::OwnPlace);
    EXPECT_FALSE(heardPath(machine, point, "box DE"));  // not named
    EXPECT_EQ(pathBetween(machine, point, "box DE"), Path::ThroughCoupling);
}

TEST(Path, TheFartherTheLessIsLeft) {
    double left = 1;
    for (const Path path : {Path::OwnPlace, Path::SameHousing, Path::SameBase, Path::ThroughCoupling,
                            Path::ThroughCouplings, Path::ThroughBelt}) {
        EXPECT_LE(wCutOf(path), left) << nameOf(path);
        EXPECT_EQ(wordsOf(path).empty(), wCutOf(path) == 1) << nameOf(path);
        EXPECT_EQ(keptCut(keptName(path)), wCutOf(path));
        EXPECT_EQ(pathWords(keptName(path)), wordsOf(path));
        left = wCutOf(path);
    }
    EXPECT_GT(left, 0);
}

// Every word that `hears` takes is a path of the table.
TEST(Path, TheDescriptionsWordsArePaths) {
    for (const char* word : {"same housing", "same base", "through coupling", "through belt"}) {
        const Machine machine =
            train(kBelt, "driver DE", R"([ { "at": "driven", "path": ")" + std::string(word) + R"(" } ])");
        EXPECT_EQ(nameOf(pathTo(machine, "driven DE")), word);
    }
}

TEST(Path, PlacesThatCannotBeToldApartAreWrittenShortAndReadBack) {
    EXPECT_EQ(eitherOf("driver DE", "driver NDE"), "driver DE or NDE");
    EXPECT_EQ(eitherOf("box output DE", "box output NDE"), "box output DE or NDE");
    const std::string three = eitherOf(eitherOf("box DE", "box NDE"), "box M");
    EXPECT_THAT(placesIn(three), ElementsAre("box DE", "box NDE", "box M"));
    EXPECT_THAT(placesIn("driver DE or NDE"), ElementsAre("driver DE", "driver NDE"));
    EXPECT_THAT(placesIn("driven DE"), ElementsAre("driven DE"));
    EXPECT_TRUE(placesMeet("driver DE or NDE", "driver NDE"));
    EXPECT_FALSE(placesMeet("driver DE or NDE", "driven NDE"));
}

}  // namespace
}  // namespace fettle
