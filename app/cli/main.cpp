// fettle-cli: parse the command line, run one command, end with its status.
// 0 done, 1 done but something was refused, 2 wrong usage, 3 could not run. Results on stdout, all else on
// stderr.
#include <CLI/CLI.hpp>
#include <cstdio>
#include <exception>
#include <sstream>
#include <stdexcept>

#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "core/base/text.h"
#include "core/diagnosis/settings.h"

int main(int argc, char** argv) {
    try {
        int status = 0;
        CLI::App app(
            "Fettle: weighs recordings of electric motors and the machines they drive, and says why.",
            "fettle-cli");
        app.set_version_flag("--version", "fettle-cli " + fettle::WeighingSettings().engine());
        app.require_subcommand(1);
        fettle::addExamineCommand(app, status);
        fettle::addNewCommand(app, status);
        fettle::addRegisterCommand(app, status);
        fettle::addImportCommand(app, status);
        fettle::addFollowCommand(app, status);
        fettle::addRulesCommand(app, status);
        fettle::addReExamineCommand(app, status);
        fettle::addRoundCommand(app, status);
        fettle::addDecideCommand(app, status);
        fettle::addEventCommand(app, status);
        fettle::addFeedbackCommand(app, status);
        fettle::addJobsCommand(app, status);
        fettle::addAsksCommand(app, status);
        fettle::addAlertsCommand(app, status);
        fettle::addWhoseLineCommand(app, status);
        fettle::addBalanceCommand(app, status);
        fettle::addTrialCommand(app, status);
        fettle::addResonanceCommand(app, status);
        fettle::addNodesCommand(app, status);
        fettle::addSheetCommand(app, status);
        fettle::addExportCommand(app, status);
        fettle::addCheckCommand(app, status);
        fettle::addRetentionCommand(app, status);
        fettle::addBackupCommand(app, status);
        fettle::addPhantomsCommand(app, status);
        fettle::addSampleCommand(app, status);
        fettle::addCompareCommand(app, status);
        fettle::addJudgeCommand(app, status);
        try {
            app.parse(argc, argv);
        } catch (const CLI::ParseError& problem) {
            const auto unknown = app.remaining();
            if (app.get_subcommands().empty() && !unknown.empty() && problem.get_exit_code() != 0) {
                fettle::tell("unknown command \"" + fettle::oneLine(unknown[0]) + "\"; --help lists them");
                return 2;
            }
            std::ostringstream help, fault;
            const int code = app.exit(problem, help, fault);
            fettle::print(help.str());
            const std::string said = fault.str();  // the lines are views of it
            for (const auto line : fettle::split(fettle::trimmed(said), '\n'))
                if (code != 0) fettle::tell(fettle::oneLine(line));  // it names arguments, perhaps of files
            return code == 0 ? 0 : 2;
        }
        if (std::fflush(stdout) != 0 || std::ferror(stdout))
            throw std::runtime_error("standard output cannot be written");
        return status;
    } catch (const std::exception& problem) {
        std::fprintf(stderr, "fettle-cli: could not run: %s\n", fettle::oneLine(problem.what()).c_str());
        return 3;
    }
}
