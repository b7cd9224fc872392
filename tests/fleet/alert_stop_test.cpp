// Who waits for a secret or a server is stopped at once: a program that would take ten minutes is killed, a
// server given ten minutes is left. What was under way is kept and sent next time.
#include <signal.h>
#include <unistd.h>

#include <fstream>

#include "core/fleet/alert_post.h"
#include "core/fleet/alerts.h"
#include "tests/exchange/silent_server.h"
#include "tests/fleet/alert_site.h"

namespace fettle::fleet_test {

namespace {

class AlertStop : public AlertSite {
  protected:
    // An alert that is due by mail to this server, whose password this program prints.
    void putMail(const MailServer& server, const std::vector<std::string>& secret) {
        AlertWays ways;
        ways.mail.emplace();
        ways.mail->server = server;
        if (!secret.empty()) ways.mail->server.user = "fettle";
        ways.mail->password.command = secret;
        ways.mail->from = "fettle@site.example";
        ways.mail->to = {"a@site.example"};
        ways.quietFrom = ways.quietTo = 0;
        ASSERT_TRUE(setAlertWays(*fleet_, ways));
        Alert alert;
        alert.machine = "B-SOUND";
        alert.fault = "bearing_cage";
        alert.rule = "made";
        alert.kind = "weight";
        alert.deliver = "now";
        alert.since = alert.raised = alert.seen = *parseUtc("2026-05-10T12:00:00Z");
        const auto id = fleet_->alerts().add(alert);
        ASSERT_TRUE(id);
        ASSERT_TRUE(fleet_->alerts().addItem({0, *id, "mail a@site.example", "raised", false, alert.raised}));
    }
    // Writes its number, then sleeps.
    std::vector<std::string> slowSecret() const {
        return {"/bin/sh", "-c", "echo $$ > \"$1.part\" && mv \"$1.part\" \"$1\" && sleep 600", "sh",
                folder_ / "number"};
    }
    pid_t numberOfSecret() const {
        for (int i = 0; i < 3000 && !std::filesystem::exists(folder_ / "number"); ++i)
            ::usleep(10000);
        pid_t number = 0;
        std::ifstream(folder_ / "number") >> number;
        return number;
    }
    void expectKept() {
        const auto unsent = fleet_->alerts().unsentMessages();
        ASSERT_TRUE(unsent);
        ASSERT_EQ(unsent->size(), 1u);
        EXPECT_NE((*unsent)[0].error.find("stopped on request"), std::string::npos) << (*unsent)[0].error;
        EXPECT_LE((*unsent)[0].nextTry, (*unsent)[0].made) << "at once, next time";
    }
};

TEST_F(AlertStop, ThePostEndsWhileASecretIsBeingPrinted) {
    putMail(SilentServer().settings(), slowSecret());
    pid_t secret = 0;
    {
        AlertPost post(path_);
        secret = numberOfSecret();
        ASSERT_GT(secret, 0);
        EXPECT_EQ(::kill(secret, 0), 0) << "it still sleeps";
    }
    EXPECT_EQ(::kill(secret, 0), -1) << "and does not outlive the post";
    expectKept();
}

TEST_F(AlertStop, ThePostEndsWhileAServerSaysNothing) {
    const SilentServer server;
    putMail(server.settings(), {});
    {
        AlertPost post(path_);
        ASSERT_TRUE(server.called());
    }
    expectKept();
}

TEST_F(AlertStop, NothingIsStartedOnceStopped) {
    putMail(SilentServer().settings(), slowSecret());
    const CancelToken cancel;
    cancel.cancel();
    EXPECT_TRUE(sendTest(*fleet_, cancel));
    EXPECT_TRUE(deliverAlerts(*fleet_, {}, cancel));
    EXPECT_FALSE(std::filesystem::exists(folder_ / "number"));
    const auto raised =
        raiseAlerts(*fleet_, {AlertRun::Which::All, *parseUtc("2026-05-10T12:00:00Z"), cancel});
    ASSERT_TRUE(raised);
    EXPECT_FALSE(raised->any());
}

}  // namespace

}  // namespace fettle::fleet_test
