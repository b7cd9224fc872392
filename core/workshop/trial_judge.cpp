#include "core/workshop/trial_judge.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace fettle {

namespace {

constexpr double kFalseShare = 0.05;     // of the recordings before that may reach the weight alone
constexpr std::size_t kFewest = 5;       // recordings to either side, for a judgement
constexpr double kSpeedApart = 0.02;     // relative; 1x goes with the square of speed and more
constexpr double kStrangersShare = 0.5;  // of the recordings after that name something else more strongly

std::optional<double> middleOf(std::vector<double> values) {
    if (values.empty()) return std::nullopt;
    std::sort(values.begin(), values.end());
    const std::size_t half = values.size() / 2;
    return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}

template <class Value>
std::optional<double> middle(const std::vector<TrialRecording>& all, bool after, Value value) {
    std::vector<double> values;
    for (const TrialRecording& one : all)
        if (one.after == after && value(one)) values.push_back(*value(one));
    return middleOf(std::move(values));
}

bool reaches(const TrialRecording& one, double dban) {
    return one.weightDban && *one.weightDban >= dban;
}

// Index of the recording that completes the rule among these; nothing where none does.
std::optional<std::size_t> ruleMet(const std::vector<const TrialRecording*>& row, double dban) {
    for (std::size_t i = 0; i < row.size(); ++i) {
        const std::size_t first = i + 1 > kTrialRuleOf ? i + 1 - kTrialRuleOf : 0;
        std::size_t count = 0;
        for (std::size_t k = first; k <= i; ++k)
            count += reaches(*row[k], dban) ? 1 : 0;
        if (count >= kTrialRule) return i;
    }
    return std::nullopt;
}

std::vector<const TrialRecording*> side(const TrialResult& result, bool after) {
    std::vector<const TrialRecording*> row;
    for (const TrialRecording& one : result.recordings)
        if (one.after == after) row.push_back(&one);
    return row;
}

void findDetection(const Trial& trial, TrialResult& result) {
    const auto after = side(result, true);
    const double least = trial.promise.leastDban;
    const auto first =
        std::find_if(after.begin(), after.end(), [&](const auto* one) { return reaches(*one, least); });
    if (first != after.end()) result.firstAt = (*first)->time;
    if (const auto met = ruleMet(after, least)) {
        result.toldAt = after[*met]->time;
        result.toldAfter = int(*met) + 1;
    }
}

TrialMark markOf(bool good, bool enough) {
    if (!enough) return TrialMark::Open;
    return good ? TrialMark::Passed : TrialMark::Failed;
}

void checkDetection(const Trial& trial, TrialResult& result) {
    const int within = trial.promise.within;
    TrialCheck check{"found",
                     fmt::format("{} of {} running recordings at {:.0f} decibans or more, within {}",
                                 kTrialRule, kTrialRuleOf, trial.promise.leastDban, within),
                     "", TrialMark::Open};
    const bool late = result.toldAfter && *result.toldAfter > within;
    check.mark = markOf(result.toldAfter && !late, result.toldAfter || result.after >= std::size_t(within));
    if (result.toldAfter && trial.changeUntil)
        check.found = fmt::format("at the {}. recording, {} after the change", *result.toldAfter,
                                  durationWords(*result.toldAt - *trial.changeUntil));
    else
        check.found =
            fmt::format("not in {} {} so far", result.after, result.after == 1 ? "recording" : "recordings");
    result.checks.push_back(check);
}

void checkBefore(const Trial& trial, TrialResult& result) {
    const auto before = side(result, false);
    for (const auto* one : before)
        result.falseBefore += reaches(*one, trial.promise.leastDban) ? 1 : 0;
    const bool ruled = ruleMet(before, trial.promise.leastDban).has_value();
    const double most = std::max(1.0, kFalseShare * double(before.size()));
    TrialCheck check{"quiet before", "the rule never met, at most 1 recording in 20 alone", "",
                     TrialMark::Open};
    check.found = fmt::format("{} of {} reached it{}", result.falseBefore, before.size(),
                              ruled ? ", the rule was met" : "");
    check.mark = markOf(!ruled && double(result.falseBefore) <= most, before.size() >= kFewest);
    result.checks.push_back(check);
}

// Which other finding stands above the promised one most often.
void checkName(const Trial& trial, TrialResult& result) {
    if (trial.change.follows != TrialFollows::Weight) return;
    std::map<std::string, std::size_t> strangers;
    for (const TrialRecording& one : result.recordings)
        if (one.after && !one.strongest.empty()) ++strangers[one.strongest];
    TrialCheck check{"named rightly", "no other fault of a bearing weighs more in half of the recordings", "",
                     TrialMark::Open};
    const auto most = std::max_element(strangers.begin(), strangers.end(),
                                       [](const auto& a, const auto& b) { return a.second < b.second; });
    const std::size_t count = most == strangers.end() ? 0 : most->second;
    check.found = count == 0 ? "none" : fmt::format("{} in {} of {}", most->first, count, result.after);
    check.mark = markOf(double(count) < kStrangersShare * double(result.after), result.after >= kFewest);
    result.checks.push_back(check);
}

void checkOnce(const Trial& trial, TrialResult& result) {
    const TrialPromise& promise = trial.promise;
    if (!promise.onceLowMmS || !promise.onceHighMmS) return;
    TrialCheck check{"1x", fmt::format("{:.2f} to {:.2f} mm/s", *promise.onceLowMmS, *promise.onceHighMmS),
                     "", TrialMark::Open};
    if (result.onceAfterMmS) {
        check.found = fmt::format("{:.2f} mm/s, median of {}", *result.onceAfterMmS, result.after);
        check.mark = markOf(
            *result.onceAfterMmS >= *promise.onceLowMmS && *result.onceAfterMmS <= *promise.onceHighMmS,
            result.after >= kFewest);
    } else
        check.found = "not measured yet";
    result.checks.push_back(check);
}

bool comparable(const Trial& trial, TrialResult& result) {
    if (trial.startedAt && trial.changeFrom && *trial.changeFrom < *trial.startedAt)
        result.notes.push_back("told after the fact: the change was made before the promise was frozen");
    const auto speed = [](const TrialRecording& one) { return one.speedRpm; };
    const auto before = middle(result.recordings, false, speed),
               after = middle(result.recordings, true, speed);
    if (before && after && std::abs(*after / *before - 1) > kSpeedApart)
        result.notes.push_back(
            fmt::format("the speed was {:.0f} r/min before and {:.0f} after: levels at shaft "
                        "orders are not like for like",
                        *before, *after));
    if (trial.change.follows == TrialFollows::Weight) return true;
    result.notes.push_back(
        "the weight of the change counts recordings, not days: what weather, product and drift do over weeks "
        "is not in it");
    return result.before >= kFewest;
}

void decide(const Trial& trial, TrialResult& result, bool closing) {
    const auto any = [&](TrialMark mark) {
        return std::any_of(result.checks.begin(), result.checks.end(),
                           [&](const TrialCheck& check) { return check.mark == mark; });
    };
    const bool enough = comparable(trial, result);
    if (!enough && (closing || trial.changed()))
        result.outcome = "not comparable";
    else if (any(TrialMark::Failed))
        result.outcome = "failed";
    else
        result.outcome = any(TrialMark::Open) ? "open" : "passed";
}

std::string list(const TrialResult& result, TrialMark mark) {
    std::string words;
    for (const TrialCheck& check : result.checks)
        if (check.mark == mark) words += (words.empty() ? "" : "; ") + check.what + ": " + check.found;
    return words;
}

std::string verdictOf(const Trial& trial, const TrialResult& result, bool closing) {
    if (result.outcome == "not comparable")
        return fmt::format("Not comparable: {} running {} before the change, {} are the least.",
                           result.before, result.before == 1 ? "recording" : "recordings", kFewest);
    if (result.outcome == "failed") return fmt::format("Failed: {}.", list(result, TrialMark::Failed));
    if (result.outcome == "passed") return fmt::format("Passed: {}.", list(result, TrialMark::Passed));
    if (!trial.changed()) return "The change has not been made yet.";
    return fmt::format("{}: {}.", closing ? "Closed before it was decided" : "Not decided yet",
                       list(result, TrialMark::Open));
}

}  // namespace

