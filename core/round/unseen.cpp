#include "core/round/unseen.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/text.h"
#include "core/round/level.h"

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

std::string unknownWords(const MachineWeek& week) {
    const std::string which = week.unknown == week.recordings
                                  ? recordingsWords(week.recordings)
                                  : fmt::format("{} of {}", week.unknown, recordingsWords(week.recordings));
    return "the running state of " + which + " is not known: no shaft speed found";
}

Unseen idle(const MachineWeek& week, const RoundSettings& settings) {
    std::string words = fmt::format("{}not turning in {} of the week", week.standby ? "standby, " : "",
                                    recordingsWords(week.recordings));
    if (week.newest) words += ", the newest of " + siteDate(*week.newest, settings);
    return {"idle", words};
}

std::string failedWords(const MachineWeek& week) {
    const std::string which = week.turning > 0 ? " of the turning machine" : "";
    const std::string checks = week.failedChecks.empty() ? "" : ": " + joined(week.failedChecks, ", ");
    if (week.poor == 1) return "the only recording" + which + " in this week failed a sensor check" + checks;
    return fmt::format("all {} recordings{} in this week failed a sensor check{}", week.poor, which, checks);
}

bool isSilent(const MachineWeek& week, const RoundSettings& settings) {
    return week.recordings == 0 || !week.newest ||
           *week.newest < settings.end - std::chrono::days(settings.silentDays);
}

bool isLimited(const MachineWeek& week) {
    if (!week.zone.empty()) return true;
    for (const RecordingFacts& recording : week.week->recordings)
        for (const ChannelLevels& levels : recording.levels)
            if (!levels.zones.empty()) return true;
    return false;
}

// No hypothesis weighed and no limit to hold a level against: turning, but nothing was learned.
bool saysNothing(const MachineWeek& week) {
    if (!week.week) return true;
    const auto weighed = [](const Hypothesis& h) { return h.weightDban.has_value(); };
    const auto& considered = week.week->considered;
    return std::none_of(considered.begin(), considered.end(), weighed) && week.week->findings.empty() &&
           !isLimited(week);
}

Unseen notJudged(const MachineWeek& week, const RoundSettings& settings) {
    const auto level = levelOf(week, settings);
    if (!week.week || !level)
        return poor(week, "nothing in " + recordingsWords(week.recordings) + " of the week could be judged");
    const auto& considered = week.week->considered;
    const bool bearing = std::any_of(considered.begin(), considered.end(),
                                     [](const Hypothesis& h) { return h.fault.starts_with("bearing_"); });
    return {"not_judged",
            fmt::format("{} and no limit applies: nothing could be judged; level {:.3g} {}",
                        bearing ? "no bearing could be weighed" : "no bearing geometry", *level, week.unit)};
}

}  // namespace

// What a hand instrument reads is a level and no more: it is judged by its zone where a limit applies.
std::optional<Unseen> byLevelsAlone(const MachineWeek& week, const RoundSettings& settings) {
    if (!week.zone.empty()) return std::nullopt;
    const auto level = levelOf(week, settings);
    return Unseen{"not_judged",
                  level ? fmt::format("ready-made levels alone and no limit applies: level {:.3g} {}", *level,
                                      week.unit)
                        : "ready-made levels alone, and none of velocity of the running machine"};
}

std::optional<Unseen> unseenOf(const MachineWeek& week, const RoundSettings& settings) {
    if (!week.fitted) return notFitted(week, settings);
    if (isSilent(week, settings)) return silent(week, settings);
    if (week.turning == 0 && week.levels > 0 && week.levels == week.recordings)
        return byLevelsAlone(week, settings);
    const std::size_t judged = week.turning > 0 ? week.turning : week.recordings;
    if (week.poor >= judged) return poor(week, failedWords(week));
    if (week.turning == 0 && week.unknown > 0) return poor(week, unknownWords(week));
    if (week.turning == 0) return idle(week, settings);
    if (saysNothing(week)) return notJudged(week, settings);
    return std::nullopt;
}

}  // namespace fettle
