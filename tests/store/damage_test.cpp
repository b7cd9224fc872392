#include <gmock/gmock.h>

#include <cstring>
#include <filesystem>
#include <fstream>
#include <set>

#include "core/base/file_system.h"
#include "tests/store/store_fixture.h"

namespace fettle {
namespace {

namespace fs = std::filesystem;
using testing::AnyOf;
using testing::HasSubstr;

// A closed fleet file of three recordings, damaged anew for each try.
class Damage : public StoreTest {
  protected:
    void SetUp() override {
        StoreTest::SetUp();
        for (int i = 0; i < 3; ++i) {
            made_.push_back(newRecording(machine_, "2026-05-0" + std::to_string(i + 1) + "T00:00:00Z",
                                         std::uint64_t(i), 12000));
            ASSERT_TRUE(fleet_->recordings().put(made_.back()));
        }
        ASSERT_TRUE(fleet_->rounds().open({}, {{"KL-ID-01", "act", "zone", {}, false, "{}", "{}"}}));
        ASSERT_TRUE(fleet_->log().addEvent({0, "KL-ID-01", at("2026-05-01T00:00:00Z"), "note", "", "t", ""}));
        fleet_.reset();
        good_ = bytesOf();
        fs::remove(path_);
        path_ = folder_ / "damaged.fettle";
    }

    std::string bytesOf() { return RealFileSystem().read(path_).value(); }
    void write(const std::string& bytes) {
        std::ofstream(path_, std::ios::binary | std::ios::trunc)
            .write(bytes.data(), std::streamsize(bytes.size()));
    }

    // Opening it in either way is refused, the bytes stay, nothing appears beside it.
    void expectRefusedUnchanged(const std::string& bytes) {
        write(bytes);
        for (const OpenMode mode : {OpenMode::ReadWrite, OpenMode::ReadOnly}) {
            const auto opened = FleetFile::open(path_, mode);
            ASSERT_FALSE(opened);
            EXPECT_THAT(opened.error().kind, AnyOf(ErrorKind::Damaged, ErrorKind::Unsupported));
            EXPECT_THAT(opened.error().sentence(), HasSubstr("damaged.fettle"));
        }
        EXPECT_TRUE(bytesOf() == bytes) << "the file was changed";
        EXPECT_EQ(RealFileSystem().list(folder_.path())->size(), 1u);
    }

    // Every question there is; each answers or says what is wrong. Waveforms answer with the bits put in.
    void askEverything(FleetFile& fleet) {
        const Instant from = Instant::min(), until = Instant::max();
        (void)fleet.site();
        (void)fleet.machines().all();
        (void)fleet.machines().history("KL-ID-01");
        (void)fleet.machines().describedAt("KL-ID-01");
        (void)fleet.recordings().newest();
        (void)fleet.recordings().count();
        (void)fleet.recordings().list(machine_, from, until);
        (void)fleet.recordings().examinations(machine_, from, until);
        (void)fleet.recordings().weights(machine_, from, until);
        if (const auto channels = fleet.trends().channels(machine_))
            for (const ChannelEntry& channel : *channels) {
                (void)fleet.trends().latest(channel.id);
                (void)fleet.trends().trend(channel.id, Quantity::Peak, from, until);
                (void)fleet.trends().spectra(channel.id, WaterfallKind::Velocity, from, until);
            }
        (void)fleet.rounds().rows(1);
        (void)fleet.rounds().state(1);
        (void)fleet.rounds().examinationJson(1, "KL-ID-01");
        (void)fleet.log().events("");
        (void)fleet.log().jobs();
        (void)fleet.log().feedback();
        (void)fleet.log().refusals(true);
        for (std::size_t i = 0; i < made_.size(); ++i) {
            (void)fleet.recordings().sidecar(std::int64_t(i + 1));
            expectSameOrDamaged(fleet.recordings().recording(std::int64_t(i + 1)), *made_[i].recording);
        }
    }

    void expectSameOrDamaged(const Result<RecordingPtr>& back, const Recording& put) {
        if (!back) {
            EXPECT_THAT(back.error().kind, AnyOf(ErrorKind::Damaged, ErrorKind::NotFound));
            return;
        }
        for (const Channel& channel : (*back)->channels) {
            const bool same =
                std::any_of(put.channels.begin(), put.channels.end(),
                            [&](const Channel& other) { return other.samples == channel.samples; });
            EXPECT_TRUE(same) << "samples that were never put in";
        }
    }

