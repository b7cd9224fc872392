// Why: what is told between two rounds: the alerts listed and acknowledged, rules and delivery set, the rules
// asked and what is due sent.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>

#include "app/cli/alert_settings.h"
#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/long_work.h"
#include "app/cli/open_fleet.h"
#include "core/base/text.h"
#include "core/fleet/alert_post.h"
#include "core/fleet/alert_preview.h"
#include "core/fleet/alert_text.h"
#include "core/fleet/alerts.h"
#include "core/store/day.h"

namespace fettle {

namespace {

constexpr std::size_t kToldMessages = 50;

struct AlertsCommand {
    std::string fleet, by, why, asOf, machine;
    std::int64_t acknowledge = 0;
    AlertRuleOptions rule;
    AlertWayOptions ways;
    bool all = false, json = false, rules = false, settings = false, test = false, runNow = false,
         allow = false;

    bool sets() const { return acknowledge || rule.name || rule.remove || ways.any() || allow; }
    bool writes() const { return sets() || test || (runNow && asOf.empty()); }
};

Json alertsJson(const std::vector<Alert>& alerts, const std::vector<AlertMessage>& messages) {
    Json json = headedJson();
    json["alerts"] = Json::array();
    for (const Alert& alert : alerts)
        json["alerts"].push_back(toJson(alert));
    json["messages"] = Json::array();
    for (const AlertMessage& message : messages)
        json["messages"].push_back(toJson(message));
    return json;
}

void tellUnsent(const std::vector<AlertMessage>& messages) {
    for (const AlertMessage& message : messages)
        if (!message.sent && !message.error.empty())
            tell(fmt::format("not sent yet, {} after {}: {}; next try {}", oneLine(message.way),
                             counted(std::size_t(message.attempts), "try", "tries"), oneLine(message.error),
                             formatUtc(message.nextTry)));
}

int listAlerts(FleetFile& fleet, const AlertsCommand& command) {
    const auto alerts = fleet.alerts().alerts(command.all, command.machine);
    if (!alerts) return couldNotRun(alerts.error());
    const auto messages = fleet.alerts().newestMessages(kToldMessages);
    if (!messages) return couldNotRun(messages.error());
    if (command.json) {
        printJson(alertsJson(*alerts, *messages));
        return kDone;
    }
    if (alerts->empty()) print("no alert stands\n");
    for (const Alert& alert : *alerts)
        print(lineOf(alert) + "\n");
    tellUnsent(*messages);
    return kDone;
}

int listRules(FleetFile& fleet, bool json) {
    const auto rules = fleet.alerts().rules();
    if (!rules) return couldNotRun(rules.error());
    Json out = headedJson();
    out["rules"] = Json::array();
    for (const AlertRule& rule : *rules) {
        out["rules"].push_back(toJson(rule));
        if (!json)
            print(fmt::format("{}: {}; {}{}\n", oneLine(rule.name), wordsOf(rule), rule.deliver,
                              rule.enabled ? "" : ", off"));
    }
    if (json) printJson(out);
    return kDone;
}

int showSettings(FleetFile& fleet) {
    const auto ways = alertWays(fleet);
    if (!ways) return couldNotRun(ways.error());
    const auto allowed = deliveryAllowed(fleet);
    if (!allowed) return couldNotRun(allowed.error());
    const auto json = parseJson(toText(*ways), "");
    Json out = headedJson();
    out["delivery"] = json ? *json : Json();
    out["allowed_here"] = *allowed;
    printJson(out);
    return kDone;
}

// A rule may come before its machine; one that is misspelt would never alert.
Status tellUnknownScope(FleetFile& fleet, const AlertRule& rule) {
    const auto machines = fleet.machines().all();
    if (!machines) return fail(machines.error());
    const auto none = [&](const std::string& wanted, std::string MachineEntry::*field) {
        return !wanted.empty() && std::none_of(machines->begin(), machines->end(),
                                               [&](const MachineEntry& m) { return m.*field == wanted; });
    };
    if (none(rule.machine, &MachineEntry::tag))
        tell(fmt::format("note: machine {} is not in the register", oneLine(rule.machine)));
    if (none(rule.area, &MachineEntry::area))
        tell(fmt::format("note: no machine of the register is in area {}", oneLine(rule.area)));
    return {};
}

Status setRule(FleetFile& fleet, const AlertRuleOptions& options) {
    const auto rules = fleet.alerts().rules();
    if (!rules) return fail(rules.error());
    const AlertRule rule = options.over(*rules);
    if (auto good = checkAlertRule(rule); !good) return good;
    if (auto good = fleet.alerts().putRule(rule); !good) return good;
    return tellUnknownScope(fleet, rule);
}

Status set(FleetFile& fleet, const AlertsCommand& command) {
    if (command.acknowledge)
        if (auto good = acknowledgeAlert(fleet, command.acknowledge, command.by, command.why, nowUtc());
            !good)
            return good;
    if (command.rule.remove)
        if (auto good = fleet.alerts().removeRule(*command.rule.remove); !good) return good;
    if (command.rule.name)
        if (auto good = setRule(fleet, command.rule); !good) return good;
    if (command.ways.any()) {
        auto ways = alertWays(fleet);
        if (ways && ways->any() && !command.allow) {
            const auto allowed = deliveryAllowed(fleet);
            if (!allowed) return fail(allowed.error());
            if (!*allowed)
                return fail(ErrorKind::Invalid, fleet.path(), "alert delivery",
                            "was set by another user or on another computer: look at it with --settings, and "
                            "add --allow-delivery to send from here");
        }
        if (!ways && !command.ways.setsAnew()) return fail(ways.error());
        if (!ways) ways = AlertWays();
        if (auto good = command.ways.applyTo(*ways); !good) return good;
        if (auto good = setAlertWays(fleet, *ways); !good) return good;
    }
    return command.allow ? allowDelivery(fleet) : Status{};
}

int tellFailures(const std::vector<DeliveryFailure>& failures) {
    for (const DeliveryFailure& failure : failures)
        tell(fmt::format("refused: {}: {}", oneLine(failure.way), oneLine(failure.why)));
    return failures.empty() ? kDone : kRefusedSome;
}

int test(FleetFile& fleet) {
    const auto failures = sendTest(fleet, cancelledBySignals());
    if (!failures) return couldNotRun(failures.error());
    if (failures->empty()) print("the test was taken everywhere\n");
    return tellFailures(*failures);
}

// Of a moment of the past nothing is written or sent: only what would have been is told.
int previewRules(FleetFile& fleet, const AlertsCommand& command) {
    const auto asOf = parseUtc(command.asOf);
    if (!asOf)
        return couldNotRun({ErrorKind::Invalid, "--as-of", "", "is a moment as in 2026-05-04T06:20:00Z"});
    const auto preview = previewAlerts(fleet, *asOf);
    if (!preview) return couldNotRun(preview.error());
    if (command.json) {
        Json out = headedJson();
        out["as_of"] = formatUtc(preview->asOf);
        out["machines"] = preview->machines;
        out["would_tell"] = Json::array();
        for (const PreviewedAlert& one : preview->alerts)
            out["would_tell"].push_back(toJson(one));
        printJson(out);
        return kDone;
    }
    print(fmt::format("{} looked at as of {}: {} would have been told; nothing is sent, nothing is kept\n",
                      counted(preview->machines, "machine"), formatUtc(preview->asOf),
                      counted(preview->alerts.size(), "alert")));
    for (const PreviewedAlert& one : preview->alerts)
        print(lineOf(one) + "\n");
    return kDone;
}

int runRules(FleetFile& fleet, const AlertsCommand& command) {
    const auto raised = raiseAlerts(fleet, {AlertRun::Which::All, {}, cancelledBySignals()});
    if (!raised) return couldNotRun(raised.error());
    const auto sent = deliverAlerts(fleet, {}, cancelledBySignals());
    if (!sent) return couldNotRun(sent.error());
    if (command.json) {
        Json out = headedJson();
        out["machines"] = raised->machines;
        out["raised"] = raised->raised;
        out["grown"] = raised->grown;
        out["ended"] = raised->ended;
        out["sent"] = sent->sent;
        out["waiting"] = sent->waiting;
        printJson(out);
    } else
        print(fmt::format("{} looked at, {} raised, {} grown, {} ended, {} sent, {} waiting\n",
                          counted(raised->machines, "machine"), counted(raised->raised, "alert"),
                          raised->grown, raised->ended, counted(sent->sent, "message"), sent->waiting));
    return tellFailures(sent->failures);
}

int runAlerts(const AlertsCommand& command) {
    if (command.acknowledge && trimmed(command.why).empty()) {
        tell("alerts: --acknowledge needs --why: what was seen or done");
        return kWrongUsage;
    }
    for (const auto& name : {command.rule.name, command.rule.remove})
        if (name && trimmed(*name).empty()) {
            tell("alerts: --rule and --remove-rule need the name of a rule");
            return kWrongUsage;
        }
    const auto fleet = openFleet(command.fleet, command.writes());
    if (!fleet) return kCouldNotRun;
    if (command.sets())
        if (auto done = set(*fleet, command); !done) return couldNotRun(done.error());
    if (command.test) return test(*fleet);
    if (command.runNow)
        return command.asOf.empty() ? runRules(*fleet, command) : previewRules(*fleet, command);
    if (command.settings || command.ways.any()) return showSettings(*fleet);
    if (command.rules || command.rule.name || command.rule.remove) return listRules(*fleet, command.json);
    return listAlerts(*fleet, command);
}

}  // namespace

void addAlertsCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<AlertsCommand>();
    CLI::App* sub =
        app.add_subcommand("alerts", "What is told between rounds: list, acknowledge, rules, delivery");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    sub->add_flag("--all", command->all, "cleared ones too");
    sub->add_option("--of-machine", command->machine, "of this machine alone");
    auto* acknowledge =
        sub->add_option("--acknowledge", command->acknowledge, "somebody has seen to this alert")
            ->check(CLI::PositiveNumber);
    sub->add_option("--by", command->by, "who (the login name)")->needs(acknowledge);
    sub->add_option("--why", command->why, "what was seen or done")->needs(acknowledge);
    sub->add_flag("--rules", command->rules, "list the rules");
    sub->add_flag("--settings", command->settings, "show where alerts go");
    sub->add_flag("--allow-delivery", command->allow,
                  "let this user on this computer send what the fleet file says");
    sub->add_flag("--test", command->test, "send a message that says it is a test");
    auto* run =
        sub->add_flag("--run", command->runNow, "ask the rules of every machine and send what is due");
    sub->add_option(
           "--as-of", command->asOf,
           "with --run: only list what would have been told at this moment (UTC); nothing is sent or kept")
        ->needs(run);
    sub->add_flag("--json", command->json, "one JSON object instead of lines");
    addRuleOptions(*sub, command->rule);
    addWayOptions(*sub, command->ways);
    sub->callback([command, &status] { status = runAlerts(*command); });
}

}  // namespace fettle
