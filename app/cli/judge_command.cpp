// Why: verdicts beside what is known of open records: a folder with machine.json, labels.tsv (name, fault,
// at, .., rpm) and the recordings. Prints one row a record or piece and a closing count; the folder named by
// FETTLE_OPEN_RECORDS by default.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdlib>

#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/node_grade.h"
#include "app/cli/verdict_count.h"
#include "core/diagnosis/examine.h"

namespace fettle {

namespace {

struct JudgeOptions {
    std::string folder;
    double seconds = 0;  // 0: whole records
    bool ignoreSpeed = false;
    std::vector<std::string> only;
    bool nodeGrade = false;
};

struct Row {
    std::string name;
    Label label;
    Examination examination;
};

std::string shortFault(const std::string& fault) {
    return fault.rfind("bearing_", 0) == 0 ? fault.substr(8) : fault;
}

std::string describe(const Hypothesis& h) {
    return fmt::format("{} @ {} {:.0f} ({:+.2f} %)", shortFault(h.fault), h.at, *h.weightDban,
                       h.best.cageShift * 100);
}

std::string soundRow(const Row& row) {
    const Hypothesis* most = strongest(row.examination);
    return fmt::format("{:<10} {:<16} {:>7} {:<10} strongest of all: {}\n", row.name, "sound", "", "",
                       most ? describe(*most) : "nothing weighed");
}

std::string faultyRow(const Row& row) {
    const Hypothesis* top = topBearing(row.examination);
    const Hypothesis* seeded = hypothesisOf(row.examination, row.label.fault, row.label.at);
    std::string others;
    for (const Hypothesis* h : findingsElsewhere(row.examination, row.label.at))
        others += (others.empty() ? " | elsewhere: " : "; ") + describe(*h);
    const Judged verdict = judged(row.label, row.examination);
    const auto& speed = row.examination.speed;
    return fmt::format("{:<10} {:<16} {:>7.1f} {:<10} top: {}{}  [{:.1f} +- {:.1f} r/min]\n", row.name,
                       shortFault(row.label.fault), seeded ? seeded->weightDban.value_or(-99) : -99,
                       verdict.element   ? "hit"
                       : verdict.bearing ? "bearing"
                                         : "MISSED",
                       top ? describe(*top) : "none", others, speed.rpm.value_or(0), speed.plusMinusRpm);
}

void printClose(VerdictCount& count) {
    print(fmt::format(
        "\nright bearing {} of {}, right element {} of {} ({} of the {} that are not ball faults); "
        "findings at another bearing in {}\n",
        count.bearings, count.faulty, count.elements, count.faulty, count.notBallElements, count.notBall,
        count.elsewhere));
    std::vector<double>& hits = count.hitDban;
    std::sort(hits.begin(), hits.end());
    if (!hits.empty())
        print(
            fmt::format("weights of the right ones, decibans: least {:.1f}, tenth {:.1f}, median {:.1f}, "
                        "most {:.1f}\n",
                        hits.front(), hits[hits.size() / 10], hits[hits.size() / 2], hits.back()));
}

struct Subject {
    Machine machine;
    std::vector<std::pair<Label, RecordingPtr>> records;
    bool refusedSome = false;
};

std::optional<Subject> loadSubject(const JudgeOptions& options) {
    const RealFileSystem files;
    const auto machine = loadMachine(files, options.folder + "/machine.json");
    const auto labels = files.read(options.folder + "/labels.tsv");
    if (!labels) tell(labels.error().sentence());
    if (!machine || !labels) return std::nullopt;
    Subject subject{*machine, {}, false};
    const auto& only = options.only;
    for (const Label& label : readLabels(*labels)) {
        if (!only.empty() && std::find(only.begin(), only.end(), label.name) == only.end()) continue;
        const Loaded loaded = loadRecordings(files, {options.folder + "/" + label.name + ".wav"});
        subject.refusedSome |= loaded.refusedSome;
        for (const RecordingPtr& recording : loaded.recordings)
            subject.records.emplace_back(label, recording);
    }
    return subject;
}

int judge(const JudgeOptions& options) {
    const auto subject = loadSubject(options);
    if (!subject) return kCouldNotRun;
    VerdictCount count;
    print("record     seeded            weight            verdict\n");
    for (const auto& [label, whole] : subject->records) {
        const auto parts = piecesOf(whole, options.seconds);
        for (std::size_t i = 0; i < parts.size(); ++i) {
            ExamineOptions how;
            how.ignoreSpeed = options.ignoreSpeed;
            const auto examination = examine(subject->machine, {parts[i]}, how);
            if (!examination) {
                tell(examination.error().sentence());
                return kCouldNotRun;
            }
            const Row row{parts.size() > 1 ? fmt::format("{}.{}", label.name, i + 1) : label.name, label,
                          *examination};
            print(label.sound() ? soundRow(row) : faultyRow(row));
            count.add(label, *examination);
        }
    }
    printClose(count);
    return subject->refusedSome ? kRefusedSome : kDone;
}

// What a fleet's nodes make of the same records, one property worse at a time.
struct Arm {
    const char* name;
    double noisePerRtHz, mountHz, clockError;
    bool ignoreSpeed;
};
constexpr double kNoisyNode = 3e-4, kMagnetHz = 3500, kWrongClock = 0.02;
constexpr Arm kArms[] = {{"rate alone", 0, 0, 0, false},
                         {"+ MEMS noise 300 ug/rtHz", kNoisyNode, 0, 0, false},
                         {"+ magnet resonance 3.5 kHz", kNoisyNode, kMagnetHz, 0, false},
                         {"+ clock 2 % wrong", kNoisyNode, kMagnetHz, kWrongClock, false},
                         {"  the same, speed not given", kNoisyNode, kMagnetHz, kWrongClock, true}};
constexpr double kNodeRates[] = {6400, 3200}, kNodeSeconds[] = {4, 2, 1};

std::string share(std::size_t part, std::size_t of) {
    return of == 0 ? "-" : fmt::format("{:.0f} %", 100 * double(part) / double(of));
}

Result<VerdictCount> judgeArm(const Subject& subject, const Arm& arm, double rateHz, double seconds) {
    const NodeGrade node{rateHz, arm.noisePerRtHz, arm.mountHz, 0.04, arm.clockError, 0.05};
    VerdictCount count;
    for (const auto& [label, whole] : subject.records) {
        const auto heard = throughNode(*whole, node, 1);
        if (!heard) return fail(heard.error());
        for (const RecordingPtr& piece : piecesOf(*heard, seconds)) {
            ExamineOptions how;
            how.ignoreSpeed = arm.ignoreSpeed;
            const auto examination = examine(subject.machine, {piece}, how);
            if (!examination) return fail(examination.error());
            count.add(label, *examination);
        }
    }
    return count;
}

int judgeNodeGrade(const JudgeOptions& options) {
    const auto subject = loadSubject(options);
    if (!subject) return kCouldNotRun;
    print(fmt::format("{:<29}{:>6}{:>5}{:>8}{:>9}{:>9}{:>10}{:>11}{:>7}{:>7}{:>9}\n", "node", "Hz", "s",
                      "pieces", "bearing", "element", "not ball", "elsewhere", "sound", "found", "largest"));
    for (const double rate : kNodeRates)
        for (const double seconds : kNodeSeconds)
            for (const Arm& arm : kArms) {
                const auto count = judgeArm(*subject, arm, rate, seconds);
                if (!count) {
                    tell(count.error().sentence());
                    return kCouldNotRun;
                }
                print(fmt::format(
                    "{:<29}{:>6.0f}{:>5.0f}{:>8}{:>9}{:>9}{:>10}{:>11}{:>7}{:>7}{:>9.1f}\n", arm.name, rate,
                    seconds, count->faulty, share(count->bearings, count->faulty),
                    share(count->elements, count->faulty), share(count->notBallElements, count->notBall),
                    share(count->elsewhere, count->faulty), count->sound, count->soundFound,
                    count->soundDban.value_or(0)));
            }
    return subject->refusedSome ? kRefusedSome : kDone;
}

int run(const JudgeOptions& options) {
    if (options.folder.empty()) {
        tell("judge: name a folder, or set FETTLE_OPEN_RECORDS to one");
        return kWrongUsage;
    }
    return options.nodeGrade ? judgeNodeGrade(options) : judge(options);
}

}  // namespace

void addJudgeCommand(CLI::App& app, int& status) {
    auto options = std::make_shared<JudgeOptions>();
    if (const char* folder = std::getenv("FETTLE_OPEN_RECORDS")) options->folder = folder;
    CLI::App* command = app.add_subcommand("judge", "Verdicts beside the labels of a folder of open records");
    command->add_option("FOLDER", options->folder,
                        "folder with machine.json, labels.tsv and recordings (the one that the variable "
                        "FETTLE_OPEN_RECORDS names)");
    command->add_option("--seconds", options->seconds, "cut records into pieces of this length")
        ->check(CLI::PositiveNumber);
    command->add_flag("--ignore-speed", options->ignoreSpeed,
                      "look for the speed instead of using the given one");
    command->add_option("--only", options->only, "these records only");
    command->add_flag(
        "--node-grade", options->nodeGrade,
        "the same records as cheap nodes would have heard them: a table of rates, lengths and flaws");
    command->callback([options, &status] { status = run(*options); });
}

}  // namespace fettle
