// Why: what files are taken for where neither they nor a sidecar say: rules listed, kept and removed.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>
#include <optional>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/open_fleet.h"
#include "core/base/text.h"
#include "core/fleet/who.h"
#include "core/intake/rules.h"

namespace fettle {

namespace {

struct RulesCommand {
    std::string fleet, keys, by;
    std::optional<std::string> pattern, remove;
    bool json = false;
};

int put(FleetFile& fleet, const RulesCommand& command) {
    const auto rule = readRule(*command.pattern, command.keys);
    if (!rule) return couldNotRun(rule.error());
    const auto done =
        fleet.readingRules().put({0,
                                  rule->pattern,
                                  rule->keys.dump(2, ' ', false, Json::error_handler_t::replace),
                                  {},
                                  orLoginName(command.by)});
    if (!done) return couldNotRun(done.error());
    print("kept " + oneLine(rule->pattern) + "\n");
    return kDone;
}

int removeOne(FleetFile& fleet, const std::string& pattern) {
    const auto all = fleet.readingRules().all();
    if (!all) return couldNotRun(all.error());
    for (const ReadingRuleEntry& rule : *all) {
        if (rule.pattern != pattern) continue;
        if (auto done = fleet.readingRules().remove(rule.id); !done) return couldNotRun(done.error());
        print("removed " + oneLine(pattern) + "\n");
        return kDone;
    }
    return couldNotRun(
        {ErrorKind::NotFound, fleet.path(), oneLine(pattern), "is no rule of this fleet file"});
}

int list(FleetFile& fleet, bool json) {
    const auto all = fleet.readingRules().all();
    if (!all) return couldNotRun(all.error());
    Json out = headedJson();
    out["rules"] = Json::array();
    for (const ReadingRuleEntry& rule : *all) {
        auto keys = parseJson(rule.json, rule.pattern);
        out["rules"].push_back({{"pattern", rule.pattern},
                                {"keys", keys ? std::move(*keys) : Json()},
                                {"created", formatUtc(rule.createdAt)},
                                {"by", rule.by}});
        if (!json) print(fmt::format("{}\t{}\n", oneLine(rule.pattern), out["rules"].back()["keys"].dump()));
    }
    if (json) printJson(out);
    return kDone;
}

int run(const RulesCommand& command) {
    for (const auto& said : {command.pattern, command.remove})
        if (said && trimmed(*said).empty()) {
            tell("rules: --put and --remove need a pattern");
            return kWrongUsage;
        }
    const auto fleet = openFleet(command.fleet, command.pattern || command.remove);
    if (!fleet) return kCouldNotRun;
    if (command.pattern) return put(*fleet, command);
    if (command.remove) return removeOne(*fleet, *command.remove);
    return list(*fleet, command.json);
}

}  // namespace

void addRulesCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<RulesCommand>();
    CLI::App* sub = app.add_subcommand(
        "rules", "What files are taken for where neither they nor a sidecar say: list, keep, remove");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    auto* put =
        sub->add_option("--put", command->pattern,
                        "pattern of the path: * within a name, ** across folders, {machine}, {point}, "
                        "{time_utc} where the name says that");
    auto* keys = sub->add_option("--keys", command->keys, "JSON object with keys of a sidecar")->needs(put);
    put->needs(keys);
    sub->add_option("--by", command->by, "who says so (the login name)")->needs(put);
    auto* remove = sub->add_option("--remove", command->remove, "pattern of the rule to remove");
    auto* json = sub->add_flag("--json", command->json, "one JSON object instead of lines");
    remove->excludes(put);
    json->excludes(put)->excludes(remove);
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
