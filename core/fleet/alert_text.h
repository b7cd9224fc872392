// Why: what an alert says, as the text of a mail and as JSON for a program (resources/schemas/
// alerts.schema.json): machine, fault, place, since when, state, in words and numbers. Text of the user
// stands in it on one line each. Times in the site's zone in words, UTC in JSON. Thread: pure functions.
#pragma once

#include <string>
#include <vector>

#include "core/base/json_object.h"
#include "core/store/alert_store.h"

namespace fettle {

struct ToldAlert {
    Alert alert;
    std::string event;  // raised | grown
};

struct AlertLetter {
    std::string subject, body;
};
AlertLetter letterOf(const std::vector<ToldAlert>& alerts, const std::string& site,
                     const std::string& timeZone);
AlertLetter testLetter(const std::string& site, const std::string& timeZone, Instant now);

Json toJson(const Alert& alert);
Json toJson(const AlertRule& rule);
Json toJson(const AlertMessage& message);
// What a program is given: kind alert | digest | test.
Json letterJson(const std::vector<ToldAlert>& alerts, const std::string& kind, const std::string& site);
// One line of a list: "7  open  KL-ID-01  Zone D  since 2026-05-04T06:20:00Z  ..."
std::string lineOf(const Alert& alert);

}  // namespace fettle
