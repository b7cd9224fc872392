#include "core/fleet/what_would_change.h"

#include <algorithm>
#include <cmath>

#include "core/diagnosis/blind_spots.h"
#include "core/diagnosis/family.h"
#include "core/diagnosis/rotor_bar_limits.h"
#include "core/diagnosis/stage.h"
#include "core/machine/path.h"
#include "core/machine/severity_limits.h"

namespace fettle {

namespace {

constexpr double kMostSlip = 0.012;     // of the cage: what bearingAgainst calls unusual from there on
constexpr double kMostPositions = 1e5;  // no view has more

double dbanOf(double e) {
    return 10 * std::log10(e);
}

double eOf(double dban) {
    return std::pow(10.0, dban / 10);
}

// An absent line's own e-value: rank p of 1.
double absentDban(double w, const WeighingSettings& settings) {
    return dbanOf(1 - w + w * settings.kappa);
}

void addLines(const Hypothesis& h, const WeighingSettings& settings, WhatWouldChange& change) {
    for (const LineRow& row : h.best.rows) {
        if (row.state != LineState::Found) continue;
        const double without = *h.weightDban - row.weightDban;
        change.lines.push_back({row.name, row.weightDban, without, without + absentDban(row.w, settings)});
    }
    std::stable_sort(change.lines.begin(), change.lines.end(),
                     [](const LineLoss& a, const LineLoss& b) { return a.dban > b.dban; });
    double left = *h.weightDban;
    for (std::size_t i = 0; i < change.lines.size() && left >= settings.findingDban; ++i) {
        left -= change.lines[i].dban;
        if (left < settings.findingDban) change.linesToLose = i + 1;
    }
}

// f(p) = kappa p^(kappa - 1) turned round; e = 1 - w + w f.
std::optional<double> oneInFor(double dban, double w, const WeighingSettings& settings) {
    const double f = (eOf(dban) - (1 - w)) / w;
    if (!(f > settings.kappa)) return 1.0;
    const double p = std::pow(f / settings.kappa, 1 / (settings.kappa - 1));
    if (1 / p > kMostPositions) return std::nullopt;
    return 1 / p;
}

void addGain(const Hypothesis& h, const WeighingSettings& settings, WhatWouldChange& change) {
    const double missing = settings.findingDban - *h.weightDban;
    if (missing <= 0) return;
    const LineRow* best = nullptr;
    for (const LineRow& row : h.best.rows)
        if (row.state == LineState::Absent && row.w > 0 && (!best || row.w > best->w)) best = &row;
    if (!best) return;
    change.gain = LineGain{best->name, missing, oneInFor(best->weightDban + missing, best->w, settings)};
}

// A bearing of nobody's description is never called late: it may be another machine's.
bool hasNextStage(const Hypothesis& h) {
    if (h.severity.kind != "stage" || !h.weightDban) return false;
    if (h.severity.value == "early") return faultsMeet(h.fault, "bearing") || h.fault == "bearing_unknown";
    return h.severity.value == "developed" && faultsMeet(h.fault, "bearing");
}

void addStage(const Machine& machine, const Hypothesis& h, const UrgencyTable& urgency,
              WhatWouldChange& change) {
    if (!hasNextStage(h)) return;
    StageStep step;
    step.value = h.severity.value == "early" ? "developed" : "late";
    step.urgency = urgency.urgencyOf({"stage", step.value, {}, {}, "", ""}, machine.criticality);
    if (step.value == "late") {
        step.velocityLines = kLateLines;
    } else {
        int carriers = 0, sidebands = 0;
        for (const LineRow& row : h.best.rows)
            if (row.state == LineState::Found) ++(row.carrier ? carriers : sidebands);
        step.carriers = std::max(0, kDevelopedCarriers - carriers);
        step.sidebands = std::max(0, kDevelopedSidebands - sidebands);
        if (step.carriers + step.sidebands == 0) return;
    }
    change.stage = step;
}

// Boundaries of the set that graded it, at the point that did.
std::optional<ZoneLimits> limitsOf(const Machine& machine, const Examination& examination,
                                   const Hypothesis& h) {
    if (h.recording >= examination.recordings.size()) return std::nullopt;
    for (const ChannelFacts& channel : examination.recordings[h.recording].channels) {
        const Point* point = machine.pointById(channel.point);
        if (!point) continue;
        const auto limits = limitsFor(machine, *point);
        if (!limits) continue;
        for (const ZoneLimits& set : limits->sets)
            if (set.basis == h.severity.basis) return set;
    }
    return std::nullopt;
}

void addZones(const Machine& machine, const Examination& examination, const Hypothesis& h,
              const UrgencyTable& urgency, WhatWouldChange& change) {
    const auto set = limitsOf(machine, examination, h);
    if (!set || !h.severity.level) return;
    const int zone = int(zoneOf(*h.severity.level, *set));
    const auto step = [&](int to, double level) {
        const std::string value = toText(Zone(to));
        const std::string then =
            urgency.urgencyOf({"zone", value, {}, {}, "", ""}, machine.criticality, set->greyOnly);
        change.levels.push_back({value, then, level, *h.severity.level, h.severity.unit, to > zone});
    };
    if (zone < int(Zone::D)) step(zone + 1, set->velocity[zone]);
    if (zone > int(Zone::A)) step(zone - 1, set->velocity[zone - 1]);
}

// Rows stand from grave to light, in dB below the carrier: less is worse.
void addBarSteps(const Machine& machine, const Hypothesis& h, const UrgencyTable& urgency,
                 WhatWouldChange& change) {
    const auto limits = RotorBarLimits::load();
    if (!limits || !h.severity.level) return;
    auto rows = limits->rows;
    std::sort(rows.begin(), rows.end(), [](const auto& a, const auto& b) { return a.belowDb < b.belowDb; });
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows[i].value != h.severity.value) continue;
        const auto urgencyOf = [&](const std::string& value) {
            return urgency.urgencyOf({"db_below_carrier", value, {}, {}, "", ""}, machine.criticality);
        };
        if (i > 0)
            change.levels.push_back({rows[i - 1].value, urgencyOf(rows[i - 1].value), rows[i - 1].belowDb,
                                     *h.severity.level, h.severity.unit, true});
        const std::string lighter = i + 1 < rows.size() ? rows[i + 1].value : std::string();
        change.levels.push_back({lighter, lighter.empty() ? "leave" : urgencyOf(lighter), rows[i].belowDb,
                                 *h.severity.level, h.severity.unit, false});
    }
}

