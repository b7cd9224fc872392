// Sidecars as what they change of an earlier one: to the byte, small, and named where the file is damaged.
// Source: the project's own sidecar; the figures are counted.
#include "core/store/sidecar_rows.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

#include "core/store/packing.h"
#include "tests/store/older_form.h"
#include "tests/store/store_fixture.h"

namespace fettle {
namespace {

using testing::Contains;
using testing::HasSubstr;

std::string nodeSidecar(int i, const std::string& engine = "node 4.2.1 9f3a77e2") {
    return fmt::format(R"({{
  "schema": 1, "engine": "{}", "machine": "KL-ID-01", "point": "M-DE",
  "time": "2026-05-{:02}T{:02}:{:02}:07Z", "received": "2026-05-{:02}T{:02}:{:02}:16Z", "capture": "0417-{:07}",
  "simultaneous": true, "speed_rpm": {:.1f}, "frame_temp_c": {:.1f},
  "channels": [ {{ "name": "x", "unit": "g", "scale": 16.0 }}, {{ "name": "z", "unit": "g", "scale": 16.0 }},
    {{ "name": "flux", "unit": "1", "scale": 1.0 }} ]
}}
)",
                       engine, 1 + i / 24 % 28, i % 24, i * 7 % 60, 1 + i / 24 % 28, i % 24, i * 7 % 60, i,
                       1480 + i % 90 * 0.1, 40 + i % 37 * 0.3);
}

class SidecarRows : public StoreTest {
  protected:
    void put(const std::vector<std::string>& sidecars) {
        std::vector<NewRecording> all;
        for (std::size_t i = 0; i < sidecars.size(); ++i) {
            NewRecording one = newRecording(
                machine_, formatUtc(at("2026-05-04T06:20:00Z") + std::chrono::minutes(20 * int(i))), i + 1,
                16);
            one.sidecar = sidecars[i];
            all.push_back(std::move(one));
        }
        ASSERT_TRUE(fleet_->recordings().putAll(all));
        for (std::size_t i = 0; i < sidecars.size(); ++i)
            EXPECT_EQ(fleet_->recordings().sidecar(std::int64_t(i + 1)).value(), sidecars[i]);
    }
    std::int64_t count(const std::string& sql) {
        return Database::open(path_, Access::ReadOnly).value()->one<std::int64_t>(sql).value().value();
    }
    void run(const std::string& sql) {
        ASSERT_TRUE(Database::open(path_, Access::ReadWrite).value()->script(sql));
    }
};

TEST_F(SidecarRows, OfANodeTakeLessThanAQuarterOfTheirBytes) {
    std::vector<std::string> all;
    std::size_t bytes = 0;
    for (int i = 0; i < 200; ++i)
        bytes += all.emplace_back(nodeSidecar(i)).size();
    put(all);
    EXPECT_EQ(count("SELECT count(*) FROM sidecar_pattern"), 1);
    EXPECT_LT(std::size_t(count("SELECT sum(length(data)) FROM sidecar")) * 4, bytes);
    EXPECT_EQ(count("SELECT sum(length(sidecar)) FROM recording"), 0);
    expectClean();
}

// A node and a walk-around at one point, one after the other: each has its pattern.
TEST_F(SidecarRows, TwoKindsHaveAPatternEach) {
    std::vector<std::string> all;
    for (int i = 0; i < 40; ++i)
        all.push_back(i % 2
                          ? nodeSidecar(i)
                          : fmt::format(R"({{"who": "by hand, with the collector of the kiln crew", "walk": )"
                                        R"("Tuesday's, {} of 40 stops", "where": ["M-DE", "drive end"]}})",
                                        i));
    put(all);
    EXPECT_EQ(count("SELECT count(*) FROM sidecar_pattern"), 2);
}

