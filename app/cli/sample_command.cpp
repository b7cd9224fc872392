// Why: writes the sample fleet: machines, recordings with sidecars, and truth.json with what was put into
// them. The scenario is data beside the program; the same options give the same bytes on every computer.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <filesystem>
#include <memory>

#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "core/signal/sound_file.h"
#include "core/simulate/sample_plan.h"

namespace fettle {

namespace {

struct SampleCommand {
    std::string folder, scenario;
    sim::SampleOptions options;
    bool lastWeekOnly = false;
};

// Beside the program, where the system tells where that is.
std::string besideProgram() {
    std::error_code problem;
    const auto program = std::filesystem::read_symlink("/proc/self/exe", problem);
    return problem ? "" : (program.parent_path().parent_path() / "sample_fleet").string();
}

// The folder given, else ./sample_fleet, else ../sample_fleet of the program's own.
Result<std::string> findScenario(const FileSystem& files, const std::string& given) {
    std::vector<std::string> tried{given};
    if (given.empty()) tried = {"sample_fleet", besideProgram()};
    for (const std::string& folder : tried)
        if (!folder.empty() && files.exists(folder + "/scenario.json")) return folder;
    return fail(ErrorKind::NotFound, tried.front() + "/scenario.json", "",
                given.empty() ? "no scenario here or beside the program: name its folder with --scenario"
                              : "no scenario in this folder");
}

std::string asText(const Json& json) {
    return json.dump(2) + "\n";
}

Result<std::string> soundBytes(const sim::SimulatedRecording& recording, const std::string& file) {
    const double steps = double(std::int64_t(1) << (recording.bits - 1));
    std::vector<std::vector<double>> channels;
    for (const sim::SimulatedChannel& channel : recording.channels) {
        std::vector<double> values;
        values.reserve(channel.samples.size());
        for (const std::int32_t sample : channel.samples)
            values.push_back(sample / steps);
        channels.push_back(std::move(values));
    }
    const SoundFormat format = recording.bits == 24 ? SoundFormat::WavPcm24 : SoundFormat::WavPcm16;
    return writeSoundFile(channels, recording.rateHz, format, file);
}

class SampleWriter {
  public:
    SampleWriter(FileSystem& files, const sim::Scenario& scenario, const SampleCommand& command)
        : files_(files),
          scenario_(scenario),
          command_(command),
          plan_(sim::planRecordings(scenario, command.options)) {}

    Status writeAll() {
        if (auto done = writeMachines(); !done) return done;
        std::size_t machine = scenario_.machines.size();
        for (std::size_t i = 0; i < plan_.size(); ++i) {
            if (plan_[i].machine != machine) {
                machine = plan_[i].machine;
                tell(fmt::format("{}: recording {} of {}", scenario_.machines[machine].machine.tag, i + 1,
                                 plan_.size()));
            }
            if (auto done = writeRecording(plan_[i]); !done) return done;
        }
        return files_.writeSafely(command_.folder + "/truth.json",
                                  asText(sim::truthOf(scenario_, command_.options)));
    }

    std::size_t recordings() const { return plan_.size(); }

  private:
    bool wanted(const std::string& tag) const {
        return command_.options.machine.empty() || command_.options.machine == tag;
    }

    Status writeMachines() {
        if (auto made = files_.makeFolders(command_.folder + "/machines"); !made) return made;
        for (const sim::FleetMachine& fleet : scenario_.machines) {
            const std::string& tag = fleet.machine.tag;
            if (!wanted(tag)) continue;
            const std::string path = command_.folder + "/machines/" + tag + ".json";
            if (auto done = files_.writeSafely(path, asText(fleet.description)); !done) return done;
            if (auto made = files_.makeFolders(command_.folder + "/recordings/" + tag); !made) return made;
        }
        return {};
    }

    // The sidecar first: a recording without one would be of nobody.
    Status writeRecording(const sim::PlannedRecording& planned) {
        const std::string& tag = scenario_.machines[planned.machine].machine.tag;
        const std::string stem = command_.folder + "/recordings/" + tag + "/" + planned.name;
        const auto recording = sim::simulate(sim::setupOf(scenario_, planned, command_.options.key));
        if (!recording) return fail(recording.error());
        const auto bytes = soundBytes(*recording, stem + ".wav");
        if (!bytes) return fail(bytes.error());
        const Json sidecar = sim::sidecarOf(scenario_, planned, *recording);
        if (auto done = files_.writeSafely(stem + ".json", asText(sidecar)); !done) return done;
        return files_.writeSafely(stem + ".wav", *bytes);
    }

    FileSystem& files_;
    const sim::Scenario& scenario_;
    const SampleCommand& command_;
    std::vector<sim::PlannedRecording> plan_;
};

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
    if (!knows(*scenario, command.options.machine)) {
        tell("--machine " + command.options.machine + ": the scenario has no such machine");
        return kWrongUsage;
    }
    SampleWriter writer(files, *scenario, command);
    if (auto done = writer.writeAll(); !done) return refused(done.error());
    tell(fmt::format("{} recordings written to {}", writer.recordings(), command.folder));
    return kDone;
}

}  // namespace

void addSampleCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<SampleCommand>();
    CLI::App* sub = app.add_subcommand(
        "sample", "Make the recordings of the sample fleet, with what is wrong in truth.json");
    sub->add_option("DIR", command->folder, "folder to write to; made where it is not there")->required();
    sub->add_option("--weeks", command->options.weeks, "the last N weeks of the story only (all)")
        ->check(CLI::Range(1, 520));
    sub->add_flag("--last-week-only", command->lastWeekOnly, "the same as --weeks 1");
    sub->add_option("--per-week", command->options.perWeek, "recordings of each node a week (1)")
        ->check(CLI::Range(1, 2000));
    sub->add_option("--seed", command->options.key, "another number, other noise: the stories stay (1)");
    sub->add_option("--machine", command->options.machine, "one machine's tag only");
    sub->add_option("--scenario", command->scenario,
                    "folder with scenario.json (./sample_fleet, then beside the program)");
    sub->callback([command, &status] {
        if (command->lastWeekOnly) command->options.weeks = 1;
        status = sample(*command);
    });
}

}  // namespace fettle
