#include "core/round/unseen.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace fettle {

namespace {

// The site's date of a moment: its clock against UTC shows in where the period ends.
std::string siteDate(Instant time, const RoundSettings& settings) {
    const auto midnight = parseUtc(settings.until + "T00:00:00Z");
    if (!midnight) return formatDate(time);
    const auto ahead = *midnight + std::chrono::days(1) - settings.end;
    return formatDate(std::chrono::abs(ahead) <= std::chrono::hours(15) ? time + ahead : time);
}

std::string sinceWords(const MachineWeek& week, const RoundSettings& settings) {
    return week.newest ? "no recording since " + siteDate(*week.newest, settings) : "no recording ever";
}

std::string toldWords(const std::string& told) {
    return told == "low_battery" ? "low battery" : "sensor moved or off the machine";
}

std::string recordingsWords(std::size_t count) {
    return count == 1 ? "its one recording" : fmt::format("its {} recordings", count);
}

Unseen notFitted(const MachineWeek& week, const RoundSettings& settings) {
    return {"not_fitted", "no sensor fitted, " + sinceWords(week, settings)};
}

Unseen silent(const MachineWeek& week, const RoundSettings& settings) {
    if (week.told) return {*week.told, toldWords(*week.told) + ", " + sinceWords(week, settings)};
    return {"silent", sinceWords(week, settings)};
}

Unseen poor(const MachineWeek& week, const std::string& words) {
    if (week.told) return {*week.told, toldWords(*week.told) + "; " + words};
    return {"poor_data", words};
}

Unseen idle(const MachineWeek& week, const RoundSettings& settings) {
    std::string words = fmt::format("{}not turning in {} of the week", week.standby ? "standby, " : "",
                                    recordingsWords(week.recordings));
    if (week.newest) words += ", the newest of " + siteDate(*week.newest, settings);
    return {"idle", words};
}

std::string failedWords(const MachineWeek& week) {
    const std::string which = week.turning > 0 ? " of the turning machine" : "";
    if (week.poor == 1) return "the only recording" + which + " in this week failed a sensor check";
    return fmt::format("all {} recordings{} in this week failed a sensor check", week.poor, which);
}

bool isSilent(const MachineWeek& week, const RoundSettings& settings) {
    return week.recordings == 0 || !week.newest ||
           *week.newest < settings.end - std::chrono::days(settings.silentDays);
}

// Nothing weighed, no level in the week: turning, but nothing was learned.
bool saysNothing(const MachineWeek& week, const RoundSettings& settings) {
    if (!week.week) return true;
    const auto weighed = [](const Hypothesis& h) { return h.weightDban.has_value(); };
    const auto& considered = week.week->considered;
    if (std::any_of(considered.begin(), considered.end(), weighed) || !week.week->findings.empty() ||
        !week.zone.empty())
        return false;
    const int lastDay = dayOf(settings.end - std::chrono::milliseconds(1));
    return !std::isfinite(weeklyMedians(week.days, lastDay, 1).front());
}

}  // namespace

std::optional<Unseen> unseenOf(const MachineWeek& week, const RoundSettings& settings) {
    if (!week.fitted) return notFitted(week, settings);
    if (isSilent(week, settings)) return silent(week, settings);
    const std::size_t judged = week.turning > 0 ? week.turning : week.recordings;
    if (week.poor >= judged) return poor(week, failedWords(week));
    if (week.turning == 0) return idle(week, settings);
    if (saysNothing(week, settings))
        return poor(week, "nothing in " + recordingsWords(week.recordings) + " of the week could be judged");
    return std::nullopt;
}

}  // namespace fettle
