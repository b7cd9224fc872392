#include "core/round/grease.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/trend/baseline.h"
#include "core/trend/median.h"

namespace fettle {

namespace {

constexpr int kBeforeDays = 14, kFirstDays = 3, kLaterDays = 28, kBackDays = 14;
constexpr std::size_t kFewestBefore = 3;
constexpr double kStepDb = 3, kBackDb = 1.5;

std::optional<double> medianWithin(std::span<const DayValue> days, int from, int until, std::size_t fewest) {
    std::vector<double> some;
    for (const DayValue& day : days)
        if (day.day >= from && day.day <= until) some.push_back(day.value);
    if (some.size() < fewest) return std::nullopt;
    return medianOf(std::move(some));
}

double stepDb(double from, double to) {
    return onScale(to, Scale::Decibels) - onScale(from, Scale::Decibels);
}

// The first of two days running on which it is what it was.
std::optional<int> backOn(std::span<const DayValue> days, int greasedOn, double before) {
    std::optional<int> first;
    for (const DayValue& day : days) {
        if (day.day <= greasedOn + 1) continue;
        if (day.day > greasedOn + kBackDays + 1) break;
        const bool isBack = stepDb(before, day.value) >= -kBackDb;
        if (isBack && first) return first;
        first = isBack ? std::optional(day.day) : std::nullopt;
    }
    return std::nullopt;
}

void judgeFallen(std::span<const DayValue> days, int greasedOn, double fall, GreaseWitness& w) {
    w.backOn = backOn(days, greasedOn, *w.before);
    const std::string fell = fmt::format("the band above 1 kHz fell by {:.1f} dB", fall);
    if (w.backOn) {
        w.course = GreaseCourse::BackWithinDays;
        w.words = fell + fmt::format(" and was back after {} days: grease does not mend it, look for damage",
                                     *w.backOn - greasedOn);
    } else if (days.back().day < greasedOn + kBackDays) {
        w.words = fell + fmt::format("; {} more days are needed to tell whether it stays so",
                                     greasedOn + kBackDays - days.back().day);
    } else {
        w.course = GreaseCourse::WasDry;
        w.words = fell + fmt::format(" and stayed quiet for {} days: the bearing was dry",
                                     std::min(days.back().day - greasedOn, kLaterDays));
    }
}

void judgeOthers(double step, GreaseWitness& w) {
    const bool stays = !w.later || stepDb(*w.before, *w.later) >= kStepDb;
    if (step >= kStepDb && stays) {
        w.course = GreaseCourse::Louder;
        w.words = fmt::format(
            "the band above 1 kHz rose by {:.1f} dB: too much grease, or dirt with it; let it run and look "
            "again",
            step);
        return;
    }
    w.course = GreaseCourse::NoChange;
    w.words = fmt::format("no change of the band above 1 kHz ({:+.1f} dB): it was not dry", step);
}

}  // namespace

std::string toText(GreaseCourse course) {
    static const char* const names[] = {"not_known", "was_dry", "back_within_days", "no_change", "louder"};
    return names[int(course)];
}

GreaseWitness greaseWitness(std::span<const DayValue> days, int greasedOn) {
    GreaseWitness w;
    w.before = medianWithin(days, greasedOn - kBeforeDays, greasedOn - 1, kFewestBefore);
    w.after = medianWithin(days, greasedOn + 1, greasedOn + kFirstDays, 1);
    w.later = medianWithin(days, greasedOn + kFirstDays + 1, greasedOn + kLaterDays, 1);
    if (!w.before || !w.after || *w.before <= 0) {
        w.words = w.before ? "no running at like speed and load in the three days after"
                           : "fewer than three days at like speed and load in the two weeks before";
        return w;
    }
    const double step = stepDb(*w.before, *w.after);
    if (step <= -kStepDb)
        judgeFallen(days, greasedOn, -step, w);
    else
        judgeOthers(step, w);
    return w;
}

}  // namespace fettle
