// Why: one place that names the commands; each is a file pair of its own that registers a subcommand and,
// when it was chosen, runs it in the callback and sets `status`.
#pragma once

namespace CLI {
class App;
}

namespace fettle {

void addExamineCommand(CLI::App& app, int& status);    // weigh recordings of one machine
void addImportCommand(CLI::App& app, int& status);     // recordings into a fleet file
void addFollowCommand(CLI::App& app, int& status);     // the same as they arrive
void addRulesCommand(CLI::App& app, int& status);      // what files are taken for
void addReExamineCommand(CLI::App& app, int& status);  // weigh again what is kept raw
void addNewCommand(CLI::App& app, int& status);        // make a fleet file
void addRegisterCommand(CLI::App& app, int& status);   // add or change machines
void addRoundCommand(CLI::App& app, int& status);      // the weekly list: now, opened, kept, closed
void addDecideCommand(CLI::App& app, int& status);     // decisions in the open round
void addEventCommand(CLI::App& app, int& status);      // dated events of machines
void addFeedbackCommand(CLI::App& app, int& status);   // what was found when a finding was opened
void addJobsCommand(CLI::App& app, int& status);       // list, draft, change and verify jobs
void addAsksCommand(CLI::App& app, int& status);       // recordings asked for, of nodes and on the walk
void addAlertsCommand(CLI::App& app, int& status);     // what is told between rounds
void addWhoseLineCommand(CLI::App& app, int& status);  // which machine's stops a line leaves with
void addBalanceCommand(CLI::App& app, int& status);    // a balancing from its document
void addTrialCommand(CLI::App& app, int& status);      // seeded-fault trials
void addResonanceCommand(CLI::App& app, int& status);  // speeds to skip
void addNodesCommand(CLI::App& app, int& status);      // what the grid and gravity say of the sensors
void addSheetCommand(CLI::App& app, int& status);      // findings sheet of a machine
void addExportCommand(CLI::App& app, int& status);     // recordings, trends, register, events out again
void addCheckCommand(CLI::App& app, int& status);      // is the fleet file whole?
void addRetentionCommand(CLI::App& app, int& status);  // thin what is old, listed first
void addBackupCommand(CLI::App& app, int& status);     // a copy while others write
void addPhantomsCommand(CLI::App& app, int& status);   // measured false-alarm curve
void addSampleCommand(CLI::App& app, int& status);     // make the sample recordings
void addCompareCommand(CLI::App& app, int& status);    // verdicts beside the sample's stories
void addJudgeCommand(CLI::App& app, int& status);      // verdicts beside the labels of open records

}  // namespace fettle
