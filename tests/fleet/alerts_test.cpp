// Alerts on a small site whose truth is known (small_site.h): C-SHAKE shakes in zone D, A-RACE has a spalled
// race, E-FLAT is silent. Delivery through doors of the test's own; the real server is in tests/exchange and
// tests/cli.
#include "core/fleet/alerts.h"

#include <fmt/format.h>

#include <sys/wait.h>
#include <unistd.h>

#include <fstream>

#include "core/fleet/alert_post.h"
#include "core/fleet/alert_preview.h"
#include "core/fleet/alert_text.h"
#include "tests/fleet/alert_site.h"

namespace fettle::fleet_test {

namespace {

const Instant kThen = *parseUtc("2026-05-10T12:00:00Z");

class Alerts : public AlertSite {
  protected:
    AlertsRaised raise(Instant now = kThen, AlertRun::Which which = AlertRun::Which::All) {
        const auto raised = raiseAlerts(*fleet_, {which, now});
        EXPECT_TRUE(raised) << (raised ? "" : raised.error().sentence());
        return raised.value_or(AlertsRaised());
    }
    std::vector<Alert> standing(bool clearedToo = false) {
        auto alerts = fleet_->alerts().alerts(clearedToo);
        EXPECT_TRUE(alerts);
        return alerts ? std::move(*alerts) : std::vector<Alert>();
    }
    Alert alertOf(const std::string& tag) {
        for (const Alert& alert : standing())
            if (alert.machine == tag) return alert;
        ADD_FAILURE() << "no alert of " << tag;
        return {};
    }

    // A way to two addresses and a program; quiet hours off unless asked for.
    AlertWays setWays(int perHour = 6) {
        AlertWays ways;
        ways.mail.emplace();
        ways.mail->server.host = "mail.site.example";
        ways.mail->from = "fettle@site.example";
        ways.mail->to = {"a@site.example"};
        ways.mail->perHour = perHour;
        ways.quietFrom = ways.quietTo = 0;
        EXPECT_TRUE(setAlertWays(*fleet_, ways));
        return ways;
    }
    // So many alerts of one machine that are due now.
    void putAlerts(int count, const char* deliver = "day") {
        for (int i = 0; i < count; ++i) {
            Alert alert;
            alert.machine = "B-SOUND";
            alert.fault = "bearing_cage";
            alert.at = fmt::format("place {} {}", deliver, i);
            alert.rule = "made";
            alert.kind = "weight";
            alert.deliver = deliver;
            alert.since = alert.raised = alert.seen = kThen;
            alert.value = alert.told = 35;
            alert.unit = "dban";
            alert.words = fmt::format("words {}", i);
            const auto id = fleet_->alerts().add(alert);
            ASSERT_TRUE(id);
            ASSERT_TRUE(fleet_->alerts().addItem(
                {0, *id, "mail a@site.example", "raised", std::string(deliver) == "digest", kThen}));
        }
    }
    Delivered deliver(Instant now) {
        const auto done = deliverAlerts(*fleet_, now, {}, doors_);
        EXPECT_TRUE(done) << (done ? "" : done.error().sentence());
        return done.value_or(Delivered());
    }

