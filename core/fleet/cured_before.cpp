#include "core/fleet/cured_before.h"

#include <fmt/format.h>

#include <algorithm>
#include <span>

#include "core/base/text.h"
#include "core/fleet/history.h"
#include "core/fleet/site_calendar.h"
#include "core/trend/median.h"

namespace fettle {

namespace {

constexpr std::size_t kDays = 5;
constexpr int kReach = 21;  // days, in which the running ones are looked for
constexpr double kShare = 0.5, kShareOfBoundary = 0.25;
constexpr std::size_t kMostText = 200;

struct KindWord {
    const char* kind;
    const char* words;
};
// Where several were done at one stop, the first of these is named.
constexpr KindWord kWork[] = {{"cleaning", "cleaning"},
                              {"repair", "repair"},
                              {"part", "new part"},
                              {"greasing", "greasing"},
                              {"inspection", "inspection"}};

std::size_t rankOf(const Event& event) {
    const auto* found = std::find_if(std::begin(kWork), std::end(kWork),
                                     [&](const KindWord& k) { return event.kind == k.kind; });
    return std::size_t(found - std::begin(kWork));
}

double middleOf(std::span<const DayValue> days) {
    std::vector<double> values;
    for (const DayValue& day : days)
        values.push_back(day.value);
    return medianOf(values);
}

struct Fall {
    CuredBefore cure;
    std::size_t stop = 0;  // running days before the work
};

class Falls {
  public:
    Falls(const std::vector<Event>& events, const Governing& governing, const Period& period)
        : events_(events), governing_(governing), period_(period) {}

    Result<std::optional<Fall>> last() const {
        std::optional<Fall> best;
        for (const Event& event : events_) {
            if (rankOf(event) == std::size(kWork)) continue;
            const auto day = dayIn(event);
            if (!day) return fail(day.error());
            auto fall = after(event, *day);
            if (!fall) return fail(fall.error());
            if (*fall && (!best || isBetter(**fall, *best))) best = std::move(**fall);
        }
        return best;
    }
    // What counts: a share of the B/C boundary; 0 where none is known.
    double significant() const {
        return governing_.limits ? kShareOfBoundary * governing_.limits->velocity[1] : 0;
    }

  private:
    Result<int> dayIn(const Event& event) const {
        const auto clock = clockIn(period_.timeZone, event.time);
        if (!clock) return fail(clock.error());
        return dayOf(*clock);
    }

    static bool isBetter(const Fall& a, const Fall& b) {
        if (a.stop != b.stop) return a.stop > b.stop;
        const std::size_t rankA = rankOf(a.cure.event), rankB = rankOf(b.cure.event);
        return rankA != rankB ? rankA < rankB : a.cure.event.time > b.cure.event.time;
    }

    // A sensor that was moved makes a fall of its own.
    Result<bool> nodeMoved(int from, int to) const {
        for (const Event& event : events_) {
            if (event.kind != "moved_node") continue;
            const auto day = dayIn(event);
            if (!day) return fail(day.error());
            if (*day >= from && *day <= to) return true;
        }
        return false;
    }

    Result<std::optional<Fall>> after(const Event& event, int day) const {
        const std::span<const DayValue> days = governing_.days;
        const auto before = std::size_t(
            std::count_if(days.begin(), days.end(), [&](const DayValue& d) { return d.day < day; }));
        const auto from = std::size_t(
            std::count_if(days.begin(), days.end(), [&](const DayValue& d) { return d.day <= day; }));
        if (before < kDays || days.size() - from < kDays) return std::nullopt;
        const auto past = days.subspan(before - kDays, kDays), next = days.subspan(from, kDays);
        if (past.front().day < day - kReach || next.back().day > day + kReach) return std::nullopt;
        Fall fall{{event, day, middleOf(past), middleOf(next), 0, ""}, before};
        if (!isFall(fall.cure, past.back().value, next.front().value)) return std::nullopt;
        const auto moved = nodeMoved(past.front().day, next.back().day);
        if (!moved) return fail(moved.error());
        return *moved ? std::nullopt : std::optional<Fall>(std::move(fall));
    }

    // The days next to the work are on either side of it as well: else something else made the fall.
    bool isFall(const CuredBefore& cure, double dayBefore, double dayAfter) const {
        const double middle = (cure.before + cure.after) / 2;
        return cure.before > 0 && cure.after <= (1 - kShare) * cure.before &&
               cure.before - cure.after >= significant() && dayBefore > middle && dayAfter < middle;
    }

    const std::vector<Event>& events_;
    const Governing& governing_;
    const Period& period_;
};

// What was noted, and what was corrected of it.
std::string textOf(const Event& event, const std::vector<Event>& events) {
    std::string_view noted = trimmed(event.text);
    while (noted.ends_with('.'))
        noted.remove_suffix(1);
    std::string text(noted);
    for (const Event& note : events)
        if (corrects(note, event))
            text += (text.empty() ? "" : "; ") + ("corrected: " + correctionWords(note));
    return oneLine(text, kMostText);
}

std::string sentenceOf(const CuredBefore& cure, const std::vector<Event>& events, const std::string& title) {
    const std::string text = textOf(cure.event, events);
    return fmt::format(
        "After the {} of {}{} {} fell from {:.1f} to {:.1f} mm/s; since then it has climbed back to {:.1f}.",
        kWork[rankOf(cure.event)].words, spelledDate(dateOfDay(cure.day)),
        text.empty() ? "" : " (" + text + ")", title, cure.before, cure.after, cure.now);
}

}  // namespace

Result<std::optional<CuredBefore>> curedBefore(const std::vector<Event>& events, const Governing& governing,
                                               const Period& period) {
    if (!governing.level || !governing.inPeriod || governing.retired) return std::nullopt;
    const Falls falls(events, governing, period);
    auto fall = falls.last();
    if (!fall) return fail(fall.error());
    if (!*fall) return std::nullopt;
    CuredBefore cure = std::move((*fall)->cure);
    cure.now = *governing.level;
    const double climbed = cure.now - cure.after;
    if (climbed < kShare * (cure.before - cure.after) || climbed < falls.significant()) return std::nullopt;
    cure.sentence = sentenceOf(cure, events, governing.title);
    return cure;
}

Result<std::optional<CuredBefore>> curedBefore(FleetFile& fleet, const std::string& tag,
                                               const Period& period) {
    const auto entry = fleet.machines().byTag(tag);
    if (!entry) return fail(entry.error());
    const auto machine = fleet.machines().describedOn(tag, period.lastDay);
    if (!machine) return fail(machine.error());
    const auto governing = governingOf(fleet, *entry, **machine, period);
    if (!governing) return fail(governing.error());
    const auto events = fleet.log().events(tag);
    if (!events) return fail(events.error());
    return curedBefore(*events, *governing, period);
}

}  // namespace fettle
