#include "core/round/changed.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/machine/path.h"
#include "core/round/level.h"
#include "core/round/words.h"
#include "core/trend/median.h"

namespace fettle {

namespace {

constexpr double kManyTimes = 6;  // a rise of 500 %; beyond it percent are hard to read
// What counts as a change; common practice, no source.
constexpr double kWeightDban = 10;
constexpr double kLevelShare = 0.2;     // of what the level was,
constexpr double kLimitShare = 0.05;    // and of its limit
constexpr std::size_t kLeastWeeks = 4;  // to compare a first round with
constexpr std::size_t kMostParts = 4;

bool levelChanged(double from, double to, const std::optional<double>& limit) {
    const double step = std::abs(to - from);
    return from > 0 && step >= kLevelShare * from && (!limit || step >= kLimitShare * *limit);
}

std::string levelText(double level, const std::string& unit) {
    return fmt::format("{:.{}f} {}", level, level < 1 ? 2 : 1, unit);
}

const RoundFinding* same(const std::vector<RoundFinding>& findings, const Hypothesis& h) {
    const auto at = std::find_if(findings.begin(), findings.end(), [&](const RoundFinding& f) {
        return f.finding.fault == h.fault && placesMeet(f.finding.at, h.at);
    });
    return at == findings.end() ? nullptr : &*at;
}

std::string namesOnlyIn(const RoundMachine& a, const RoundMachine& b) {
    std::vector<std::string> names;
    for (const RoundFinding& f : a.findings)
        if (!same(b.findings, f.finding)) names.push_back(findingName(f.finding));
    return joined(names, " and ");
}

void addFindings(std::vector<std::string>& parts, const RoundMachine& now, const RoundMachine& before) {
    const std::string fresh = namesOnlyIn(now, before), gone = namesOnlyIn(before, now);
    if (!fresh.empty()) parts.push_back("new: " + fresh);
    if (!gone.empty()) parts.push_back("gone: " + gone);
}

void addStages(std::vector<std::string>& parts, const RoundMachine& now, const RoundMachine& before) {
    for (const RoundFinding& f : now.findings) {
        const RoundFinding* old = same(before.findings, f.finding);
        if (!old) continue;
        const Severity &from = old->finding.severity, &to = f.finding.severity;
        if (to.kind == "stage" && from.kind == "stage" && from.value != to.value)
            parts.push_back(
                fmt::format("{}: from {} to {} stage", findingName(f.finding), from.value, to.value));
    }
    if (!now.zone.empty() && !before.zone.empty() && now.zone != before.zone)
        parts.push_back(fmt::format("from zone {} to {}", before.zone, now.zone));
}

void addWeights(std::vector<std::string>& parts, const RoundMachine& now, const RoundMachine& before) {
    for (const RoundFinding& f : now.findings) {
        const RoundFinding* old = same(before.findings, f.finding);
        if (!old || !old->finding.weightDban || !f.finding.weightDban) continue;
        const double from = *old->finding.weightDban, to = *f.finding.weightDban;
        if (std::abs(to - from) >= kWeightDban)
            parts.push_back(fmt::format("{}: weight {} from {:.0f} to {:.0f} decibans",
                                        findingName(f.finding), to > from ? "up" : "down", from, to));
    }
}

void addLevel(std::vector<std::string>& parts, const RoundMachine& now, const RoundMachine& before) {
    const auto from = levelOf(before), to = levelOf(now);
    if (!from || !to || now.governing != before.governing || !levelChanged(*from, *to, now.limit)) return;
    const std::string change = *to > kManyTimes * *from ? fmt::format("{:.0f} times", *to / *from)
                                                        : fmt::format("{:+.0f} %", (*to / *from - 1) * 100);
    parts.push_back(fmt::format("level from {} to {} ({})", levelText(*from, now.unit),
                                levelText(*to, now.unit), change));
}

// Of a machine seen now; parts in order of weight.
void addSeen(std::vector<std::string>& parts, const RoundMachine& now, const RoundMachine& before) {
    if (!before.unseenReason.empty()) {
        parts.push_back("judged again: " + before.unseenWords + " in the last round");
        return;
    }
    addFindings(parts, now, before);
    addStages(parts, now, before);
    addLevel(parts, now, before);
    addWeights(parts, now, before);
    if (parts.empty() && now.urgency != before.urgency)
        parts.push_back(fmt::format("from {} to {}", before.urgency, now.urgency));
}

std::string unseenPart(const RoundMachine& now, const RoundMachine* before) {
    if (!before || before->unseenReason.empty()) return "not judged this time: " + now.unseenWords;
    return before->unseenReason == now.unseenReason ? "still not judged: " + now.unseenWords
                                                    : "still not judged, now: " + now.unseenWords;
}

std::string againstStrip(const RoundMachine& now) {
    const auto level = levelOf(now);
    if (!level) return "";
    std::vector<double> earlier;
    for (std::size_t i = 0; i + 1 < now.strip.size(); ++i)
        if (std::isfinite(now.strip[i])) earlier.push_back(now.strip[i]);
    const std::string text = "level " + levelText(*level, now.unit);
    if (earlier.size() < kLeastWeeks) return text;
    const std::size_t weeks = earlier.size();
    const double median = medianOf(std::move(earlier));
    if (!levelChanged(median, *level, now.limit))
        return fmt::format("{}, as in the {} weeks before", text, weeks);
    if (*level > kManyTimes * median)
        return fmt::format("{}, {:.0f} times the median of the {} weeks before", text, *level / median,
                           weeks);
    return fmt::format("{}, {:.0f} % {} the median of the {} weeks before", text,
                       std::abs(*level / median - 1) * 100, *level > median ? "above" : "below", weeks);
}

std::string firstPart(const RoundMachine& now, bool first) {
    const std::string level = againstStrip(now);
    return (first ? "first round" : "not in the last round") + (level.empty() ? "" : ": " + level);
}

}  // namespace

std::string changedSentence(const RoundMachine& now, const RoundMachine* before, bool first,
                            const std::string& workDone) {
    std::vector<std::string> parts;
    if (!workDone.empty()) parts.push_back(workDone);
    if (!now.unseenReason.empty())
        parts.push_back(unseenPart(now, before));
    else if (before)
        addSeen(parts, now, *before);
    else
        parts.push_back(firstPart(now, first));
    if (parts.empty()) return "No change.";
    if (parts.size() > kMostParts) parts.resize(kMostParts);
    return capitalised(joined(parts, "; ")) + ".";
}

}  // namespace fettle