    MailOutcome answer_{true, false, {}};
    std::vector<std::string> mails_;
    DeliveryDoors doors_{[this](const MailServer&, const std::string&, const std::string&,
                                const std::string& text, const CancelToken&) {
                             mails_.push_back(text);
                             return answer_;
                         },
                         runChild};
};

std::string messageIdOf(const std::string& mail) {
    const std::size_t at = mail.find("Message-ID: ");
    return mail.substr(at, mail.find("\r\n", at) - at);
}

TEST_F(Alerts, TheShippedRulesTellTheBadMachineAndNotTheSoundOne) {
    const AlertsRaised raised = raise();
    EXPECT_EQ(raised.machines, 5u);
    const Alert shake = alertOf("C-SHAKE");
    EXPECT_EQ(shake.rule, "Zone D");
    EXPECT_EQ(shake.unit, "mm/s");
    EXPECT_EQ(shake.deliver, "now");
    EXPECT_STREQ(shake.state(), "open");
    for (const Alert& alert : standing())
        EXPECT_NE(alert.machine, "B-SOUND") << alert.words;
    const Alert silent = alertOf("E-FLAT");
    EXPECT_EQ(silent.fault, "sensor");
    EXPECT_EQ(silent.kind, "silence");
    EXPECT_EQ(*fleet_->alerts().openCount(), standing().size());
}

TEST_F(Alerts, AskedAgainNothingIsDoubled) {
    const std::size_t first = raise().raised;
    EXPECT_GE(first, 3u);
    const AlertsRaised again = raise(kThen + std::chrono::minutes(1));
    EXPECT_EQ(again.raised + again.grown + again.ended, 0u);
    EXPECT_EQ(standing().size(), first);
    const AlertsRaised fresh = raise(kThen + std::chrono::minutes(2), AlertRun::Which::New);
    EXPECT_EQ(fresh.machines, 0u) << "nothing came in, and silence was looked at a minute ago";
}

TEST_F(Alerts, OldRecordingsSayNothingOfNow) {
    raise(kThen + std::chrono::days(30));
    for (const Alert& alert : standing())
        EXPECT_EQ(alert.kind, "silence") << alert.words;
}

TEST_F(Alerts, AcknowledgedAndOverIsCleared) {
    raise();
    const Alert shake = alertOf("C-SHAKE");
    EXPECT_FALSE(acknowledgeAlert(*fleet_, shake.id, "Mara", "  ", kThen)) << "without a reason";
    ASSERT_TRUE(acknowledgeAlert(*fleet_, shake.id, "Mara", "bolts tightened", kThen));
    EXPECT_FALSE(acknowledgeAlert(*fleet_, shake.id, "Mara", "again", kThen));
    EXPECT_EQ(acknowledgeAlert(*fleet_, 9999, "Mara", "x", kThen).error().kind, ErrorKind::NotFound);
    Alert kept = *fleet_->alerts().alert(shake.id);
    EXPECT_STREQ(kept.state(), "acknowledged");
    EXPECT_EQ(kept.acknowledgedBy, "Mara");
    EXPECT_EQ(raise(kThen + std::chrono::hours(1)).raised, 0u) << "it still stands";
    kept.ended = kThen + std::chrono::hours(2);
    ASSERT_TRUE(fleet_->alerts().update(kept));
    EXPECT_STREQ(fleet_->alerts().alert(shake.id)->state(), "cleared");
    EXPECT_EQ(raise(kThen + std::chrono::hours(3)).raised, 1u) << "cleared, it may be raised anew";
    EXPECT_NE(alertOf("C-SHAKE").id, shake.id);
}

TEST_F(Alerts, NothingIsSentUntilThisUserAllowedIt) {
    setWays();
    putAlerts(1);
    std::filesystem::remove(deliveryTrustFile());
    const auto refused = deliverAlerts(*fleet_, kThen, {}, doors_);
    ASSERT_FALSE(refused);
    EXPECT_NE(refused.error().sentence().find("--allow-delivery"), std::string::npos);
    EXPECT_TRUE(mails_.empty());
    ASSERT_TRUE(allowDelivery(*fleet_));
    EXPECT_EQ(deliver(kThen).sent, 1u);
    AlertWays ways = *alertWays(*fleet_);
    ways.mail->to = {"thief@evil.example"};
    ASSERT_TRUE(fleet_->alerts().setSetting("delivery", toText(ways)));
    EXPECT_FALSE(*deliveryAllowed(*fleet_)) << "changed by something else than this user";
    EXPECT_EQ(std::filesystem::status(deliveryTrustFile()).permissions() & std::filesystem::perms::others_all,
              std::filesystem::perms::none);
}

TEST_F(Alerts, SoManyMailsAnHourTheRestInOneDigest) {
    setWays(3);
    putAlerts(10);
    EXPECT_EQ(deliver(kThen).sent, 3u);
    ASSERT_EQ(mails_.size(), 3u) << "two alone, eight together";
    EXPECT_EQ(deliver(kThen + std::chrono::minutes(1)).sent, 0u);
    putAlerts(2, "now");
    Delivered later = deliver(kThen + std::chrono::minutes(59));
    EXPECT_EQ(later.sent, 0u) << "the hour is used up";
    EXPECT_EQ(later.waiting, 2u);
    EXPECT_EQ(deliver(kThen + std::chrono::minutes(61)).sent, 2u);
    std::size_t items = 0;
    const auto messages = fleet_->alerts().newestMessages(10);
    ASSERT_TRUE(messages);
    for (const AlertMessage& message : *messages)
        items += fleet_->alerts().itemsOf(message.id)->size();
    EXPECT_EQ(items, 12u) << "each alert once";
}

// Of ten alerts that fill the hour the gravest goes alone and the rest are read from the gravest on: told at
// once before in the day, criticality A before C, a zone before a weight, 50 decibans before 35.
TEST_F(Alerts, TheGravestIsToldFirst) {
    AlertWays ways;
    ways.command.emplace();
    ways.command->words = {"/bin/true"};
    ways.command->perHour = 2;
    ASSERT_TRUE(setAlertWays(*fleet_, ways));
    const auto put = [this](const char* words, const char* deliver, const char* kind, double value) {
        Alert alert;
        alert.machine = "B-SOUND";
        alert.fault = "bearing_cage";
        alert.at = alert.words = words;
        alert.rule = "made";
        alert.kind = kind;
        alert.deliver = deliver;
        alert.since = alert.raised = alert.seen = kThen;
        alert.value = alert.told = value;
        alert.unit = "dban";
        const auto id = fleet_->alerts().add(alert);
        ASSERT_TRUE(id);
        ASSERT_TRUE(fleet_->alerts().addItem({0, *id, "command", "raised", false, kThen}));
    };
    put("third", "day", "weight", 35);
    put("fourth", "day", "growth", 500);
    put("second", "day", "weight", 50);
    put("first", "now", "zone", 9);
    std::vector<std::string> told;
    doors_.run = [&told](const ChildProgram& program, const CancelToken&) -> Result<ChildEnd> {
        const Json letter = Json::parse(program.input);
        for (const Json& alert : letter["alerts"])
            told.push_back(alert["words"]);
        told.push_back("");
        return ChildEnd{0, false, false, ""};
    };
    EXPECT_EQ(deliver(kThen).sent, 2u);
    EXPECT_EQ(told, (std::vector<std::string>{"first", "", "second", "third", "fourth", ""}));
    Alert a, b;
    a.deliver = b.deliver = "day";
    a.kind = b.kind = "weight";
    a.criticality = "A";
    b.criticality = "C";
    b.value = 100;
    EXPECT_TRUE(isGraver(a, b));
    EXPECT_FALSE(isGraver(b, a));
}

TEST_F(Alerts, AMomentOfThePastIsAskedAboutWithoutTrace) {
    setWays();
    const auto then = previewAlerts(*fleet_, kThen);
    ASSERT_TRUE(then) << then.error().sentence();
    EXPECT_EQ(then->machines, 5u);
    ASSERT_GE(then->alerts.size(), 2u);
    EXPECT_EQ(then->alerts[0].alert.machine, "C-SHAKE") << "gravest first";
    EXPECT_EQ(then->alerts[0].ways, (std::vector<std::string>{"mail a@site.example"}));
    EXPECT_EQ(then->alerts[0].due, kThen);
    EXPECT_EQ(then->alerts.size(), raise().raised) << "as the rules would have said";
    EXPECT_EQ(previewAlerts(*fleet_, kThen)->alerts.size(), then->alerts.size()) << "whatever stands";
    const auto before = previewAlerts(*fleet_, kThen - std::chrono::days(30));
    for (const PreviewedAlert& one : before->alerts)
        EXPECT_NE(one.alert.machine, "C-SHAKE") << "nothing was heard of it then";
    auto read = FleetFile::open(path_, OpenMode::ReadOnly);
    ASSERT_TRUE(read);
    EXPECT_EQ(previewAlerts(**read, kThen)->alerts.size(), then->alerts.size());
}

TEST_F(Alerts, DigestItemsGoTogetherInOneMail) {
    setWays();
    putAlerts(4, "digest");
    EXPECT_EQ(deliver(kThen).sent, 1u);
    std::vector<AlertItem> due(5);
    due[1].digest = due[3].digest = true;
    const auto letters = lettersOf(due, 6);
    ASSERT_EQ(letters.size(), 4u);
    EXPECT_EQ(letters.back(), (std::vector<std::size_t>{1, 3}));
    EXPECT_EQ(lettersOf(due, 2), (std::vector<std::vector<std::size_t>>{{0}, {1, 2, 3, 4}}));
    EXPECT_EQ(lettersOf(due, 1), (std::vector<std::vector<std::size_t>>{{0, 1, 2, 3, 4}}));
    EXPECT_TRUE(lettersOf(due, 0).empty());
}

TEST_F(Alerts, AFailureIsKeptTriedAgainAndShown) {
    setWays();
    putAlerts(1);
    answer_ = {false, false, "mail server answers 451"};
    EXPECT_EQ(deliver(kThen).failures.size(), 1u);
    EXPECT_EQ(deliver(kThen + std::chrono::seconds(59)).failures.size(), 0u) << "not before a minute";
    EXPECT_EQ(deliver(kThen + std::chrono::seconds(61)).failures.size(), 1u);
    auto unsent = *fleet_->alerts().unsentMessages();
    ASSERT_EQ(unsent.size(), 1u);
    EXPECT_EQ(unsent[0].attempts, 2);
    EXPECT_EQ(unsent[0].error, "mail server answers 451");
    putAlerts(3, "now");
    answer_ = {true, false, {}};
    EXPECT_EQ(deliver(kThen + std::chrono::minutes(5)).sent, 4u);
    EXPECT_EQ(mails_.size(), 6u);
    EXPECT_EQ(messageIdOf(mails_[0]), messageIdOf(mails_[2])) << "the same mail at every try";
    EXPECT_NE(messageIdOf(mails_[2]), messageIdOf(mails_[3]));
    EXPECT_TRUE(fleet_->alerts().unsentMessages()->empty());
    EXPECT_EQ(backOff(1, false).count(), 1);
    EXPECT_EQ(backOff(50, false).count(), 60);
    EXPECT_EQ(backOff(1, true).count(), 30);
    EXPECT_EQ(backOff(50, true).count(), 240);
}

TEST_F(Alerts, AcknowledgedBeforeItsTimeIsNotSent) {
    setWays();
    putAlerts(2);
    ASSERT_TRUE(acknowledgeAlert(*fleet_, standing().front().id, "Mara", "seen", kThen));
    EXPECT_EQ(deliver(kThen).sent, 1u);
    EXPECT_TRUE(fleet_->alerts().waitingItems()->empty());
}

TEST_F(Alerts, AtNightOnlyWhatSaysSo) {
    AlertWays ways = setWays();
    ways.quietFrom = 20 * 60;
    ways.quietTo = 6 * 60;
    ASSERT_TRUE(setAlertWays(*fleet_, ways));
    const Instant night = *parseUtc("2026-05-10T22:00:00Z");
    raise(night);
    EXPECT_EQ(deliver(night).sent, 1u) << "zone D";
    ASSERT_EQ(mails_.size(), 1u);
    EXPECT_NE(mails_[0].find("Subject: "), std::string::npos);
    const std::size_t rest = fleet_->alerts().waitingItems()->size();
    EXPECT_GE(rest, 1u);
    EXPECT_EQ(deliver(*parseUtc("2026-05-11T05:59:00Z")).sent, 0u);
    deliver(*parseUtc("2026-05-11T07:00:00Z"));
    EXPECT_TRUE(fleet_->alerts().waitingItems()->empty());
}

// Killed between "taken by the server" and "noted as sent": that one mail comes twice, with one Message-ID.
TEST_F(Alerts, KilledAfterTheServerTookItOneMailIsDoubledNoneLost) {
    setWays();
    putAlerts(3);
    const std::string log = folder_ / "taken";
    const auto logging = [log](const std::string& text) {
        std::ofstream(log, std::ios::app) << messageIdOf(text) << "\n" << std::flush;
    };
    fleet_.reset();
    const pid_t child = ::fork();
    if (child == 0) {
        auto own = FleetFile::open(path_);
        int taken = 0;
        DeliveryDoors dying{[&](const MailServer&, const std::string&, const std::string&,
                                const std::string& text, const CancelToken&) -> MailOutcome {
                                logging(text);
                                if (++taken == 2) ::_exit(9);
                                return {true, false, {}};
                            },
                            runChild};
        const auto done = deliverAlerts(**own, kThen, {}, dying);
        ::_exit(done ? 1 : 2);
    }
    int ended = 0;
    ::waitpid(child, &ended, 0);
    ASSERT_EQ(WEXITSTATUS(ended), 9);
    fleet_ = std::move(*FleetFile::open(path_));
    doors_.mail = [&](const MailServer&, const std::string&, const std::string&, const std::string& text,
                      const CancelToken&) -> MailOutcome {
        logging(text);
        return {true, false, {}};
    };
    EXPECT_EQ(deliver(kThen + std::chrono::seconds(30)).sent, 0u) << "the dead one may still be at it";
    EXPECT_EQ(deliver(kThen + std::chrono::minutes(5)).sent, 2u);
    std::map<std::string, int> times;
    std::ifstream in(log);
    for (std::string line; std::getline(in, line);)
        ++times[line];
    ASSERT_EQ(times.size(), 3u) << "three alerts, three mails";
    int doubled = 0;
    for (const auto& [id, count] : times)
        doubled += count - 1;
    EXPECT_EQ(doubled, 1);
    EXPECT_TRUE(fleet_->check(true)->empty());
}

TEST_F(Alerts, KilledBeforeItWasSentNothingIsLost) {
    setWays();
    putAlerts(1);
    fleet_.reset();
    const pid_t child = ::fork();
    if (child == 0) {
        auto own = FleetFile::open(path_);
        DeliveryDoors dying{[](const MailServer&, const std::string&, const std::string&, const std::string&,
                               const CancelToken&) -> MailOutcome { ::_exit(9); },
                            runChild};
        (void)deliverAlerts(**own, kThen, {}, dying);
        ::_exit(1);
    }
    ::waitpid(child, nullptr, 0);
    fleet_ = std::move(*FleetFile::open(path_));
    EXPECT_EQ(deliver(kThen + std::chrono::minutes(5)).sent, 1u);
    EXPECT_EQ(mails_.size(), 1u);
}

TEST_F(Alerts, TheProgramGetsHostileNamesAsJson) {
    const std::string tag = "E\"vil\n$(touch x);\xc3\xbc'`id`=cmd|' /C calc'!A0";
    AlertWays ways;
    ways.command.emplace();
    ways.command->words = {"/bin/sh", "-c", "cat > \"$1\"", "sh", folder_ / "got"};
    ways.quietFrom = ways.quietTo = 0;
    ASSERT_TRUE(setAlertWays(*fleet_, ways));
    Alert alert;
    alert.machine = "B-SOUND";
    alert.fault = alert.at = alert.rule = alert.words = tag;
    alert.kind = "weight";
    alert.deliver = "now";
    alert.unit = "dban";
    alert.since = alert.raised = alert.seen = kThen;
    const auto id = fleet_->alerts().add(alert);
    ASSERT_TRUE(id);
    ASSERT_TRUE(fleet_->alerts().addItem({0, *id, "command", "raised", false, kThen}));
    EXPECT_EQ(deliver(kThen).sent, 1u);
    std::ifstream in(folder_ / "got");
    const Json got = Json::parse(in, nullptr, false);
    ASSERT_TRUE(got.is_object());
    EXPECT_EQ(got["kind"], "alert");
    ASSERT_EQ(got["alerts"].size(), 1u);
    EXPECT_EQ(got["alerts"][0]["words"], tag);
    EXPECT_EQ(got["alerts"][0]["machine"], "B-SOUND");
    ways.command->words = {"/bin/sh", "-c", "echo no such thing >&2; exit 5"};
    ASSERT_TRUE(setAlertWays(*fleet_, ways));
    ASSERT_TRUE(fleet_->alerts().addItem({0, *id, "command", "grown", false, kThen}));
    const Delivered failed = deliver(kThen + std::chrono::minutes(1));
    ASSERT_EQ(failed.failures.size(), 1u);
    EXPECT_NE(failed.failures[0].why.find("status 5: no such thing"), std::string::npos)
        << failed.failures[0].why;
}

TEST_F(Alerts, ThePostSendsInTheBackgroundAndEndsAtOnce) {
    AlertWays ways;
    ways.command.emplace();
    ways.command->words = {"/bin/sh", "-c", "cat > \"$1.part\" && mv \"$1.part\" \"$1\"", "sh",
                           folder_ / "got"};
    ASSERT_TRUE(setAlertWays(*fleet_, ways));
    AlertPost post(path_);
    putAlerts(1);
    const auto id = fleet_->alerts().alerts(false)->front().id;
    ASSERT_TRUE(fleet_->alerts().addItem({0, id, "command", "raised", false, kThen}));
    for (int i = 0; i < 3000 && !std::filesystem::exists(folder_ / "got"); ++i) {
        post.wake();
        ::usleep(10000);
    }
    EXPECT_TRUE(std::filesystem::exists(folder_ / "got"));
}

TEST_F(Alerts, OfAMachineTakenOutOfTheRegisterTheyAreOver) {
    raise();
    ASSERT_TRUE(fleet_->machines().remove("C-SHAKE", "2026-05-10", "scrapped"));
    raise(kThen + std::chrono::hours(1));
    EXPECT_TRUE(alertOf("C-SHAKE").ended);
}

TEST_F(Alerts, ALetterHoldsNoLineOfTheUsersOwn) {
    Alert alert;
    alert.machine = "TAG\r\nBcc: x@evil.example";
    alert.service = "fan\n.\nQUIT";
    alert.words = "words\r\n\r\nmore";
    alert.rule = "rule\nrule";
    alert.unit = "dban";
    const AlertLetter letter = letterOf({{alert, "raised"}}, "Site\nX", "UTC");
    EXPECT_EQ(letter.subject.find_first_of("\r\n"), std::string::npos);
    EXPECT_EQ(letter.body.find("\nBcc"), std::string::npos);
    EXPECT_EQ(letter.body.find("\n."), std::string::npos);
    EXPECT_NE(letter.body.find("not a permit to work"), std::string::npos);
    EXPECT_NE(letter.body.find("not the odds"), std::string::npos);
}

TEST_F(Alerts, NewRecordingsCostWhatIsNew) {
    const auto work = fleet_->alerts().newWork(0, kThen - kAlertWindow);
    ASSERT_TRUE(work);
    EXPECT_EQ(work->machines.size(), 3u) << "A-RACE, B-SOUND, C-SHAKE; E-FLAT's are old";
    EXPECT_EQ(fleet_->alerts().newWork(work->newest, kThen - kAlertWindow)->machines.size(), 0u);
    ASSERT_TRUE(fleet_->alerts().setSetting("looked_to", "0"));
    EXPECT_EQ(raise(kThen, AlertRun::Which::New).machines, 5u) << "silence is due";
    EXPECT_EQ(*fleet_->alerts().setting("looked_to"), std::to_string(work->newest));
}

}  // namespace

}  // namespace fettle::fleet_test
