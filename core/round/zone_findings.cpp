#include "core/round/zone_findings.h"

#include <fmt/format.h>

#include <cmath>

#include "core/round/level.h"
#include "core/round/words.h"

namespace fettle {

namespace {

// "M-DE x" of "M-DE x velocity r.m.s." is point and channel.
bool governs(const MachineWeek& week, const RecordingFacts& facts, std::size_t channel) {
    if (channel >= facts.channels.size()) return false;
    const ChannelFacts& c = facts.channels[channel];
    return week.governing.starts_with(c.point + " " + c.name + " ");
}

std::string basisWords(const ZoneNote& note) {
    std::string words = note.basis.empty() ? "basis not recorded" : note.basis;
    if (note.indicative) words += ", indicative: not on a bearing housing";
    if (note.greyOnly) words += ", a note only: alone never above watch";
    return words;
}

std::string levelWords(const MachineWeek& week, const Severity& severity, const ZoneNote& note) {
    const std::string level =
        severity.level ? fmt::format("{:.1f} {}", *severity.level, week.unit) : std::string("the level");
    return fmt::format("{} in the week's median is zone {} ({})", level, week.zone, basisWords(note));
}

bool isNamedCause(const Hypothesis& h) {
    return !h.weightDban && h.severity.kind == "zone" && !h.sentence.empty();
}

// The sentence of a cause tells level and zone of one recording; the week's are said where they differ.
bool saysTheSame(const Hypothesis& h, const Severity& week) {
    return h.severity.value == week.value && h.severity.level && week.level &&
           std::abs(*h.severity.level - *week.level) < 0.05 * *week.level;
}

RoundFinding named(const Hypothesis& h, const Severity& severity, const std::string& level, bool greyOnly) {
    RoundFinding f;
    f.finding = h;
    f.finding.best = {};
    f.finding.causeNotes.clear();
    f.persistence = h.persistence.value_or(1);
    if (greyOnly || !saysTheSame(h, severity))
        f.finding.sentence = capitalised(level) + ". One recording of it: " + h.sentence;
    return f;
}

RoundFinding unnamed(const std::string& level, bool levelsAlone) {
    RoundFinding f;
    f.persistence = 1;
    f.finding.provedOn = "published numbers";
    f.finding.sentence =
        capitalised(level) +
        (levelsAlone ? ". A ready-made level names no cause: take a recording there."
                     : ". The pattern of its shaft orders names no cause: look at the spectrum.");
    return f;
}

// By the pattern where the recordings carry it, else by how many of them name each.
void shareOut(std::vector<RoundFinding>& findings) {
    double total = 0;
    bool byPattern = false;
    for (RoundFinding& f : findings) {
        f.causeShare = f.finding.causeShare;
        byPattern |= f.causeShare.has_value();
        total += f.persistence;
    }
    if (byPattern || findings.size() < 2 || total <= 0) return;
    for (RoundFinding& f : findings)
        f.causeShare = f.finding.causeShare = f.persistence / total;
}

}  // namespace

ZoneNote zoneNoteOf(const MachineWeek& week) {
    ZoneNote found = week.zoneBy;
    if (found.basis.empty()) found = {week.zone, "", week.limit, false, false};
    if (!week.week) return found;
    int best = 0;
    for (const RecordingFacts& facts : week.week->recordings)
        for (std::size_t i = 0; i < facts.levels.size(); ++i)
            for (const ZoneNote& note : facts.levels[i].zones) {
                const int fits = 2 * governs(week, facts, i) + (note.zone == week.zone);
                if (fits <= best) continue;
                best = fits;
                found = note;
            }
    return found;
}

Severity zoneSeverity(const MachineWeek& week, const RoundSettings& settings, const std::string& basis) {
    if (week.zone.empty()) return {};
    return {"zone", week.zone, levelOf(week, settings), week.limit, week.unit, basis};
}

void addGrowth(RoundFinding& f, const MachineWeek& week, int lastDay) {
    std::vector<DayValue> days = week.days;
    std::erase_if(days, [&](const DayValue& d) { return d.day > lastDay; });
    const auto growth = growthOf(days);
    if (!growth) return;
    f.growthPerWeek = growth->perWeek;
    if (week.limit) f.limitDate = forecastLimit(days, *week.limit);
}

std::vector<RoundFinding> zoneFindings(const MachineWeek& week, const std::vector<Hypothesis>& hypotheses,
                                       const RoundSettings& settings, const UrgencyRule& rule) {
    if (week.zone != "C" && week.zone != "D") return {};
    const int lastDay = lastDayOf(settings);
    const ZoneNote note = zoneNoteOf(week);
    const Severity severity = zoneSeverity(week, settings, note.basis);
    const std::string level = levelWords(week, severity, note);
    std::vector<RoundFinding> findings;
    for (const Hypothesis& h : hypotheses)
        if (isNamedCause(h)) findings.push_back(named(h, severity, level, note.greyOnly));
    if (findings.empty())
        findings.push_back(unnamed(level, !week.week && week.levels > 0 && week.levels == week.recordings));
    shareOut(findings);
    for (RoundFinding& f : findings) {
        f.finding.severity = severity;
        f.finding.urgency = rule.of(severity, week.criticality, note.greyOnly);
        f.finding.persistence = f.persistence;
        addGrowth(f, week, lastDay);
    }
    return findings;
}

}  // namespace fettle
