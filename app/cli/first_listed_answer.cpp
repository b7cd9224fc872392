#include "app/cli/first_listed_answer.h"

#include <fmt/format.h>

#include "app/cli/answer.h"
#include "app/cli/load.h"
#include "app/cli/long_work.h"
#include "core/base/text.h"
#include "core/fleet/site_calendar.h"
#include "core/fleet/time_machine.h"

namespace fettle {

namespace {

std::string resultWords(const Warning& warning) {
    const FirstListed& result = warning.result;
    if (warning.askedFrom == 0) return "nothing was recorded since the event before it";
    if (!result.first)
        return fmt::format("not listed at any of the {} week ends from {}", result.roundsAsked,
                           dateOfDay(warning.askedFrom));
    return fmt::format("first listed {}, {} before; {}; on the list at {} of {} week ends from then on{}",
                       dateOfDay(result.first->day), counted(std::size_t(result.daysBefore), "day"),
                       oneLine(result.first->words), result.roundsListed, result.roundsAsked,
                       result.first->day <= warning.askedFrom ? "; listed at the first week end asked" : "");
}

// Of a day of which the others were thinned the strongest recording is left.
std::string thinnedWords(const Warning& warning) {
    if (warning.weeksThinned == 0) return "";
    return fmt::format(
        "; {} of {} asked had recordings thinned by retention: verdicts there stand on those "
        "left, the strongest of each day, so weights lean high",
        warning.weeksThinned, counted(std::size_t(warning.weeksAsked), "week"));
}

Json toJson(const Warning& warning) {
    const auto& first = warning.result.first;
    return {{"day", dateOfDay(warning.failure.day)},
            {"failure", warning.failure.words},
            {"asked_from", warning.askedFrom ? Json(dateOfDay(warning.askedFrom)) : Json()},
            {"first_listed", first ? Json(dateOfDay(first->day)) : Json()},
            {"days_before", first ? Json(warning.result.daysBefore) : Json()},
            {"listed_as", first ? Json(first->words) : Json()},
            {"week_ends", warning.result.roundsAsked},
            {"week_ends_listed", warning.result.roundsListed},
            {"weeks_asked", warning.weeksAsked},
            {"weeks_thinned", warning.weeksThinned}};
}

}  // namespace

int answerFirstListed(FleetFile& fleet, const std::string& tag, const std::string& before, bool json) {
    const auto warnings = warningsOf(fleet, tag, before, progressOnStderr(), cancelledBySignals());
    if (!warnings) return couldNotRun(warnings.error());
    Json all = headedJson();
    all["machine"] = tag;
    all["failures"] = Json::array();
    for (const Warning& warning : *warnings) {
        all["failures"].push_back(toJson(warning));
        if (!json)
            print(fmt::format("{} {} {}\n   {}{}\n", oneLine(tag), dateOfDay(warning.failure.day),
                              oneLine(warning.failure.words), resultWords(warning), thinnedWords(warning)));
    }
    if (json) printJson(all);
    return kDone;
}

}  // namespace fettle
