#include "core/diagnosis/shaft_faults.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/diagnosis/cause_pattern.h"
#include "core/diagnosis/cause_table.h"

namespace fettle {

namespace {

constexpr double kBesideShare = 0.3;   // of a cause told beside the likeliest
constexpr double kOthersAtMost = 0.5;  // of the level's power, or the level is no matter of the shaft

bool isLoud(const ShaftPattern& pattern) {
    return pattern.worst && pattern.zone.zone >= "C" && pattern.othersShare < kOthersAtMost;
}

std::string levelWords(const ShaftPattern& p) {
    return fmt::format("{:.1f} mm/s is zone {} ({}{})", p.overall, p.zone.zone, p.zone.basis,
                       p.zone.indicative ? ", indicative" : "");
}

std::string patternWords(const ShaftPattern& p) {
    std::string words = fmt::format("radial 1x is {:.1f} mm/s, 2x {:.1f} mm/s, overall {:.1f} mm/s",
                                    p.radial1, p.radial2, p.overall);
    if (p.axial1 > 0) words += fmt::format(", axial 1x {:.1f} mm/s", p.axial1);
    if (p.high > 0)
        words +=
            fmt::format("; {} of the shaft orders 4 to 10 {} out", p.high, p.high == 1 ? "stands" : "stand");
    if (p.half > 0) words += "; half orders stand out";
    return words;
}

std::string shareWords(double share) {
    return fmt::format("share {:.2f} of the causes of raised shaft vibration", share);
}

std::string whyNotNamed(const ShaftPattern& pattern, double share) {
    if (!pattern.worst) return "no baseline, and no limit applies to this point";
    if (pattern.othersShare >= kOthersAtMost)
        return "no baseline; most of the level is lines of blades, belt, mesh or mains";
    if (!isLoud(pattern))
        return fmt::format("no baseline; zone {} by {}", pattern.zone.zone, pattern.zone.basis);
    return fmt::format("no baseline; zone {}, but others fit better ({}; {})", pattern.zone.zone,
                       shareWords(share), patternWords(pattern));
}

std::vector<CauseNote> notesOf(const CauseShares& shares, std::size_t cause) {
    std::vector<CauseNote> notes;
    for (const CauseRow& row : shares.rows)
        notes.push_back({row.words, row.unit, row.value, row.dban[cause]});
    return notes;
}

void name(Hypothesis& h, const Cause& cause, const ShaftPattern& pattern, const CauseShares& shares,
          std::size_t c) {
    h.severity = {"zone", pattern.zone.zone, pattern.overall, pattern.zone.limit, "mm/s", pattern.zone.basis};
    h.why = "possible: no baseline, one recording cannot say more";
    h.sentence =
        fmt::format("Possible {}, {}: {}; {}. No baseline yet; {}.", cause.name, shareWords(shares.shares[c]),
                    levelWords(pattern), patternWords(pattern), cause.test);
    h.causeNotes = notesOf(shares, c);
}

bool isTurning(const PreparedRecording& prepared) {
    return prepared.facts.running == "running" && prepared.facts.speed.rpm;
}

// The program's own table is damaged: nothing is named, and why is said.
std::vector<Hypothesis> withoutTable(const std::string& why) {
    std::vector<Hypothesis> all;
    for (const char* fault : {"unbalance", "misalignment", "looseness"}) {
        Hypothesis h;
        h.fault = fault;
        h.at = "driver";
        h.why = why;
        all.push_back(std::move(h));
    }
    return all;
}

}  // namespace

std::vector<Hypothesis> shaftFaults(const Machine& machine, const PreparedRecording& prepared) {
    const auto table = CauseTable::load();
    if (!table) return withoutTable(table.error().sentence());
    const ShaftPattern pattern = shaftPattern(machine, prepared);
    const CauseShares shares = table->sharesOf(pattern.features);
    const bool judged = isTurning(prepared) && !pattern.features.empty();
    const double most = shares.shares[shares.largest()];
    std::vector<Hypothesis> all;
    for (std::size_t c = 0; c < table->causes().size(); ++c) {
        const double share = shares.shares[c];
        Hypothesis h;
        h.fault = table->causes()[c].fault;
        h.at = pattern.at;
        h.provedOn = "simulation only";
        h.recordingCount = 1;
        if (judged) h.causeShare = share;
        if (!judged)
            h.why = fmt::format("running state {}: shaft orders not judged", prepared.facts.running);
        else if (!isLoud(pattern) || share < std::min(most, kBesideShare))
            h.why = whyNotNamed(pattern, share);
        else
            name(h, table->causes()[c], pattern, shares, c);
        all.push_back(std::move(h));
    }
    return all;
}

std::vector<BlindSpot> shaftBlindSpots(const Machine& machine) {
    const bool hasPoint = std::any_of(machine.points.begin(), machine.points.end(),
                                      [](const Point& point) { return point.at.starts_with("driver"); });
    std::vector<BlindSpot> spots;
    if (hasPoint) return spots;
    for (const char* fault : {"unbalance", "looseness"})
        spots.push_back({fault, "driver",
                         "no point on the motor: its shaft's lines are told at the machine that is measured",
                         "a sensor on the motor"});
    return spots;
}

std::vector<FaultMeasure> shaftMeasures(const Machine& machine, const PreparedRecording& prepared) {
    if (!isTurning(prepared)) return {};
    const ShaftPattern pattern = shaftPattern(machine, prepared);
    const OwnOrders own = ownOrders(machine);
    std::vector<FaultMeasure> measures;
    for (const ShaftLines& lines : pattern.channels) {
        measures.push_back(
            {"looseness", pattern.at, highOrdersName(own), "mm/s", lines.channel, lines.highMmS()});
        measures.push_back(
            {"looseness", pattern.at, halfOrdersName(own), "mm/s", lines.channel, lines.halfMmS()});
    }
    return measures;
}

}  // namespace fettle
