#include "core/fleet/retention_choice.h"

#include <algorithm>
#include <limits>
#include <tuple>

#include "core/trend/daily.h"

namespace fettle {

namespace {

struct ReasonWords {
    const char* key;
    const char* words;
};
constexpr ReasonWords kReasonWords[kReasons] = {
    {"young", "not old enough yet"},
    {"round", "a round stands on it"},
    {"finding", "a finding or an alert stands on it"},
    {"baseline", "the baseline stands on it"},
    {"trial", "a trial stands on it"},
    {"balance", "a balancing stands on it"},
    {"job", "the verification of a job stands on it"},
    {"history", "next to an event, a report or a job"},
    {"request", "answers what was asked for"},
    {"refusal", "something of its file was refused and is not answered"},
    {"one_a_day", "the strongest of its day"},
    {"one_a_week", "the strongest of its week"}};

enum class Stage { All, Daily, Weekly, None };

// Ages in whole days of the calendar; a week as its last day.
Stage stageOf(const KeepRule& rule, int newest, int day) {
    if (newest - day <= rule.allDays) return Stage::All;
    const int weekAge = newest - (weekOfDay(day) * 7 + 3);  // Sunday: day 3 of 1970 was one
    if (!rule.dailyDays || weekAge <= rule.allDays + *rule.dailyDays) return Stage::Daily;
    if (!rule.weeklyDays || weekAge <= rule.allDays + *rule.dailyDays + *rule.weeklyDays)
        return Stage::Weekly;
    return Stage::None;
}

// Strongest recording by day or week of one point; those are indices.
class Strongest {
  public:
    explicit Strongest(const std::vector<KeptRecording>& recordings) : recordings_(recordings) {}
    void take(int span, std::size_t i) {
        const auto [at, fresh] = best_.try_emplace(span, i);
        if (!fresh && isStronger(recordings_[i], recordings_[at->second])) at->second = i;
    }
    bool is(int span, std::size_t i) const {
        const auto at = best_.find(span);
        return at != best_.end() && at->second == i;
    }

  private:
    const std::vector<KeptRecording>& recordings_;
    std::map<int, std::size_t> best_;
};

struct PointView {
    std::vector<std::size_t> recordings;  // indices
    int newest = std::numeric_limits<int>::min();
};

// Recordings by day, and by point.
class Calendar {
  public:
    explicit Calendar(const Aged& aged) : recordings(aged.recordings) {
        for (std::size_t i = 0; i < recordings.size(); ++i) {
            days.push_back(dayOf(aged.clocks[i]));
            PointView& point = points[recordings[i].point];
            point.recordings.push_back(i);
            point.newest = std::max(point.newest, dayOf(std::min(aged.clocks[i], aged.now)));
        }
        for (const auto& [name, clock] : aged.newest)
            if (const auto point = points.find(name); point != points.end())
                point->second.newest = std::max(point->second.newest, dayOf(std::min(clock, aged.now)));
    }

    const std::vector<KeptRecording>& recordings;
    std::vector<int> days;
    std::map<std::string, PointView> points;
};

struct Chooser {
    const Calendar& calendar;
    const Holds& holds;
    std::vector<Choice>& choices;

    void choose(const PointView& point, KeptKind kind, const KeepRule& rule) const {
        Strongest ofDay(calendar.recordings), ofWeek(calendar.recordings);
        for (const std::size_t i : point.recordings)
            if (calendar.recordings[i].has(kind)) {
                ofDay.take(calendar.days[i], i);
                ofWeek.take(weekOfDay(calendar.days[i]), i);
            }
        for (const std::size_t i : point.recordings)
            if (calendar.recordings[i].has(kind))
                choices[i][std::size_t(kind)] = reason(point, kind, rule, i, ofDay, ofWeek);
    }

