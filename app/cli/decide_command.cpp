// Why: what a person decides in the open round: on listed machines, on the sample, on unseen ones, on leave
// as a block. One line on stdout for each answer that was taken.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/open_fleet.h"
#include "core/base/text.h"
#include "core/fleet/round_desk.h"

namespace fettle {

namespace {

struct DecideCommand {
    std::string fleet, dispute, reason, by;
    std::vector<std::string> machines, defer;
    bool accept = false, withdraw = false, opened = false, unseen = false, leaveBlock = false;

    int asked() const {
        return accept + withdraw + !dispute.empty() + !defer.empty() + opened + unseen + leaveBlock;
    }
};

Decision decisionOf(const DecideCommand& command, const std::string& machine) {
    Decision decision;
    decision.machine = machine;
    decision.by = command.by;
    if (command.withdraw) {
        decision.kind = DecisionKind::Withdraw;
    } else if (!command.dispute.empty()) {
        decision.kind = DecisionKind::Dispute;
        decision.reason = command.dispute;
    } else if (!command.defer.empty()) {
        decision.kind = DecisionKind::Defer;
        decision.deferTo = command.defer[0];
        decision.reason = command.defer[1];
    }
    return decision;
}

Status answer(FleetFile& fleet, std::int64_t round, const DecideCommand& command,
              const std::string& machine) {
    if (command.opened) return markOpened(fleet, round, machine);
    if (command.unseen) return answerUnseen(fleet, round, machine, command.reason, command.by);
    return decide(fleet, round, decisionOf(command, machine));
}

std::string wordOf(const DecideCommand& command) {
    if (command.opened) return "opened";
    if (command.unseen) return "reason taken";
    return toText(decisionOf(command, "").kind) + (command.defer.empty() ? "" : " to " + command.defer[0]);
}

int leaveAsBlock(FleetFile& fleet, std::int64_t round, const DecideCommand& command) {
    if (auto done = acceptLeave(fleet, round, command.by); !done) return couldNotRun(done.error());
    print("leave accepted as a block\n");
    return kDone;
}

int run(const DecideCommand& command) {
    if (command.asked() != 1 || command.leaveBlock != command.machines.empty()) {
        tell(
            "decide: name machines with --machine and one of --accept, --dispute, --defer, --withdraw, "
            "--opened and --unseen, or --leave-block alone");
        return kWrongUsage;
    }
    if (!command.reason.empty() && !command.unseen) {
        tell("decide: --reason goes with --unseen; --dispute and --defer take their own");
        return kWrongUsage;
    }
    const auto fleet = openFleet(command.fleet, true);
    if (!fleet) return kCouldNotRun;
    const auto open = fleet->rounds().openOne();
    if (!open) return couldNotRun(open.error());
    if (!*open) {
        tell("no round is open: fettle-cli round FLEET --open");
        return kCouldNotRun;
    }
    if (command.leaveBlock) return leaveAsBlock(*fleet, (*open)->id, command);
    int status = kDone;
    for (const std::string& machine : command.machines) {
        const auto done = answer(*fleet, (*open)->id, command, machine);
        if (done) {
            print(fmt::format("{} {}\n", oneLine(machine), wordOf(command)));
            continue;
        }
        refuse(done.error());
        status = kRefusedSome;
    }
    return status;
}

}  // namespace

void addDecideCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<DecideCommand>();
    CLI::App* sub = app.add_subcommand("decide", "Decide on machines of the open round");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    sub->add_option("--machine", command->machines, "tag; may be given several times")
        ->allow_extra_args(false);
    sub->add_flag("--accept", command->accept, "the entry stands");
    sub->add_option("--dispute", command->dispute, "REASON: the entry does not stand");
    sub->add_option("--defer", command->defer, "DATE REASON: back on the list on that day")->expected(2);
    sub->add_flag("--withdraw", command->withdraw, "the decision before was a slip: undecided again");
    sub->add_flag("--opened", command->opened, "a machine of the sample was looked at");
    sub->add_flag("--unseen", command->unseen,
                  "the reason why it was not seen is confirmed, or --reason given");
    sub->add_option("--reason", command->reason, "another reason for an unseen machine");
    sub->add_flag("--leave-block", command->leaveBlock, "accept all machines on leave, after the sample");
    sub->add_option("--by", command->by, "who decides (login name)");
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