    // Opened or refused; where opened for reading, asked and checked. True where it was refused.
    bool survive(const std::string& bytes, const FleetTuning& tuning) {
        write(bytes);
        auto opened = FleetFile::open(path_, OpenMode::ReadWrite, tuning);
        if (opened) {
            askEverything(**opened);
            (void)(*opened)->check(true);
        } else {
            EXPECT_THAT(opened.error().kind, AnyOf(ErrorKind::Damaged, ErrorKind::Unsupported,
                                                   ErrorKind::Unreadable, ErrorKind::Unwritable))
                << opened.error().sentence();
            EXPECT_TRUE(bytesOf() == bytes) << "the file was changed";
        }
        for (const char* ending : {"-wal", "-shm"})
            fs::remove(path_ + ending);
        return !opened;
    }

    std::string flipped(std::size_t where, int mask) {
        std::string bytes = good_;
        bytes[where] = char(bytes[where] ^ mask);
        return bytes;
    }

    std::string good_;
    std::vector<NewRecording> made_;
};

TEST_F(Damage, AnyCutIsRefusedAndLeftAsItIs) {
    std::set<std::size_t> lengths = {0, 1, 15, 16, 17, 68, 99, 100, 101, 511, 512, 4096, 16383, 16384, 16385};
    for (std::size_t eighth = 1; eighth < 8; ++eighth)
        lengths.insert(good_.size() * eighth / 8);
    for (const std::size_t back : {1u, 100u, 16383u, 16384u, 32768u})
        lengths.insert(good_.size() - back);
    for (const std::size_t length : lengths) {
        SCOPED_TRACE(length);
        expectRefusedUnchanged(good_.substr(0, length));
    }
}

TEST_F(Damage, APageOfZerosOrNonsenseIsRefused) {
    Nonsense noise(8);
    for (std::size_t page = 0; page < good_.size() / 16384; ++page) {
        SCOPED_TRACE(page);
        std::string bytes = good_;
        for (std::size_t i = 0; i < 16384; ++i)
            bytes[page * 16384 + i] = page % 2 ? char(noise.below(256)) : '\0';
        survive(bytes, {});
        if (page == 0) expectRefusedUnchanged(bytes);
    }
}

TEST_F(Damage, EachByteOfTheHead) {
    int refused = 0;
    for (std::size_t i = 0; i < 108; ++i) {
        SCOPED_TRACE(i);
        refused += survive(flipped(i, 0xff), {});
    }
    EXPECT_GE(refused, 30);  // magic, page size, application, versions, page head
}

TEST_F(Damage, BytesOfTheSchemaPage) {
    for (std::size_t i = 108; i < 16384; i += 97) {
        SCOPED_TRACE(i);
        survive(flipped(i, 0x01 << i % 8), {});
    }
}

// Files too large to be read through at opening: damage is met by the questions.
TEST_F(Damage, BytesAnywhereAreMetByTheQuestions) {
    FleetTuning tuning;
    tuning.quickCheckBytes = 0;
    Nonsense noise(9);
    for (int i = 0; i < 250; ++i) {
        const std::size_t where = 16384 + noise.bits() % (good_.size() - 16384);
        SCOPED_TRACE(where);
        survive(flipped(where, 1 + noise.below(255)), tuning);
    }
    // The heads of pages, where SQLite keeps its own order.
    for (std::size_t page = 1; page < good_.size() / 16384; ++page)
        for (const std::size_t byte : {0u, 1u, 3u, 5u, 8u, 9u}) {
            SCOPED_TRACE(testing::Message() << "page " << page << ", byte " << byte);
            survive(flipped(page * 16384 + byte, 0xff), tuning);
        }
}

TEST_F(Damage, ADamagedWaveformIsToldByNameAndTheRestIsThere) {
    FleetTuning tuning;
    tuning.quickCheckBytes = 0;
    bool met = false;
    // Within pages: what stands at their heads is SQLite's own.
    for (std::size_t where = 16384 * 30 + 6000; where < good_.size() && !met; where += 8192) {
        write(flipped(where, 0x10));
        auto opened = FleetFile::open(path_, OpenMode::ReadWrite, tuning);
        if (!opened) continue;
        int damaged = 0, whole = 0;
        for (std::int64_t id = 1; id <= 3; ++id) {
            const auto back = (*opened)->recordings().recording(id);
            back ? ++whole : ++damaged;
            if (back) continue;
            EXPECT_EQ(back.error().kind, ErrorKind::Damaged);
            EXPECT_THAT(back.error().sentence(), HasSubstr("recording " + std::to_string(id)));
        }
        met = damaged == 1 && whole == 2;
        if (!met) continue;
        const auto faults = (*opened)->check(true).value();
        ASSERT_FALSE(faults.empty());
        EXPECT_THAT(faults[0], HasSubstr("waveform of recording"));
    }
    EXPECT_TRUE(met);
}

}  // namespace
}  // namespace fettle
