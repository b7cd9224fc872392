#include "core/fleet/sheet_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <regex>

#include "core/diagnosis/wording.h"
#include "core/fleet/site_calendar.h"
#include "core/round/words.h"

namespace fettle {

namespace {

constexpr std::size_t kRecordFrom = 20;  // answers, before a site's record is a number
constexpr double kSteadyShare = 0.02;
constexpr double kTripShare = 1.25;   // of C/D
constexpr double kCuredShare = 1.25;  // of A/B; common practice, no source

// To a tenth, as it is printed: what reads alike is alike.
double asPrinted(double level) {
    return std::round(level * 10) / 10;
}

std::string componentWords(const Machine& machine, const std::string& component) {
    if (component == "driver") return "motor";
    if (component == "driven") return machine.driven.kind.empty() ? "driven machine" : machine.driven.kind;
    for (const Gear& gear : machine.gears)
        if (gear.id == component) return "gear " + component;
    for (const Belt& belt : machine.belts)
        if (belt.id == component) return "belt drive " + component;
    return component;
}

// Only a bearing's lines are told of; what was graded by something else says by what.
std::string stageWords(const Hypothesis& finding) {
    const std::string& stage = finding.severity.value;
    if (!finding.severity.basis.empty()) return stage + " stage: " + finding.severity.basis;
    if (!finding.fault.starts_with("bearing_")) return stage + " stage";
    if (stage == "late") return "late stage: its lines stand in the velocity spectrum too";
    if (stage == "developed") return "developed stage: harmonics with sidebands";
    return "early stage: lines in the envelope only";
}

// Bars are graded by their sidebands: a low velocity says nothing of them.
std::string barsWords(const SheetCase& sheet, const std::string& level) {
    const Severity& severity = sheet.told.finding.severity;
    std::string words = fmt::format("The lower sideband of the mains stands {:.0f} dB below it in flux: {}",
                                    severity.level.value_or(0), severity.value);
    if (severity.limit)
        words += fmt::format(", the mark for that is {:.0f} dB ({})", *severity.limit, severity.basis);
    return words + fmt::format(". With criticality {} that is {}. {}; broken bars do not show in that.",
                               sheet.row.criticality, sheet.told.finding.urgency, capitalised(level));
}

// Both classes are said where nobody knows how stiff the support is.
std::string otherZone(const Governing& g) {
    if (!g.otherLimits || !g.level) return "";
    return fmt::format(" (support unknown; zone {} by {})", toText(zoneOf(*g.level, *g.otherLimits)),
                       g.otherLimits->basis);
}

std::string levelWords(const Governing& g) {
    if (!g.level) return "no level is known";
    std::string words = fmt::format("{} is {:.1f} mm/s", g.title, *g.level);
    if (!g.limits) return words + "; no limit applies to this point";
    if (g.zone.empty()) return words + ", the last one before this week, which has none";
    words += fmt::format(", zone {} by {}", g.zone, g.limits->basis) + otherZone(g);
    if (g.indicative) words += ", indicative: not on a bearing housing";
    if (g.limits->greyOnly) words += ", a note only";
    return words;
}

// Less than 2 % of the level a week is called steady; common practice, no source.
std::string growthWords(const SheetCase& sheet, const std::string& unit) {
    const auto& growth = sheet.told.growthPerWeek;
    if (!growth) return "";
    if (sheet.governing.level && std::abs(*growth) < kSteadyShare * *sheet.governing.level)
        return "; steady over the last weeks";
    return fmt::format("; changing by {:+.2f} {} a week", *growth, unit);
}

std::string limitWords(const Severity& severity) {
    if (!severity.limit || !severity.level) return "";
    const bool over = *severity.level > *severity.limit;
    return fmt::format("; {} {:.1f} {}", over ? "over the last limit of" : "the next limit is",
                       *severity.limit, severity.unit);
}

// Single recordings have no baseline and say so; a week with one does not repeat it, nor a test told twice.
std::string withoutLack(std::string words, bool hasBaseline) {
    constexpr std::string_view lack = "No baseline yet; ";
    for (std::size_t at = words.find(lack); hasBaseline && at != words.npos; at = words.find(lack, at)) {
        words.erase(at, lack.size());
        const std::string test = words.substr(at, words.find(". ", at) - at);
        const bool again = words.find(test, at + test.size()) != words.npos;
        words.replace(at, again ? test.size() + 2 : test.size(), again ? "" : capitalised(test));
    }
    return words;
}

}  // namespace

std::string placeWords(const Machine& machine, const std::string& at) {
    const std::size_t choice = at.find(" or ");
    const auto place = machine.placeOf(at.substr(0, choice));
    if (!place) return at;
    std::string words = componentWords(machine, place->component);
    if (!place->position.empty()) words += " " + place->position;
    return choice == std::string::npos ? words : words + at.substr(choice);
}

std::string withSpelledDates(const std::string& text) {
    static const std::regex date("\\b\\d{4}-\\d{2}-\\d{2}\\b");
    std::string out;
    auto from = text.begin();
    for (std::sregex_iterator at(text.begin(), text.end(), date), end; at != end; ++at) {
        out.append(from, text.begin() + at->position());
        out += spelledDate(at->str());
        from = text.begin() + at->position() + at->length();
    }
    return out.append(from, text.end());
}

std::string machineWords(const SheetCase& sheet) {
    return sheet.row.service.empty() ? sheet.row.tag
                                     : fmt::format("{} ({})", sheet.row.tag, sheet.row.service);
}

std::string verdictWords(const SheetCase& sheet) {
    const Hypothesis& h = sheet.told.finding;
    std::string words = h.sentence.empty() ? findingName(h) + "." : h.sentence;
    words = withSpelledDates(withoutLack(words, sheet.past.baseline.has_value()));
    const std::string place = placeWords(*sheet.machine, h.at);
    if (place == h.at || h.at.empty()) return words;
    for (std::size_t at = words.find(h.at); at != std::string::npos; at = words.find(h.at, at + place.size()))
        words.replace(at, h.at.size(), place);
    return words;
}

std::string askedForWords(const RoundMachine& row) {
    const std::string seen = row.unseenWords.empty()
                                 ? "no measured finding stands behind it"
                                 : "nothing measured could be judged here (" + row.unseenWords + ")";
    return "asked for: a person wants a look at it; " + seen;
}

std::string askedForSureWords(const RoundMachine& row) {
    return std::string("No measurement says that something is wrong") +
           (row.unseenWords.empty() ? "" : ", and none says that it is sound") +
           "; what a person noticed is not weighed here. The look decides.";
}

std::string howSureWords(const Hypothesis& finding, bool byChange) {
    if (!finding.weightDban && byChange)
        return "That it changed is as sure as the weight of the change says; the cause is possible, no more. "
               "The "
               "inspection decides.";
    if (!finding.weightDban)
        return "Possible: level and pattern fit, but these recordings alone cannot name the cause. The "
               "inspection decides.";
    if (*finding.weightDban <= 0)
        return "No evidence beyond chance. This is not the odds that the fault is there.";
    return fmt::format(
        "{:.0f} decibans: how unlike chance the lines are, not the odds that the fault is there; {}.",
        *finding.weightDban, chanceWords(*finding.weightDban));
}

std::string siteRecordWords(const SiteRecord& all, const SiteRecord& own, const std::string& faultName) {
    if (own.opened >= kRecordFrom)
        return fmt::format(
            "On this site {} of {} findings of this fault ({}) that were opened were confirmed.",
            own.confirmed, own.opened, faultName);
    if (all.opened < kRecordFrom)
        return "Too few findings were opened and reported here yet to say how often one is confirmed; please "
               "report what you find.";
    return fmt::format(
        "On this site {} of {} findings that were opened were confirmed; too few of this fault "
        "to count by themselves.",
        all.confirmed, all.opened);
}

std::string howBadWords(const SheetCase& sheet) {
    const Severity& severity = sheet.told.finding.severity;
    const std::string level = levelWords(sheet.governing);
    if (severity.kind == "stage")
        return fmt::format("{}. {}{}{}.", capitalised(stageWords(sheet.told.finding)), capitalised(level),
                           growthWords(sheet, "mm/s"),
                           sheet.governing.zone < "C" ? "; a low level is no comfort with a bearing" : "");
    if (severity.kind == "db_below_carrier") return barsWords(sheet, level);
    if (severity.kind != "zone" || !severity.level) return capitalised(level) + ".";
    std::string words =
        fmt::format("{:.1f} {} r.m.s. is zone {}", *severity.level, severity.unit, severity.value);
    if (!severity.basis.empty()) words += " by " + severity.basis + otherZone(sheet.governing);
    if (sheet.governing.indicative) words += ", indicative: not on a bearing housing";
    words += limitWords(severity);
    return words + growthWords(sheet, severity.unit) + ".";
}

std::string curedWords(const Governing& governing) {
    if (!governing.limits)
        return "overall velocity is back where it was when the machine was sound (no limit applies here)";
    return fmt::format("overall velocity is at most {:.1f} mm/s (1.25 x the A/B limit, common practice)",
                       kCuredShare * governing.limits->velocity[0]);
}

std::string worseWords(const Governing& governing) {
    if (!governing.limits || !governing.level) return "the level doubles within a day";
    const double trip = kTripShare * governing.limits->velocity[2];
    if (asPrinted(*governing.level) >= asPrinted(trip)) return "the level rises further";
    return fmt::format("the level goes above {:.1f} mm/s (1.25 x the C/D limit)", trip);
}

std::string agreeWords(const Governing& governing) {
    if (!governing.limits || !governing.level) return "";
    const double trip = kTripShare * governing.limits->velocity[2];
    if (asPrinted(*governing.level) < asPrinted(trip)) return "";
    return fmt::format(
        "Agree today with whoever answers for the machine that it may run on; if nobody agrees, stop it. It "
        "shakes at {:.1f} mm/s; a machine is tripped at {:.1f} mm/s at most (1.25 x the C/D limit).",
        *governing.level, trip);
}

std::string roundWords(const Period& period) {
    return fmt::format("round of {} to {}", spelledDate(period.firstDay), spelledDate(period.lastDay));
}

std::string jobWords(const std::optional<Job>& job) {
    if (!job) return "no job yet";
    std::string words = fmt::format("job {}, revision {}", job->id, job->revision);
    if (job->replaces)
        words += fmt::format(", replaces revision {} (job {})", job->revision - 1, *job->replaces);
    if (!job->workOrder.empty()) words += ", work order " + job->workOrder;
    return words + ", " + job->state;
}

std::vector<std::string> cautions() {
    return {
        "Before a guard comes off: isolate, lock and tag out every source of energy, and prove it dead.",
        "Stored energy stays: springs, pressure, hanging loads, capacitors of drives, a fan turned by "
        "draught. "
        "Block, vent, earth or wait.",
        "Surfaces may be hot enough to burn; let them cool or protect yourself.",
        "Run tests only with every guard fitted and nobody within reach of moving parts.",
        "Only people who are trained and authorised for it do this work; electrical work is for qualified "
        "electrical staff.",
        "Site rules, local codes and licensed electrical and mechanical practice come first. This sheet is "
        "advice from measured data; it is no permit to work.",
    };
}

}  // namespace fettle
