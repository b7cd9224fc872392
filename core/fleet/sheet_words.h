// Why: the sentences of the findings sheet, in shop words, apart from gathering and drawing. No sentence is
// empty. Thread: pure.
#pragma once

#include <string>
#include <vector>

#include "core/fleet/sheet_case.h"
#include "core/fleet/sheet_content.h"

namespace fettle {

// "driver DE" -> "motor DE", "driven NDE" -> "fan NDE"; what is no place of the machine stays as it is.
std::string placeWords(const Machine& machine, const std::string& at);
// Every "2026-06-12" in a sentence as "12 June 2026".
std::string withSpelledDates(const std::string& text);
// "KL-ID-01 (kiln induced-draught fan)"
std::string machineWords(const SheetCase& sheet);
// The finding's own sentence with its place in shop words.
std::string verdictWords(const SheetCase& sheet);
// `byChange`: it was listed by a change against its baseline.
std::string howSureWords(const Hypothesis& finding, bool byChange = false);
// Of a machine that a person put on the list: what stands in the place of urgency and sureness.
std::string askedForWords(const RoundMachine& row);
std::string askedForSureWords(const RoundMachine& row);
// Of this fault where enough of it were opened, else of all; before that words only.
std::string siteRecordWords(const SiteRecord& all, const SiteRecord& own, const std::string& faultName);
std::string howBadWords(const SheetCase& sheet);
// The velocity that counts as cured: "overall velocity is at most 2.9 mm/s (1.25 x A/B, common practice)".
std::string curedWords(const Governing& governing);
// The level at which nobody should wait, after "stop at once if": 1.25 x C/D, the most a trip may be set to
// (ISO 10816-3:2009 5.4.3, from memory); where the level is there already, that it rises.
std::string worseWords(const Governing& governing);
// Where the level is there already: who has to agree that it runs on; else empty.
std::string agreeWords(const Governing& governing);
std::string roundWords(const Period& period);
std::string jobWords(const std::optional<Job>& job);
std::vector<std::string> cautions();

}  // namespace fettle
