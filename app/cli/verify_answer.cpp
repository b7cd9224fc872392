#include "app/cli/verify_answer.h"

#include <fmt/format.h>

#include <algorithm>

#include "app/cli/answer.h"
#include "app/cli/load.h"
#include "core/base/text.h"
#include "core/fleet/verification.h"

namespace fettle {

namespace {

bool isOver(const Job& job) {
    return job.state == "done" || job.state == "verified" || job.state == "closed";
}

Result<std::vector<Job>> askedFor(FleetFile& fleet, const VerifyQuestion& question) {
    auto jobs = fleet.log().jobs(question.machine);
    if (!jobs) return jobs;
    const std::vector<Job> all = *jobs;
    if (question.id) {
        std::erase_if(*jobs, [&](const Job& job) { return job.id != question.id; });
        if (!jobs->empty()) return jobs;
        return fail(ErrorKind::NotFound, fleet.path(), fmt::format("job {}", question.id),
                    "is not in the fleet file");
    }
    std::erase_if(*jobs, [&](const Job& job) {
        const bool replaced =
            std::any_of(all.begin(), all.end(), [&](const Job& one) { return one.replaces == job.id; });
        return replaced || !isOver(job);
    });
    return jobs;
}

Json orNull(const std::optional<double>& value) {
    return value ? Json(*value) : Json();
}

Json orNull(const std::string& text) {
    return text.empty() ? Json() : Json(text);
}

Json toJson(const CureLine& line) {
    return {{"name", line.name},           {"where", line.where},
            {"unit", line.unit},           {"before", orNull(line.before)},
            {"after", orNull(line.after)}, {"sound_most", orNull(line.soundMost)},
            {"baseline", line.baseline}};
}

Json toJson(const CureFinding& finding) {
    Json lines = Json::array();
    for (const CureLine& line : finding.lines)
        lines.push_back(toJson(line));
    return {{"fault", finding.fault},
            {"at", finding.at},
            {"weight_before_dban", orNull(finding.weightBefore)},
            {"weight_after_dban", orNull(finding.weightAfter)},
            {"lines", lines}};
}

Json toJson(const CureLevel& level) {
    return {{"where", level.where},
            {"unit", level.unit},
            {"before", orNull(level.before)},
            {"after", orNull(level.after)},
            {"limit_ab", orNull(level.limitAB)}};
}

std::string stateOf(const JobVerification& v) {
    if (!v.done) return "not_known_when";
    if (v.verdict) return "over";
    switch (v.window.state) {
        case VerifyState::RunIn:
            return "run_in";
        case VerifyState::Collecting:
            return "collecting";
        default:
            return "not_run_yet";
    }
}

Json toJson(const JobVerification& v) {
    Json findings = Json::array(), levels = Json::array();
    for (const CureFinding& finding : v.figures.findings)
        findings.push_back(toJson(finding));
    for (const CureLevel& level : v.figures.levels)
        levels.push_back(toJson(level));
    return {{"job", v.job.id},
            {"machine", v.job.machine},
            {"findings", findings},
            {"levels", levels},
            {"done_on", orNull(v.doneOn)},
            {"done_by", v.done ? Json(v.done->words) : Json()},
            {"state", stateOf(v)},
            {"outcome", v.verdict ? Json(toText(v.verdict->outcome)) : Json()},
            {"words", v.words()},
            {"like", orNull(v.window.like.words())},
            {"moments_before", v.window.before.size()},
            {"moments_after", v.window.after.size()}};
}

std::string momentWords(const JobVerification& v) {
    if (v.window.before.empty() || v.window.after.empty()) return "";
    const std::string like = v.window.like.words();
    return fmt::format("   {} of the week to {} against {} from {} to {}{}\n",
                       counted(v.window.before.size(), "moment"), formatDate(v.window.before.back()),
                       v.window.after.size(), formatDate(v.window.after.front()),
                       formatDate(v.window.after.back()), like.empty() ? "" : ", all " + like);
}

std::string asText(const JobVerification& v) {
    std::string text =
        fmt::format("{}  {}  {}", v.job.id, oneLine(v.job.machine), oneLine(joined(v.job.findings, ", ")));
    if (v.done) text += fmt::format("  done {} ({})", v.doneOn, oneLine(v.done->words));
    text += "\n   " + oneLine(v.words()) + "\n";
    if (v.verdict) text += momentWords(v);
    for (const CureFinding& finding : v.figures.findings)
        for (const CureLine& line : finding.lines)
            text += fmt::format("   {} at {}: {}{}\n", line.name, line.where,
                                line.soundMost ? "baseline of " : "", line.baseline);
    return text;
}

}  // namespace

int answerVerify(FleetFile& fleet, const VerifyQuestion& question) {
    const auto jobs = askedFor(fleet, question);
    if (!jobs) return couldNotRun(jobs.error());
    Json all = headedJson();
    all["verifications"] = Json::array();
    std::string text;
    for (const Job& job : *jobs) {
        const auto v = verifyJob(fleet, job, question.until);
        if (!v) return couldNotRun(v.error());
        all["verifications"].push_back(toJson(*v));
        text += asText(*v);
    }
    if (question.json)
        printJson(all);
    else
        print(text.empty() ? "no job is done\n" : text);
    return kDone;
}

}  // namespace fettle
