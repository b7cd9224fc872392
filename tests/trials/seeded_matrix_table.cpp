#include "tests/trials/seeded_matrix_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <map>

#include "core/base/text.h"
#include "core/round/words.h"
#include "tests/trials/share.h"

namespace fettle::trials {

namespace {

// "driver" and "driver DE", "driver DE or NDE" and "driver NDE".
bool samePlace(const std::string& told, const std::string& at) {
    if (told.starts_with(at) || at.starts_with(told)) return true;
    const std::size_t either = told.find(" or ");
    if (either == std::string::npos) return false;
    const std::size_t space = told.rfind(' ', either - 1);
    return told.substr(0, space + 1) + told.substr(either + 4) == at || told.substr(0, either) == at;
}

// A coupling has two sides, and a point on either tells of it.
bool isThere(const RoundFinding& f, const Told& told) {
    return f.finding.fault == told.kind && (told.kind == "misalignment" || samePlace(f.finding.at, told.at));
}

bool isSpokenOf(const BlindSpot& spot, const Told& told) {
    const bool fault =
        spot.fault == told.kind ||
        (spot.fault == "bearing" && told.kind.starts_with("bearing_") && told.kind != "bearing_dry_or_worn");
    return fault && samePlace(spot.at, told.at);
}

bool isPossible(const RoundFinding& f) {
    return f.finding.sentence.find("ossible ") != std::string::npos;
}

struct Row {
    std::array<std::size_t, 4> count{}, hits{};
    std::array<std::size_t, 4> how{};  // of the upper severities, by Named
    std::size_t visible = 0, visibleMissed = 0, blind = 0, blindNamed = 0, unbased = 0,
                unbasedNamed = 0;  // of the upper ones
    std::map<std::string, std::size_t> tops;

