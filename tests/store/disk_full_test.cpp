#include <gmock/gmock.h>

#include <filesystem>

#include "tests/store/failing_vfs.h"
#include "tests/store/store_fixture.h"

namespace fettle {
namespace {

using testing::HasSubstr;

// A fleet file of one machine, put down anew for each try; recordings go in until the disk says no.
class DiskFull : public StoreTest {
  protected:
    void SetUp() override {
        StoreTest::SetUp();
        fleet_.reset();
        std::filesystem::copy_file(path_, model_);
        for (int i = 0; i < 4; ++i)
            made_.push_back(newRecording(machine_, "2026-05-0" + std::to_string(i + 1) + "T00:00:00Z",
                                         std::uint64_t(i), 20000));
    }

    void putDownAnew() {
        for (const char* ending : {"-wal", "-shm"})
            std::filesystem::remove(path_ + ending);
        std::filesystem::copy_file(model_, path_, std::filesystem::copy_options::overwrite_existing);
    }

    // Which of the recordings were acknowledged.
    std::vector<bool> putAllOneByOne(FailingVfs& vfs) {
        FleetTuning tuning;
        tuning.vfs = vfs.name();
        std::vector<bool> acknowledged(made_.size(), false);
        auto opened = FleetFile::open(path_, OpenMode::ReadWrite, tuning);
        if (!opened) {
            EXPECT_EQ(opened.error().kind, ErrorKind::Unwritable) << opened.error().sentence();
            return acknowledged;
        }
        for (std::size_t i = 0; i < made_.size(); ++i) {
            const auto put = (*opened)->recordings().put(made_[i]);
            acknowledged[i] = put.has_value();
            if (put) continue;
            EXPECT_EQ(put.error().kind, ErrorKind::Unwritable) << put.error().sentence();
            EXPECT_THAT(put.error().sentence(), HasSubstr("nothing of this step was kept"));
            EXPECT_THAT(put.error().sentence(), HasSubstr("site.fettle"));
        }
        return acknowledged;
    }

    void expectThere(const std::vector<bool>& acknowledged) {
        reopen();
        expectClean();
        for (std::size_t i = 0; i < made_.size(); ++i) {
            const bool known = fleet_->recordings().knows(made_[i].key).value();
            // A commit whose flush failed may be there in the end: never the other way round.
            EXPECT_TRUE(known || !acknowledged[i]) << "recording " << i << " was acknowledged and is gone";
        }
        const auto list = fleet_->recordings().list(machine_, Instant::min(), Instant::max()).value();
        for (const RecordingEntry& entry : list)
            EXPECT_TRUE(fleet_->recordings().recording(entry.id));
        // And it goes on: what was refused goes in now.
        for (const NewRecording& made : made_)
            EXPECT_TRUE(fleet_->recordings().put(made));
        EXPECT_EQ(fleet_->recordings().count().value(), made_.size());
        fleet_.reset();
    }

    int writesOfAll() {
        FailingVfs vfs;
        putDownAnew();
        const auto acknowledged = putAllOneByOne(vfs);
        EXPECT_EQ(std::count(acknowledged.begin(), acknowledged.end(), true), int(made_.size()));
        return vfs.writes;
    }

    std::string model_ = folder_ / "model";
    std::vector<NewRecording> made_;
};

TEST_F(DiskFull, AtEveryPointWhatWasAcknowledgedIsThere) {
    const int writes = writesOfAll();
    ASSERT_GT(writes, 40);
    std::size_t refused = 0;
    for (int n = 0; n <= writes; n += n < 30 ? 1 : 5) {
        SCOPED_TRACE(testing::Message() << "after " << n << " of " << writes << " writes");
        FailingVfs vfs;
        putDownAnew();
        vfs.writesLeft = n;
        const auto acknowledged = putAllOneByOne(vfs);
        refused += std::size_t(std::count(acknowledged.begin(), acknowledged.end(), false));
        expectThere(acknowledged);
    }
    EXPECT_GT(refused, 20u);
}

TEST_F(DiskFull, AfterOneRefusedWriteItGoesOn) {
    const int writes = writesOfAll();
    for (int n = 3; n < writes; n += 7) {
        SCOPED_TRACE(testing::Message() << "write " << n << " of " << writes);
        FailingVfs vfs;
        putDownAnew();
        vfs.writesLeft = n;
        vfs.once = true;
        const auto acknowledged = putAllOneByOne(vfs);
        EXPECT_GE(std::count(acknowledged.begin(), acknowledged.end(), true), int(made_.size()) - 1);
        expectThere(acknowledged);
    }
}

TEST_F(DiskFull, NoHalfFileStandsUnderTheName) {
    FailingVfs vfs;
    FleetTuning tuning;
    tuning.vfs = vfs.name();
    int refused = 0;
    for (int n = 0; n < 60; ++n) {
        ScratchFolder folder;
        vfs.writesLeft = n;
        const auto made = FleetFile::create(folder / "new.fettle", kSite, tuning);
        if (made) break;
        ++refused;
        EXPECT_EQ(made.error().kind, ErrorKind::Unwritable);
        EXPECT_EQ(made.error().file, folder / "new.fettle");
        vfs.writesLeft = -1;
        if (std::filesystem::is_empty(folder.path())) continue;
        // Made whole, only its opening failed.
        EXPECT_TRUE(FleetFile::open(folder / "new.fettle")) << n;
    }
    EXPECT_GT(refused, 5);
}

TEST_F(DiskFull, ABackupThatDoesNotFitLeavesNothing) {
    FailingVfs vfs;
    FleetTuning tuning;
    tuning.vfs = vfs.name();
    auto opened = FleetFile::open(path_, OpenMode::ReadWrite, tuning);
    ASSERT_TRUE(opened);
    ASSERT_TRUE((*opened)->recordings().putAll(made_));
    vfs.writesLeft = 4;  // pages; a file of this size is written in some ten, then made safe
    const auto backup = (*opened)->backup(folder_ / "copy.fettle");
    ASSERT_FALSE(backup);
    EXPECT_EQ(backup.error().kind, ErrorKind::Unwritable);
    EXPECT_THAT(backup.error().sentence(), HasSubstr("copy.fettle: the disk is full"));
    vfs.writesLeft = -1;
    for (const auto& entry : std::filesystem::directory_iterator(folder_.path()))
        EXPECT_THAT(entry.path().filename().string(), testing::Not(HasSubstr("copy")));
}

}  // namespace
}  // namespace fettle
