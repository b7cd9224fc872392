// Why: machines' weeks made by hand for the tests of the round, so that every expected entry can be worked
// out on paper. The period is the seven days to 2026-05-10, UTC; a plain week has 14 recordings of a running
// machine that weigh little, at 2 mm/s in zone B.
#pragma once

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "core/round/round.h"

namespace fettle::made {

// Decibans of an e-value.
inline double dban(double e) {
    return 10 * std::log10(e);
}

inline RoundSettings settings() {
    RoundSettings s;
    s.from = "2026-05-04";
    s.until = "2026-05-10";
    s.end = *parseUtc("2026-05-11T00:00:00Z");
    return s;
}

inline int lastDay() {
    return dayOf(settings().end) - 1;
}

inline Hypothesis weighed(const std::string& fault, const std::string& at, double dban) {
    Hypothesis h;
    h.fault = fault;
    h.at = at;
    h.weightDban = dban;
    h.beforeClaimsDban = dban;
    h.recordingCount = 14;
    h.provedOn = "open data";
    h.persistence = dban >= 10 ? 0.9 : 0.0;
    return h;
}

inline Hypothesis staged(const std::string& fault, const std::string& at, double dban,
                         const std::string& stage) {
    Hypothesis h = weighed(fault, at, dban);
    h.severity.kind = "stage";
    h.severity.value = stage;
    h.sentence = "Lines of it stand there.";
    h.best.view = "x, envelope 3000-3920 Hz, whitened";
    h.best.cageShift = 0.0032;
    h.best.rows.resize(3);
    return h;
}

inline Hypothesis cause(const std::string& fault, const std::string& zone, double level, double share) {
    Hypothesis h;
    h.fault = fault;
    h.at = "driver";
    h.severity = {"zone", zone, level, 4.5, "mm/s", "ISO 20816-3 group 2 rigid"};
    h.why = "possible: no baseline";
    h.sentence = "Possible " + fault + ": it looks like it.";
    h.persistence = share;
    return h;
}

// Straight from `from` to `to` over the last `count` days.
inline std::vector<DayValue> days(double from, double to, int count = 182) {
    std::vector<DayValue> all;
    for (int i = 0; i < count; ++i)
        all.push_back({lastDay() - count + 1 + i, from + (to - from) * i / std::max(count - 1, 1), 2});
    return all;
}

inline RecordingFacts recording(const std::string& zone, bool indicative = false, bool greyOnly = false) {
    RecordingFacts facts;
    facts.running = "running";
    facts.channels = {{"x", "M-DE", "horizontal", "acceleration", 12800, 51200}};
    ChannelLevels levels;
    levels.channel = "x";
    levels.velocityRmsMmS = 2;
    levels.zones = {{zone, "ISO 20816-3 group 2 rigid", 2.8, indicative, greyOnly}};
    facts.levels = {levels};
    return facts;
}

inline Examination examination(const std::vector<Hypothesis>& extra = {}) {
    Examination e;
    e.engine = "0.1.0 5c1f";
    e.recordings = {recording("B")};
    for (const char* at : {"driver DE", "driver NDE"})
        for (const char* fault :
             {"bearing_outer_race", "bearing_inner_race", "bearing_rolling_element", "bearing_cage"})
            e.considered.push_back(weighed(fault, at, -3));
    for (const Hypothesis& h : extra) {
        std::erase_if(e.considered, [&](const Hypothesis& c) { return c.fault == h.fault && c.at == h.at; });
        e.considered.push_back(h);
        if (!h.sentence.empty()) e.findings.push_back(h);
    }
    return e;
}

inline MachineWeek plain(const std::string& tag) {
    MachineWeek week;
    week.tag = tag;
    week.asset = "10" + tag;
    week.service = "pump of " + tag;
    week.area = "kiln";
    week.week = examination();
    week.newest = *parseUtc("2026-05-10T18:00:00Z");
    week.recordings = week.turning = 14;
    week.governing = "M-DE x velocity r.m.s.";
    week.days = days(2, 2);
    week.limit = 2.8;
    week.zone = "B";
    return week;
}

inline MachineWeek with(MachineWeek week, const std::vector<Hypothesis>& extra) {
    week.week = examination(extra);
    return week;
}

inline MachineWeek inZone(MachineWeek week, const std::string& zone, double level, double limit) {
    week.zone = zone;
    week.limit = limit;
    week.days = days(2, level);
    for (DayValue& day : week.days)
        if (day.day > lastDay() - 7) day.value = level;
    if (week.week)
        for (RecordingFacts& facts : week.week->recordings)
            facts.levels[0].zones[0].zone = zone;
    return week;
}

inline RoundList round(const std::vector<MachineWeek>& weeks, const RoundList* last = nullptr) {
    return makeRound(weeks, settings(), last);
}

inline const RoundMachine& machine(const RoundList& list, const std::string& tag) {
    static const RoundMachine none;
    const auto at = std::find_if(list.machines.begin(), list.machines.end(),
                                 [&](const RoundMachine& m) { return m.tag == tag; });
    return at == list.machines.end() ? none : *at;
}

inline RoundMachine alone(const MachineWeek& week, const RoundList* last = nullptr) {
    return machine(round({week}, last), week.tag);
}

}  // namespace fettle::made
