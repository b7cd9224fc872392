// Steps of a job are appended and kept; photographs come out byte for byte, and what is no picture stays out.
#include <gmock/gmock.h>

#include "tests/store/store_fixture.h"

namespace fettle {
namespace {

using testing::HasSubstr;

// The signatures: ITU-T T.81 B.1.1.3 (SOI FF D8, then a marker FF), ISO/IEC 15948 5.2 (PNG).
const std::string kJpegStart = "\xFF\xD8\xFF\xE0 and so on";
const std::string kPngStart = "\x89PNG\r\n\x1A\n and so on";

class JobPhotoStoreTest : public StoreTest {
  protected:
    Job drafted() {
        Job job;
        job.machine = "KL-ID-01";
        job.findings = {"bearing_outer_race @ driver DE"};
        return job;
    }
    std::int64_t event() {
        return fleet_->log()
            .addEvent(
                {0, "KL-ID-01", at("2026-05-04T10:00:00Z"), "repair", "driver DE", "new seal", "R. Hale"})
            .value();
    }
};

TEST_F(JobPhotoStoreTest, AJobAndItsStepAreKeptTogetherOrNotAtAll) {
    const JobStep step{0, 0, "drafted", at("2026-05-04T10:00:00Z"), "for the stop in week 21", "R. Hale"};
    const auto id = fleet_->jobs().put(drafted(), step);
    ASSERT_TRUE(id) << id.error().sentence();
    Job job = fleet_->jobs().get(*id).value();
    job.state = "issued";
    JobStep wrong = step;
    wrong.state = "finished";
    EXPECT_THAT(fleet_->jobs().put(job, wrong).error().sentence(), HasSubstr("no state of a job"));
    EXPECT_EQ(fleet_->jobs().get(*id)->state, "drafted");
    JobStep next = step;
    next.state = "issued";
    next.time = at("2026-05-05T10:00:00Z");
    ASSERT_TRUE(fleet_->jobs().put(job, next));
    reopen();
    const auto steps = fleet_->jobs().steps(*id).value();
    ASSERT_EQ(steps.size(), 2u);
    EXPECT_EQ(steps[0].text, "for the stop in week 21");
    EXPECT_EQ(steps[1].state, "issued");
    EXPECT_EQ(fleet_->jobs().get(99).error().kind, ErrorKind::NotFound);
    expectClean();
}

TEST_F(JobPhotoStoreTest, APhotographComesOutAsItWentIn) {
    const auto id = fleet_->photos().add(event(), "C:\\pictures\\ring.jpg", kJpegStart);
    ASSERT_TRUE(id) << id.error().sentence();
    EXPECT_EQ(fleet_->photos().add(event(), "again.jpg", kJpegStart).value(), *id) << "stands once";
    ASSERT_TRUE(fleet_->photos().add(event(), "ring.png", kPngStart));
    reopen();
    const auto photos = fleet_->photos().ofMachine("KL-ID-01").value();
    ASSERT_EQ(photos.size(), 2u);
    EXPECT_EQ(photos[0].name, "ring.jpg");
    EXPECT_EQ(photos[0].media, "image/jpeg");
    EXPECT_EQ(photos[0].size, kJpegStart.size());
    EXPECT_EQ(photos[1].media, "image/png");
    EXPECT_EQ(fleet_->photos().bytes(*id).value(), kJpegStart);
    EXPECT_EQ(fleet_->photos().bytes(99).error().kind, ErrorKind::NotFound);
    expectClean();
}

TEST_F(JobPhotoStoreTest, WhatIsNoPictureIsRefusedWithItsName) {
    const std::int64_t id = event();
    EXPECT_THAT(fleet_->photos().add(id, "list.csv", "machine,time\n").error().sentence(),
                testing::AllOf(HasSubstr("list.csv"), HasSubstr("neither JPEG nor PNG")));
    EXPECT_THAT(fleet_->photos().add(id, "empty.jpg", "").error().sentence(), HasSubstr("is empty"));
    std::string large = kJpegStart;
    large.resize(kMostPhotoBytes + 1);
    EXPECT_THAT(fleet_->photos().add(id, "large.jpg", large).error().sentence(),
                HasSubstr("the most is 16 MB"));
    EXPECT_EQ(fleet_->photos().add(id + 50, "ring.jpg", kJpegStart).error().kind, ErrorKind::NotFound);
    EXPECT_TRUE(fleet_->photos().ofMachine("KL-ID-01")->empty());
}

}  // namespace
}  // namespace fettle
