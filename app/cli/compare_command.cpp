// Why: every machine of a sample folder examined as a week's round would, each verdict beside the story that
// was put into its recordings, and the count that tells how well the engine does on them.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <map>
#include <memory>

#include "app/cli/commands.h"
#include "app/cli/compare_marks.h"
#include "app/cli/load.h"
#include "core/base/text.h"
#include "core/diagnosis/examine.h"

namespace fettle {

namespace {

struct CompareOptions {
    std::string folder;
    int days = 7;
    int threads = 2;
};

// The last days of the whole fleet, as dates.
struct Week {
    Instant from, until;
    std::string first, last;
};

Week lastWeek(const std::vector<SampleMachine>& fleet, int days) {
    Week week{};
    for (const SampleMachine& m : fleet)
        if (!m.recordings.empty()) week.until = std::max(week.until, m.recordings.back().time);
    week.from = week.until - std::chrono::days(days);
    week.first = formatDate(week.from);
    week.last = formatDate(week.until);
    return week;
}

std::vector<std::string> pathsIn(const SampleMachine& machine, const Week& week) {
    std::vector<std::string> paths;
    for (const TimedPath& r : machine.recordings)
        if (r.time > week.from) paths.push_back(r.path);
    return paths;
}

std::string describe(const Hypothesis& h) {
    const std::string how = h.weightDban ? fmt::format("{:.0f} decibans", *h.weightDban)
                                         : fmt::format("{} {}", h.severity.kind, h.severity.value);
    return fmt::format("{} @ {}, {}, {}", h.fault, h.at, how, h.urgency);
}

std::string describe(const Story& story) {
    std::string words = story.fault.empty() ? "no fault" : story.fault;
    if (!story.at.empty()) words += " @ " + story.at;
    if (story.decoy) words += " (decoy)";
    if (!story.from.empty()) words += " from " + story.from.substr(0, 10);
    if (!story.to.empty()) words += " to " + story.to.substr(0, 10);
    return story.text.empty() ? words : words + ": " + story.text;
}

void row(std::string_view mark, std::string_view what, std::string_view words) {
    print(fmt::format("    {:<12} {:<6} {}\n", mark, what, words));
}

class Comparison {
  public:
    explicit Comparison(Week week) : week_(std::move(week)) {}

    // A silent node is known by its silence; whatever else is the matter there cannot be seen.
    void addUnheard(const SampleMachine& sample, const Machine& machine) {
        const std::string since = sample.recordings.empty()
                                      ? "no recording"
                                      : "no recording since " + formatDate(sample.recordings.back().time);
        head(machine, since);
        for (const Story* story : storiesNow(sample))
            show({story->fault == "sensor" ? Mark::Hit : Mark::NotVisible, since, story, nullptr});
        ++unheard_;
    }

    void add(const SampleMachine& sample, const Machine& machine, const Examination& examination) {
        head(machine, statesOf(examination));
        const auto stories = storiesNow(sample);
        const std::vector<Marked> marks = marksOf(stories, examination);
        for (const Marked& m : marks)
            show(m);
        for (const Story* story : stories)
            if (story->decoy || story->fault.empty()) row("", "story", describe(*story));
        if (marks.empty()) {
            row("quiet", "found", "nothing, as it should be");
            ++quiet_;
        }
    }

    void close() const {
        const auto count = [this](Mark mark) { return counts_.count(mark) ? counts_.at(mark) : 0; };
        const int stories =
            count(Mark::Hit) + count(Mark::OtherName) + count(Mark::Missed) + count(Mark::NotVisible);
        print(fmt::format(
            "\n{} stories at work from {} to {}: {} hit, {} found under another name, {} missed, {} not "
            "visible in these recordings.\n",
            stories, week_.first, week_.last, count(Mark::Hit), count(Mark::OtherName), count(Mark::Missed),
            count(Mark::NotVisible)));
        print(
            fmt::format("Machines rightly quiet: {}; false findings: {}; machines without a recording: {}.\n",
                        quiet_, count(Mark::False), unheard_));
    }

  private:
    static void head(const Machine& machine, const std::string& state) {
        print(fmt::format("\n{}  {} ({})\n", oneLine(machine.tag), oneLine(machine.service), state));
    }

    // "7 recordings, running 6, stopped 1"
    static std::string statesOf(const Examination& examination) {
        std::map<std::string, int> states;
        for (const RecordingFacts& r : examination.recordings)
            ++states[r.running];
        std::string words = fmt::format("recordings {}", examination.recordings.size());
        for (const auto& [state, count] : states)
            words += fmt::format(", {} {}", state, count);
        return words;
    }

    std::vector<const Story*> storiesNow(const SampleMachine& sample) const {
        std::vector<const Story*> now;
        for (const Story& story : sample.stories)
            if (atWork(story, week_.first, week_.last)) now.push_back(&story);
        return now;
    }

    void show(const Marked& m) {
        ++counts_[m.mark];
        std::string mark = toText(m.mark);
        if (m.story) {
            row(mark, "story", describe(*m.story));
            mark.clear();
        }
        const std::string other = m.mark == Mark::Hit ? m.why : "nothing; " + m.why;
        row(mark, "found", m.finding ? describe(*m.finding) : other);
        if (m.finding && !m.finding->sentence.empty()) row("", "", m.finding->sentence);
    }

    Week week_;
    std::map<Mark, int> counts_;
    int quiet_ = 0, unheard_ = 0;
};

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

int compare(const CompareOptions& options) {
    const RealFileSystem files;
    const auto fleet = readSampleFolder(files, options.folder);
    if (!fleet) {
        tell(fleet.error().sentence());
        return kCouldNotRun;
    }
    const Week week = lastWeek(*fleet, options.days);
    Comparison comparison(week);
    int status = kDone;
    for (const SampleMachine& sample : *fleet) {
        const auto machine = loadMachine(files, sample.description);
        if (!machine) return kCouldNotRun;
        const auto paths = pathsIn(sample, week);
        tell(fmt::format("examining {} ({} recordings)", oneLine(sample.tag), paths.size()));
        const Loaded loaded = loadRecordings(files, paths);
        if (loaded.refusedSome) status = kRefusedSome;
        if (loaded.recordings.empty()) {
            comparison.addUnheard(sample, *machine);
            continue;
        }
        const auto examination = examined(*machine, loaded.recordings, options.threads);
        if (!examination) return kCouldNotRun;
        comparison.add(sample, *machine, *examination);
    }
    comparison.close();
    printNextStep(*fleet, options.folder);
    return status;
}

}  // namespace

void addCompareCommand(CLI::App& app, int& status) {
    auto options = std::make_shared<CompareOptions>();
    CLI::App* command =
        app.add_subcommand("compare", "Verdicts beside the stories of a folder that `sample` made");
    command->add_option("DIR", options->folder, "the folder")->required();
    command->add_option("--days", options->days, "examine the newest days of the fleet (7)")
        ->check(CLI::Range(1, 3660));
    command->add_option("--threads", options->threads, "recordings weighed at once (2)")
        ->check(CLI::Range(1, 256));
    command->callback([options, &status] { status = compare(*options); });
}

}  // namespace fettle
