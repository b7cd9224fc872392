// Why: one place that names the commands; each is a file pair of its own that registers a subcommand and,
// when it was chosen, runs it in the callback and sets `status`.
#pragma once

namespace CLI {
class App;
}

namespace fettle {

void addExamineCommand(CLI::App& app, int& status);    // weigh recordings of one machine
void addImportCommand(CLI::App& app, int& status);     // recordings into a fleet file
void addReExamineCommand(CLI::App& app, int& status);  // weigh again what is kept raw
void addPhantomsCommand(CLI::App& app, int& status);   // measured false-alarm curve
void addSampleCommand(CLI::App& app, int& status);     // make the sample recordings
void addCompareCommand(CLI::App& app, int& status);    // verdicts beside the sample's stories
void addJudgeCommand(CLI::App& app, int& status);      // verdicts beside the labels of open records

}  // namespace fettle
