// What `export` writes in open formats, `register` and `import` take in again: the same register, trends and
// samples. Truth: the fleet file of the fixture. Hostile files of MAT and HDF5: tests/signal.
#include "core/signal/reader.h"
#include "tests/cli/site_fixture.h"

namespace fettle::cli_test {
namespace {

using testing::HasSubstr;

class RoundTrip : public Site {
  protected:
    void SetUp() override {
        Site::SetUp();
        ASSERT_EQ(on("export", {"register", "-o", at("register.json")}).status, 0);
        ASSERT_EQ(run({"new", again_, "--site", "Test works"}).status, 0);
        ASSERT_EQ(run({"register", again_, at("register.json")}).status, 0);
    }
    // Without the number of the recording, which is each file's own.
    std::vector<std::string> trendsOf(const std::string& fleet) const {
        EXPECT_EQ(run({"export", fleet, "trends", "-o", at("t.csv")}).status, 0);
        std::vector<std::string> rows;
        const std::string csv = made::contentOf(at("t.csv"));
        for (const std::string_view line : split(csv, '\n')) {
            const std::size_t first = line.find(','), second = line.find(',', first + 1);
            rows.push_back(std::string(line.substr(0, first)) +
                           std::string(line.substr(std::min(second, line.size()))));
        }
        return rows;
    }
    const std::string again_ = at("again.fettle");
};

TEST_F(RoundTrip, TrendsAsATableOfLevels) {
    const auto before = trendsOf(fleet_);
    ASSERT_GT(before.size(), 18u);
    ASSERT_EQ(on("export", {"trends", "-o", at("trends.csv")}).status, 0);
    const Ran in = run({"import", again_, at("trends.csv")});
    ASSERT_EQ(in.status, 0) << in.err;
    EXPECT_THAT(in.out, HasSubstr("of 1 table of levels"));
    EXPECT_EQ(trendsOf(again_), before);
    EXPECT_THAT(run({"import", again_, at("trends.csv")}).out, HasSubstr(": 0 levels stored"));
    EXPECT_EQ(trendsOf(again_), before);
    EXPECT_THAT(on("import", {at("trends.csv")}).out, HasSubstr(": 0 levels stored"))
        << "beside the recordings";
    EXPECT_EQ(run({"check", again_, "--deep"}).status, 0);
}

TEST_F(RoundTrip, RecordingsAsUniversalFiles) {
    ASSERT_EQ(on("export", {"recordings", "--format", "uff58b", "-o", at("uff")}).status, 0);
    const Ran in = run({"import", again_, at("uff"), "--recursive"});
    ASSERT_EQ(in.status, 0) << in.err;
    EXPECT_THAT(in.out, HasSubstr("9 stored"));
    EXPECT_EQ(trendsOf(again_), trendsOf(fleet_));
    ASSERT_EQ(run({"export", again_, "weights", "-o", at("after.csv")}).status, 0);
    ASSERT_EQ(on("export", {"weights", "-o", at("before.csv")}).status, 0);
    EXPECT_EQ(made::contentOf(at("after.csv")), made::contentOf(at("before.csv")));
    EXPECT_EQ(on("export", {"recordings", "--format", "wav", "-o", at("wav")}).status, 0);
    EXPECT_EQ(on("export", {"recordings", "--format", "aiff", "-o", at("x")}).status, 2);
}

TEST_F(RoundTrip, ARoundOfLevelsAloneIsJudgedByZone) {
    ASSERT_EQ(on("export", {"trends", "-o", at("trends.csv")}).status, 0);
    ASSERT_EQ(run({"import", again_, at("trends.csv")}).status, 0);
    const Ran ran = run({"round", again_, "--until", kUntil, "--json"});
    ASSERT_EQ(ran.status, 0) << ran.err;
    const Json list = Json::parse(ran.out, nullptr, false);
    bool met = false;
    for (const Json& machine : list["machines"])
        if (machine["tag"] == "C-SHAKE") {
            met = true;
            EXPECT_EQ(machine["listed_by"], "zone");
            EXPECT_THAT(machine["findings"][0]["sentence"].get<std::string>(),
                        HasSubstr("A ready-made level names no cause"));
        }
    EXPECT_TRUE(met);
}

}  // namespace
}  // namespace fettle::cli_test
