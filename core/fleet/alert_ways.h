// Why: where alerts go: by mail to some addresses, to a program, and when. Kept as one document in the fleet
// file (alert_setting, key delivery), without any password. A fleet file is copied and may come from
// anywhere, and what it names would be run, logged in to and read from: so a program delivers only what its
// own user has set or allowed on this computer. That allowance is a file of the user's (alert_trust) that
// holds the document as it was allowed; a changed one is asked about again. Minutes of the site's day;
// per-hour limits per address. Thread: as the FleetFile. Errors: Invalid names the field.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/exchange/mail.h"
#include "core/exchange/secret.h"
#include "core/store/fleet_file.h"

namespace fettle {

struct MailWay {
    MailServer server;  // without its password
    SecretPlace password;
    std::string from;
    std::vector<std::string> to;
    int perHour = 6;  // mails to one address; what is more waits for one digest
};

struct CommandWay {
    std::vector<std::string> words;  // program by its whole path, arguments
    int timeoutS = 30;
    int perHour = 60;
};

struct AlertWays {
    std::optional<MailWay> mail;
    std::optional<CommandWay> command;
    int quietFrom = 20 * 60, quietTo = 6 * 60;  // equal: no quiet hours
    int digestAt = 7 * 60;

    bool any() const { return (mail && !mail->to.empty()) || command; }
    // "mail planner@site.example", "command": the names under which what is sent is kept.
    std::vector<std::string> names() const;
    int perHourOf(const std::string& way) const;
};

Status checkAlertWays(const AlertWays& ways);
std::string toText(const AlertWays& ways);  // JSON
Result<AlertWays> alertWaysFrom(const std::string& text, const std::string& file);

Result<AlertWays> alertWays(FleetFile& fleet);
// Checked, kept, and allowed for this user on this computer.
Status setAlertWays(FleetFile& fleet, const AlertWays& ways);

// Whether this user has set or allowed what the fleet file says.
Result<bool> deliveryAllowed(FleetFile& fleet);
Status allowDelivery(FleetFile& fleet);
std::string deliveryTrustFile();  // of this user

// When something of a rule's delivery is due: at once, when the quiet hours end, with the next digest.
Result<Instant> dueTime(const std::string& deliver, const AlertWays& ways, const std::string& timeZone,
                        Instant now);
// "20:00" and back; nothing for a text that is no time of day.
std::string clockText(int minutes);
std::optional<int> clockFrom(const std::string& text);

}  // namespace fettle