    std::optional<KeptFor> reason(const PointView& point, KeptKind kind, const KeepRule& rule, std::size_t i,
                                  const Strongest& ofDay, const Strongest& ofWeek) const {
        const int day = calendar.days[i];
        const KeptRecording& recording = calendar.recordings[i];
        const Stage stage = stageOf(rule, point.newest, day);
        if (stage == Stage::All) return KeptFor::Young;
        if (const auto held = holds.of.find(recording.id); held != holds.of.end())
            if (const auto& why = held->second[std::size_t(kind)]) return why;
        const bool dayOne = ofDay.is(day, i);
        if (holds.inBaseline(recording.point, day) && (kind == KeptKind::Spectra || dayOne))
            return KeptFor::Baseline;
        if (stage == Stage::Daily && dayOne) return KeptFor::Day;
        if (stage == Stage::Weekly && ofWeek.is(weekOfDay(day), i)) return KeptFor::Week;
        return std::nullopt;
    }
};

// Marks of one point and kind those that share a day, or a week that is thinned as one, with another.
void markContested(const Calendar& calendar, const PointView& point, KeptKind kind, const KeepRule& rule,
                   const Holds& holds, std::vector<bool>& marks) {
    std::unordered_map<int, int> ofDay, ofWeek;
    for (const std::size_t i : point.recordings)
        if (calendar.recordings[i].has(kind))
            ++ofDay[calendar.days[i]], ++ofWeek[weekOfDay(calendar.days[i])];
    for (const std::size_t i : point.recordings) {
        const int day = calendar.days[i];
        if (!calendar.recordings[i].has(kind) || marks[i] || ofWeek.at(weekOfDay(day)) == 1) continue;
        const Stage stage = stageOf(rule, point.newest, day);
        if (stage == Stage::All) continue;
        const bool byDay = stage == Stage::Daily || holds.inBaseline(calendar.recordings[i].point, day);
        marks[i] = stage == Stage::Weekly || (byDay && ofDay.at(day) > 1);
    }
}

}  // namespace

const char* keyOf(KeptFor reason) {
    return kReasonWords[std::size_t(reason)].key;
}

const char* inWords(KeptFor reason) {
    return kReasonWords[std::size_t(reason)].words;
}

void Holds::add(std::int64_t recording, KeptFor why, const std::array<bool, kKeptKinds>& kinds) {
    Reasons& reasons = of[recording];
    for (std::size_t kind = 0; kind < kKeptKinds; ++kind)
        if (kinds[kind] && (!reasons[kind] || why < *reasons[kind])) reasons[kind] = why;
}

bool Holds::inBaseline(const std::string& point, int day) const {
    const auto found = baselines.find(point);
    return found != baselines.end() &&
           std::any_of(found->second.begin(), found->second.end(),
                       [&](const Days& days) { return day >= days.first && day <= days.last; });
}

int weekOfDay(int day) {
    const int sinceMonday = day + 3;  // 1970-01-01 was a Thursday
    return (sinceMonday - ((sinceMonday % 7) + 7) % 7) / 7;
}

bool isStronger(const KeptRecording& a, const KeptRecording& b) {
    const double nothing = -std::numeric_limits<double>::infinity();
    const auto rank = [nothing](const KeptRecording& one) {
        return std::tuple(one.evidenceDban.value_or(nothing), one.levelMmS.value_or(nothing));
    };
    if (rank(a) != rank(b)) return rank(a) > rank(b);
    return std::tuple(a.time, a.id) < std::tuple(b.time, b.id);
}

std::vector<Choice> chooseKept(const Aged& aged, const RetentionRules& rules, const Holds& holds) {
    const Calendar calendar(aged);
    std::vector<Choice> choices(aged.recordings.size());
    const Chooser chooser{calendar, holds, choices};
    for (const auto& [name, point] : calendar.points)
        for (const KeptKind kind : kAllKept)
            chooser.choose(point, kind, rules.rule(kind));
    return choices;
}

std::vector<std::size_t> contested(const Aged& aged, const RetentionRules& rules, const Holds& holds) {
    const Calendar calendar(aged);
    std::vector<bool> marks(aged.recordings.size());
    for (const auto& [name, point] : calendar.points)
        for (const KeptKind kind : kAllKept)
            markContested(calendar, point, kind, rules.rule(kind), holds, marks);
    std::vector<std::size_t> all;
    for (std::size_t i = 0; i < marks.size(); ++i)
        if (marks[i]) all.push_back(i);
    return all;
}

}  // namespace fettle
