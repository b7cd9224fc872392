// Why: what is old is thinned by rules, listed first and only then carried out. Without --apply nothing is
// changed, rules given with --set included: a file of an older form is read as it is, by the rules it will
// have. Words that would change nothing are refused, never passed over.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/long_work.h"
#include "app/cli/open_fleet.h"
#include "app/cli/retention_answer.h"

namespace fettle {

namespace {

struct RetentionCommand {
    std::string fleet, by;
    std::vector<std::string> set;
    bool apply = false, compact = false, json = false;
};

Status list(FleetFile& fleet, const RetentionCommand& command, const RetentionRules& rules, Json& answer) {
    const auto plan = planRetention(fleet, rules, progressOnStderr(), cancelledBySignals());
    if (!plan) return fail(plan.error());
    answer["plan"] = toJson(*plan);
    if (!command.json) print(inWords(*plan));
    return {};
}

Status applyTo(FleetFile& fleet, const RetentionCommand& command, const RetentionRules& rules, Json& answer) {
    if (auto good = fleet.retention().setRules(rules); !good) return good;
    RetentionOptions options;
    options.by = command.by;
    options.progress = progressOnStderr();
    options.cancel = cancelledBySignals();
    const auto done = applyRetention(fleet, options);
    if (!done) return fail(done.error());
    answer["done"] = toJson(*done);
    if (!command.json) print(inWords(*done));
    if (!done->cancelled) return {};
    return fail(ErrorKind::Cancelled, fleet.path(), "", "stopped on request; start it again for the rest");
}

Status compact(FleetFile& fleet, const RetentionCommand& command, Json& answer) {
    const auto before = fleet.retention().space();
    if (!before) return fail(before.error());
    if (auto good = fleet.retention().compact(cancelledBySignals()); !good) return good;
    const auto after = fleet.retention().space();
    if (!after) return fail(after.error());
    answer["compacted"] = {{"bytes_before", before->bytes}, {"bytes_after", after->bytes}};
    if (!command.json)
        print(fmt::format("compacted from {} to {}\n", bytesInWords(double(before->bytes)),
                          bytesInWords(double(after->bytes))));
    return {};
}

// What goes, then what was asked for.
Status answer(FleetFile& fleet, const RetentionCommand& command, const RetentionRules& rules, Json& all) {
    if (command.apply || !command.compact)
        if (auto good = list(fleet, command, rules, all); !good) return good;
    if (command.apply)
        if (auto good = applyTo(fleet, command, rules, all); !good) return good;
    if (command.compact) return compact(fleet, command, all);
    if (!command.apply && !command.json) print("nothing was changed: --apply carries it out\n");
    return {};
}

// Why these words say nothing together; empty: they do.
std::string idleWord(const RetentionCommand& command) {
    if (command.apply) return {};
    if (command.compact && !command.set.empty())
        return "--compact keeps no rule and lists nothing, so --set does nothing beside it: add --apply, or "
               "leave one of them out";
    if (!command.by.empty()) return "--by says who thins, and nothing is thinned without --apply";
    return {};
}

int run(const RetentionCommand& command) {
    if (const std::string idle = idleWord(command); !idle.empty()) {
        tell(idle);
        return kWrongUsage;
    }
    const auto fleet =
        command.apply || command.compact ? openFleet(command.fleet, true) : openFleetOfAnyForm(command.fleet);
    if (!fleet) return kCouldNotRun;
    auto rules = fleet->retention().rules();
    if (!rules) return couldNotRun(rules.error());
    for (const std::string& one : command.set)
        if (const auto good = setRule(*rules, one); !good) {
            tell(good.error().sentence());
            return kWrongUsage;
        }
    if (const auto good = checkRules(*rules); !good) {
        tell(good.error().sentence());
        return kWrongUsage;
    }
    Json all = headedJson();
    const auto done = answer(*fleet, command, *rules, all);
    if (command.json && (done || all.contains("done"))) printJson(all);
    return done ? kDone : couldNotRun(done.error());
}

}  // namespace

void addRetentionCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<RetentionCommand>();
    CLI::App* sub =
        app.add_subcommand("retention", "List what the rules of retention would thin, and carry it out");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    sub->add_option("--set", command->set,
                    "KEY=DAYS: waveforms, spectra or examinations, a dot, and all, daily or weekly; days or "
                    "ever (waveforms.daily=90); may be given several times; kept with --apply")
        ->type_name("KEY=DAYS")
        ->allow_extra_args(false);
    sub->add_flag("--apply", command->apply, "carry out what is listed; what goes is gone");
    sub->add_flag("--compact", command->compact,
                  "write the file anew without its free space; needs twice its room for a while");
    sub->add_option("--by", command->by, "who does it, with --apply (login name)");
    sub->add_flag("--json", command->json, "one JSON object instead of lines");
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
