#include "core/exchange/examination_text.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/text.h"
#include "core/diagnosis/blind_rows.h"
#include "core/diagnosis/wording.h"
#include "core/exchange/arithmetic.h"
#include "core/machine/path.h"

namespace fettle {

namespace {

constexpr std::size_t kWidth = 108;
constexpr std::size_t kMostOthers = 8;

std::string rule(const std::string& title) {
    std::string line = title + " ";
    while (line.size() < kWidth)
        line += '-';
    return "\n" + line + "\n";
}

// Words broken into lines of kWidth with an indent on every line after the first.
std::string wrapped(const std::string& text, std::size_t indent) {
    const std::string line = oneLine(text);
    std::string out;
    std::size_t column = indent;
    for (const std::string_view word : split(line, ' ')) {
        if (word.empty()) continue;
        if (column > indent && column + 1 + word.size() > kWidth) {
            out += "\n" + std::string(indent, ' ');
            column = indent;
        } else if (column > indent) {
            out += ' ';
            ++column;
        }
        out += word;
        column += word.size();
    }
    return out;
}

std::string item(const std::string& text) {
    return "  - " + wrapped(text, 4) + "\n";
}

std::string speedText(const SpeedResult& speed) {
    if (!speed.rpm) return "speed unknown: " + speed.from;
    std::string text = fmt::format("{:.1f} +- {:.1f} r/min ({}", *speed.rpm, speed.plusMinusRpm, speed.from);
    if (speed.givenRpm && speed.from != "given") text += fmt::format("; given {:g}", *speed.givenRpm);
    return text + ")";
}

std::string zoneText(const ChannelLevels& level) {
    if (level.zones.empty()) return level.noZoneWhy.empty() ? "" : "no zone: " + level.noZoneWhy;
    std::string text;
    for (const ZoneNote& z : level.zones) {
        if (!text.empty()) text += "; ";
        text += fmt::format("{} by {}{}{}", z.zone, z.basis, z.indicative ? ", indicative" : "",
                            z.greyOnly ? ", a note only" : "");
    }
    return text;
}

std::string optionalText(const std::optional<double>& value, int decimals) {
    return value ? fmt::format("{:.{}f}", *value, decimals) : "-";
}

std::string recordingText(const RecordingFacts& r) {
    std::string out = wrapped(r.file, 2) + "\n";
    const double seconds =
        r.channels.empty() ? 0 : double(r.channels[0].samples) / r.channels[0].sampleRateHz;
    out += "  " + wrapped(fmt::format("{:.2f} s, {}; {}", seconds, r.running, speedText(r.speed)), 2) + "\n";
    out += fmt::format("  {:<10}{:<8}{:>10}  {:>11}  {:>10}  {:>6}  {:>9}  {}\n", "channel", "point",
                       "rate Hz", "mm/s r.m.s.", "g r.m.s.", "crest", "kurtosis", "zone");
    for (std::size_t i = 0; i < r.levels.size(); ++i) {
        const ChannelLevels& l = r.levels[i];
        out += fmt::format("  {:<10}{:<8}{:>10g}  {:>11}  {:>10}  {:>6.1f}  {:>9.1f}  ",
                           oneLine(l.channel, 24), oneLine(r.channels[i].point, 24),
                           r.channels[i].sampleRateHz, optionalText(l.velocityRmsMmS, 2),
                           optionalText(l.accelerationRmsG, 3), l.crestFactor, l.kurtosis);
        out += wrapped(zoneText(l), 78) + "\n";
    }
    for (const QualityNote& q : r.quality)
        out += "  ! " + wrapped(fmt::format("{}: {} ({})", q.channel, q.detail, q.code), 4) + "\n";
    return out;
}

std::string lineText(const LineRow& row, double printed) {
    const std::string head = fmt::format("     {:<24}{:>8.3f}{:>11.2f}", row.name, row.order, row.expectedHz);
    if (row.state == LineState::LeftOut) return head + fmt::format("{:>49.1f}  left out: {}\n", 0.0, row.why);
    return head + fmt::format("{:>11.2f}{:>10.1f}{:>11.2g}{:>6.2f}{:>11.1f}  {}\n", row.foundHz,
                              row.aboveFloorDb, row.rankP, row.w, printed, toText(row.state));
}

std::string arithmetic(const Hypothesis& h) {
    std::string out = fmt::format("     {:<24}{:>8}{:>11}{:>11}{:>10}{:>11}{:>6}{:>11}\n", "line", "order",
                                  "expected", "found Hz", "dB over", "rank p", "w", "decibans");
    for (const ArithmeticRow& row : arithmeticOf(h)) {
        if (row.kind == ArithmeticRow::Kind::Weight) out += "     " + std::string(92, '-') + "\n";
        out += row.line ? lineText(*row.line, row.printed)
                        : fmt::format("     {:<24}{:>68.1f}\n", row.name, row.printed);
    }
    return out;
}

std::string findingText(const Hypothesis& h, std::size_t number, std::size_t recordings) {
    const std::string mark = fmt::format("{}. ", number);
    std::string out = mark + wrapped(h.sentence, mark.size()) + "\n";
    std::vector<std::string> facts = {"urgency " + h.urgency, "proved on " + h.provedOn};
    if (h.weightDban) {
        facts.push_back(h.best.view);
        facts.push_back(fmt::format("cage shift {:+.2f} %", h.best.cageShift * 100));
        if (!h.best.variant.empty()) facts.push_back(h.best.variant);
        if (recordings > 1) facts.push_back(fmt::format("lines of recording {}", h.recording + 1));
    }
    out += "   " + wrapped(joined(facts, "; "), 3) + "\n";
    if (h.weightDban) out += "\n" + arithmetic(h) + "\n";
    for (const Rival& r : h.rivals)
        out += "   rival: " +
               wrapped(fmt::format("{} at {}, {:.0f} decibans before claims: {}", faultName(r.fault), r.at,
                                   r.weightDban, r.lines),
                       10) +
               "\n";
    for (const std::string& a : h.against)
        out += "   against: " + wrapped(a, 12) + "\n";
    return out;
}

std::string othersText(const Examination& e) {
    std::vector<const Hypothesis*> others;
    for (const Hypothesis& h : e.considered) {
        const bool named = std::any_of(e.findings.begin(), e.findings.end(), [&](const Hypothesis& f) {
            return f.fault == h.fault && f.at == h.at;
        });
        if (!named) others.push_back(&h);
    }
    std::stable_sort(others.begin(), others.end(),
                     [](const Hypothesis* a, const Hypothesis* b) { return a->weightDban > b->weightDban; });
    std::string out;
    for (std::size_t i = 0; i < others.size(); ++i) {
        const Hypothesis& h = *others[i];
        if (h.weightDban && i >= kMostOthers) continue;
        std::string text = fmt::format("{} at {}: ", faultName(h.fault), h.at);
        if (h.weightDban) {
            text += fmt::format("{:.1f} decibans", *h.weightDban);
            if (*h.beforeClaimsDban - *h.weightDban > 1)
                text +=
                    fmt::format(", {:.1f} before stronger faults claimed their lines", *h.beforeClaimsDban);
        } else {
            text += h.why;
        }
        const std::string way = pathWords(h.path);
        if (!way.empty() && text.find(way) == std::string::npos) text += "; heard " + way;
        out += item(text);
    }
    return out;
}

std::string blindText(const BlindRow& row) {
    const std::string what = blindWhat(row);
    std::string text = what.empty() ? row.why : what + ": " + row.why;
    if (!row.cure.empty()) text += "; cure: " + row.cure;
    return item(text);
}

std::string verdictText(const Examination& e) {
    const bool weighed = std::any_of(e.considered.begin(), e.considered.end(),
                                     [](const Hypothesis& h) { return h.weightDban.has_value(); });
    if (!weighed) return "Nothing could be weighed; see the blind spots below.\n";
    const auto best = std::max_element(
        e.considered.begin(), e.considered.end(),
        [](const Hypothesis& a, const Hypothesis& b) { return a.weightDban < b.weightDban; });
    return wrapped(fmt::format("No finding. The best chance fit is a {} of the {} bearing with {:.1f} "
                               "decibans; a finding "
                               "needs 20. This does not prove the machine sound: see the blind spots.",
                               faultName(best->fault), best->at, *best->weightDban),
                   0) +
           "\n";
}

std::string noConcernText(const Machine& machine, const Examination& e) {
    std::vector<std::string> names;
    for (const FaultSight& sight : faultSights(machine, e))
        if (sight.state == FaultSight::State::NoConcern) names.push_back(faultName(sight.fault));
    return names.empty() ? "" : item("does not concern this machine: " + joined(names, ", "));
}

constexpr const char* kCaution =
    "Advice from measured data, not a permit to work. Before a guard comes off: isolate, lock and tag out, "
    "prove dead, mind "
    "stored energy. Site rules, local codes and licensed practice come first.";

}  // namespace

std::string asText(const Examination& e, const Machine* machine) {
    std::string out = oneLine(e.machine, 80);
    if (!e.service.empty()) out += "  " + oneLine(e.service, 80);
    out += fmt::format("\n{} recording{} examined; engine {}\n", e.recordings.size(),
                       e.recordings.size() == 1 ? "" : "s", e.engine);
    out += rule("Verdict");
    if (e.findings.empty()) out += verdictText(e);
    for (std::size_t i = 0; i < e.findings.size(); ++i)
        out += (i ? "\n" : "") + findingText(e.findings[i], i + 1, e.recordings.size());
    out += rule("Recordings");
    for (const RecordingFacts& r : e.recordings)
        out += recordingText(r);
    out += rule("Considered and not found");
    out += othersText(e);
    out += rule("Blind spots");
    if (e.blind.empty()) out += "  none known\n";
    for (const BlindRow& row : blindRows(e.blind))
        out += blindText(row);
    if (machine) out += noConcernText(*machine, e);
    for (const std::string& w : e.warnings)
        out += item(w);
    return out + "\n" + wrapped(kCaution, 0) + "\n";
}

}  // namespace fettle
