// Why: the measured false-alarm curve on the user's own recordings: a fleet file's, or those of one machine.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <cmath>
#include <memory>
#include <thread>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/fleet_phantoms.h"
#include "app/cli/load.h"
#include "app/cli/long_work.h"
#include "core/base/json_object.h"
#include "core/diagnosis/phantoms.h"
#include "core/diagnosis/wording.h"

namespace fettle {

namespace {

struct PhantomsCommand {
    std::vector<std::string> recordings;
    std::string machine;
    bool json = false, ignoreSpeed = false, curve = false;
    double seconds = 0;  // 0: whole recordings
    std::size_t perRecording = 200;
    std::uint64_t seed = 1;
    std::size_t perMachine = 5;
    int threads = int(std::max(1u, std::thread::hardware_concurrency()));
};

Json shareJson(const PhantomShare& s) {
    return {{"at_dban", s.atDban}, {"bound", s.bound}, {"reached", s.reached},      {"share", s.share},
            {"low", s.low},        {"high", s.high},   {"recordings", s.recordings}};
}

Json asJson(const PhantomResult& result, const std::string& engine) {
    Json curves = Json::array();
    for (const PhantomCurve& c : result.curves) {
        Json shares = Json::array();
        for (const PhantomShare& s : c.shares)
            shares.push_back(shareJson(s));
        curves.push_back({{"fault", c.fault},
                          {"phantoms", c.trials},
                          {"recordings", c.recordings},
                          {"largest_dban", c.trials ? Json(c.largestDban) : Json()},
                          {"share_at_least_dban", c.shareAtLeast},
                          {"shares", std::move(shares)}});
    }
    return {{"schema", 1}, {"engine", engine}, {"curves", std::move(curves)}, {"skipped", result.skipped}};
}

std::string percent(double share) {
    return fmt::format("{:.3g} %", 100 * share);
}

void printTable(const PhantomResult& result) {
    print(
        "Bearings that are not in the machine, weighed like those that are: how often chance reaches a "
        "weight.\n\n");
    print(fmt::format("{:<24}{:>9}{:>12}{:>11}{:>10}  {:<21}{:>8}\n", "family", "phantoms", "recordings",
                      "at", "share", "95 % interval", "bound"));
    for (const PhantomCurve& c : result.curves)
        for (const PhantomShare& s : c.shares) {
            const bool first = &s == &c.shares.front();
            print(fmt::format("{:<24}{:>9}{:>12}{:>6.0f} dban{:>10}  {:<21}{:>8}{}\n",
                              first ? faultName(c.fault) : "", first ? fmt::format("{}", c.trials) : "",
                              first ? fmt::format("{}", c.recordings) : "", s.atDban, percent(s.share),
                              percent(s.low) + " to " + percent(s.high), percent(s.bound),
                              s.share > s.bound ? "  EXCEEDED" : ""));
        }
    print("\nlargest: ");
    for (const PhantomCurve& c : result.curves)
        if (c.trials) print(fmt::format("{} {:.1f}  ", faultName(c.fault), c.largestDban));
    print("decibans\n");
    for (const std::string& s : result.skipped)
        tell("left out: " + s);
}

// How the share falls with the weight, beside the bound 10^(-weight/10), on a scale of powers of ten.
void printCurve(const PhantomResult& result) {
    constexpr int kColumns = 48, kDecades = 4;  // 0.01 to 100 %
    const auto column = [](double share) {
        const double decades = share > 0 ? std::log10(share) : -kDecades;
        return std::size_t(std::lround(kColumns * std::max(0.0, 1 + decades / kDecades)));
    };
    print("\nshare of phantoms (#) and bound (|) at a weight or more\n");
    print(fmt::format("{:<24}{:<7}{:<12}{:<12}{:<12}{:<12}{}\n", "", "dban", "0.01 %", "0.1 %", "1 %", "10 %",
                      "100 %"));
    for (const PhantomCurve& c : result.curves)
        for (int dban = 0; c.trials && dban <= kCurveToDban; dban += 5) {
            const double share = c.shareAtLeast[std::size_t(dban)];
            std::string bar(share > 0 ? column(share) + 1 : 0, '#');
            bar.resize(kColumns + 1, ' ');
            bar[column(std::pow(10, -dban / 10.0))] = '|';
            print(fmt::format("{:<24}{:>4}   {}\n", dban == 0 ? faultName(c.fault) : "", dban, bar));
        }
}

// Nothing weighed anywhere: could not run.
int answer(const PhantomsCommand& command, const PhantomResult& result, bool refusedSome) {
    if (command.json)
        printJson(asJson(result, WeighingSettings{}.engine()));
    else {
        printTable(result);
        if (command.curve) printCurve(result);
    }
    const bool any = std::any_of(result.curves.begin(), result.curves.end(),
                                 [](const PhantomCurve& c) { return c.trials > 0; });
    return !any ? kCouldNotRun : refusedSome ? kRefusedSome : kDone;
}

PhantomOptions optionsOf(const PhantomsCommand& command) {
    PhantomOptions options;
    options.perRecording = command.perRecording;
    options.seed = command.seed;
    options.threads = command.threads;
    options.ignoreSpeed = command.ignoreSpeed;
    options.cancel = cancelledBySignals();
    return options;
}

int runOnFleet(const PhantomsCommand& command) {
    const auto result = fleetPhantoms(command.recordings[0], command.perMachine, optionsOf(command));
    return result ? answer(command, result->phantoms, result->refusedSome) : kCouldNotRun;
}

int runOnRecordings(const PhantomsCommand& command) {
    const RealFileSystem files;
    const auto machine = loadMachine(files, command.machine);
    if (!machine) return kCouldNotRun;
    const Loaded loaded = loadRecordings(files, command.recordings);
    PhantomOptions options = optionsOf(command);
    options.progress = progressOnStderr();
    std::vector<RecordingPtr> pieces;
    for (const RecordingPtr& whole : loaded.recordings)
        for (RecordingPtr& piece : piecesOf(whole, command.seconds))
            pieces.push_back(std::move(piece));
    const auto result = measurePhantoms(*machine, pieces, options);
    if (result) return answer(command, *result, loaded.refusedSome);
    tell(result.error().sentence());
    return kCouldNotRun;
}

int run(const PhantomsCommand& command) {
    if (!command.machine.empty()) return runOnRecordings(command);
    if (command.recordings.size() == 1) return runOnFleet(command);
    tell("recordings want --machine; without it one fleet file is meant");
    return kWrongUsage;
}

}  // namespace

void addPhantomsCommand(CLI::App& app, int& status) {
    auto options = std::make_shared<PhantomsCommand>();
    CLI::App* command = app.add_subcommand(
        "phantoms", "Measured false-alarm curve: weigh bearings the machine does not have");
    command->add_option("FLEET|RECORDING", options->recordings, "a fleet file, or recordings of one machine")
        ->required();
    command->add_option("--machine", options->machine, "description (JSON) of the machine of the recordings");
    command->add_option("--per-machine", options->perMachine, "newest kept recordings of a fleet's machine")
        ->check(CLI::Range(1, 100000))
        ->capture_default_str();
    command->add_flag("--curve", options->curve, "draw the curves besides");
    command->add_option("--per-recording", options->perRecording, "phantom bearings a recording and family")
        ->check(CLI::Range(1, 1000000))
        ->capture_default_str();
    command->add_option("--seconds", options->seconds, "cut recordings into pieces of this length")
        ->check(CLI::PositiveNumber);
    command->add_option("--seed", options->seed, "of the draw")->capture_default_str();
    command->add_option("--threads", options->threads, "workers")->check(CLI::Range(1, 256));
    command->add_flag("--ignore-speed", options->ignoreSpeed,
                      "look for the speed instead of using the given one");
    command->add_flag("--json", options->json, "one JSON object instead of the table");
    command->callback([options, &status] { status = run(*options); });
}

}  // namespace fettle
