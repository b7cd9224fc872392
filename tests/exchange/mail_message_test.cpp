// Mail as text: RFC 5322 (headers, Date, Message-ID), RFC 2045 (base64), RFC 2047 (encoded words, 2: at most
// 75 characters, lines at most 76).
#include "core/exchange/mail_message.h"

#include <gtest/gtest.h>

#include <regex>
#include <set>

#include "core/base/text.h"

namespace fettle {

namespace {

std::vector<std::string> crlfLinesOf(const std::string& text) {
    std::vector<std::string> lines;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = text.find("\r\n", at);
        lines.push_back(text.substr(at, end - at));
        at = end == text.npos ? text.size() : end + 2;
    }
    return lines;
}

MailMessage hostile(const std::string& text) {
    MailMessage message;
    message.from = "fettle@site.example";
    message.to = "planner@site.example";
    message.fromName = text;
    message.subject = text;
    message.body = text + "\nsecond\n";
    message.messageId = "<1@site.example>";
    message.date = *parseUtc("2026-11-26T09:57:05Z");
    return message;
}

}  // namespace

TEST(MailMessage, Base64OfTheRfcsTestVectors) {  // RFC 4648, 10
    EXPECT_EQ(base64(""), "");
    EXPECT_EQ(base64("f"), "Zg==");
    EXPECT_EQ(base64("fo"), "Zm8=");
    EXPECT_EQ(base64("foo"), "Zm9v");
    EXPECT_EQ(base64("foob"), "Zm9vYg==");
    EXPECT_EQ(base64("fooba"), "Zm9vYmE=");
    EXPECT_EQ(base64("foobar"), "Zm9vYmFy");
}

TEST(MailMessage, DateAndMessageId) {
    EXPECT_EQ(mailDate(*parseUtc("2026-11-26T09:57:05Z")), "Thu, 26 Nov 2026 09:57:05 +0000");
    EXPECT_EQ(mailDate(*parseUtc("2026-03-01T00:00:00Z")), "Sun, 1 Mar 2026 00:00:00 +0000");
    std::set<std::string> ids;
    for (int i = 0; i < 100; ++i) {
        const std::string id = makeMessageId("fettle@site.example");
        EXPECT_TRUE(std::regex_match(id, std::regex("<[0-9a-f]{32}@site\\.example>"))) << id;
        ids.insert(id);
    }
    EXPECT_EQ(ids.size(), 100u);
}

TEST(MailMessage, NoTextBeginsAHeader) {
    for (const std::string text : {"tag\r\nBcc: thief@evil.example", "tag\nBcc: x@y", "tag\rBcc: x@y",
                                   "tag\r\n\r\nbody", "tag\r\n.\r\nQUIT", "=?UTF-8?B?QmNj?=",
                                   "a\xc2\x85"
                                   "Bcc: x",
                                   "a\xe2\x80\xa8"
                                   "Bcc: x",
                                   "\xff\xfe\r\nBcc: x"}) {
        const std::string mail = textOf(hostile(text));
        const std::size_t end = mail.find("\r\n\r\n");
        ASSERT_NE(end, mail.npos);
        int headers = 0;
        for (const std::string& line : crlfLinesOf(mail.substr(0, end))) {
            EXPECT_EQ(line.find_first_of("\r\n"), line.npos) << text;
            EXPECT_LE(line.size(), 998u);
            if (line[0] == ' ') continue;
            ++headers;
            EXPECT_TRUE(std::regex_search(
                line, std::regex("^(Date|From|To|Message-ID|Subject|MIME-Version|Content-Type|"
                                 "Content-Transfer-Encoding|Auto-Submitted): ")))
                << line;
        }
        EXPECT_EQ(headers, 9) << text;
        for (const std::string& line : crlfLinesOf(mail.substr(end + 4)))
            EXPECT_TRUE(std::regex_match(line, std::regex("[A-Za-z0-9+/=]{1,76}"))) << line;
    }
}

TEST(MailMessage, LongAndForeignSubjectsAreFoldedWordsOfWholeCharacters) {
    EXPECT_EQ(encodedHeader("KL-ID-01: zone D"), "KL-ID-01: zone D");
    EXPECT_EQ(encodedHeader("Kaltm\xc3\xbchle"), "=?UTF-8?B?" + base64("Kaltm\xc3\xbchle") + "?=");
    std::string much;
    for (int i = 0; i < 500; ++i)
        much += "\xe2\x82\xac";
    const std::string header = encodedHeader(much);
    EXPECT_LT(header.size(), 1000u) << "cut, not endless";
    for (const std::string& line : crlfLinesOf(header)) {
        const std::string word(trimmed(line));
        EXPECT_LE(word.size(), 75u);
        const std::string inner = word.substr(10, word.size() - 12);
        EXPECT_EQ(inner.size() % 4, 0u);
        // 45 bytes are 15 signs of three bytes: each word ends with a whole one.
        EXPECT_NE(word, "");
    }
}

TEST(MailMessage, AddressesInANarrowFormOrNotAtAll) {
    for (const char* good : {"planner@site.example", "a.b+c@x-y.example", "o'neil@site.example"})
        EXPECT_TRUE(checkMailAddress(good)) << good;
    for (const std::string bad : {"", "planner", "@site.example", "planner@", "a b@site.example", "a@b@c",
                                  "a@site.example\r\nRCPT TO:<x@y>", "<a@site.example>",
                                  "\"a b\"@site.example", "a@site.example,b@site.example", ".a@site.example",
                                  "a..b@site.example", "a@-site..example", "a@sit\xc3\xa9.example"})
        EXPECT_FALSE(checkMailAddress(bad)) << bad;
}

}  // namespace fettle
