// Why: every machine of a sample folder examined as a week's round would, each verdict beside the story that
// was put into its recordings, and the count that tells how well the engine does on them.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/compare_fleet.h"
#include "app/cli/compare_report.h"
#include "app/cli/load.h"
#include "core/base/text.h"
#include "core/diagnosis/examine.h"

namespace fettle {

namespace {

struct CompareOptions {
    std::string folder, fleet, until;
    int days = 7;
    int threads = 2;
    bool everyWeek = false;
};

std::optional<Instant> dayOf(const std::string& date) {
    return parseUtc(date + "T00:00:00Z");
}

// The day after the one asked for, else after the newest recording's.
Instant endOf(const SampleFolder& fleet, const std::string& until) {
    if (const auto day = dayOf(until)) return *day + std::chrono::days(1);
    Instant newest{};
    for (const SampleMachine& m : fleet.machines)
        if (!m.recordings.empty()) newest = std::max(newest, m.recordings.back().time);
    return std::chrono::floor<std::chrono::days>(newest) + std::chrono::days(1);
}

std::vector<std::string> pathsIn(const SampleMachine& machine, const Span& span) {
    std::vector<std::string> paths;
    for (const TimedPath& r : machine.recordings)
        if (r.time >= span.from && r.time < span.until) paths.push_back(r.path);
    return paths;
}

// Empty after telling why.
std::optional<Examination> examined(const Machine& machine, const std::vector<RecordingPtr>& recordings,
                                    int threads) {
    ExamineOptions how;
    how.threads = threads;
    auto examination = examine(machine, recordings, how);
    if (examination) return std::move(*examination);
    tell(examination.error().sentence());
    return std::nullopt;
}

// How to look closer at one recording, in words a shell takes.
void printNextStep(const std::vector<SampleMachine>& fleet, const std::string& folder) {
    print(fmt::format("\nThe recordings are in {}", folder));
    for (const SampleMachine& sample : fleet) {
        if (sample.recordings.empty()) continue;
        print(fmt::format("; to examine one of them:\n  fettle-cli examine \"{}\" --machine \"{}\"",
                          sample.recordings.back().path, sample.description));
        break;
    }
    print("\n");
}

// kDone, kRefusedSome or kCouldNotRun.
int compareSpan(const FileSystem& files, const SampleFolder& fleet, const CompareOptions& options,
                CompareReport& report) {
    int status = kDone;
    for (const SampleMachine& sample : fleet.machines) {
        const auto machine = loadMachine(files, sample.description);
        if (!machine) return kCouldNotRun;
        const auto paths = pathsIn(sample, report.span());
        if (!options.everyWeek)
            tell(fmt::format("examining {} ({})", oneLine(sample.tag), counted(paths.size(), "recording")));
        const Loaded loaded = loadRecordings(files, paths);
        if (loaded.refusedSome) status = kRefusedSome;
        if (loaded.recordings.empty()) {
            report.addUnheard(sample, *machine);
            continue;
        }
        const auto examination = examined(*machine, loaded.recordings, options.threads);
        if (!examination) return kCouldNotRun;
        report.add(sample, *machine, *examination);
    }
    report.close();
    return status;
}

// One line a week with its false findings below, then the sum.
int compareEveryWeek(const FileSystem& files, const SampleFolder& fleet, const CompareOptions& options) {
    Tally sum;
    int status = kDone;
    for (int week = 0; week < fleet.weeks; ++week) {
        const Instant from = fleet.start + std::chrono::days(7 * week);
        CompareReport report(fleet.start, {from, from + std::chrono::days(7)}, true);
        const int done = compareSpan(files, fleet, options, report);
        if (done == kCouldNotRun) return done;
        status = std::max(status, done);
        sum.add(report.tally());
    }
    printSum(sum);
    return status;
}

int compare(const CompareOptions& options) {
    const RealFileSystem files;
    const auto fleet = readSampleFolder(files, options.folder);
    if (!fleet) {
        tell(fleet.error().sentence());
        return kCouldNotRun;
    }
    if (!options.fleet.empty()) return compareFleet(*fleet, options.fleet, options.until, options.everyWeek);
    if (options.everyWeek) return compareEveryWeek(files, *fleet, options);
    const Instant end = endOf(*fleet, options.until);
    CompareReport report(fleet->start, {end - std::chrono::days(options.days), end}, false);
    const int status = compareSpan(files, *fleet, options, report);
    if (status != kCouldNotRun) printNextStep(fleet->machines, options.folder);
    return status;
}

// An empty answer lets the value pass, as the parser asks for it.
std::string dateOrComplaint(const std::string& text) {
    return dayOf(text) ? "" : "a date like 2026-05-10 is expected";
}

}  // namespace

void addCompareCommand(CLI::App& app, int& status) {
    auto options = std::make_shared<CompareOptions>();
    CLI::App* command =
        app.add_subcommand("compare", "Verdicts beside the stories of a folder that `sample` made");
    command->add_option("DIR", options->folder, "the folder")->required();
    command->add_option("--days", options->days, "examine so many days (7)")->check(CLI::Range(1, 3660));
    command->add_option("--until", options->until, "the last of these days (that of the newest recording)")
        ->check(dateOrComplaint);
    command->add_flag("--every-week", options->everyWeek, "each week by itself, in short, and the sum")
        ->excludes("--until")
        ->excludes("--days");
    command
        ->add_option("--fleet", options->fleet,
                     "a fleet file into which the folder was imported: compare with its list of the week")
        ->excludes("--days");
    command->add_option("--threads", options->threads, "recordings weighed at once (2)")
        ->check(CLI::Range(1, 256));
    command->callback([options, &status] { status = compare(*options); });
}

}  // namespace fettle
