// Why: recordings into the fleet file as they arrive in a folder, until asked to stop.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/intake_words.h"
#include "app/cli/load.h"
#include "app/cli/long_work.h"
#include "app/cli/open_fleet.h"
#include "core/base/text.h"
#include "core/fleet/alert_post.h"
#include "core/fleet/alerts.h"
#include "core/intake/follow.h"

namespace fettle {

namespace {

struct FollowCommand {
    std::string fleet, folder;
    bool tellAcknowledged = false;
    double settleSeconds = -1, waitSeconds = 60, lookSeconds = 5;
    FollowOptions options;
};

std::chrono::milliseconds millisecondsOf(double seconds) {
    return std::chrono::milliseconds(std::int64_t(seconds * 1000));
}

std::string countsOf(const FollowReport& report) {
    const std::string levels = report.tables == 0 ? ""
                                                  : fmt::format(", {} of {}", counted(report.levels, "level"),
                                                                counted(report.tables, "table"));
    return fmt::format("{} stored, {} already there, {} late, {} refused, {} parked{}", report.stored,
                       report.already, report.late, report.refused, report.parked, levels);
}

// At most once a second on a terminal, every ten seconds into a log, and when all that was there is in.
auto followProgress() {
    using Clock = std::chrono::steady_clock;
    const auto pause = std::chrono::seconds(stderrIsTerminal() ? 1 : 10);
    return [pause, next = Clock::now()](const FollowReport& report, std::size_t waiting) mutable {
        const auto now = Clock::now();
        if (now < next && waiting > 0) return;
        next = now + pause;
        tell(countsOf(report) + (waiting > 0 ? "; " + counted(waiting, "file waits", "files wait") : ""));
    };
}

// Alerts are raised after each batch; a follow that goes on also sends them, in the background.
std::function<Status(FleetFile&)> alertsOf(const std::string& fleetPath, bool send) {
    std::shared_ptr<AlertPost> post;
    if (send)
        post = std::make_shared<AlertPost>(fleetPath, [](const AlertPost::News& news) {
            if (!news.trouble.empty()) tell("note: " + oneLine(news.trouble, 2000));
        });
    return [post](FleetFile& fleet) -> Status {
        const auto raised = raiseAlerts(fleet);
        if (!raised) return fail(raised.error());
        if (raised->raised > 0) tell(counted(raised->raised, "alert") + " raised");
        if (post && raised->any()) post->wake();
        return {};
    };
}

int run(FollowCommand& command) {
    FollowOptions& options = command.options;
    options.import.cancel = cancelledBySignals();
    const auto fleet = openFleet(command.fleet, true);
    if (!fleet) return kCouldNotRun;
    if (command.settleSeconds >= 0) options.settle = millisecondsOf(command.settleSeconds);
    options.patience = millisecondsOf(command.waitSeconds);
    options.lookEvery = millisecondsOf(command.lookSeconds);
    options.import.refused = tellRefused;
    if (command.tellAcknowledged) options.import.acknowledged = tellTaken;
    options.say = [](const std::string& sentence) { tell("note: " + oneLine(sentence, 2000)); };
    options.progress = followProgress();
    options.afterwards = alertsOf(command.fleet, !options.once);
    const auto report = follow(*fleet, command.folder, options);
    if (!report) return couldNotRun(report.error());
    const std::string counts = countsOf(*report);
    command.tellAcknowledged ? tell(counts) : print(counts + "\n");
    if (options.once) tellWaitingAlerts(*fleet);
    if (report->cancelled) {
        tell("stopped on request; what was stored stays, start it again and it carries on");
        return kDone;
    }
    return report->refused + report->parked > 0 ? kRefusedSome : kDone;
}

}  // namespace

void addFollowCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<FollowCommand>();
    FollowOptions& options = command->options;
    CLI::App* sub =
        app.add_subcommand("follow", "Take recordings in as they arrive in a folder, until stopped");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    sub->add_option("DIR", command->folder, "folder; what lies in it is taken in first")->required();
    sub->add_flag("--recursive", options.recursive, "folders within it as well, also those made later");
    sub->add_flag("--once", options.once, "end when nothing waits any more");
    sub->add_option("--settle", command->settleSeconds,
                    "seconds a file must stand unchanged (2; none where the system tells that it was closed)")
        ->check(CLI::Range(0.0, 86400.0));
    sub->add_option("--wait", command->waitSeconds,
                    "seconds for a file that is not whole yet, or its sidecar, before it is refused (60)")
        ->check(CLI::Range(0.0, 86400.0));
    sub->add_flag("--poll", options.poll, "look again and again, also where the system could tell");
    sub->add_option("--look", command->lookSeconds,
                    "seconds between two looks where the system does not tell (5)")
        ->check(CLI::Range(0.1, 86400.0));
    sub->add_option("--threads", options.import.threads, "workers (all cores)")->check(CLI::Range(1, 256));
    sub->add_option("--batch", options.import.batch, "recordings made safe at once (16)")
        ->check(CLI::Range(1, 1000));
    sub->add_flag("--tell-acknowledged", command->tellAcknowledged,
                  "write each path on stdout, a line each, once its recording is safely in the file");
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
