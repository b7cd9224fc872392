#include "core/exchange/mail_message.h"

#include <fmt/format.h>

#include <algorithm>
#include <random>

#include "core/base/text.h"

namespace fettle {

namespace {

constexpr const char* kDays[] = {"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
constexpr const char* kMonths[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                   "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
// RFC 2047: an encoded word has at most 75 characters; "=?UTF-8?B?" and "?=" take 12, 60 hold 45 bytes.
constexpr std::size_t kWordBytes = 45, kLineBytes = 57;  // 57 bytes are 76 characters (RFC 2045, 6.8)
constexpr std::size_t kMostHeader = 400, kMostPlain = 60;

bool isPlain(std::string_view text) {
    return text.size() <= kMostPlain && text.find("=?") == text.npos &&
           std::all_of(text.begin(), text.end(), [](unsigned char c) { return c >= 0x20 && c < 0x7f; });
}

// As many bytes as fit, no character cut in two.
std::size_t wholeCharacters(std::string_view text, std::size_t most) {
    if (text.size() <= most) return text.size();
    std::size_t end = most;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xc0) == 0x80)
        --end;
    return end > 0 ? end : most;
}

bool isAddressPart(std::string_view text, std::string_view also) {
    return !text.empty() && text.front() != '.' && text.back() != '.' && text.find("..") == text.npos &&
           std::all_of(text.begin(), text.end(), [&](unsigned char c) {
               return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                      also.find(char(c)) != also.npos;
           });
}

std::string crlfLines(std::string_view text) {
    std::string lines;
    for (const char c : text) {
        if (c == '\r') continue;
        if (c == '\n') lines += '\r';
        lines += c;
    }
    return lines;
}

std::string namedAddress(const std::string& name, const std::string& address) {
    if (name.empty()) return address;
    return fmt::format("=?UTF-8?B?{}?=\r\n <{}>",
                       base64(std::string_view(name).substr(0, wholeCharacters(name, kWordBytes))), address);
}

}  // namespace

std::string base64(std::string_view bytes) {
    static constexpr char kLetters[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    std::string text;
    for (std::size_t i = 0; i < bytes.size(); i += 3) {
        const auto byte = [&](std::size_t k) {
            return i + k < bytes.size() ? static_cast<unsigned char>(bytes[i + k]) : 0u;
        };
        const unsigned three = byte(0) << 16 | byte(1) << 8 | byte(2);
        for (std::size_t k = 0; k < 4; ++k)
            text += i + k > bytes.size() ? '=' : kLetters[three >> (18 - 6 * k) & 63];
    }
    return text;
}

Status checkMailAddress(const std::string& address) {
    const std::size_t at = address.rfind('@');
    const std::string_view whole(address);
    if (at != address.npos && address.size() <= 254 && at <= 64 &&
        isAddressPart(whole.substr(0, at), "!#$%&'*+-/=?^_`{|}~.") &&
        isAddressPart(whole.substr(at + 1), "-."))
        return {};
    return fail(ErrorKind::Invalid, "", "mail address",
                fmt::format("\"{}\" is none, as in planner@site.example", oneLine(address, 100)));
}

std::string makeMessageId(const std::string& address) {
    std::random_device random;
    std::string digits;
    for (int i = 0; i < 4; ++i)
        digits += fmt::format("{:08x}", random());
    return fmt::format("<{}@{}>", digits, address.substr(address.rfind('@') + 1));
}

std::string mailDate(Instant time) {
    using namespace std::chrono;
    const auto day = floor<days>(time);
    const year_month_day date(day);
    const hh_mm_ss clock(floor<seconds>(time - day));
    return fmt::format("{}, {} {} {} {:02}:{:02}:{:02} +0000", kDays[weekday(day).c_encoding()],
                       unsigned(date.day()), kMonths[unsigned(date.month()) - 1], int(date.year()),
                       clock.hours().count(), clock.minutes().count(), clock.seconds().count());
}

std::string encodedHeader(std::string_view given) {
    const std::string line = oneLine(given, kMostHeader);
    if (isPlain(line)) return line;
    std::string words;
    for (std::string_view rest(line); !rest.empty();) {
        const std::size_t size = wholeCharacters(rest, kWordBytes);
        if (!words.empty()) words += "\r\n ";
        words += fmt::format("=?UTF-8?B?{}?=", base64(rest.substr(0, size)));
        rest.remove_prefix(size);
    }
    return words;
}

std::string textOf(const MailMessage& m) {
    std::string text = fmt::format(
        "Date: {}\r\nFrom: {}\r\nTo: {}\r\nMessage-ID: {}\r\nSubject: {}\r\nMIME-Version: 1.0\r\n"
        "Content-Type: text/plain; charset=UTF-8\r\nContent-Transfer-Encoding: base64\r\n"
        "Auto-Submitted: auto-generated\r\n\r\n",
        mailDate(m.date), namedAddress(oneLine(m.fromName, 100), m.from), m.to, m.messageId,
        encodedHeader(m.subject));
    const std::string body = crlfLines(m.body);
    for (std::size_t at = 0; at < body.size(); at += kLineBytes)
        text += base64(std::string_view(body).substr(at, kLineBytes)) + "\r\n";
    return text;
}

}  // namespace fettle
