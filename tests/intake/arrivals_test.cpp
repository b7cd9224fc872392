// Files that wait to be whole. Times are given; the files are real ones.
#include "core/intake/arrivals.h"

#include <gmock/gmock.h>

#include <filesystem>
#include <fstream>

#include "tests/base/scratch_folder.h"

namespace fettle::intake_test {
namespace {

using std::chrono::milliseconds;
using testing::ElementsAre;
using testing::IsEmpty;

class ArrivalsTest : public testing::Test {
  protected:
    std::string put(const std::string& name, const std::string& bytes = "12345678") {
        const std::string path = folder_ / name;
        std::ofstream(path, std::ios::binary) << bytes;
        return path;
    }
    std::string putOld(const std::string& name) {
        const std::string path = put(name);
        std::filesystem::last_write_time(
            path, std::filesystem::file_time_type::clock::now() - std::chrono::hours(24));
        return path;
    }
    std::vector<std::string> dueAfter(int ms) { return arrivals_.due(begun_ + milliseconds(ms), 10); }

    ScratchFolder folder_;
    ArrivalLimits limits_{milliseconds(2000), milliseconds(500), milliseconds(60000), 3};
    Arrivals arrivals_{limits_};
    Arrivals::Time begun_ = Arrivals::Clock::now();
};

TEST_F(ArrivalsTest, AClosedFileIsTakenSoonAnotherWhenItStoodStill) {
    const std::string closed = put("a.wav"), met = put("b.wav");
    ASSERT_TRUE(arrivals_.note(closed, true, begun_));
    ASSERT_TRUE(arrivals_.meet(met, begun_));
    EXPECT_THAT(dueAfter(400), IsEmpty());
    EXPECT_THAT(dueAfter(600), ElementsAre(closed));
    arrivals_.handled(closed);
    EXPECT_THAT(dueAfter(2100), ElementsAre(met));
}

TEST_F(ArrivalsTest, WhatGrowsIsWaitedFor) {
    const std::string path = put("a.wav");
    ASSERT_TRUE(arrivals_.meet(path, begun_));
    EXPECT_THAT(dueAfter(1900), IsEmpty());
    put("a.wav", "1234567890");
    EXPECT_THAT(dueAfter(2100), IsEmpty()) << "it grew";
    EXPECT_THAT(dueAfter(4000), IsEmpty());
    EXPECT_THAT(dueAfter(4200), ElementsAre(path));
}

TEST_F(ArrivalsTest, WhatHasLainThereIsTakenAtOnce) {
    const std::string path = putOld("a.wav");
    ASSERT_TRUE(arrivals_.meet(path, begun_));
    EXPECT_THAT(dueAfter(0), ElementsAre(path));
    EXPECT_FALSE(arrivals_.mayWait(path, begun_)) << "nothing more is on its way to it";
}

TEST_F(ArrivalsTest, ASidecarIsWaitedForWhereOthersHaveOne) {
    const std::string first = put("a.wav"), second = put("b.wav");
    put("a.json");
    arrivals_.note(first, true, begun_);
    arrivals_.note(second, true, begun_);
    EXPECT_THAT(dueAfter(1000), ElementsAre(first));
    arrivals_.handled(first);
    EXPECT_THAT(dueAfter(30000), IsEmpty());
    put("b.json");
    arrivals_.note(second, true, begun_ + milliseconds(30500));
    EXPECT_THAT(dueAfter(31100), ElementsAre(second));
}

TEST_F(ArrivalsTest, NotForEver) {
    const std::string first = put("a.wav"), second = put("b.wav");
    put("a.json");
    arrivals_.note(first, true, begun_);
    arrivals_.note(second, true, begun_);
    EXPECT_THAT(dueAfter(61000), ElementsAre(first, second));
    EXPECT_TRUE(arrivals_.mayWait(second, begun_ + milliseconds(59000)));
    EXPECT_FALSE(arrivals_.mayWait(second, begun_ + milliseconds(60001)));
}

TEST_F(ArrivalsTest, HandledUntilItChanges) {
    const std::string path = putOld("a.wav");
    arrivals_.meet(path, begun_);
    dueAfter(0);
    arrivals_.handled(path);
    arrivals_.meet(path, begun_);
    EXPECT_TRUE(arrivals_.empty());
    put("a.json");
    arrivals_.meet(path, begun_);
    EXPECT_EQ(arrivals_.size(), 1u) << "its sidecar came";
}

TEST_F(ArrivalsTest, MarksOfFilesThatAreGoneAreDropped) {
    const std::string path = putOld("a.wav");
    arrivals_.meet(path, begun_);
    dueAfter(0);
    arrivals_.handled(path);
    arrivals_.beginLook();
    arrivals_.meet(path, begun_);
    arrivals_.endLook();
    arrivals_.meet(path, begun_);
    EXPECT_TRUE(arrivals_.empty()) << "still there: still known";
    arrivals_.beginLook();
    arrivals_.endLook();
    arrivals_.meet(path, begun_);
    EXPECT_EQ(arrivals_.size(), 1u) << "it had gone: another of its name is a new one";
}

TEST_F(ArrivalsTest, TheListIsBounded) {
    for (const char* name : {"a.wav", "b.wav", "c.wav"})
        EXPECT_TRUE(arrivals_.note(put(name), true, begun_));
    EXPECT_FALSE(arrivals_.note(put("d.wav"), true, begun_));
    EXPECT_TRUE(arrivals_.note(folder_ / "a.wav", true, begun_)) << "it waits already";
    EXPECT_EQ(dueAfter(1000).size(), 3u);
    EXPECT_EQ(arrivals_.due(begun_ + milliseconds(1000), 2).size(), 2u);
}

}  // namespace
}  // namespace fettle::intake_test
