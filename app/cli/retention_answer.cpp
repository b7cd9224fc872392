#include "app/cli/retention_answer.h"

#include <fmt/format.h>

#include "app/cli/answer.h"

namespace fettle {

namespace {

Json daysOrNull(const std::optional<int>& days) {
    return days ? Json(*days) : Json();
}

Json toJson(const KeepRule& rule) {
    return {{"all_days", rule.allDays},
            {"daily_days", daysOrNull(rule.dailyDays)},
            {"weekly_days", daysOrNull(rule.weeklyDays)}};
}

Json toJson(const Amount& amount) {
    return {{"recordings", amount.recordings}, {"bytes", amount.bytes}};
}

Json toJson(const KindPlan& plan) {
    Json why = Json::object();
    for (std::size_t i = 0; i < kReasons; ++i)
        if (plan.stays[i].recordings > 0) why[keyOf(KeptFor(i))] = toJson(plan.stays[i]);
    return {{"goes", toJson(plan.goes)}, {"stays", toJson(plan.kept())}, {"stays_because", why}};
}

Json toJson(const YearEstimate& year) {
    Json all{{"recordings", year.recordings}, {"for_ever_bytes", year.foreverBytes}, {"bytes", year.total()}};
    for (const KeptKind kind : kAllKept)
        all[std::string(keyOf(kind)) + "_bytes"] = year.bytes[std::size_t(kind)];
    return all;
}

Json toJson(const FileSpace& space) {
    return {{"bytes", space.bytes}, {"free_bytes", space.freeBytes}, {"gives_back", space.givesBack}};
}

std::string inWords(const Amount& amount) {
    return counted(amount.recordings, "recording") + ", " + bytesInWords(double(amount.bytes));
}

std::string inWords(const KindPlan& plan) {
    std::string words = "  goes   " + inWords(plan.goes) + "\n  stays  " + inWords(plan.kept()) + "\n";
    for (std::size_t i = 0; i < kReasons; ++i)
        if (plan.stays[i].recordings > 0)
            words += fmt::format("         {}: {}\n", inWords(plan.stays[i]), inWords(KeptFor(i)));
    return words;
}

std::string inWords(const YearEstimate& year) {
    std::string words =
        fmt::format("a machine's year at the rate of its last 30 days ({:.0f} recordings): {}",
                    year.recordings, bytesInWords(year.total()));
    for (const KeptKind kind : kAllKept)
        words += fmt::format(", {} {}", keyOf(kind), bytesInWords(year.bytes[std::size_t(kind)]));
    return words + ", for ever " + bytesInWords(year.foreverBytes) + "\n";
}

std::string inWords(const FileSpace& space) {
    std::string words = fmt::format("the file: {}, of these free {}", bytesInWords(double(space.bytes)),
                                    bytesInWords(double(space.freeBytes)));
    if (!space.givesBack)
        words += "; it was made before space could be given back bit by bit: --compact does it once";
    return words + "\n";
}

}  // namespace

std::string bytesInWords(double bytes) {
    if (bytes < 1e6) return fmt::format("{:.0f} kB", bytes / 1e3);
    if (bytes < 1e9) return fmt::format("{:.1f} MB", bytes / 1e6);
    return fmt::format("{:.2f} GB", bytes / 1e9);
}

std::string inWords(const RetentionPlan& plan) {
    std::string words;
    for (const KeptKind kind : kAllKept)
        words += inWords(kind, plan.rules.rule(kind)) + "\n" + inWords(plan.total(kind));
    if (!plan.machines.empty()) words += inWords(plan.meanYear());
    return words + inWords(plan.space);
}

std::string inWords(const RetentionDone& done) {
    std::string words;
    for (const KeptKind kind : kAllKept)
        words += fmt::format("{} of {} taken away\n", keyOf(kind), inWords(done.taken[std::size_t(kind)]));
    return words + inWords(done.after);
}

Json toJson(const RetentionPlan& plan) {
    Json rules = Json::object(), total = Json::object(), machines = Json::array();
    for (const KeptKind kind : kAllKept) {
        rules[keyOf(kind)] = toJson(plan.rules.rule(kind));
        total[keyOf(kind)] = toJson(plan.total(kind));
    }
    for (const MachinePlan& machine : plan.machines) {
        Json one{{"machine", machine.tag}, {"year", toJson(machine.year)}};
        for (const KeptKind kind : kAllKept)
            one[keyOf(kind)] = toJson(machine.kinds[std::size_t(kind)]);
        machines.push_back(one);
    }
    return {{"rules", rules}, {"total", total}, {"machines", machines}, {"file", toJson(plan.space)}};
}

Json toJson(const RetentionDone& done) {
    Json taken = Json::object();
    for (const KeptKind kind : kAllKept)
        taken[keyOf(kind)] = toJson(done.taken[std::size_t(kind)]);
    return {{"taken", taken},
            {"file_before", toJson(done.before)},
            {"file_after", toJson(done.after)},
            {"stopped", done.cancelled}};
}

}  // namespace fettle
