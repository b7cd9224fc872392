// Rules of alerts as pure functions. Sources: the arithmetic of many hypotheses (24,000 x 72 recordings a day
// at a bound of 1 % are 17,280 chance lines a day) for never alerting on one recording; 3 of 5, 2 with the
// second asked for, zone D at once and the share of the B/C boundary are common practice, no source.
#include "core/fleet/alert_rules.h"

#include <gtest/gtest.h>

#include "core/fleet/alert_ways.h"

namespace fettle {

namespace {

const Instant kNow = *parseUtc("2026-05-10T12:00:00Z");

AlertRule weightRule() {
    AlertRule rule;
    rule.name = "strong";
    rule.least = 30;
    return rule;
}

AlertRule zoneRule(const char* grade, int hits) {
    AlertRule rule;
    rule.name = std::string("zone ") + grade;
    rule.kind = "zone";
    rule.grade = grade;
    rule.hits = hits;
    rule.deliver = "now";
    return rule;
}

// Weights of one hypothesis in the newest recordings, newest first, an hour apart.
HeardMachine heardWith(const std::vector<double>& dban) {
    HeardMachine machine{"KL-ID-01", "kiln", "A", {}};
    HeardPoint point;
    point.point = "M-DE";
    point.at = "driver DE";
    for (std::size_t i = 0; i < dban.size(); ++i) {
        HeardRecording recording;
        recording.id = std::int64_t(100 - i);
        recording.time = kNow - std::chrono::hours(i + 1);
        recording.weights = {{"bearing_outer_race", "driver DE", dban[i]}};
        point.recordings.push_back(recording);
    }
    if (!dban.empty()) point.newest = point.recordings.front().time;
    machine.points = {point};
    return machine;
}

HeardMachine heardAt(const std::vector<double>& mmS, const std::string& zone) {
    HeardMachine machine = heardWith(mmS);
    for (std::size_t i = 0; i < mmS.size(); ++i) {
        HeardRecording& recording = machine.points[0].recordings[i];
        recording.weights.clear();
        recording.levelMmS = mmS[i];
        recording.zone = zone;
    }
    return machine;
}

std::size_t metBy(const AlertRule& rule, const HeardMachine& machine) {
    return alertsNow({rule}, machine, kNow, true).met.size();
}

std::vector<AlertStep> steps(const AlertRule& rule, const HeardMachine& machine,
                             const std::vector<Alert>& standing) {
    return alertSteps(alertsNow({rule}, machine, kNow, true), standing, machine, kNow, true);
}

Alert standing(double value) {
    auto made = steps(weightRule(), heardWith({value, value, value, 0, 0}), {});
    EXPECT_EQ(made.size(), 1u);
    return made.empty() ? Alert() : made[0].alert;
}

}  // namespace

TEST(AlertRules, ThreeOfFiveAlertTwoDoNot) {
    EXPECT_EQ(metBy(weightRule(), heardWith({35, 5, 35, 5, 35})), 1u);
    EXPECT_EQ(metBy(weightRule(), heardWith({35, 5, 35, 5, 5})), 0u);
    EXPECT_EQ(metBy(weightRule(), heardWith({90})), 0u) << "one recording, however strong";
    EXPECT_EQ(metBy(weightRule(), heardWith({35, 5, 5, 5, 5, 35, 35})), 0u)
        << "the two last are not looked at";
    EXPECT_EQ(metBy(weightRule(), heardWith({29.9, 29.9, 29.9, 29.9, 29.9})), 0u);
    EXPECT_EQ(metBy(weightRule(), heardWith({30, 30, 30})), 1u);
}

TEST(AlertRules, ASecondThatWasAskedForMakesTwoEnough) {
    AlertRule rule = weightRule();
    rule.askSecond = true;
    HeardMachine machine = heardWith({35, 5, 5});
    const AlertsNow one = alertsNow({rule}, machine, kNow, true);
    EXPECT_TRUE(one.met.empty());
    ASSERT_EQ(one.asks.size(), 1u);
    EXPECT_EQ(one.asks[0].point, "M-DE");
    machine = heardWith({36, 35, 5, 5});
    EXPECT_EQ(metBy(rule, machine), 0u) << "the second was not asked for";
    machine.points[0].recordings[0].askedFor = true;
    EXPECT_EQ(metBy(rule, machine), 1u);
    rule.askSecond = false;
    EXPECT_EQ(metBy(rule, machine), 0u);
}

TEST(AlertRules, RecordingsThatCouldNotWeighDoNotCount) {
    HeardMachine machine = heardWith({35, 0, 35, 0, 0, 35});
    machine.points[0].recordings[1].weights.clear();
    machine.points[0].recordings[3].weights.clear();
    EXPECT_EQ(metBy(weightRule(), machine), 1u) << "of four that weighed it three hold it";
}

TEST(AlertRules, ZoneDAtOnceZoneCNot) {
    const AlertRule d = zoneRule("D", 1);
    EXPECT_TRUE(checkAlertRule(d));
    EXPECT_FALSE(checkAlertRule(zoneRule("C", 1)));
    EXPECT_EQ(metBy(d, heardAt({8}, "D")), 1u);
    EXPECT_EQ(metBy(d, heardAt({5, 5, 5, 5, 5}, "C")), 0u);
    EXPECT_EQ(metBy(d, heardAt({8}, "")), 0u) << "a limit that is a note only gives no zone";
    EXPECT_EQ(metBy(zoneRule("C", 3), heardAt({8, 8, 8}, "D")), 1u);
}

TEST(AlertRules, NoRuleMayAlertOnOneRecording) {
    for (const char* kind : {"weight", "stage", "growth"}) {
        AlertRule rule = weightRule();
        rule.kind = kind;
        rule.grade = rule.kind == "stage" ? "late" : "";
        rule.least = 50;
        EXPECT_TRUE(checkAlertRule(rule)) << kind;
        rule.hits = 1;
        EXPECT_FALSE(checkAlertRule(rule)) << kind;
    }
    AlertRule wrong = weightRule();
    wrong.least = 12;
    EXPECT_FALSE(checkAlertRule(wrong)) << "below 20 decibans chance alone alerts";
    wrong = weightRule();
    wrong.hits = 6;
    EXPECT_FALSE(checkAlertRule(wrong));
    wrong = weightRule();
    wrong.name = " ";
    EXPECT_FALSE(checkAlertRule(wrong));
}

TEST(AlertRules, AFaultThatNoKeyBeginsWithIsRefused) {
    AlertRule rule = weightRule();
    for (const char* fault : {"", "bearing", "bearing_outer_race", "gear_", "unbalance"}) {
        rule.fault = fault;
        EXPECT_TRUE(checkAlertRule(rule)) << fault;
    }
    for (const char* fault : {"bearing_outer_rice", "Bearing", "outer", "bearing_outer_race_"}) {
        rule.fault = fault;
        const Status refused = checkAlertRule(rule);
        ASSERT_FALSE(refused) << fault;
        EXPECT_NE(refused.error().sentence().find(fault), std::string::npos);
        EXPECT_NE(refused.error().sentence().find("bearing_outer_race, bearing_inner_race"),
                  std::string::npos);
    }
}

TEST(AlertRules, ScopeByMachineAreaAndCriticality) {
    const HeardMachine machine = heardWith({35, 35, 35});
    AlertRule rule = weightRule();
    for (auto [field, good, bad] :
         {std::tuple{&AlertRule::machine, "KL-ID-01", "KL-ID-02"},
          std::tuple{&AlertRule::area, "kiln", "quarry"}, std::tuple{&AlertRule::criticality, "A", "B"},
          std::tuple{&AlertRule::fault, "bearing", "gear"}}) {
        rule = weightRule();
        rule.*field = good;
        EXPECT_EQ(metBy(rule, machine), 1u) << good;
        rule.*field = bad;
        EXPECT_EQ(metBy(rule, machine), 0u) << bad;
    }
    rule = weightRule();
    rule.enabled = false;
    EXPECT_EQ(metBy(rule, machine), 0u);
}

TEST(AlertRules, StagesAreCountedByRecording) {
    AlertRule rule = weightRule();
    rule.kind = "stage";
    rule.grade = "developed";
    HeardMachine machine = heardWith({40, 40, 40, 40, 40});
    for (std::size_t i : {0u, 2u, 4u})
        machine.points[0].recordings[i].stages = {{"bearing_outer_race", "driver DE", i == 2 ? 3 : 2}};
    const AlertsNow now = alertsNow({rule}, machine, kNow, true);
    ASSERT_EQ(now.met.size(), 1u);
    EXPECT_EQ(now.met[0].value, 3);
    rule.grade = "late";
    EXPECT_EQ(metBy(rule, machine), 0u);
}

TEST(AlertRules, GrowthMustMatterToo) {
    AlertRule rule = weightRule();
    rule.kind = "growth";
    rule.least = 50;
    HeardMachine machine = heardAt({3, 3, 3, 3, 3}, "B");
    machine.points[0].limitBcMmS = 4.5;
    machine.points[0].weekAgoMmS = 1.8;
    EXPECT_EQ(metBy(rule, machine), 1u) << "67 %, 1.2 of 4.5 mm/s";
    machine = heardAt({0.9, 0.9, 0.9, 0.9, 0.9}, "A");
    machine.points[0].limitBcMmS = 4.5;
    machine.points[0].weekAgoMmS = 0.4;
    EXPECT_EQ(metBy(rule, machine), 0u) << "125 %, but half a millimetre a second is nothing";
    machine.points[0].limitBcMmS.reset();
    EXPECT_EQ(metBy(rule, machine), 1u) << "without a limit twice the level matters";
    machine.points[0].weekAgoMmS.reset();
    EXPECT_EQ(metBy(rule, machine), 0u) << "nothing to compare with";
    machine.points[0].weekAgoMmS = 0.4;
    machine.points[0].recordings.resize(2);
    EXPECT_EQ(metBy(rule, machine), 0u) << "two recordings are no level";
}

TEST(AlertRules, SilenceByInterval) {
    AlertRule rule = weightRule();
    rule.kind = "silence";
    rule.least = 6;
    rule.leastHours = 3;
    HeardMachine machine = heardWith({});
    HeardPoint& point = machine.points[0];
    point.intervalMin = 60;
    point.newest = kNow - std::chrono::minutes(359);
    EXPECT_EQ(metBy(rule, machine), 0u);
    point.newest = kNow - std::chrono::minutes(360);
    const AlertsNow now = alertsNow({rule}, machine, kNow, true);
    ASSERT_EQ(now.met.size(), 1u);
    EXPECT_EQ(now.met[0].fault, "sensor");
    EXPECT_EQ(now.met[0].at, "M-DE");
    EXPECT_EQ(now.met[0].since, *point.newest);
    point.intervalMin = 10;
    point.newest = kNow - std::chrono::minutes(170);
    EXPECT_EQ(metBy(rule, machine), 0u) << "17 times its interval, but not three hours";
    point.intervalMin.reset();
    point.newest = kNow - std::chrono::hours(6 * 24 - 1);
    EXPECT_EQ(metBy(rule, machine), 0u) << "a day is taken where no interval is described";
    point.newest = kNow - std::chrono::days(60);
    EXPECT_EQ(metBy(rule, machine), 1u);
    point.newest = kNow - std::chrono::days(61);
    EXPECT_EQ(metBy(rule, machine), 0u) << "silent for months is no news: an old file taken in tells nothing";
    point.fitted = false;
    point.newest = kNow - std::chrono::hours(1000);
    EXPECT_EQ(metBy(rule, machine), 0u) << "no node is fitted";
    point.fitted = true;
    EXPECT_TRUE(alertsNow({rule}, machine, kNow, false).met.empty()) << "silence was not asked";
}

TEST(AlertRules, OneAlertAMachineFaultAndPlace) {
    const HeardMachine machine = heardWith({35, 35, 35});
    const Alert alert = standing(35);
    EXPECT_EQ(alert.fault, "bearing_outer_race");
    EXPECT_EQ(alert.since, kNow - std::chrono::hours(3));
    const auto again = steps(weightRule(), machine, {alert});
    ASSERT_EQ(again.size(), 1u);
    EXPECT_EQ(again[0].kind, AlertStep::Kind::Keep);
    AlertRule second = weightRule();
    second.name = "urgent";
    second.deliver = "now";
    const auto both = alertsNow({weightRule(), second}, machine, kNow, true);
    ASSERT_EQ(both.met.size(), 1u) << "two rules, one alert";
    EXPECT_EQ(both.met[0].rule, "urgent");
}

TEST(AlertRules, ToldAgainByTenDecibansAndOpenAgainWhereAcknowledged) {
    Alert alert = standing(35);
    alert.acknowledged = kNow;
    alert.acknowledgedBy = "Mara";
    EXPECT_EQ(steps(weightRule(), heardWith({44, 44, 44}), {alert})[0].kind, AlertStep::Kind::Keep);
    const auto grown = steps(weightRule(), heardWith({45, 44, 44}), {alert});
    ASSERT_EQ(grown.size(), 1u);
    EXPECT_EQ(grown[0].kind, AlertStep::Kind::Grow);
    EXPECT_FALSE(grown[0].alert.acknowledged);
    EXPECT_EQ(grown[0].alert.told, 45);
    EXPECT_NE(grown[0].alert.words.find("Mara"), std::string::npos);
}

TEST(AlertRules, EndsWhenNoneOfTheLastHoldsItAndNotBefore) {
    const Alert alert = standing(35);
    HeardMachine later = heardWith({5, 5, 5, 5, 35});
    EXPECT_TRUE(steps(weightRule(), later, {alert}).empty()) << "one still holds it";
    later = heardWith({5, 5, 5, 5, 5});
    const auto over = steps(weightRule(), later, {alert});
    ASSERT_EQ(over.size(), 1u);
    EXPECT_EQ(over[0].kind, AlertStep::Kind::End);
    EXPECT_TRUE(over[0].alert.ended);
    later.points[0].recordings.clear();
    EXPECT_TRUE(steps(weightRule(), later, {alert}).empty()) << "a silent sensor ends nothing";
    HeardPoint other = heardWith({5, 5, 5, 5, 5}).points[0];
    other.point = "M-NDE";
    later.points.push_back(other);
    EXPECT_TRUE(steps(weightRule(), later, {alert}).empty()) << "nor does another point for it";
}

TEST(AlertRules, QuietHoursByTheSitesClockAndAcrossAChangeOfIt) {
    AlertWays ways;
    const auto due = [&](const char* deliver, const char* now) {
        const auto time = dueTime(deliver, ways, "Europe/London", *parseUtc(now));
        EXPECT_TRUE(time);
        return time ? formatUtc(*time) : std::string();
    };
    // London is an hour ahead of UTC in summer (tz database).
    EXPECT_EQ(due("now", "2026-05-10T22:00:00Z"), "2026-05-10T22:00:00Z");
    EXPECT_EQ(due("day", "2026-05-10T12:00:00Z"), "2026-05-10T12:00:00Z");
    EXPECT_EQ(due("day", "2026-05-10T18:59:00Z"), "2026-05-10T18:59:00Z");
    EXPECT_EQ(due("day", "2026-05-10T19:00:00Z"), "2026-05-11T05:00:00Z");
    EXPECT_EQ(due("day", "2026-05-11T04:59:00Z"), "2026-05-11T05:00:00Z");
    EXPECT_EQ(due("digest", "2026-05-10T12:00:00Z"), "2026-05-11T06:00:00Z");
    // The night of 25 October 2026 is an hour longer.
    EXPECT_EQ(due("day", "2026-10-24T22:00:00Z"), "2026-10-25T06:00:00Z");
    ways.quietFrom = ways.quietTo = 0;
    EXPECT_EQ(due("day", "2026-05-10T23:00:00Z"), "2026-05-10T23:00:00Z");
}

TEST(AlertRules, DeliveryIsReadBackAsItWasKept) {
    AlertWays ways;
    ways.mail.emplace();
    ways.mail->server.host = "mail.site.example";
    ways.mail->server.user = "fettle";
    ways.mail->password.file = "/etc/fettle/mail";
    ways.mail->from = "fettle@site.example";
    ways.mail->to = {"a@site.example", "b@site.example"};
    ways.command.emplace();
    ways.command->words = {"/usr/bin/logger", "--tag", "a b\n\"c\""};
    ways.quietFrom = 21 * 60 + 30;
    ASSERT_TRUE(checkAlertWays(ways));
    const auto back = alertWaysFrom(toText(ways), "x");
    ASSERT_TRUE(back) << back.error().sentence();
    EXPECT_EQ(toText(*back), toText(ways));
    EXPECT_EQ(back->command->words, ways.command->words);
    EXPECT_EQ(back->names(),
              (std::vector<std::string>{"mail a@site.example", "mail b@site.example", "command"}));
    EXPECT_EQ(back->quietFrom, 1290);
    ways.mail->password = {};
    EXPECT_FALSE(checkAlertWays(ways)) << "a login without a place for its password";
    ways.mail->server.user.clear();
    ways.mail->to.push_back("b@site.example");
    EXPECT_FALSE(checkAlertWays(ways)) << "an address twice";
    EXPECT_FALSE(alertWaysFrom("{\"mail\": 3}", "x"));
    EXPECT_FALSE(alertWaysFrom("{\"quiet_from\": \"25:00\"}", "x"));
    EXPECT_TRUE(alertWaysFrom("", "x"));
}

}  // namespace fettle
