// The weekly list from machines' weeks: what is listed, by what, how urgent, in which order. Expected values
// by hand from the rules in core/round/round.h.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>

#include "core/diagnosis/settings.h"
#include "core/round/evidence.h"
#include "tests/round/made_weeks.h"

namespace fettle {
namespace {

using namespace made;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

std::vector<std::string> tagsOf(const RoundList& list) {
    std::vector<std::string> tags;
    for (const RoundMachine& m : list.machines)
        tags.push_back(m.tag);
    return tags;
}

MachineWeek faulty(const std::string& tag, double weight, const std::string& stage = "developed") {
    return with(plain(tag), {staged("bearing_outer_race", "driver DE", weight, stage)});
}

TEST(MakeRound, OfNoMachinesIsEmpty) {
    const RoundList list = round({});
    EXPECT_THAT(list.machines, IsEmpty());
    EXPECT_THAT(list.warnings, IsEmpty());
    EXPECT_NEAR(list.listNeedsDban, 10, 1e-9);
    EXPECT_EQ(list.from, "2026-05-04");
    EXPECT_EQ(list.until, "2026-05-10");
    EXPECT_EQ(list.engine, WeighingSettings().engine());
}

// One e-value a bearing, one a machine: means of means.
TEST(MakeRound, AMachinesWeightIsTheMeanOverBearingsOfTheMeansOverFamilies) {
    const double quiet = std::pow(10.0, -0.3);
    const double bearing = (1e6 + 3 * quiet) / 4;
    const RoundMachine m = alone(faulty("A", 60));
    ASSERT_TRUE(m.weightDban);
    EXPECT_NEAR(*m.weightDban, made::dban((bearing + quiet) / 2), 1e-9);
    // A bearing with one family counts as much as one with four.
    EXPECT_NEAR(*machineDban({weighed("a", "P", 20), weighed("a", "Q", 0), weighed("b", "Q", 0)}),
                made::dban(101 / 2.0), 1e-9);
    EXPECT_FALSE(machineDban({}));
    EXPECT_FALSE(machineDban({cause("unbalance", "C", 3, 1)}));
}

TEST(MakeRound, ListsOnEvidenceByEBh) {
    std::vector<MachineWeek> weeks;
    for (int i = 0; i < 18; ++i)
        weeks.push_back(plain("Q" + std::to_string(10 + i)));
    weeks.push_back(faulty("F1", 60));
    weeks.push_back(faulty("F2", 45));
    const RoundList list = round(weeks);
    EXPECT_EQ(list.machines.size(), 20u);
    EXPECT_EQ(machine(list, "F1").listedBy, ListedBy::Evidence);
    EXPECT_EQ(machine(list, "F2").listedBy, ListedBy::Evidence);
    EXPECT_EQ(machine(list, "Q10").listedBy, ListedBy::None);
    EXPECT_EQ(machine(list, "Q10").urgency, "leave");
    EXPECT_THAT(machine(list, "Q10").findings, IsEmpty());
    EXPECT_NEAR(list.listNeedsDban, made::dban(20 / (0.1 * 2)), 1e-9);
    EXPECT_EQ(list.engine, "0.1.0 5c1f");
}

TEST(MakeRound, StageAndCriticalityMakeTheUrgency) {
    EXPECT_EQ(alone(faulty("A", 60, "early")).urgency, "watch");
    EXPECT_EQ(alone(faulty("A", 60, "developed")).urgency, "plan");
    EXPECT_EQ(alone(faulty("A", 60, "late")).urgency, "act");
    MachineWeek minor = faulty("A", 60, "late");
    minor.criticality = "C";
    EXPECT_EQ(alone(minor).urgency, "plan");
    minor.criticality = "of no class";  // counts as B
    EXPECT_EQ(alone(minor).urgency, "act");
}

TEST(MakeRound, AFindingCarriesItsVerdictAndNotItsLines) {
    const RoundMachine m = alone(faulty("A", 60));
    ASSERT_EQ(m.findings.size(), 1u);
    const RoundFinding& f = m.findings[0];
    EXPECT_EQ(f.finding.fault, "bearing_outer_race");
    EXPECT_EQ(f.finding.sentence, "Lines of it stand there.");
    EXPECT_EQ(f.finding.urgency, "plan");
    EXPECT_EQ(f.persistence, 0.9);
    EXPECT_EQ(f.finding.best.view, "x, envelope 3000-3920 Hz, whitened");
    EXPECT_THAT(f.finding.best.rows, IsEmpty());
    EXPECT_FALSE(f.growthPerWeek);
    EXPECT_FALSE(f.limitDate);
    EXPECT_FALSE(f.causeShare);
}

// One machine needs 10 decibans; an outer race of 19.5 leaves the machine at 10.5.
TEST(MakeRound, AWeakFindingOfAListedMachineIsNeverAboveWatch) {
    const RoundMachine m = alone(with(plain("A"), {weighed("bearing_outer_race", "driver DE", 19.5)}));
    EXPECT_EQ(m.listedBy, ListedBy::Evidence);
    EXPECT_EQ(m.urgency, "watch");
    ASSERT_EQ(m.findings.size(), 1u);
    EXPECT_THAT(m.findings[0].finding.sentence,
                HasSubstr("Outer-race defect, driver DE: 19.5 decibans in the week's mean"));
    EXPECT_EQ(m.findings[0].finding.urgency, "watch");
}

TEST(MakeRound, OfAListedMachineAllStrongFindingsAreTold) {
    const RoundMachine m = alone(with(plain("A"), {staged("bearing_cage", "driver NDE", 25, "early"),
                                                   staged("bearing_outer_race", "driver DE", 40, "late"),
                                                   staged("bearing_inner_race", "driver DE", 19, "early")}));
    ASSERT_EQ(m.findings.size(), 2u);
    EXPECT_EQ(m.findings[0].finding.fault, "bearing_outer_race");
    EXPECT_EQ(m.findings[1].finding.fault, "bearing_cage");
    EXPECT_EQ(m.urgency, "act");
}

// 21 decibans on one family of eight: 12.1 for the machine, too little among 20.
TEST(MakeRound, AHypothesisOf20OnAMachineThatIsNotListedIsWatchAtMostAndSaysSo) {
    std::vector<MachineWeek> weeks;
    for (int i = 0; i < 19; ++i)
        weeks.push_back(plain("Q" + std::to_string(10 + i)));
    weeks.push_back(faulty("F", 21, "late"));
    const RoundList list = round(weeks);
    const RoundMachine& m = machine(list, "F");
    EXPECT_EQ(m.listedBy, ListedBy::None);
    EXPECT_EQ(m.urgency, "watch");
    ASSERT_EQ(m.findings.size(), 1u);
    EXPECT_THAT(m.findings[0].finding.sentence,
                HasSubstr("the machine as a whole stands at 12.1 decibans, the list needs 23.0 this week"));
}

TEST(MakeRound, CriticalityIsAPriorWeight) {
    std::vector<MachineWeek> weeks;
    for (int i = 0; i < 10; ++i) {
        weeks.push_back(plain("A" + std::to_string(i)));
        weeks.back().criticality = "A";
        weeks.push_back(plain("C" + std::to_string(i)));
        weeks.back().criticality = "C";
    }
    // Mean of 2 and 0.5 is 1.25. The list of 20 needs 23.01; 31.5 on one family of eight is 22.5 for a
    // machine.
    weeks[0] = faulty("A0", 31.5);
    weeks[0].criticality = "A";
    RoundList list = round(weeks);
    EXPECT_NEAR(machine(list, "A0").priorDban, made::dban(2 / 1.25), 1e-9);
    EXPECT_NEAR(machine(list, "C0").priorDban, made::dban(0.5 / 1.25), 1e-9);
    EXPECT_EQ(machine(list, "A0").listedBy, ListedBy::Evidence);
    weeks[0].criticality = "C";
    list = round(weeks);
    EXPECT_EQ(machine(list, "A0").listedBy, ListedBy::None);
}

TEST(MakeRound, WeightsOfThousandsOfDecibansAreOrdinary) {
    const RoundList list = round({plain("Q"), faulty("F", 3000), faulty("G", 2999)});
    EXPECT_THAT(tagsOf(list), ElementsAre("F", "G", "Q"));
    EXPECT_NEAR(*machine(list, "F").weightDban, 3000 - made::dban(8), 1e-9);
}

TEST(MakeRound, OrderIsUrgencyThenWeightThenZoneThenTag) {
    MachineWeek silent = plain("S");
    silent.newest.reset();
    silent.recordings = silent.turning = 0;
    silent.week.reset();
    const std::vector<MachineWeek> weeks = {plain("Z"),
                                            plain("A"),
                                            silent,
                                            inZone(plain("N2"), "C", 3.4, 4.5),
                                            inZone(plain("N1"), "C", 3.4, 4.5),
                                            inZone(plain("D"), "D", 6, 4.5),
                                            faulty("P1", 50),
                                            faulty("P2", 60),
                                            faulty("W", 60, "early"),
                                            faulty("T", 40, "late")};
    const std::vector<std::string> expected = {"T", "D", "P2", "P1", "N1", "N2", "W", "S", "A", "Z"};
    EXPECT_EQ(tagsOf(round(weeks)), expected);
    std::vector<MachineWeek> turned(weeks.rbegin(), weeks.rend());
    EXPECT_EQ(tagsOf(round(turned)), expected);
}

TEST(MakeRound, AnEntryByHandIsAtLeastWatchWithItsReason) {
    MachineWeek week = plain("A");
    week.byHand = true;
    week.byHandWhy = "operator heard it";
    const RoundMachine m = alone(week);
    EXPECT_EQ(m.urgency, "watch");
    EXPECT_EQ(m.listedBy, ListedBy::Hand);
    EXPECT_EQ(m.byHandWhy, "operator heard it");
    MachineWeek worse = faulty("A", 60, "late");
    worse.byHand = true;
    EXPECT_EQ(alone(worse).urgency, "act");
    EXPECT_EQ(alone(worse).listedBy, ListedBy::Evidence);
}

TEST(MakeRound, TheStripHoldsTwentySixWeeksAndMayHaveNone) {
    MachineWeek week = plain("A");
    week.days = days(1, 2, 30);
    const RoundMachine m = alone(week);
    ASSERT_EQ(m.strip.size(), 26u);
    EXPECT_TRUE(std::isnan(m.strip[0]));
    EXPECT_GT(m.strip[25], m.strip[24]);
    week.days.clear();
    EXPECT_TRUE(std::isnan(alone(week).strip[25]));
    EXPECT_EQ(alone(week).urgency, "leave");
}

TEST(MakeRound, ABrokenUrgencyTableIsSaidAndReplaced) {
    const auto folder =
        std::filesystem::temp_directory_path() / ("fettle_round_" + std::to_string(::getpid()));
    std::filesystem::create_directories(folder);
    std::ofstream(folder / "urgency.json") << "{ not json";
    ::setenv("FETTLE_RESOURCES", folder.c_str(), 1);
    const RoundList list = round({faulty("F", 60, "late"), inZone(plain("C"), "C", 3.4, 4.5)});
    ::unsetenv("FETTLE_RESOURCES");
    std::filesystem::remove_all(folder);
    ASSERT_EQ(list.warnings.size(), 1u);
    EXPECT_THAT(list.warnings[0], HasSubstr("urgency.json"));
    EXPECT_EQ(machine(list, "F").urgency, "act");
    EXPECT_EQ(machine(list, "C").urgency, "plan");
}

TEST(MakeRound, ListedByHasItsWords) {
    for (const ListedBy by :
         {ListedBy::None, ListedBy::Evidence, ListedBy::Change, ListedBy::Zone, ListedBy::Hand})
        EXPECT_EQ(listedByFrom(toText(by)), by);
    EXPECT_FALSE(listedByFrom("luck"));
}

// The whole way from hypotheses to the list keeps the bound: every machine sound, each hypothesis an e-value
// of the hardest kind, large enough to list its machine alone. 8 e / 30 machines: e = 8 x 30 / 0.1.
TEST(MakeRound, KeepsTheBoundFromTheHypothesesOn) {
    const double e = 8 * 30 / 0.1;
    std::mt19937_64 random(5);
    std::size_t wrong = 0;
    constexpr std::size_t kRounds = 1000;
    std::vector<MachineWeek> weeks;
    for (int i = 0; i < 30; ++i)
        weeks.push_back(plain("Q" + std::to_string(10 + i)));
    for (std::size_t r = 0; r < kRounds; ++r) {
        for (MachineWeek& week : weeks)
            for (Hypothesis& h : week.week->considered)
                h.weightDban =
                    double(random() >> 11) / 9007199254740992.0 < 1 / e ? made::dban(e) + 1e-6 : -3000;
        const RoundList list = round(weeks);
        wrong += std::any_of(list.machines.begin(), list.machines.end(),
                             [](const RoundMachine& m) { return m.listedBy == ListedBy::Evidence; });
    }
    EXPECT_LE(double(wrong) / kRounds, 0.1 + 3 * 0.0095);
    EXPECT_GT(double(wrong) / kRounds, 0.06);
}

}  // namespace
}  // namespace fettle
