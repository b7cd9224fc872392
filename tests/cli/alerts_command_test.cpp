// `alerts` as a user runs it, with mails to a real server (aiosmtpd) on this computer.
#include <sys/stat.h>

#include "core/fleet/alerts.h"
#include "tests/cli/site_fixture.h"
#include "tests/exchange/mail_server.h"
#include "tests/exchange/schema_check.h"

namespace fettle::cli_test {

namespace {

const std::string kAsOf = "2026-05-10T12:00:00Z";

class AlertsCommandRun : public Site {
  protected:
    void SetUp() override {
        Site::SetUp();
        ::setenv("XDG_CONFIG_HOME", at("config").c_str(), 1);
        std::filesystem::copy_file(fleet_, unraised_);
    }
    void TearDown() override { ::unsetenv("XDG_CONFIG_HOME"); }

    static void expectFits(const Json& answer) {
        const Json schema =
            Json::parse(made::contentOf(FETTLE_SOURCE_DIR "/resources/schemas/alerts.schema.json"));
        const made::SchemaCheck check(schema);
        EXPECT_THAT(check.faultsOf(answer), testing::IsEmpty());
        EXPECT_THAT(check.untoldKeysOf(answer), testing::IsEmpty());
    }
    std::string unraised_ = folder_ / "unraised.fettle";
    // What the rules say of that moment, raised as a program would have that ran then.
    void raise() {
        const auto fleet = FleetFile::open(fleet_);
        ASSERT_TRUE(fleet);
        const auto raised = raiseAlerts(**fleet, {AlertRun::Which::All, *parseUtc(kAsOf)});
        ASSERT_TRUE(raised);
        ASSERT_GE(raised->raised, 2u);
    }
    std::vector<std::string> mailTo(const TestMailServer& server) const {
        return {"--mail-server", "localhost",
                "--mail-port",   std::to_string(server.port()),
                "--mail-ca",     server.certificate(),
                "--mail-from",   "fettle@site.example",
                "--mail-to",     "planner@site.example",
                "--quiet",       "none"};
    }
};

TEST_F(AlertsCommandRun, ListsAcknowledgesAndKeepsTheSchema) {
    EXPECT_EQ(on("alerts").out, "no alert stands\n");
    raise();
    const Ran ran = on("alerts", {"--run"});
    EXPECT_EQ(ran.status, 0) << ran.err;
    EXPECT_NE(ran.out.find("0 alerts raised"), std::string::npos) << ran.out;
    const Json listed = jsonOf("alerts", {});
    expectFits(listed);
    expectFits(jsonOf("alerts", {"--rules"}));
    expectFits(jsonOf("alerts", {"--settings"}));
    expectFits(jsonOf("alerts", {"--run"}));
    ASSERT_GE(listed["alerts"].size(), 2u);
    std::int64_t shake = 0;
    for (const Json& alert : listed["alerts"])
        if (alert["machine"] == "C-SHAKE") shake = alert["id"];
    ASSERT_GT(shake, 0);
    EXPECT_EQ(on("alerts", {"--acknowledge", std::to_string(shake)}).status, 2) << "a reason is needed";
    EXPECT_EQ(
        on("alerts", {"--acknowledge", std::to_string(shake), "--by", "Mara", "--why", "stopped it"}).status,
        0);
    EXPECT_EQ(on("alerts", {"--acknowledge", std::to_string(shake), "--why", "again"}).status, 3);
    const Json after = jsonOf("alerts", {"--of-machine", "C-SHAKE"});
    EXPECT_EQ(after["alerts"][0]["state"], "acknowledged");
    EXPECT_EQ(after["alerts"][0]["acknowledged_by"], "Mara");
}

TEST_F(AlertsCommandRun, RulesAreSetChangedAndRemoved) {
    EXPECT_NE(on("alerts", {"--rules"}).out.find("Zone D: 1 of 5 recordings in zone D; now"),
              std::string::npos);
    EXPECT_EQ(on("alerts", {"--rule", "Kiln", "--area", "kiln", "--least", "25", "--deliver", "now"}).status,
              0);
    EXPECT_EQ(on("alerts", {"--rule", "Kiln", "--hits", "4"}).status, 0);
    const Json rules = jsonOf("alerts", {"--rules"});
    const Json kiln = rules["rules"].back();
    EXPECT_EQ(kiln["least"], 25);
    EXPECT_EQ(kiln["hits"], 4);
    EXPECT_EQ(kiln["area"], "kiln");
    const Ran refused = on("alerts", {"--rule", "Kiln", "--hits", "1"});
    EXPECT_EQ(refused.status, 3);
    EXPECT_NE(refused.err.find("too few recordings"), std::string::npos) << refused.err;
    EXPECT_EQ(on("alerts", {"--remove-rule", "Kiln"}).status, 0);
    EXPECT_EQ(on("alerts", {"--remove-rule", "Kiln"}).status, 3);
    EXPECT_EQ(on("alerts", {"--rule", "x", "--kind", "nonsense"}).status, 2);
}

TEST_F(AlertsCommandRun, ARuleWithoutANameIsWrongUsage) {
    const Json before = jsonOf("alerts", {"--rules"});
    for (const std::vector<std::string>& nameless :
         {std::vector<std::string>{"--rule", "", "--least", "40"}, {"--rule", " "}, {"--remove-rule", ""}}) {
        const Ran ran = on("alerts", nameless);
        EXPECT_EQ(ran.status, 2) << nameless[0];
        EXPECT_THAT(ran.err, testing::HasSubstr("need the name of a rule"));
    }
    EXPECT_EQ(jsonOf("alerts", {"--rules"})["rules"], before["rules"]);
}

TEST_F(AlertsCommandRun, AMisspeltFaultIsRefusedAMissingMachineTold) {
    const Ran refused = on("alerts", {"--rule", "x", "--kind", "weight", "--fault", "bearing_outer_rice"});
    EXPECT_EQ(refused.status, 3);
    EXPECT_THAT(refused.err, testing::HasSubstr("fault is \"bearing_outer_rice\""));
    const Ran told = on("alerts", {"--rule", "x", "--machine", "A-RICE", "--area", "moon"});
    EXPECT_EQ(told.status, 0) << told.err;
    EXPECT_THAT(told.err, testing::HasSubstr("note: machine A-RICE is not in the register"));
    EXPECT_THAT(told.err, testing::HasSubstr("note: no machine of the register is in area moon"));
    EXPECT_EQ(on("alerts", {"--rule", "x", "--machine", "A-RACE", "--area", ""}).err, "");
}

TEST_F(AlertsCommandRun, MailsGoToARealServerOnceAnAlert) {
    const TestMailServer server(at("mail"));
    EXPECT_EQ(on("alerts", mailTo(server)).status, 0);
    const Ran tested = on("alerts", {"--test"});
    EXPECT_EQ(tested.status, 0) << tested.err;
    ASSERT_EQ(server.taken().size(), 1u);
    raise();
    EXPECT_EQ(on("alerts", {"--run"}).status, 0);
    const std::size_t mails = server.taken().size();
    EXPECT_GE(mails, 2u);
    EXPECT_EQ(on("alerts", {"--run"}).status, 0);
    EXPECT_EQ(server.taken().size(), mails) << "nothing is told twice";
    EXPECT_NE(server.taken()[1].find("X-Encrypted: yes"), std::string::npos);
    const Json listed = jsonOf("alerts", {});
    EXPECT_EQ(listed["messages"].size(), mails - 1);
    EXPECT_FALSE(listed["messages"][0]["sent"].is_null());
}

TEST_F(AlertsCommandRun, WhoRaisesWithoutSendingSaysHowItIsSent) {
    std::filesystem::create_directories(at("empty"));
    const auto taken = [&] {
        const Ran import = on("import", {recordings()});
        const Ran follow = on("follow", {at("empty"), "--once"});
        EXPECT_EQ(import.status + follow.status, 0) << import.err << follow.err;
        return std::vector<std::string>{import.err, follow.err};
    };
    raise();
    for (const std::string& said : taken())
        EXPECT_THAT(said, testing::Not(testing::HasSubstr("to be sent"))) << "no way is set up";
    ASSERT_TRUE(
        std::filesystem::copy_file(unraised_, fleet_, std::filesystem::copy_options::overwrite_existing));
    EXPECT_EQ(on("alerts", {"--quiet", "none", "--command", "/bin/cat"}).status, 0);
    raise();
    for (const std::string& said : taken()) {
        EXPECT_THAT(said, testing::HasSubstr("alerts wait to be sent"));
        EXPECT_THAT(said, testing::HasSubstr("fettle-cli alerts " + fleet_ + " --run"));
    }
    EXPECT_EQ(on("alerts", {"--run"}).status, 0);
    for (const std::string& said : taken())
        EXPECT_THAT(said, testing::Not(testing::HasSubstr("to be sent")));
}

TEST_F(AlertsCommandRun, AMomentOfThePastSendsAndKeepsNothing) {
    const TestMailServer server(at("mail"));
    EXPECT_EQ(on("alerts", mailTo(server)).status, 0);
    const Ran told = on("alerts", {"--run", "--as-of", kAsOf});
    EXPECT_EQ(told.status, 0) << told.err;
    EXPECT_NE(told.out.find("nothing is sent, nothing is kept"), std::string::npos) << told.out;
    EXPECT_NE(told.out.find("C-SHAKE  Zone D"), std::string::npos) << told.out;
    EXPECT_NE(told.out.find("to mail planner@site.example at "), std::string::npos) << told.out;
    const Json json = jsonOf("alerts", {"--run", "--as-of", kAsOf});
    expectFits(json);
    EXPECT_EQ(json["as_of"], kAsOf);
    EXPECT_GE(json["would_tell"].size(), 2u);
    EXPECT_EQ(json["would_tell"][0]["machine"], "C-SHAKE");
    EXPECT_EQ(on("alerts", {"--run"}).status, 0);
    EXPECT_TRUE(server.taken().empty()) << "nor is it sent by the next run";
    EXPECT_EQ(on("alerts").out, "no alert stands\n");
    EXPECT_EQ(on("alerts", {"--run", "--as-of", "in May"}).status, 3);
    EXPECT_EQ(on("alerts", {"--no-mail"}).status, 0);
    EXPECT_NE(on("alerts", {"--run", "--as-of", kAsOf}).out.find("; listed alone"), std::string::npos);
}

TEST_F(AlertsCommandRun, ThePasswordIsNowhereInTheFleetFileNorInAnyWord) {
    const std::string secret = "correct-horse-7";
    const TestMailServer server(at("mail"), {"--login", "fettle:" + secret});
    made::write(at("password"), secret + "\n");
    ::chmod(at("password").c_str(), 0644);
    auto options = mailTo(server);
    options.insert(options.end(), {"--mail-user", "fettle", "--mail-password-file", at("password")});
    std::string said;
    const auto run = [&](std::vector<std::string> more) {
        const Ran ran = on("alerts", more);
        said += ran.out + ran.err;
        return ran;
    };
    EXPECT_EQ(run(options).status, 0);
    const Ran open = run({"--test"});
    EXPECT_EQ(open.status, 1);
    EXPECT_NE(open.err.find("can be read or changed by others"), std::string::npos) << open.err;
    EXPECT_TRUE(server.taken().empty());
    ::chmod(at("password").c_str(), 0600);
    EXPECT_EQ(run({"--test"}).status, 0);
    EXPECT_EQ(server.taken().size(), 1u);
    made::write(at("password"), "wrong-" + secret + "\n");
    const Ran wrong = run({"--test"});
    EXPECT_EQ(wrong.status, 1);
    EXPECT_NE(wrong.err.find("refuses the login of fettle"), std::string::npos) << wrong.err;
    run({"--settings"});
    EXPECT_EQ(said.find(secret), std::string::npos);
    for (const char* ending : {"", "-wal"})
        EXPECT_EQ(made::contentOf(fleet_ + ending).find(secret), std::string::npos);
    EXPECT_EQ(made::contentOf(at("config/fettle/alert_delivery.json")).find(secret), std::string::npos);
}

TEST_F(AlertsCommandRun, AnotherUsersSettingsAreNotSentFromHere) {
    const TestMailServer server(at("mail"));
    EXPECT_EQ(on("alerts", mailTo(server)).status, 0);
    ::setenv("XDG_CONFIG_HOME", at("other").c_str(), 1);
    const Ran refused = on("alerts", {"--test"});
    EXPECT_EQ(refused.status, 3);
    EXPECT_NE(refused.err.find("--allow-delivery"), std::string::npos);
    const Ran byTheWay = on("alerts", {"--quiet", "22:00-06:00", "--test"});
    EXPECT_EQ(byTheWay.status, 3) << "another setting allows nothing";
    EXPECT_NE(byTheWay.err.find("--allow-delivery"), std::string::npos);
    EXPECT_TRUE(server.taken().empty());
    EXPECT_EQ(on("alerts", {"--allow-delivery"}).status, 0);
    EXPECT_EQ(on("alerts", {"--test"}).status, 0);
    EXPECT_EQ(server.taken().size(), 1u);
}

TEST_F(AlertsCommandRun, WhatFailsIsSaidKeptAndStatusOne) {
    const TestMailServer server(at("mail"), {"--rcpt", "550 5.1.1 no such user"});
    EXPECT_EQ(on("alerts", mailTo(server)).status, 0);
    raise();
    const Ran ran = on("alerts", {"--run"});
    EXPECT_EQ(ran.status, 1);
    EXPECT_NE(ran.err.find("550 5.1.1 no such user"), std::string::npos) << ran.err;
    const Ran listed = on("alerts");
    EXPECT_EQ(listed.status, 0);
    EXPECT_NE(listed.err.find("not sent yet, mail planner@site.example after 1 try"), std::string::npos)
        << listed.err;
    EXPECT_EQ(on("alerts", {"--no-mail"}).status, 0);
    EXPECT_EQ(on("alerts", {"--run"}).status, 0);
}

TEST_F(AlertsCommandRun, AProgramIsRunAndHostileSettingsAreRefused) {
    const std::string got = at("got");
    EXPECT_EQ(on("alerts", {"--quiet", "none", "--command",
                            "[\"/bin/sh\", \"-c\", \"cat >> \\\"$1\\\"\", \"sh\", \"" + got + "\"]"})
                  .status,
              0);
    raise();
    EXPECT_EQ(on("alerts", {"--run"}).status, 0);
    const std::string text = made::contentOf(got);
    EXPECT_NE(text.find("\"machine\": \"C-SHAKE\""), std::string::npos) << text;
    expectFits(Json::parse(text.substr(0, text.find("\n}\n") + 2), nullptr, false));
    EXPECT_EQ(on("alerts", {"--command", "/bin/echo \"a b\" c"}).status, 0);
    EXPECT_EQ(jsonOf("alerts", {"--settings"})["delivery"]["command"]["program"],
              (Json{"/bin/echo", "a b", "c"}));
    for (const std::vector<std::string>& bad :
         {std::vector<std::string>{"--command", "siren; rm -rf /"},
          {"--command", "/bin/siren \"loud"},
          {"--command", "[\"siren\"]"},
          {"--command", "[]"},
          {"--quiet", "late"},
          {"--digest-at", "24:00"},
          {"--command-per-hour", "0"},
          {"--command-timeout", "601"},
          {"--mail-server", "h", "--mail-from", "a@b", "--mail-to", "x@y\nRCPT TO:<z@w>"},
          {"--mail-server", "h/../x", "--mail-from", "a@b", "--mail-to", "x@y"},
          {"--mail-server", "h", "--mail-security", "none", "--mail-from", "a@b", "--mail-to", "x@y"}}) {
        const Ran refused = on("alerts", bad);
        EXPECT_EQ(refused.status, 3) << bad[1];
        EXPECT_EQ(refused.errLines().size(), 1u) << refused.err;
        EXPECT_EQ(jsonOf("alerts", {"--settings"})["delivery"]["command"]["program"],
                  (Json{"/bin/echo", "a b", "c"}))
            << "what was refused changes nothing";
    }
    // A file whose settings cannot be read: a small change does not throw them away, a whole way replaces
    // them.
    {
        auto fleet = FleetFile::open(fleet_).value();
        ASSERT_TRUE(fleet->alerts().setSetting("delivery", "{ \"mail\": { \"per_hour\": 0 } }"));
    }
    EXPECT_EQ(on("alerts", {"--quiet", "21:00-05:00"}).status, 3);
    EXPECT_EQ(on("alerts", {"--command", "/bin/echo"}).status, 0);
    EXPECT_EQ(on("alerts", {"--quiet", "21:00-05:00"}).status, 0);
}

}  // namespace

}  // namespace fettle::cli_test
