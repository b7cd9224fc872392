// Mails against a real SMTP server (aiosmtpd) on this computer, as RFC 5321, 3207 (STARTTLS) and 4954 (AUTH)
// say.
#include "core/exchange/mail.h"

#include <gtest/gtest.h>

#include "core/exchange/mail_message.h"
#include "tests/base/scratch_folder.h"
#include "tests/exchange/mail_server.h"
#include "tests/exchange/silent_server.h"

namespace fettle {

namespace {

const std::string kFrom = "fettle@site.example", kTo = "planner@site.example";

std::string letter(const std::string& subject = "a subject") {
    MailMessage message;
    message.from = kFrom;
    message.to = kTo;
    message.subject = subject;
    message.body = "one\n.\ntwo\n";
    message.messageId = "<7@site.example>";
    return textOf(message);
}

MailOutcome sendTo(const MailServer& server) {
    return sendMail(server, kFrom, kTo, letter());
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != text.npos;
}

}  // namespace

TEST(Mail, ByStarttlsWithACheckedCertificate) {
    const ScratchFolder folder;
    const TestMailServer server(folder.path());
    const MailOutcome outcome = sendTo(server.settings());
    ASSERT_TRUE(outcome.accepted) << outcome.why;
    ASSERT_EQ(server.taken().size(), 1u);
    const std::string mail = server.taken()[0];
    EXPECT_TRUE(has(mail, "X-Encrypted: yes")) << mail;
    EXPECT_TRUE(has(mail, "X-Envelope-From: " + kFrom));
    EXPECT_TRUE(has(mail, "X-Envelope-To: " + kTo + "\r\n"));
    EXPECT_TRUE(has(mail, letter())) << "as it was given, byte for byte";
}

TEST(Mail, ByTlsFromTheFirstByte) {
    const ScratchFolder folder;
    const TestMailServer server(folder.path(), {}, "tls");
    const MailOutcome outcome = sendTo(server.settings());
    EXPECT_TRUE(outcome.accepted) << outcome.why;
    EXPECT_EQ(server.taken().size(), 1u);
}

TEST(Mail, AWrongCertificateIsRefusedAndSaid) {
    const ScratchFolder folder;
    const TestMailServer server(folder.path());
    MailServer settings = server.settings();
    settings.caFile.clear();
    MailOutcome outcome = sendTo(settings);
    EXPECT_FALSE(outcome.accepted);
    EXPECT_TRUE(outcome.lasting);
    EXPECT_TRUE(has(outcome.why, "certificate is not trusted, nothing was sent")) << outcome.why;
    TestMailServer::makeCertificate(folder.path(), "other", "other_key");
    settings.caFile = folder / "other.pem";
    outcome = sendTo(settings);
    EXPECT_FALSE(outcome.accepted);
    EXPECT_TRUE(has(outcome.why, "certificate")) << outcome.why;
    EXPECT_TRUE(server.taken().empty());
}

TEST(Mail, NothingInClear) {
    const ScratchFolder folder;
    const TestMailServer server(folder.path(), {}, "none");
    MailServer settings = server.settings();
    settings.security = "starttls";
    const MailOutcome outcome = sendTo(settings);
    EXPECT_FALSE(outcome.accepted);
    EXPECT_TRUE(has(outcome.why, "does not offer encryption")) << outcome.why;
    EXPECT_TRUE(server.taken().empty());
    settings.security = "none";
    EXPECT_TRUE(sendTo(settings).accepted) << "to a server on this computer it may be said";
    settings.host = "mail.site.example";
    EXPECT_FALSE(checkMailServer(settings));
    settings.host = "localhost";
    settings.user = "fettle";
    EXPECT_FALSE(checkMailServer(settings)) << "no login in clear";
}

TEST(Mail, WithALoginAndWithAWrongOne) {
    const ScratchFolder folder;
    const TestMailServer server(folder.path(), {"--login", "fettle:se cret\xc3\xbc"});
    MailServer settings = server.settings();
    settings.user = "fettle";
    settings.password = "se cret\xc3\xbc";
    const MailOutcome good = sendTo(settings);
    EXPECT_TRUE(good.accepted) << good.why;
    settings.password = "hunter2-wrong";
    const MailOutcome bad = sendTo(settings);
    EXPECT_FALSE(bad.accepted);
    EXPECT_TRUE(bad.lasting);
    EXPECT_TRUE(has(bad.why, "refuses the login of fettle")) << bad.why;
    EXPECT_FALSE(has(bad.why, "hunter2")) << "the password is in no word";
    EXPECT_EQ(server.taken().size(), 1u);
}

TEST(Mail, AServerThatBreaksOffMayBeTriedAgain) {
    const ScratchFolder folder;
    const TestMailServer server(folder.path(), {"--drop"});
    const MailOutcome outcome = sendTo(server.settings());
    EXPECT_FALSE(outcome.accepted);
    EXPECT_FALSE(outcome.lasting);
    EXPECT_FALSE(outcome.why.empty());
}

TEST(Mail, FourHundredsPassFiveHundredsLast) {
    const struct {
        const char *option, *answer;
        bool lasting;
    } cases[] = {{"--rcpt", "451 4.3.0 try later", false},
                 {"--rcpt", "550 5.1.1 no such user here", true},
                 {"--data", "452 4.2.2 mailbox full", false},
                 {"--data", "554 5.7.1 not wanted", true}};
    for (const auto& one : cases) {
        const ScratchFolder folder;
        const TestMailServer server(folder.path(), {one.option, one.answer});
        const MailOutcome outcome = sendTo(server.settings());
        EXPECT_FALSE(outcome.accepted) << one.answer;
        EXPECT_EQ(outcome.lasting, one.lasting) << one.answer << ": " << outcome.why;
        EXPECT_TRUE(has(outcome.why, one.answer)) << outcome.why;
    }
}

TEST(Mail, NobodyThere) {
    MailServer settings;
    settings.host = "127.0.0.1";
    settings.port = 1;
    settings.timeoutS = 5;
    const MailOutcome outcome = sendTo(settings);
    EXPECT_FALSE(outcome.accepted);
    EXPECT_FALSE(outcome.lasting);
    settings.host = "mail.site.example/../x";
    EXPECT_FALSE(checkMailServer(settings));
    settings.host = "site.example@evil.example";
    EXPECT_FALSE(checkMailServer(settings));
}

TEST(Mail, StoppedOnRequest) {
    const ScratchFolder folder;
    const TestMailServer server(folder.path());
    CancelToken cancel;
    cancel.cancel();
    const MailOutcome outcome = sendMail(server.settings(), kFrom, kTo, letter(), cancel);
    EXPECT_FALSE(outcome.accepted);
    EXPECT_FALSE(outcome.lasting);
    EXPECT_TRUE(server.taken().empty());
}

// Given 600 s, it ends because it was told to.
TEST(Mail, StoppedWhileTheServerSaysNothing) {
    const SilentServer server;
    const CancelToken cancel;
    std::thread stops([&] {
        EXPECT_TRUE(server.called());
        cancel.cancel();
    });
    const MailOutcome outcome = sendMail(server.settings(), kFrom, kTo, letter(), cancel);
    stops.join();
    EXPECT_FALSE(outcome.accepted);
    EXPECT_FALSE(outcome.lasting);
    EXPECT_TRUE(has(outcome.why, "stopped on request")) << outcome.why;
}

}  // namespace fettle