TEST_F(SidecarRows, ALittleOneIsNoPatternEachTime) {
    std::vector<std::string> all;
    for (int i = 0; i < 60; ++i)
        all.push_back(
            fmt::format(R"({{"machine":"KL-ID-01","point":"M-DE","time":"2026-05-{:02}T{:02}:20:00Z",)"
                        R"("channels":[{{"name":"x","unit":"g"}}]}})",
                        1 + i % 28, i % 24));
    put(all);
    EXPECT_EQ(count("SELECT count(*) FROM sidecar_pattern"), 1);
}

TEST_F(SidecarRows, ShortAndOddTextsComeBackToo) {
    Nonsense noise(5);
    std::vector<std::string> all = {"", "{}", R"({"point":"M-DE"})", std::string(95, '7')};
    for (const std::size_t size : {96, 97, 300, 4000, 70'000}) {
        std::string odd(size, ' ');
        for (char& c : odd)
            c = char(noise.below(256));
        all.push_back(odd.replace(0, 3, std::string("{\0\xff", 3)));
    }
    put(all);
    EXPECT_EQ(count("SELECT count(*) FROM sidecar"), 5);
}

TEST_F(SidecarRows, DamageIsNamedAndTheNextIsPutInAllTheSame) {
    put({nodeSidecar(0), nodeSidecar(1)});
    run("UPDATE sidecar SET data = substr(data, 1, length(data) - 2) WHERE recording = 2");
    EXPECT_EQ(fleet_->recordings().sidecar(2).error().kind, ErrorKind::Damaged);
    EXPECT_THAT(fleet_->check(true).value(), Contains(HasSubstr("sidecar of recording 2")));
    run("UPDATE sidecar SET data = x'' WHERE recording = 2");
    EXPECT_THAT(fleet_->check(true).value(), Contains(HasSubstr("sidecar of recording 2")));
    run("UPDATE sidecar_pattern SET text = x'00'");
    EXPECT_THAT(fleet_->recordings().sidecar(1).error().sentence(), HasSubstr("pattern"));
    NewRecording next = newRecording(machine_, "2026-06-04T06:20:00Z", 99, 16);
    next.sidecar = nodeSidecar(2);
    ASSERT_TRUE(fleet_->recordings().put(next));
    EXPECT_EQ(fleet_->recordings().sidecar(3).value(), next.sidecar);
}

TEST_F(SidecarRows, OfAFileFromBeforeStayWhereTheyWere) {
    put({nodeSidecar(0)});
    const std::string old = folder_ / "old.fettle";
    store_test::copyOfForm(4, path_, old);
    path_ = old;
    run("UPDATE recording SET sidecar = '" + nodeSidecar(7) + "'");
    {
        const auto asItIs = FleetFile::open(old, OpenMode::ReadAnyForm).value();
        EXPECT_EQ(asItIs->recordings().sidecar(1).value(), nodeSidecar(7));
    }
    reopen();
    ASSERT_EQ(fleet_->outcome(), OpenOutcome::Upgraded);
    EXPECT_EQ(fleet_->recordings().sidecar(1).value(), nodeSidecar(7));
    expectClean();
}

TEST(PackAfter, ComesBackWithItsTextAloneAndNotWithAnother) {
    const std::string before = nodeSidecar(1), text = nodeSidecar(2), packed = packAfter(before, text);
    EXPECT_EQ(unpackAfter(before, packed, 1000).value(), text);
    EXPECT_FALSE(unpackAfter(std::string(before.rbegin(), before.rend()), packed, 1000) == text);
    EXPECT_FALSE(unpackAfter(before, packed, text.size() - 1));
    EXPECT_FALSE(unpack(packed, 1000) == text);
    EXPECT_EQ(unpack(pack(text), 1000).value(), text);
    // Nothing of it is left for the next one, where it breaks off in the head too.
    for (const std::size_t size : {std::size_t(0), std::size_t(3), packed.size() / 2}) {
        EXPECT_FALSE(unpackAfter(std::string(before), packed.substr(0, size), 1000));
        EXPECT_FALSE(unpack(packed, 1000));
    }
}

}  // namespace
}  // namespace fettle
