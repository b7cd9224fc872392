// Why: the speeds an inverter machine had better skip, from what the fleet file keeps anyway.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/open_fleet.h"
#include "core/base/text.h"
#include "core/fleet/resonance_desk.h"

namespace fettle {

namespace {

struct ResonanceCommand {
    std::string fleet, machine;
    int days = kResonanceDays;
    bool json = false;
};

std::string textOf(const ResonanceMap& map) {
    if (!map.lacking.empty()) return map.lacking + "\n";
    std::string text = fmt::format("{} between {:.0f} and {:.0f} r/min\n",
                                   counted(map.recordings, "recording"), map.leastRpm, map.mostRpm);
    for (const SkipBand& band : map.bands)
        text += fmt::format(
            "  {:.0f} to {:.0f} r/min: order {} meets {:.1f} Hz, up {:.1f} dB, {:.3f} mm/s; {}, "
            "{}, {}{}\n",
            band.fromRpm, band.toRpm, band.order, band.hz, band.riseDb, band.level,
            counted(band.recordings, "recording"), counted(band.orders, "order"),
            counted(band.channels, "channel"), band.small ? "; hardly worth skipping" : "");
    if (map.bands.empty()) text += "  no order grows where it meets a fixed frequency\n";
    for (const FixedLine& line : map.fixed)
        text += fmt::format("  {:.1f} Hz at {} stays whatever the speed: mains or a neighbour\n", line.hz,
                            oneLine(line.channel));
    for (const std::string& one : map.unseen)
        text += "  cannot say: " + one + "\n";
    return text;
}

int run(const ResonanceCommand& command) {
    const auto fleet = openFleet(command.fleet, false);
    if (!fleet) return kCouldNotRun;
    const auto found = resonanceOf(*fleet, command.machine, command.days);
    if (!found) return couldNotRun(found.error());
    if (command.json) {
        Json json = headedJson();
        json["machine"] = command.machine;
        json.update(toJson(*found));
        printJson(json);
    } else
        print(textOf(found->map));
    return kDone;
}

}  // namespace

void addResonanceCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<ResonanceCommand>();
    CLI::App* sub = app.add_subcommand("resonance", "Speeds an inverter machine had better skip");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    sub->add_option("--machine", command->machine, "tag")->required();
    sub->add_option("--days", command->days, "so many days up to the newest recording")
        ->check(CLI::Range(1, 4000))
        ->capture_default_str();
    sub->add_flag("--json", command->json, "one JSON object instead of the text");
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
