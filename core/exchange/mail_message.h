// Why: what is sent by mail is a message of RFC 5322 with a body of RFC 2045: every text of the user becomes
// one line of plain UTF-8 first and, where it is not plain ASCII, encoded words of RFC 2047, so that no tag,
// service or site can begin a header of its own. Addresses are taken in a narrow form or not at all. Thread:
// pure functions but for makeMessageId, which asks the system for random numbers.
#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/base/time.h"

namespace fettle {

struct MailMessage {
    std::string from, to;  // addresses: "planner@site.example"
    std::string fromName;  // beside the address; may be empty
    std::string subject;
    std::string body;       // UTF-8, lines ended by \n
    std::string messageId;  // as makeMessageId gives it
    Instant date{};
};

// name@host in ASCII, without quotes, comments or blanks; Invalid otherwise.
Status checkMailAddress(const std::string& address);
// "<32 hexadecimal digits@host of the address>"
std::string makeMessageId(const std::string& address);
// "Thu, 26 Nov 2026 09:57:00 +0000" (RFC 5322, 3.3)
std::string mailDate(Instant time);
// One header field's text: ASCII as it is, else encoded words of at most 75 characters, folded.
std::string encodedHeader(std::string_view text);
// Headers and body with CR LF, as a server takes it.
std::string textOf(const MailMessage& message);

std::string base64(std::string_view bytes);

}  // namespace fettle