    void add(const Told& told) {
        ++count[told.severity];
        hits[told.severity] += told.isNamed();
        if (!told.isUpper()) return;
        ++how[std::size_t(told.named)];
        const bool sees = told.blind.empty() && !told.unbased;
        (sees ? visible : told.blind.empty() ? unbased : blind) += 1;
        visibleMissed += sees && !told.isNamed();
        blindNamed += !told.blind.empty() && told.isNamed();
        unbasedNamed += told.blind.empty() && told.unbased && told.isNamed();
        ++tops[told.top];
    }
};

std::string changeText(const FollowedChange& one) {
    const std::string what = fmt::format("{} {} {}", one.name, one.point, one.channel);
    if (!one.week.change) return what + ": " + one.week.why;
    const Change& c = *one.week.change;
    return fmt::format("{}: {:.3g} to {:.3g} {}, {:.0f} decibans{}", what, c.was, c.now, one.unit,
                       c.weightDban, one.week.matters ? "" : ", does not matter");
}

// What the elements of its bearing weigh, before and after the stronger ones claimed their lines.
void addWeights(const Examination& week, Told& told) {
    if (!told.kind.starts_with("bearing_")) return;
    for (const Hypothesis& h : week.considered)
        if (h.weightDban && samePlace(h.at, told.at))
            told.changes.push_back(fmt::format("{} @ {}: {:.1f} decibans, before claims {:.1f}", h.fault,
                                               h.at, *h.weightDban,
                                               h.beforeClaimsDban.value_or(*h.weightDban)));
}

bool speaksFor(const FollowedChange& one, const Told& told) {
    constexpr const char* kShaft[] = {"unbalance", "misalignment", "looseness"};
    if (one.quantity == Followed::Measure && one.fault != "looseness") return one.fault == told.kind;
    return std::find(std::begin(kShaft), std::end(kShaft), told.kind) != std::end(kShaft);
}

std::string shareText(std::size_t hits, std::size_t n) {
    if (n == 0) return "-";
    const Interval i = shareInterval(double(hits), double(n));
    return fmt::format("{:.0f} ({:.0f}-{:.0f})", 100 * double(hits) / double(n), 100 * i.low, 100 * i.high);
}

using Rows = std::map<std::string, Row>;

Rows rowsBy(const std::vector<Told>& told, const std::function<std::string(const Told&)>& key) {
    Rows rows;
    for (const Told& one : told)
        if (!one.kind.empty()) rows[key(one)].add(one);
    for (const Told& one : told)
        if (!one.kind.empty()) rows["~ all"].add(one);
    return rows;
}

void printDetection(const char* title, const Rows& rows) {
    fmt::print("\n{:<24}  named, % (95 %), at severity {:<40}", title, "0.25, 0.5, 0.75, 1");
    fmt::print(
        "  upper two: outright possible otherwise nothing   visible missed                  blind named  no "
        "baseline\n");
    for (const auto& [name, row] : rows) {
        fmt::print("{:<24}", name);
        for (std::size_t s = 0; s < 4; ++s)
            fmt::print(" {:>15}", shareText(row.hits[s], row.count[s]));
        fmt::print("  {:>17} {:>8} {:>9} {:>7}", row.how[0], row.how[1], row.how[2], row.how[3]);
        fmt::print("   {:>7} {:>6} {:>14}", row.visible, row.visibleMissed,
                   shareText(row.visibleMissed, row.visible));
        fmt::print("   {:>5} {:>5} {:>12} {:>5}\n", row.blind, row.blindNamed, row.unbased, row.unbasedNamed);
    }
}

void printConfusion(const Rows& rows) {
    fmt::print("\nnamed on top at severity 0.75 and 1\n");
    for (const auto& [kind, row] : rows) {
        fmt::print("{:<24}", kind);
        std::vector<std::pair<std::size_t, std::string>> tops;
        for (const auto& [name, times] : row.tops)
            tops.emplace_back(times, name);
        std::sort(tops.rbegin(), tops.rend());
        for (const auto& [times, name] : tops)
            fmt::print("  {} {}", name, times);
        fmt::print("\n");
    }
}

void printSound(const std::vector<Told>& told) {
    std::size_t weeks = 0, listed = 0;
    std::map<std::string, std::size_t> names;
    for (const Told& one : told) {
        if (!one.kind.empty()) continue;
        ++weeks;
        listed += !one.findings.empty();
        for (const std::string& name : one.findings)
            ++names[name.substr(0, name.find(" @"))];
    }
    fmt::print("\n{} sound weeks: something named in {}, {} %\n", weeks, listed, shareText(listed, weeks));
    for (const auto& [name, times] : names)
        fmt::print("  {:>4} x {}\n", times, name);
}

void readFindings(const Verdict& verdict, Told& told) {
    for (const RoundFinding& f : verdict.findings) {
        const std::string fault = f.finding.fault.empty() ? "not named" : f.finding.fault;
        told.findings.push_back(fault + " @ " + f.finding.at);
        if (told.named == Named::Nothing) told.named = Named::Otherwise;
        if (!isThere(f, told)) continue;
        told.named = std::min(told.named, isPossible(f) ? Named::Possible : Named::Outright);
    }
    if (!told.findings.empty()) told.top = told.findings[0].substr(0, told.findings[0].find(" @"));
}

// An element of a bearing is weighed by itself and needs no baseline.
void readChanges(const std::vector<FollowedChange>& changes, Told& told) {
    bool any = false, based = false;
    for (const FollowedChange& one : changes) {
        if (!speaksFor(one, told)) continue;
        any = true;
        based |= one.week.change.has_value();
        told.changes.push_back(changeText(one));
    }
    const bool isElement = told.kind.starts_with("bearing_") && told.kind != "bearing_dry_or_worn";
    told.unbased = any && !based && !isElement;
}

// What could not be judged at all says why as well.
void readBlindSpots(const std::optional<Examination>& week, Told& told) {
    if (!week) {
        told.blind = "nothing could be weighed";
        return;
    }
    for (const BlindSpot& spot : week->blind)
        if (isSpokenOf(spot, told)) told.blind = spot.why;
    for (const Hypothesis& h : week->considered) {
        const bool same = h.fault == told.kind && samePlace(h.at, told.at);
        if (told.blind.empty() && same && !h.weightDban && h.recordingCount == 0) told.blind = h.why;
    }
}

}  // namespace

void read(const CellVerdict& said, Told& told) {
    readFindings(said.verdict, told);
    readChanges(said.week.changes, told);
    if (said.week.week) addWeights(*said.week.week, told);
    readBlindSpots(said.week.week, told);
}

void printMatrix(const std::vector<Told>& told) {
    const auto seeded =
        std::count_if(told.begin(), told.end(), [](const Told& one) { return !one.kind.empty(); });
    fmt::print(
        "{} weeks with a seeded fault, each after four sound weeks of the same machine, node and noise, as "
        "the "
        "round tells them.\nNamed: fault and place among the week's findings. Blind: said before by the "
        "blind "
        "spots; no baseline: said by the round,\nneither counts as visible. Shares in %, 95 % by Wilson.\n",
        seeded);
    const Rows kinds = rowsBy(told, [](const Told& one) { return one.kind; });
    printDetection("seeded", kinds);
    printConfusion(kinds);
    printDetection("kind of node", rowsBy(told, [](const Told& one) { return one.node; }));
    printDetection("noise of the sensor",
                   rowsBy(told, [](const Told& one) { return fmt::format("{:.0f} x its own", one.noise); }));
    printSound(told);
}

void printMissed(const std::vector<Told>& told, bool detail, bool all) {
    fmt::print("\nnot named at the two upper severities\n");
    for (const Told& one : told) {
        if (!all && (one.kind.empty() ? one.findings.empty() : !one.isUpper() || one.isNamed())) continue;
        fmt::print("{} {} {} {} x{:.0f} {:.2f}: {}{}\n", one.kind.empty() ? "sound" : one.kind, one.at,
                   one.machine, one.node, one.noise, kSeverities[one.severity], joined(one.findings, ", "),
                   one.blind.empty() ? one.unbased ? "; no baseline" : "" : "; BLIND " + one.blind);
        for (const std::string& change : one.changes)
            if (detail && one.blind.empty() && !one.unbased) fmt::print("      {}\n", change);
    }
}

}  // namespace fettle::trials