// Expected ratio of cage to shaft.
std::optional<double> cageRatio(const Machine& machine, const Hypothesis& h) {
    const std::vector<std::string> places = placesIn(h.at);
    for (const BearingPlace& place : machine.bearings) {
        if (std::find(places.begin(), places.end(), place.at) == places.end()) continue;
        for (const BearingVariant& variant : place.bearing.variants)
            if (h.best.variant.empty() || h.best.variant.starts_with(variant.name) ||
                place.bearing.variants.size() == 1)
                return variant.orders.ftf;
    }
    return std::nullopt;
}

// Relative errors of the speed that turn the fitted cage shift into +- kMostSlip. Outer race and cage lines
// go with phi (1 + c), inner race lines with 1 - phi (1 + c); what was measured, speed x order, stays.
std::optional<std::pair<double, double>> speedErrors(const Machine& machine, const Hypothesis& h) {
    const double c = h.best.cageShift;
    std::pair<double, double> errors;
    if (h.fault == faultKey(BearingElement::OuterRace) || h.fault == faultKey(BearingElement::Cage)) {
        errors = {(1 + c) / (1 + kMostSlip) - 1, (1 + c) / (1 - kMostSlip) - 1};
    } else if (h.fault == faultKey(BearingElement::InnerRace)) {
        const auto phi = cageRatio(machine, h);
        if (!phi) return std::nullopt;
        const double now = 1 - *phi * (1 + c);
        errors = {now / (1 - *phi * (1 - kMostSlip)) - 1, now / (1 - *phi * (1 + kMostSlip)) - 1};
    } else {
        return std::nullopt;
    }
    return errors;
}

void addSpeed(const Machine& machine, const Examination& examination, const Hypothesis& h,
              WhatWouldChange& change) {
    if (h.recording >= examination.recordings.size()) return;
    const SpeedResult& speed = examination.recordings[h.recording].speed;
    const auto errors = speedErrors(machine, h);
    if (!speed.rpm || !errors) return;
    change.speed = SpeedReach{errors->first, errors->second, speed.plusMinusRpm / *speed.rpm};
}

// The mean over n recordings with the strongest taken out of it.
void addWithoutStrongest(const Hypothesis& h, WhatWouldChange& change) {
    if (h.recordingCount < 2) return;
    const double n = double(h.recordingCount);
    const double left = (n * eOf(*h.weightDban) - eOf(*h.weightDban - h.meanDban)) / (n - 1);
    if (left > 0) change.withoutStrongest = dbanOf(left);
}

}  // namespace

WhatWouldChange whatWouldChange(const Machine& machine, const Examination& examination,
                                const Hypothesis& hypothesis, const UrgencyTable& urgency,
                                const WeighingSettings& settings) {
    WhatWouldChange change;
    change.weightDban = hypothesis.weightDban;
    change.findingDban = settings.findingDban;
    if (hypothesis.weightDban) {
        addLines(hypothesis, settings, change);
        addGain(hypothesis, settings, change);
        addSpeed(machine, examination, hypothesis, change);
        addWithoutStrongest(hypothesis, change);
    }
    addStage(machine, hypothesis, urgency, change);
    if (hypothesis.severity.kind == "zone") addZones(machine, examination, hypothesis, urgency, change);
    if (hypothesis.severity.kind == "db_below_carrier") addBarSteps(machine, hypothesis, urgency, change);
    return change;
}

}  // namespace fettle
