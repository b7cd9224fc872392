// Why: a password never stands in the fleet file, which is copied, mailed and backed up: only where it lies
// does. Three places: the first line of a file that none but its owner may read (refused otherwise), an
// environment variable (of a service), or the first line a program prints (a password store). What was read
// is handed to the mail server and nowhere else: it is never shown, logged or put in an error. Thread: any.
// Errors: sentences that name the place, never what is in it.
#pragma once

#include <string>
#include <vector>

#include "core/base/json_object.h"
#include "core/base/progress.h"
#include "core/base/result.h"

namespace fettle {

// One of them is set; none: no password.
struct SecretPlace {
    std::string file, environment;
    std::vector<std::string> command;
    bool empty() const { return file.empty() && environment.empty() && command.empty(); }
    bool operator==(const SecretPlace&) const = default;
};

Json toJson(const SecretPlace& place);  // {"file": ...} | {"environment": ...} | {"command": [...]} | null
SecretPlace secretPlaceFrom(JsonObject& object);
// "file /etc/fettle/mail", "environment variable MAIL_PASSWORD", "output of /usr/bin/pass"
std::string wordsOf(const SecretPlace& place);
Status checkSecretPlace(const SecretPlace& place);
// A program that prints it is killed when cancelled.
Result<std::string> readSecret(const SecretPlace& place, const CancelToken& cancel = {});

}  // namespace fettle
