// Why: no fleet file needed: weigh these recordings of one machine, together and one by one, and say why.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>
#include <thread>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "core/diagnosis/examine.h"
#include "core/exchange/examination_json.h"
#include "core/exchange/examination_text.h"

namespace fettle {

namespace {

struct ExamineCommand {
    std::vector<std::string> recordings;
    std::string machine;
    bool json = false, ignoreSpeed = false;
    int threads = int(std::max(1u, std::thread::hardware_concurrency()));
};

// Recordings whose sidecar names another machine are refused: their verdict would be another machine's.
Loaded ofThisMachine(Loaded loaded, const Machine& machine) {
    Loaded kept{{}, loaded.refusedSome};
    for (RecordingPtr& r : loaded.recordings) {
        if (r->machine.empty() || r->machine == machine.tag) {
            kept.recordings.push_back(std::move(r));
            continue;
        }
        tell("refused: " +
             Error{ErrorKind::Invalid, r->file, "/machine",
                   fmt::format("is \"{}\", the machine description is of \"{}\"", r->machine, machine.tag)}
                 .sentence());
        kept.refusedSome = true;
    }
    return kept;
}

int run(const ExamineCommand& command) {
    const RealFileSystem files;
    const auto machine = loadMachine(files, command.machine);
    if (!machine) return kCouldNotRun;
    const Loaded loaded = ofThisMachine(loadRecordings(files, command.recordings), *machine);
    if (loaded.recordings.empty()) {
        tell("no recording could be examined");
        return kRefusedSome;
    }
    ExamineOptions options;
    options.ignoreSpeed = command.ignoreSpeed;
    options.threads = command.threads;
    if (stderrIsTerminal() && loaded.recordings.size() > 1)
        options.progress = [](std::size_t done, std::size_t total, std::string_view file) {
            tell(fmt::format("{} of {}: {}", done, total, file));
        };
    const auto examination = examine(*machine, loaded.recordings, options);
    if (!examination) {
        tell(examination.error().sentence());
        return kCouldNotRun;
    }
    if (command.json)
        printJson(toJson(*examination));
    else
        print(asText(*examination, &*machine));
    return loaded.refusedSome ? kRefusedSome : kDone;
}

}  // namespace

void addExamineCommand(CLI::App& app, int& status) {
    auto options = std::make_shared<ExamineCommand>();
    CLI::App* command = app.add_subcommand("examine", "Weigh recordings of one machine and say why");
    command
        ->add_option("RECORDING", options->recordings,
                     "WAV, FLAC, CSV, UFF, MAT or HDF5, each with its sidecar .json")
        ->required();
    command->add_option("--machine", options->machine, "machine description (JSON)")->required();
    command->add_option("--threads", options->threads, "workers")->check(CLI::Range(1, 256));
    command->add_flag("--ignore-speed", options->ignoreSpeed,
                      "look for the speed instead of using the given one");
    command->add_flag("--json", options->json, "one JSON object instead of the text");
    command->callback([options, &status] { status = run(*options); });
}

}  // namespace fettle
