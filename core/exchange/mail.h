// Why: the only user of libcurl: one message to one address by SMTP. The connection is encrypted (from the
// first byte, or by STARTTLS, without which nothing is said), the server's certificate checked against the
// system's authorities or a file of one's own; only a server on this computer, without a login, may be spoken
// to in clear. No proxy, no other protocol, no settings from elsewhere. Times: seconds. Thread: any; blocks
// up to the time allowed, or until cancelled. The password is used and forgotten; it is in no word of the
// outcome.
#pragma once

#include <string>

#include "core/base/progress.h"
#include "core/base/result.h"

namespace fettle {

struct MailServer {
    std::string host;
    int port = 587;
    std::string security = "starttls";  // starttls | tls | none (this computer alone)
    std::string user, password;         // empty: no login
    std::string caFile;                 // PEM, of an authority of one's own; empty: the system's
    int timeoutS = 60;
};

struct MailOutcome {
    bool accepted = false;  // the server has taken the message over
    bool lasting = false;   // trying again soon does not help: a 5xx answer, a wrong certificate or login
    std::string why;        // a clause for the user; empty where accepted
};

Status checkMailServer(const MailServer& server);
// `text` as textOf (mail_message.h) makes it.
MailOutcome sendMail(const MailServer& server, const std::string& from, const std::string& to,
                     const std::string& text, const CancelToken& cancel = {});

}  // namespace fettle
