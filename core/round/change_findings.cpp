#include "core/round/change_findings.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>

#include "core/diagnosis/fault_family.h"
#include "core/diagnosis/wording.h"
#include "core/round/change_groups.h"
#include "core/round/last_day.h"
#include "core/round/words.h"
#include "core/round/zone_findings.h"

namespace fettle {

namespace {

constexpr double kBesideShare = 0.3;  // of a cause told beside the likeliest
constexpr double kExplainsDban = 10;  // a bearing line that explains a raised high band
constexpr double kDevelopedDb = 12;   // a high band risen so far
constexpr double kHotKelvin = 20;     // a frame hotter by so much; common practice, no source
constexpr double kMostPower = 0.5;    // of a level
constexpr double kSwingsDban = 10;    // of the swing that parts cavitation from friction
constexpr const char* kProved = "simulation only";
constexpr const char* kDry = "bearing_dry_or_worn";

struct Context {
    const MachineWeek& week;
    const std::vector<Hypothesis>& hypotheses;
    const RoundSettings& settings;
    const UrgencyRule& rule;
    ZoneNote note;  // of the week's zone
};

std::string valueText(double value, const std::string& unit) {
    return fmt::format("{:.{}f} {}", value, value < 10 && unit != "K" && unit != "dB" ? 2 : 0, unit);
}

// "1x at M-DE x rose from 0.82 to 1.94 mm/s (+7.5 dB) since about 2026-05-12, near 1484 r/min: 33 decibans
// against a baseline of 42 days from ... to ..."
std::string changeWords(const ChangeGroup& group) {
    const FollowedChange& one = *group.strongest;
    const Change& c = *one.week.change;
    const bool decibels = one.quantity != Followed::TemperatureRise && one.unit != "dB";
    const std::string place = one.channel.empty() ? one.point : one.point + " " + one.channel;
    std::string text = fmt::format("{} at {} {} from {} to {}", one.name, place, c.up() ? "rose" : "fell",
                                   valueText(c.was, one.unit), valueText(c.now, one.unit));
    if (decibels) text += fmt::format(" ({:+.1f} dB)", c.step);
    if (one.week.since) text += " since about " + formatDate(startOfDay(*one.week.since));
    if (!one.week.condition.empty()) text += ", " + one.week.condition;
    return text + fmt::format(": {:.0f} decibans against a baseline of {}", group.weightDban,
                              one.week.baselineWords());
}

ChangeFacts factsOf(const FollowedChange& one) {
    const Change& c = *one.week.change;
    return {one.name,
            one.point,
            one.channel,
            one.direction,
            one.unit,
            c.was,
            c.now,
            c.step,
            one.week.baselineDays,
            one.week.baselineFrom,
            one.week.baselineTo,
            one.week.since,
            one.week.limits};
}

RoundFinding findingOf(const ChangeGroup& group, const std::string& fault, const std::string& at) {
    RoundFinding f;
    f.finding.fault = fault;
    f.finding.at = at;
    f.finding.weightDban = group.weightDban;
    f.finding.provedOn = kProved;
    f.finding.recordingCount = 1;
    f.persistence = group.strongest->week.change->persistence;
    f.finding.persistence = f.persistence;
    f.change = factsOf(*group.strongest);
    return f;
}

// Outside the list's promise: at least watched, and as urgent as zone or stage make it.
void grade(RoundFinding& f, const Severity& severity, const Context& context) {
    f.finding.severity = severity;
    const bool greyOnly = severity.kind == "zone" && context.note.greyOnly;
    f.finding.urgency = graverOf(context.rule.of(severity, context.week.criticality, greyOnly), "watch");
}

Severity zoneOf(const Context& context) {
    return zoneSeverity(context.week, context.settings, context.note.basis);
}

double addedPower(const Change& c) {
    return std::max(c.now * c.now - c.was * c.was, 0.0);
}

// A family's lines that rose and matter.
bool isFamilyRise(const FollowedChange& one) {
    return one.quantity == Followed::Measure && !isShaft(one) && one.unit == "mm/s" && one.week.change &&
           one.week.matters && one.week.change->up();
}

// Whether most of what was added to this level was added to the lines of families on the same channel.
bool isExplained(const ChangeGroup& level, const MachineWeek& week) {
    const FollowedChange& one = *level.strongest;
    if (one.quantity != Followed::Velocity || !one.week.change->up()) return false;
    double power = 0;
    for (const FollowedChange& other : week.changes)
        if (isFamilyRise(other) && other.point == one.point && other.channel == one.channel)
            power += addedPower(*other.week.change);
    return power >= kMostPower * addedPower(*one.week.change);
}

// A line says more than the level it is part of.
const ChangeGroup* strongestOf(const std::vector<ChangeGroup>& groups, double findingDban) {
    const auto rank = [](const ChangeGroup& group) {
        return std::pair(group.first().quantity != Followed::Velocity, group.weightDban);
    };
    const ChangeGroup* best = nullptr;
    for (const ChangeGroup& group : groups)
        if (isListed(group, findingDban) && (!best || rank(group) > rank(*best))) best = &group;
    return best;
}

RoundFinding fallen(const ChangeGroup& group, const Context& context) {
    RoundFinding f = findingOf(group, "sensor", group.strongest->at);
    f.finding.sentence =
        capitalised(changeWords(group)) +
        ". A fall is a cure that nobody entered, or a node that lost its grip: look at both.";
    grade(f, zoneOf(context), context);
    return f;
}

std::string causeWords(const CauseTable& table, const CauseShares& shares, std::size_t c) {
    const Cause& cause = table.causes()[c];
    return fmt::format("{}{}, share {:.2f} of the causes of raised shaft vibration; {}",
                       cause.neverNamed || shares.shares[c] < 0.5 ? "possible " : "most like ", cause.name,
                       shares.shares[c], cause.test);
}

void addCauses(const ChangeGroup& lead, const std::vector<ChangeGroup>& groups, const Context& context,
               std::vector<RoundFinding>& findings) {
    const auto table = CauseTable::load();
    std::vector<CauseFeature> features = addedPattern(groups);
    const std::string at = componentOf(lead.strongest->at);
    if (!table || features.empty()) {
        findings.push_back(findingOf(lead, "", at));
        findings.back().finding.sentence = capitalised(changeWords(lead)) + "; its cause is not named.";
    } else {
        features.insert(features.end(), context.week.dependences.begin(), context.week.dependences.end());
        const CauseShares shares = table->sharesOf(features);
        const double least = std::min(kBesideShare, shares.shares[shares.largest()]);
        for (std::size_t c = 0; c < shares.shares.size(); ++c) {
            if (shares.shares[c] < least) continue;
            RoundFinding f = findingOf(lead, table->causes()[c].fault, at);
            f.causeShare = f.finding.causeShare = shares.shares[c];
            f.finding.sentence = capitalised(changeWords(lead)) +
                                 ". By what was added: " + causeWords(*table, shares, c) + ".";
            findings.push_back(std::move(f));
        }
    }
}

// The shaft's lines of one component.
void addShaft(const ChangeGroup& lead, const std::vector<ChangeGroup>& groups, const Context& context,
              std::vector<RoundFinding>& findings) {
    if (!lead.rises()) {
        findings.push_back(fallen(lead, context));
        return;
    }
    const std::size_t first = findings.size();
    addCauses(lead, groups, context, findings);
    for (std::size_t i = first; i < findings.size(); ++i) {
        grade(findings[i], zoneOf(context), context);
        addGrowth(findings[i], context.week, lastDayOf(context.settings));
    }
}

bool bearingExplains(const Context& context, const std::string& at) {
    return std::any_of(context.hypotheses.begin(), context.hypotheses.end(), [&](const Hypothesis& h) {
        return h.fault.starts_with("bearing_") && h.weightDban.value_or(0) >= kExplainsDban &&
               componentOf(h.at) == componentOf(at);
    });
}

RoundFinding* knownAt(std::vector<RoundFinding>& findings, const std::string& fault, const std::string& at) {
    const auto found = std::find_if(findings.begin(), findings.end(), [&](const RoundFinding& f) {
        return f.finding.fault == fault && componentOf(f.finding.at) == componentOf(at);
    });
    return found == findings.end() ? nullptr : &*found;
}

// On a pump whose noise is not followed against its blades a cavitating one cannot be told from a dry
// bearing.
bool mayCavitate(const Context& context, const std::string& at) {
    const auto followed = std::any_of(
        context.week.changes.begin(), context.week.changes.end(),
        [&](const FollowedChange& one) { return one.fault == "cavitation" && one.name == kBladeSwing; });
    return !followed &&
           std::any_of(context.hypotheses.begin(), context.hypotheses.end(), [&](const Hypothesis& h) {
               return h.fault == "cavitation" && componentOf(h.at) == componentOf(at);
           });
}

void addHighBand(const ChangeGroup& group, const Context& context, std::vector<RoundFinding>& findings) {
    const std::string& at = group.strongest->at;
    if (!group.rises() || bearingExplains(context, at) || knownAt(findings, "cavitation", at)) return;
    if (knownAt(findings, kDry, at)) return;
    RoundFinding f = findingOf(group, kDry, at);
    const Change& c = *group.strongest->week.change;
    grade(f,
          {"stage",
           c.step >= kDevelopedDb ? "developed" : "early",
           c.now,
           {},
           group.strongest->unit,
           "high band against own baseline"},
          context);
    f.finding.sentence =
        capitalised(changeWords(group)) +
        ", and no bearing line stands out: the bearing runs dry or is worn; which part of it is not said. "
        "Grease it with the right amount: a band that stays low for weeks was dry, one back in hours is "
        "damaged.";
    if (mayCavitate(context, at))
        f.finding.sentence +=
            " A cavitating pump raises the same band and cannot be told from it by this sensor: look at the "
            "suction pressure first.";
    findings.push_back(std::move(f));
}

void addHeat(const ChangeGroup& group, const Context& context, std::vector<RoundFinding>& findings) {
    if (!group.rises()) return;
    if (RoundFinding* dry = knownAt(findings, kDry, group.strongest->at)) {
        dry->finding.sentence += " It heats the frame: " + changeWords(group) + ".";
        return;
    }
    const Change& c = *group.strongest->week.change;
    RoundFinding f = findingOf(group, "overheating", componentOf(group.strongest->at));
    grade(f,
          {"kelvin", c.step >= kHotKelvin ? "high" : "raised", c.now, {}, "K", "own baseline at like load"},
          context);
    f.finding.sentence = capitalised(changeWords(group)) +
                         ". Look for dirt on fins and filter, a rubbing or missing fan, load, supply and "
                         "grease. The winding is hotter than the frame and is not judged by it.";
    findings.push_back(std::move(f));
}

// The pump's noise rose without swinging with its blades, though that is followed: then it is a bearing's.
bool isFriction(const std::vector<ChangeGroup>& groups) {
    bool followed = false, swings = false;
    for (const ChangeGroup& group : groups) {
        if (group.first().fault != "cavitation" || group.first().name != kBladeSwing) continue;
        followed = true;
        for (const FollowedChange* one : group.members)
            swings |= one->week.change->up() && group.weightDban >= kSwingsDban;
    }
    return followed && !swings;
}

void addFamily(const ChangeGroup& lead, const Context& context, std::vector<RoundFinding>& findings) {
    if (!lead.rises()) return;
    RoundFinding f = findingOf(lead, lead.strongest->fault, lead.strongest->at);
    f.finding.sentence = fmt::format("{}. Possible {} by the change of its lines",
                                     capitalised(changeWords(lead)), faultName(f.finding.fault));
    if (const FaultFamily* family = faultFamily(f.finding.fault))
        f.finding.sentence += fmt::format("; what draws the same: {}; {}", family->rivals, family->test);
    f.finding.sentence += ".";
    grade(f, zoneOf(context), context);
    findings.push_back(std::move(f));
}

// What belongs to one question: a component's shaft, a family at its place, a band, a temperature. In the
// order in which they are judged: what explains others comes first.
enum class Question { Shaft, Family, Band, Heat };
using Key = std::tuple<Question, std::string, std::string>;

Key keyOf(const FollowedChange& one) {
    if (isShaft(one)) return {Question::Shaft, componentOf(one.at), ""};
    if (one.quantity == Followed::TemperatureRise) return {Question::Heat, one.at, ""};
    if (one.quantity == Followed::HighBand || one.fault == kDry) return {Question::Band, one.at, ""};
    return {Question::Family, one.at, one.fault};
}

}  // namespace

std::vector<RoundFinding> changeFindings(const MachineWeek& week, const std::vector<Hypothesis>& hypotheses,
                                         const RoundSettings& settings, const UrgencyRule& rule) {
    const Context context{week, hypotheses, settings, rule, zoneNoteOf(week)};
    std::map<Key, std::vector<ChangeGroup>> questions;
    for (ChangeGroup& group : changeGroups(week.changes))
        questions[keyOf(group.first())].push_back(std::move(group));
    std::vector<RoundFinding> findings;
    for (const auto& [key, groups] : questions) {
        const Question question = std::get<0>(key);
        const ChangeGroup* lead = strongestOf(groups, settings.findingDban);
        if (!lead || isExplained(*lead, week)) continue;
        if (question == Question::Shaft) addShaft(*lead, groups, context, findings);
        if (question == Question::Family && !isFriction(groups)) addFamily(*lead, context, findings);
        if (question == Question::Band) addHighBand(*lead, context, findings);
        if (question == Question::Heat) addHeat(*lead, context, findings);
    }
    return findings;
}

std::string baselineWords(const MachineWeek& week) {
    std::map<std::string, int> counts;
    for (const FollowedChange& one : week.changes)
        ++counts[one.week.baselineWords()];
    const auto most = std::max_element(counts.begin(), counts.end(),
                                       [](const auto& a, const auto& b) { return a.second < b.second; });
    return most == counts.end() ? "" : most->first;
}

}  // namespace fettle
