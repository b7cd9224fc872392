#include "core/diagnosis/wording.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "core/base/text.h"
#include "core/machine/path.h"

namespace fettle {

namespace {
constexpr double kExpectedSideband = 0.4;  // a fixed outer race need not have any
}

std::string toText(LineState state) {
    switch (state) {
        case LineState::Found:
            return "found";
        case LineState::Absent:
            return "absent";
        case LineState::LeftOut:
            break;
    }
    return "left out";
}

std::string faultName(const std::string& key) {
    static const std::map<std::string, std::string> names = {
        {"bearing_outer_race", "outer-race defect"},
        {"bearing_inner_race", "inner-race defect"},
        {"bearing_rolling_element", "rolling-element defect"},
        {"bearing_cage", "cage defect"},
        {"bearing_dry_or_worn", "dry or worn bearing"},
        {"bearing_unknown", "defect of an unknown bearing"},
        {"bearing_current", "bearing current"},
        {"gear_mesh", "worn gear mesh"},
        {"gear_tooth", "damaged gear tooth"},
        {"belt", "worn or loose belt"},
        {"blade_pass", "blade pass"},
        {"flow", "rough flow"},
        {"rotor_bar", "broken or cracked rotor bars"},
        {"electrical_2x_mains", "electrical 2 x mains"},
        {"air_gap", "uneven air gap"},
        {"supply_unbalance", "unbalanced supply"},
    };
    const auto at = names.find(key);
    if (at != names.end()) return at->second;
    std::string name = key;
    std::replace(name.begin(), name.end(), '_', ' ');
    return name;
}

std::string chanceWords(double weightDban) {
    if (weightDban <= 0) return "";
    // Products of many e-values leave any table of chances behind; beyond one in a million no bound was
    // measured.
    const double one = std::pow(10.0, std::min(6.0, weightDban / 10));
    const double digits = std::pow(10.0, std::floor(std::log10(one)));
    std::string number = fmt::format("{:.0f}", std::floor(one / digits) * digits);
    for (int at = int(number.size()) - 3; at > 0; at -= 3)
        number.insert(std::size_t(at), ",");
    return fmt::format("chance lines reach this in at most 1 recording of {}{}", number,
                       weightDban > 60 ? ", the limit of what is claimed" : "");
}

namespace {
// Of a designation with several known geometries.
std::string variantWords(const std::string& variant) {
    return variant.find(" variant (") == std::string::npos ? "" : " It fits the " + variant + ".";
}

// A comb of no described bearing: what is known is its order, and which sizes have such a line.
std::string unknownBearingSentence(const Hypothesis& finding, std::size_t found, std::size_t judged) {
    return fmt::format(
        "Lines of a rolling bearing that is not described, heard at {}: a comb at {} of the shaft, {} of {} "
        "judged "
        "harmonics found, {:.0f} decibans ({}); {}. It may be another machine's: see whether it stops with "
        "this one.",
        finding.at, finding.best.variant, found, judged, finding.weightDban.value_or(0),
        chanceWords(finding.weightDban.value_or(0)), finding.why);
}
}  // namespace

std::string bearingSentence(const Hypothesis& finding) {
    std::size_t found = 0, judged = 0;
    for (const LineRow& row : finding.best.rows) {
        found += row.state == LineState::Found;
        judged += row.state != LineState::LeftOut;
    }
    if (finding.fault == "bearing_unknown") return unknownBearingSentence(finding, found, judged);
    const char* stage = finding.severity.value == "late"        ? "lines stand in the velocity spectrum too"
                        : finding.severity.value == "developed" ? "harmonics with sidebands"
                                                                : "lines in the envelope only";
    std::string name = faultName(finding.fault);
    name[0] = char(name[0] - 'a' + 'A');
    const std::string way = pathWords(finding.path);
    return fmt::format(
        "{} of the {} bearing{}, {} stage ({}): {} of {} judged lines found, {:.0f} decibans ({}).{}", name,
        finding.at, way.empty() ? "" : ", heard " + way, finding.severity.value, stage, found, judged,
        finding.weightDban.value_or(0), chanceWords(finding.weightDban.value_or(0)),
        variantWords(finding.best.variant));
}

std::vector<std::string> bearingAgainst(const Hypothesis& finding) {
    const Weighing& found = finding.best;
    std::vector<std::string> against, absent;
    bool sidebands = false, sidebandFound = false;
    for (const LineRow& row : found.rows) {
        if (row.state == LineState::Absent && row.weightDban < -2)
            absent.push_back(fmt::format("{} ({:.1f})", row.name, row.weightDban));
        sidebands |= !row.carrier && row.state != LineState::LeftOut && row.w >= kExpectedSideband;
        sidebandFound |= !row.carrier && row.state == LineState::Found;
    }
    if (!absent.empty()) against.push_back("expected and absent, in decibans: " + joined(absent, ", "));
    if (sidebands && !sidebandFound) against.push_back("none of its sidebands stands out");
    if (const std::string way = pathWords(finding.path); !way.empty())
        against.push_back("heard " + way + ": a reading at the bearing decides");
    if (std::abs(found.cageShift) > 0.012)
        against.push_back(fmt::format(
            "best fit at a cage shift of {:+.2f} %, more than slip and contact angle usually make",
            found.cageShift * 100));
    return against;
}

}  // namespace fettle
