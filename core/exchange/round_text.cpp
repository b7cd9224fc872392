#include "core/exchange/round_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/round/level.h"

namespace fettle {

namespace {

constexpr std::size_t kListWidth = 108, kTag = 12, kService = 34, kIndent = 4;

// Characters, not bytes: continuation bytes of UTF-8 are not counted. Wide glyphs count as one.
std::size_t columns(std::string_view text) {
    return std::size_t(std::count_if(text.begin(), text.end(),
                                     [](char c) { return (static_cast<unsigned char>(c) & 0xc0) != 0x80; }));
}

// The first `most` characters, the last of them a "…" where something was cut.
std::string cut(const std::string& text, std::size_t most) {
    if (columns(text) <= most) return text;
    std::size_t at = 0, count = 0;
    while (at < text.size() && count + 1 < most) {
        ++at;
        while (at < text.size() && (static_cast<unsigned char>(text[at]) & 0xc0) == 0x80)
            ++at;
        ++count;
    }
    return text.substr(0, at) + "…";
}

std::string padded(const std::string& text, std::size_t width) {
    const std::string shown = cut(oneLine(text), width);
    return shown + std::string(width - std::min(width, columns(shown)), ' ');
}

// Words broken into lines, every line indented; a word longer than a line is cut.
std::string paragraph(const std::string& text, std::size_t indent) {
    const std::string pad(indent, ' ');
    std::string out = pad;
    std::size_t column = indent;
    const std::string line = oneLine(text, 4000);
    for (const std::string_view piece : split(line, ' ')) {
        const std::string word = cut(std::string(piece), kListWidth - indent);
        if (word.empty()) continue;
        if (column > indent && column + 1 + columns(word) > kListWidth) {
            out += "\n" + pad;
            column = indent;
        } else if (column > indent) {
            out += ' ';
            ++column;
        }
        out += word;
        column += columns(word);
    }
    return out + "\n";
}

const char* discOf(const std::string& urgency) {
    constexpr const char* discs[] = {"●", "◑", "◔", "◌", "○"};
    return discs[groupOf(urgency)];
}

// The weeks as columns that rise from zero to the largest of the values and the limit; a dot where there is
// no value.
std::string strip(const RoundMachine& m) {
    constexpr const char* bars[] = {"▁", "▂", "▃", "▄", "▅", "▆", "▇", "█"};
    double top = m.limit.value_or(0);
    for (const double value : m.strip)
        if (std::isfinite(value)) top = std::max(top, value);
    std::string out;
    for (const double value : m.strip) {
        const bool shown = std::isfinite(value) && top > 0;
        out += shown ? bars[std::clamp(int(value / top * 8), 0, 7)] : "·";
    }
    return out;
}

std::string levelText(const RoundMachine& m) {
    const auto level = levelOf(m);
    if (!level) return "";
    std::string text = fmt::format("{:.1f} {}", *level, oneLine(m.unit, 12));
    if (!m.zone.empty()) text += ", zone " + m.zone;
    return text;
}

std::string heading(const std::string& urgency, std::size_t count) {
    std::string line = fmt::format("{} {} ", discOf(urgency), urgency);
    const std::string end = fmt::format(" {}", count);
    while (columns(line) + columns(end) < kListWidth)
        line += "─";
    return "\n" + line + end + "\n";
}

// A weight is told where evidence is among the reasons.
std::string weightText(const RoundMachine& m) {
    const bool evidence = std::any_of(m.findings.begin(), m.findings.end(), [](const RoundFinding& f) {
        return f.finding.weightDban && !f.change;
    });
    return evidence && m.weightDban ? fmt::format("{:.1f} dban", *m.weightDban) : "";
}

std::string headLine(const RoundMachine& m) {
    return fmt::format("  {} {} {:>11}  {}  {}\n", padded(m.tag, kTag), padded(m.service, kService),
                       weightText(m), strip(m), levelText(m));
}

// "about 2026-07-13 (2026-06-20 to 2026-08-30)"
std::string dateText(const LimitDate& date) {
    const auto day = [](int d) { return formatDate(startOfDay(d)); };
    std::string text = "about " + day(*date.median);
    if (!date.from || (date.to && *date.to == *date.from)) return text;
    return text + fmt::format(" ({} {})", day(*date.from), date.to ? "to " + day(*date.to) : "or much later");
}

std::string growthText(const RoundFinding& f) {
    if (!f.growthPerWeek) return "";
    if (std::abs(*f.growthPerWeek) < 0.005) return "No growth.";
    const std::string unit = oneLine(f.finding.severity.unit, 12);
    std::string text = fmt::format("Growth {:+.2f} {} a week", *f.growthPerWeek, unit);
    if (f.limitDate && f.limitDate->median && f.finding.severity.limit)
        text +=
            fmt::format("; at this pace {:g} {} {}", *f.finding.severity.limit, unit, dateText(*f.limitDate));
    return text + ".";
}

std::string findingText(const RoundFinding& f) {
    std::string out = paragraph(f.finding.sentence, kIndent);
    std::vector<std::string> facts;
    if (f.finding.recordingCount > 1)
        facts.push_back(fmt::format("In {:.0f} % of the week's recordings.", f.persistence * 100));
    if (f.causeShare) facts.push_back(fmt::format("Share among the causes: {:.0f} %.", *f.causeShare * 100));
    if (const std::string growth = growthText(f); !growth.empty()) facts.push_back(growth);
    if (!facts.empty()) out += paragraph(joined(facts, " "), kIndent);
    return out;
}

std::string listedText(const RoundMachine& m) {
    std::string out = headLine(m) + paragraph(m.changed, kIndent);
    for (const RoundFinding& f : m.findings)
        if (f.finding.fault != "sensor" || f.finding.urgency != "leave") out += findingText(f);
    if (m.listedBy == ListedBy::Zone)
        out += paragraph("Listed by its zone: outside the stated share.", kIndent);
    if (m.listedBy == ListedBy::Change)
        out += paragraph("Listed by change against its own baseline: outside the stated share.", kIndent);
    if (!m.byHandWhy.empty()) out += paragraph("Listed by hand: " + m.byHandWhy, kIndent);
    if (m.lateRecordings > 0)
        out += paragraph(fmt::format("{} recording{} came late, for rounds that are closed.",
                                     m.lateRecordings, m.lateRecordings == 1 ? "" : "s"),
                         kIndent);
    return out;
}

std::string unseenText(const RoundMachine& m) {
    std::string out =
        fmt::format("  {} {}  {}\n", padded(m.tag, kTag), padded(m.service, kService), m.unseenReason);
    out += paragraph(m.unseenWords, kIndent);
    if (!m.byHandWhy.empty()) out += paragraph("by hand: " + m.byHandWhy, kIndent);
    if (!m.foundBefore.empty()) out += paragraph("When last seen: " + m.foundBefore, kIndent);
    return out;
}

// Leave that stands on the level alone says so.
std::string unweighedText(const std::vector<const RoundMachine*>& machines) {
    std::vector<std::string> levels;
    for (const RoundMachine* m : machines)
        if (!m->weightDban && !levelText(*m).empty())
            levels.push_back(cut(oneLine(m->tag), 30) + " " + levelText(*m));
    return levels.empty() ? "" : paragraph("by level alone, without a weight: " + joined(levels, "; "), 2);
}

// Tags in columns; those of the sample with a star.
std::string leaveText(const std::vector<const RoundMachine*>& machines) {
    std::size_t wide = 0;
    bool sampled = false;
    for (const RoundMachine* m : machines) {
        wide = std::max(wide, std::min(columns(oneLine(m->tag)), std::size_t(30)) + 3);
        sampled |= m->inSample;
    }
    const std::size_t across = std::max<std::size_t>(1, (kListWidth - 2) / wide);
    std::string out;
    for (std::size_t i = 0; i < machines.size(); ++i) {
        if (i % across == 0) out += i == 0 ? "  " : "\n  ";
        const std::string tag = cut(oneLine(machines[i]->tag), 30) + (machines[i]->inSample ? "*" : "");
        out += i % across + 1 == across || i + 1 == machines.size() ? tag : padded(tag, wide);
    }
    return out + (sampled ? "\n  * of the sample: to be opened before leave is accepted\n" : "\n");
}

std::string groupText(const RoundList& list, const std::string& urgency) {
    std::vector<const RoundMachine*> machines;
    for (const RoundMachine& m : list.machines)
        if (m.urgency == urgency) machines.push_back(&m);
    if (machines.empty()) return "";
    std::string out = heading(urgency, machines.size());
    if (urgency == "leave") return out + leaveText(machines) + unweighedText(machines);
    for (std::size_t i = 0; i < machines.size(); ++i)
        out += (i ? "\n" : "") + (urgency == "unseen" ? unseenText(*machines[i]) : listedText(*machines[i]));
    return out;
}

// What the grid or gravity says against nodes, of machines on leave too.
std::string nodesText(const RoundList& list) {
    std::string out;
    std::size_t count = 0;
    for (const RoundMachine& m : list.machines)
        for (const RoundFinding& f : m.findings) {
            if (f.finding.fault != "sensor" || f.finding.urgency != "leave") continue;
            out += paragraph(cut(oneLine(m.tag), 30) + "  " + f.finding.sentence, 2);
            ++count;
        }
    if (count == 0) return "";
    return fmt::format("\nnodes to see to {}\n", count) + out;
}

std::string promiseText(const RoundList& list) {
    const auto onEvidence =
        std::count_if(list.machines.begin(), list.machines.end(),
                      [](const RoundMachine& m) { return m.listedBy == ListedBy::Evidence; });
    if (list.alpha <= 0) return "";
    return fmt::format(
        "{} listed on evidence: at most 1 in {:g} of such entries, on average over rounds, is chance. A "
        "machine "
        "needs {:.1f} decibans with its criticality counted in; entries by change, by zone or by hand carry "
        "no such bound.",
        onEvidence, std::round(10 / list.alpha) / 10, list.listNeedsDban);
}

std::string titleText(const RoundList& list) {
    std::vector<std::string> counts;
    for (const char* urgency : {"act", "plan", "watch", "unseen", "leave"}) {
        const auto n = std::count_if(list.machines.begin(), list.machines.end(),
                                     [&](const RoundMachine& m) { return m.urgency == urgency; });
        if (n > 0) counts.push_back(fmt::format("{} {}", n, urgency));
    }
    std::string text = fmt::format("Round {} to {}, {} machine{}", list.from, list.until,
                                   list.machines.size(), list.machines.size() == 1 ? "" : "s");
    if (!counts.empty()) text += ": " + joined(counts, ", ");
    return text;
}

constexpr const char* kListCaution =
    "Advice from measured data, not a permit to work. Before a guard comes off: isolate, lock and tag out, "
    "prove "
    "dead, mind stored energy. Site rules, local codes and licensed practice come first. Leave does not "
    "prove a "
    "machine sound.";

}  // namespace

std::string asText(const RoundList& list) {
    std::string out = paragraph(titleText(list), 0) + paragraph(promiseText(list), 0);
    for (const std::string& warning : list.warnings)
        out += paragraph("! " + warning, 0);
    for (const char* urgency : {"act", "plan", "watch", "unseen", "leave"})
        out += groupText(list, urgency);
    out += nodesText(list);
    return out + "\n" + paragraph(kListCaution, 0) + paragraph("engine " + list.engine, 0);
}

}  // namespace fettle
