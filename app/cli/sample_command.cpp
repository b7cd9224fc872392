// Why: makes the sample fleet: finds the scenario, which is data beside the program, and has it written. The
// same options give the same samples on every computer.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <filesystem>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/sample_writer.h"

namespace fettle {

namespace {

struct SampleCommand {
    std::string scenario;
    SampleOrder order;
    bool lastWeekOnly = false, wav = false;
};

// Where the scenario stands beside a program that was built, and beside one that was installed.
std::vector<std::string> besideProgram() {
    std::error_code problem;
    const auto program = std::filesystem::read_symlink("/proc/self/exe", problem);
    if (problem) return {};
    const auto above = program.parent_path().parent_path();
    return {(above / "sample_fleet").string(), (above / "share/fettle/sample_fleet").string()};
}

// The folder given, else ./sample_fleet, else the program's own.
Result<std::string> findScenario(const FileSystem& files, const std::string& given) {
    std::vector<std::string> tried{given};
    if (given.empty()) {
        tried = besideProgram();
        tried.insert(tried.begin(), "sample_fleet");
    }
    for (const std::string& folder : tried)
        if (!folder.empty() && files.exists(folder + "/scenario.json")) return folder;
    return fail(ErrorKind::NotFound, tried.front() + "/scenario.json", "",
                given.empty() ? "no scenario here or beside the program: name its folder with --scenario"
                              : "no scenario in this folder");
}

bool knows(const sim::Scenario& scenario, const std::string& tag) {
    for (const sim::FleetMachine& fleet : scenario.machines)
        if (fleet.machine.tag == tag) return true;
    return tag.empty();
}

int refused(const Error& error) {
    tell(error.sentence());
    return kCouldNotRun;
}

int sample(const SampleCommand& command) {
    RealFileSystem files;
    const auto folder = findScenario(files, command.scenario);
    if (!folder) return refused(folder.error());
    const auto scenario = sim::loadScenario(files, *folder);
    if (!scenario) return refused(scenario.error());
    for (const std::string& warning : scenario->warnings)
        tell("note: " + warning);
    if (!knows(*scenario, command.order.options.machine)) {
        tell("--machine " + command.order.options.machine + ": the scenario has no such machine");
        return kWrongUsage;
    }
    const auto written = writeSample(files, *scenario, command.order);
    if (!written) return refused(written.error());
    tell(fmt::format("{} written to {}", counted(*written, "recording"), command.order.folder));
    return kDone;
}

}  // namespace

void addSampleCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<SampleCommand>();
    CLI::App* sub = app.add_subcommand(
        "sample", "Make the recordings of the sample fleet, with what is wrong in truth.json");
    sub->add_option("DIR", command->order.folder, "folder to write to; made where it is not there")
        ->required();
    sub->add_option("--weeks", command->order.options.weeks, "the last N weeks of the story only (all)")
        ->check(CLI::Range(1, 520));
    sub->add_flag("--last-week-only", command->lastWeekOnly, "the same as --weeks 1");
    sub->add_option("--per-week", command->order.options.perWeek, "usual recordings of a node a week (7)")
        ->check(CLI::Range(1, 2000));
    sub->add_option("--seed", command->order.options.key,
                    "another number, other noise: the stories stay (1)");
    sub->add_option("--machine", command->order.options.machine, "one machine's tag only");
    sub->add_option("--scenario", command->scenario,
                    "folder with scenario.json (./sample_fleet, then beside the program)");
    sub->add_option("--threads", command->order.threads, "recordings made at once (all cores)")
        ->check(CLI::Range(1, 256));
    sub->add_flag("--wav", command->wav, "WAV files instead of FLAC: the same samples, twice the size");
    sub->callback([command, &status] {
        if (command->lastWeekOnly) command->order.options.weeks = 1;
        if (command->wav) command->order.options.extension = "wav";
        status = sample(*command);
    });
}

}  // namespace fettle
