// The command asks as a user works with it, and its JSON against the schema that is shipped. Source of the
// latter: JSON Schema, draft 2020-12 (the part in schema_check.h).
#include "tests/cli/site_fixture.h"
#include "tests/exchange/schema_check.h"

namespace fettle::cli_test {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

class AsksCommand : public Site {
  protected:
    Json asks(std::vector<std::string> more = {}) const {
        const Json all = jsonOf("asks", std::move(more));
        const Json schema = Json::parse(
            made::contentOf(std::string(FETTLE_SOURCE_DIR) + "/resources/schemas/asks.schema.json"));
        const made::SchemaCheck check(schema);
        EXPECT_THAT(check.faultsOf(all), IsEmpty());
        EXPECT_THAT(check.untoldKeysOf(all), IsEmpty());
        return all["asks"];
    }
    Ran add(std::vector<std::string> more) const {
        std::vector<std::string> all{"--add",     "--machine", "A-RACE",     "--point",
                                     "driven DE", "--why",     "blind there"};
        all.insert(all.end(), more.begin(), more.end());
        return on("asks", all);
    }
};

TEST_F(AsksCommand, WhatIsAskedStandsUntilItIsDropped) {
    EXPECT_THAT(on("asks").out, HasSubstr("nothing is asked for"));
    EXPECT_EQ(add({"--by-hand", "--direction", "axial", "--seconds", "8", "--top-hz", "1000"}).status, 0);
    const Json one = asks()[0];
    EXPECT_EQ(one["machine"], "A-RACE");
    EXPECT_EQ(one["by"], "hand");
    EXPECT_EQ(one["lines"], 12800);
    EXPECT_THAT(on("asks").out, HasSubstr("8 s or more, to 1000 Hz"));
    const std::string csv = at("asks.csv");
    EXPECT_EQ(on("asks", {"--csv", csv}).status, 0);
    EXPECT_THAT(made::contentOf(csv), HasSubstr("driven DE"));
    EXPECT_EQ(on("asks", {"--dropped", "1", "--note", "belt changed"}).status, 0);
    EXPECT_TRUE(asks().empty());
    EXPECT_EQ(asks({"--all"})[0]["note"], "belt changed");
}

TEST_F(AsksCommand, WhatWouldSettleAFindingIsSuggestedAndNotKept) {
    for (const Json& one : asks({"--suggest", "--machine", "A-RACE"})) {
        EXPECT_EQ(one["id"], 0);
        EXPECT_FALSE(one["why"].get<std::string>().empty());
    }
    EXPECT_TRUE(asks().empty());
    EXPECT_TRUE(asks({"--suggest", "--machine", "D-MUTE"}).empty()) << "it never sent a recording";
}

TEST_F(AsksCommand, WrongUseIsToldAndChangesNothing) {
    EXPECT_EQ(on("asks", {"--add"}).status, 2);
    EXPECT_EQ(on("asks", {"--suggest"}).status, 2);
    EXPECT_EQ(add({"--direction", "up"}).status, 2);
    EXPECT_EQ(on("asks", {"--answered", "7"}).status, 3);
    EXPECT_EQ(on("asks", {"--csv", fleet_}).status, 3) << "never over the fleet file";
    EXPECT_TRUE(asks({"--all"}).empty());
}

}  // namespace
}  // namespace fettle::cli_test
