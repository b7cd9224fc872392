#include "core/round/verification.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/round/words.h"

namespace fettle {

namespace {

// Common practice, no source.
constexpr double kAppearedDban = 20;  // names a fault that was not named before
constexpr double kStepDban = 10;      // of a weight that has changed
constexpr double kLineStepDb = 6;     // of a line that has changed,
constexpr double kStepKelvin = 10;    // and of a temperature
constexpr double kSpreads = 3, kLeastSpreadDb = 1, kLeastSpreadKelvin = 1;
constexpr double kLevelStep = 0.25;  // of B/C; of the level before where no limits apply

double leastStep(Scale scale) {
    return scale == Scale::Decibels ? kLineStepDb : kStepKelvin;
}

std::string number(double value) {
    return fmt::format("{:.{}f}", value, std::abs(value) < 0.1 ? 4 : std::abs(value) < 1 ? 3 : 2);
}

std::string unitAfter(const std::string& unit) {
    return unit.empty() || unit == "1" ? "" : " " + unit;
}

bool isTold(const CureLine& line) {
    return line.before && line.after;
}

// It stood out of the sound baseline before.
bool stoodOut(const CureLine& line) {
    return isTold(line) && line.soundMost && *line.before > *line.soundMost;
}

bool isBack(const CureLine& line) {
    return *line.after <= *line.soundMost;
}

double step(const CureLine& line) {
    return isTold(line) ? onScale(*line.after, line.scale) - onScale(*line.before, line.scale) : 0;
}

bool wasNamed(const CureFinding& f) {
    return f.weightBefore && f.weightAfter && *f.weightBefore >= kNamedDban;
}

// It stands out now and did not before.
bool hasAppeared(const CureFinding& f) {
    if (f.weightAfter && *f.weightAfter >= kAppearedDban) return true;
    return std::any_of(f.lines.begin(), f.lines.end(), [](const CureLine& one) {
        return isTold(one) && one.soundMost && !isBack(one) && step(one) >= leastStep(one.scale);
    });
}

std::optional<double> aimOf(const CureLevel& level) {
    return level.limitAB ? std::optional(kAimShare * *level.limitAB) : std::nullopt;
}

bool overAim(const CureLevel& level) {
    const auto aim = aimOf(level);
    return level.after && aim && *level.after > *aim;
}

bool wasOverAim(const CureLevel& level) {
    const auto aim = aimOf(level);
    return level.before && level.after && aim && *level.before > *aim;
}

// -1 fell, 0 stayed, 1 rose by what matters.
int levelStep(const CureLevel& level) {
    if (!level.before || !level.after) return 0;
    const double matters = kLevelStep * level.limitBC.value_or(*level.before);
    const double by = *level.after - *level.before;
    return by >= matters ? 1 : by <= -matters ? -1 : 0;
}

// The one to speak of: the most above its aim after the work, else the loudest before it.
const CureLevel* worst(const std::vector<CureLevel>& levels) {
    const CureLevel* most = nullptr;
    const auto badness = [](const CureLevel& level) {
        const double aim = aimOf(level).value_or(1);
        return std::max(level.after.value_or(0), level.before.value_or(0)) / aim;
    };
    for (const CureLevel& level : levels)
        if (level.after && (!most || badness(level) > badness(*most))) most = &level;
    return most;
}

std::string weightPart(const CureFinding& f) {
    if (!f.weightBefore || !f.weightAfter) return "";
    return fmt::format("weight {:.0f} before, {:.0f} decibans now", *f.weightBefore, *f.weightAfter);
}

std::string linePart(const CureLine& line) {
    std::string part = fmt::format("{} at {} {} before, {}{} now", line.name, line.where,
                                   number(*line.before), number(*line.after), unitAfter(line.unit));
    return part + (line.soundMost ? fmt::format(" (sound: to {})", number(*line.soundMost))
                                  : " (no sound baseline)");
}

std::string levelPart(const CureLevel& level) {
    std::string part = level.where;
    part += level.before ? fmt::format(" {} before, {}", number(*level.before), number(*level.after))
                         : " " + number(*level.after);
    part += unitAfter(level.unit) + " now";
    if (const auto aim = aimOf(level)) part += fmt::format(" (aim: to {}, 1.25 x A/B)", number(*aim));
    return part;
}

// Weight, the line that stood out most.
std::string findingPart(const CureFinding& f) {
    std::vector<std::string> parts;
    if (const std::string weight = weightPart(f); !weight.empty()) parts.push_back(weight);
    const CureLine* line = nullptr;
    for (const CureLine& one : f.lines)
        if (isTold(one) && (!line || raisedBefore(one) > raisedBefore(*line))) line = &one;
    if (line) parts.push_back(linePart(*line));
    return f.name + (parts.empty() ? "" : ": " + joined(parts, ", "));
}

std::string figures(const CureCase& c) {
    std::vector<std::string> parts;
    for (const CureFinding& f : c.findings)
        parts.push_back(findingPart(f));
    if (const CureLevel* level = worst(c.levels)) parts.push_back(levelPart(*level));
    return joined(parts, "; ");
}

struct Courses {
    int told = 0, gone = 0, fallen = 0, risen = 0;
};

Courses coursesOf(const CureCase& c) {
    Courses all;
    for (const CureFinding& f : c.findings) {
        const FindingCourse course = courseOf(f, c.levels);
        all.told += course != FindingCourse::NotTold;
        all.gone += course == FindingCourse::Gone;
        all.fallen += course == FindingCourse::Fallen;
        all.risen += course == FindingCourse::Risen;
    }
    return all;
}

CureVerdict verdict(CureOutcome outcome, const std::string& why, const CureCase& c) {
    const std::string said = figures(c);
    std::string reason = capitalised(why) + (said.empty() ? "" : ": " + said);
    if (outcome != CureOutcome::AnotherFault && !c.fresh.empty())
        reason += "; new besides: " + joined(c.fresh, " and ");
    return {outcome, reason + "."};
}

std::string aimOf(const CureCase& c) {
    return c.ofJob ? "what the job was for" : "what stood out before";
}

CureVerdict whereGone(const CureCase& c) {
    const std::string gone = aimOf(c) + " is gone";
    if (!c.fresh.empty())
        return verdict(CureOutcome::AnotherFault, gone + ", but this is new: " + joined(c.fresh, " and "), c);
    const CureLevel* level = worst(c.levels);
    if (level && overAim(*level))
        return verdict(CureOutcome::Better, gone + ", but vibration is above its aim", c);
    return verdict(CureOutcome::Cured, gone, c);
}

CureVerdict whereNothingStoodOut(const CureCase& c) {
    const std::string none = c.ofJob ? "what the job was for did not stand out" : "nothing stood out";
    if (!c.fresh.empty())
        return verdict(CureOutcome::AnotherFault, none + " before it; new is " + joined(c.fresh, " and "), c);
    return verdict(CureOutcome::NotComparable, none + " in the week before it", c);
}

}  // namespace

double soundMostOf(const Baseline& baseline) {
    const double least = baseline.scale == Scale::Decibels ? kLeastSpreadDb : kLeastSpreadKelvin;
    double most = baseline.mean + kSpreads * std::max(baseline.spread, least);
    for (const DayValue& day : baseline.days)
        most = std::max(most, onScale(day.value, baseline.scale));
    return fromScale(most, baseline.scale);
}

double raisedBefore(const CureLine& line) {
    if (!isTold(line) || !line.soundMost) return 0;
    return onScale(*line.before, line.scale) - onScale(*line.soundMost, line.scale);
}

std::string toText(CureOutcome outcome) {
    static const char* const names[] = {"cured", "better",        "unchanged",
                                        "worse", "another_fault", "not_comparable"};
    return names[int(outcome)];
}

std::string inWords(CureOutcome outcome) {
    std::string words = toText(outcome);
    std::replace(words.begin(), words.end(), '_', ' ');
    return words;
}

FindingCourse courseOf(const CureFinding& f, const std::vector<CureLevel>& levels) {
    const bool named = wasNamed(f);
    const bool out = std::any_of(f.lines.begin(), f.lines.end(), stoodOut);
    const bool loud = std::any_of(levels.begin(), levels.end(), wasOverAim) && !f.weightBefore;
    if (!named && !out && !loud) return hasAppeared(f) ? FindingCourse::Risen : FindingCourse::NotTold;
    const bool weightGone = !f.weightAfter || *f.weightAfter < kNamedDban;
    const bool linesBack = std::all_of(f.lines.begin(), f.lines.end(),
                                       [](const CureLine& line) { return !stoodOut(line) || isBack(line); });
    const bool quiet = !loud || std::none_of(levels.begin(), levels.end(), overAim);
    if (weightGone && linesBack && quiet) return FindingCourse::Gone;
    const auto moved = [&](int sign) {
        const bool weight = named && sign * (*f.weightAfter - *f.weightBefore) >= kStepDban;
        const bool line = std::any_of(f.lines.begin(), f.lines.end(), [&](const CureLine& one) {
            return stoodOut(one) && sign * step(one) >= leastStep(one.scale);
        });
        const bool level = loud && std::any_of(levels.begin(), levels.end(),
                                               [&](const CureLevel& one) { return levelStep(one) == sign; });
        return weight || line || level;
    };
    if (moved(1)) return FindingCourse::Risen;
    return moved(-1) ? FindingCourse::Fallen : FindingCourse::Same;
}

CureVerdict judgeCure(const CureCase& c) {
    if (!c.notComparable.empty()) return {CureOutcome::NotComparable, capitalised(c.notComparable) + "."};
    const Courses courses = coursesOf(c);
    const bool louder = std::any_of(c.levels.begin(), c.levels.end(),
                                    [](const CureLevel& level) { return levelStep(level) > 0; });
    if (courses.told == 0) return whereNothingStoodOut(c);
    if (courses.gone == courses.told && !louder) return whereGone(c);
    if (courses.gone == courses.told && !c.fresh.empty()) return whereGone(c);
    if (louder || courses.risen > 0)
        return verdict(CureOutcome::Worse, louder ? "vibration has risen" : aimOf(c) + " has grown", c);
    if (courses.gone + courses.fallen > 0)
        return verdict(CureOutcome::Better, "less than before, but not gone", c);
    return verdict(CureOutcome::Unchanged, aimOf(c) + " is still there", c);
}

}  // namespace fettle