std::string durationWords(std::chrono::milliseconds time) {
    const auto minutes = std::chrono::duration_cast<std::chrono::minutes>(time).count();
    if (minutes < 60) return fmt::format("{} min", minutes);
    const auto hours = minutes / 60;
    if (hours < 24) return fmt::format("{} h {} min", hours, minutes % 60);
    return fmt::format("{} d {} h", hours / 24, hours % 24);
}

TrialResult judgeTrial(const Trial& trial, std::vector<TrialRecording> recordings, bool closing) {
    TrialResult result;
    result.recordings = std::move(recordings);
    for (const TrialRecording& one : result.recordings)
        ++(one.after ? result.after : result.before);
    const auto once = [](const TrialRecording& one) { return one.onceMmS; };
    const auto weight = [](const TrialRecording& one) { return one.weightDban; };
    result.onceBeforeMmS = middle(result.recordings, false, once);
    result.onceAfterMmS = middle(result.recordings, true, once);
    result.weightBeforeDban = middle(result.recordings, false, weight);
    result.weightAfterDban = middle(result.recordings, true, weight);
    findDetection(trial, result);
    checkDetection(trial, result);
    checkBefore(trial, result);
    checkName(trial, result);
    checkOnce(trial, result);
    decide(trial, result, closing);
    result.verdict = verdictOf(trial, result, closing);
    return result;
}

}  // namespace fettle
