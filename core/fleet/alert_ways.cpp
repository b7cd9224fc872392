#include "core/fleet/alert_ways.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "core/base/text.h"
#include "core/exchange/child_program.h"
#include "core/exchange/mail_message.h"
#include "core/fleet/site_calendar.h"

namespace fettle {

namespace {

constexpr int kDay = 24 * 60;
constexpr std::size_t kMostAddresses = 50;

Json mailJson(const MailWay& mail) {
    return {{"host", mail.server.host},
            {"port", mail.server.port},
            {"security", mail.server.security},
            {"user", mail.server.user},
            {"password_from", toJson(mail.password)},
            {"from", mail.from},
            {"to", mail.to},
            {"ca_file", mail.server.caFile},
            {"timeout_s", mail.server.timeoutS},
            {"per_hour", mail.perHour}};
}

MailWay mailFrom(JsonObject& object) {
    MailWay mail;
    mail.server.host = object.text("host", true);
    mail.server.port = object.integer("port", 1, 65535).value_or(587);
    mail.server.security = object.word("security", {"starttls", "tls", "none"});
    if (mail.server.security.empty()) mail.server.security = "starttls";
    mail.server.user = object.text("user");
    if (object.has("password_from")) {
        JsonObject place(object.raw("password_from"), object.place("password_from"), object.report());
        mail.password = secretPlaceFrom(place);
    } else
        object.raw("password_from");
    mail.from = object.text("from", true);
    mail.to = object.texts("to");
    mail.server.caFile = object.text("ca_file");
    mail.server.timeoutS = object.integer("timeout_s", 5, 600).value_or(60);
    mail.perHour = object.integer("per_hour", 1, 1000).value_or(6);
    return mail;
}

CommandWay commandFrom(JsonObject& object) {
    CommandWay command;
    command.words = object.texts("program");
    command.timeoutS = object.integer("timeout_s", 1, 600).value_or(30);
    command.perHour = object.integer("per_hour", 1, 1000).value_or(60);
    return command;
}

int clockOf(JsonObject& object, const std::string& key, int otherwise) {
    if (!object.has(key)) return otherwise;
    const std::string text = object.text(key);
    const auto minutes = clockFrom(text);
    if (!minutes) object.report().broken(object.place(key), "is no time of day as in 20:00");
    return minutes.value_or(otherwise);
}

Status checkMail(const MailWay& mail) {
    if (auto good = checkMailServer(mail.server); !good) return good;
    if (auto good = checkMailAddress(mail.from); !good) return good;
    if (mail.to.empty()) return fail(ErrorKind::Invalid, "", "mail", "has no address to go to");
    if (mail.to.size() > kMostAddresses || std::set(mail.to.begin(), mail.to.end()).size() < mail.to.size())
        return fail(ErrorKind::Invalid, "", "mail",
                    fmt::format("goes to each address once, and to {} at most", kMostAddresses));
    for (const std::string& to : mail.to)
        if (auto good = checkMailAddress(to); !good) return good;
    if (!mail.server.user.empty() && mail.password.empty())
        return fail(ErrorKind::Invalid, "", "mail",
                    "has a login and no place where its password lies (file, environment or command)");
    if (!mail.server.caFile.empty() && mail.server.caFile[0] != '/')
        return fail(ErrorKind::Invalid, "", "mail", "certificates are named by their whole path");
    return checkSecretPlace(mail.password);
}

int minuteOf(Instant clock) {
    using namespace std::chrono;
    return int(duration_cast<minutes>(clock - floor<days>(clock)).count());
}

// The next moment at which the site's clock shows so many minutes; a changed clock is made good.
Result<Instant> nextClock(const std::string& zone, Instant now, int minutes) {
    const auto clock = clockIn(zone, now);
    if (!clock) return fail(clock.error());
    const int wait = (minutes - minuteOf(*clock) + kDay) % kDay;
    Instant then =
        std::chrono::floor<std::chrono::minutes>(now) + std::chrono::minutes(wait == 0 ? kDay : wait);
    const auto shown = clockIn(zone, then);
    if (!shown) return fail(shown.error());
    const int off = (minutes - minuteOf(*shown) + kDay + kDay / 2) % kDay - kDay / 2;
    return then + std::chrono::minutes(off);
}

bool isQuiet(const AlertWays& ways, int minute) {
    if (ways.quietFrom == ways.quietTo) return false;
    if (ways.quietFrom < ways.quietTo) return minute >= ways.quietFrom && minute < ways.quietTo;
    return minute >= ways.quietFrom || minute < ways.quietTo;
}

}  // namespace

std::vector<std::string> AlertWays::names() const {
    std::vector<std::string> names;
    if (mail)
        for (const std::string& to : mail->to)
            names.push_back("mail " + to);
    if (command) names.push_back("command");
    return names;
}

int AlertWays::perHourOf(const std::string& way) const {
    if (way == "command") return command ? command->perHour : 0;
    return mail ? mail->perHour : 0;
}

Status checkAlertWays(const AlertWays& ways) {
    if (ways.mail)
        if (auto good = checkMail(*ways.mail); !good) return good;
    if (ways.command)
        if (auto good = checkChildProgram(ways.command->words); !good) return good;
    for (const int minutes : {ways.quietFrom, ways.quietTo, ways.digestAt})
        if (minutes < 0 || minutes >= kDay)
            return fail(ErrorKind::Invalid, "", "quiet hours", "are times of day, 00:00 to 23:59");
    return {};
}

std::string toText(const AlertWays& ways) {
    Json json;
    json["mail"] = ways.mail ? mailJson(*ways.mail) : Json();
    json["command"] = ways.command ? Json{{"program", ways.command->words},
                                          {"timeout_s", ways.command->timeoutS},
                                          {"per_hour", ways.command->perHour}}
                                   : Json();
    json["quiet_from"] = clockText(ways.quietFrom);
    json["quiet_to"] = clockText(ways.quietTo);
    json["digest_at"] = clockText(ways.digestAt);
    return json.dump(2, ' ', false, Json::error_handler_t::replace);
}

Result<AlertWays> alertWaysFrom(const std::string& text, const std::string& file) {
    AlertWays ways;
    if (text.empty()) return ways;
    const auto json = parseJson(text, file);
    if (!json) return fail(json.error());
    JsonReport report;
    report.file = file;
    {
        JsonObject object(*json, "", report);
        if (object.has("mail")) {
            JsonObject mail(object.raw("mail"), "/mail", report);
            ways.mail = mailFrom(mail);
        } else
            object.raw("mail");
        if (object.has("command")) {
            JsonObject command(object.raw("command"), "/command", report);
            ways.command = commandFrom(command);
        } else
            object.raw("command");
        ways.quietFrom = clockOf(object, "quiet_from", ways.quietFrom);
        ways.quietTo = clockOf(object, "quiet_to", ways.quietTo);
        ways.digestAt = clockOf(object, "digest_at", ways.digestAt);
    }
    if (report.error) return fail(*report.error);
    if (auto good = checkAlertWays(ways); !good) return fail(good.error());
    return ways;
}

Result<AlertWays> alertWays(FleetFile& fleet) {
    const auto text = fleet.alerts().setting("delivery");
    if (!text) return fail(text.error());
    return alertWaysFrom(*text, fleet.path() + " (alert delivery)");
}

Status setAlertWays(FleetFile& fleet, const AlertWays& ways) {
    if (auto good = checkAlertWays(ways); !good) return good;
    // What could not be read again, a number out of its range, is not kept.
    const std::string text = toText(ways);
    if (auto again = alertWaysFrom(text, "alert delivery"); !again) return fail(again.error());
    if (auto good = fleet.alerts().setSetting("delivery", text); !good) return good;
    return ways.any() ? allowDelivery(fleet) : Status{};
}

Result<Instant> dueTime(const std::string& deliver, const AlertWays& ways, const std::string& timeZone,
                        Instant now) {
    if (deliver == "digest") return nextClock(timeZone, now, ways.digestAt);
    if (deliver != "day") return now;
    const auto clock = clockIn(timeZone, now);
    if (!clock) return fail(clock.error());
    return isQuiet(ways, minuteOf(*clock)) ? nextClock(timeZone, now, ways.quietTo) : Result<Instant>(now);
}

std::string clockText(int minutes) {
    return fmt::format("{:02}:{:02}", minutes / 60, minutes % 60);
}

std::optional<int> clockFrom(const std::string& text) {
    const auto parts = split(text, ':');
    if (parts.size() != 2 || text.size() > 5) return std::nullopt;
    const auto hours = parseInteger(parts[0]), minutes = parseInteger(parts[1]);
    if (!hours || !minutes || *hours < 0 || *hours > 23 || *minutes < 0 || *minutes > 59) return std::nullopt;
    return int(*hours * 60 + *minutes);
}

}  // namespace fettle
