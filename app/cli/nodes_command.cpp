// Why: what the grid and gravity say of the nodes: wrong sample rates and clocks, how each sits, when it was
// knocked. A table of all, with what is against each below it.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/open_fleet.h"
#include "core/base/text.h"
#include "core/fleet/nodes.h"
#include "core/trend/daily.h"

namespace fettle {

namespace {

struct NodesCommand {
    std::string fleet, until;
    int days = 7;
    bool json = false;
};

Json rateJson(const std::optional<RateError>& rate) {
    if (!rate) return Json();
    return {{"error_pct", rate->error * 100},
            {"plus_minus_pct", rate->plusMinus * 100},
            {"off", rate->off},
            {"readings", rate->readings},
            {"neighbours", rate->neighbours},
            {"within_min", rate->neighbours ? Json(rate->within.count()) : Json()},
            {"since", rate->since ? Json(formatDate(startOfDay(*rate->since))) : Json()},
            {"since_first", rate->sinceFirst}};
}

Json clockJson(const std::optional<ClockError>& clock) {
    if (!clock) return Json();
    return {{"ahead_min", clock->ahead.count()},
            {"likeness", clock->likeness},
            {"likeness_as_stated", clock->asStated},
            {"readings", clock->readings}};
}

Json poseJson(const NodePose& pose) {
    Json moves = Json::array();
    for (const PoseMove& move : pose.moves)
        moves.push_back({{"before", formatUtc(move.before)},
                         {"after", formatUtc(move.after)},
                         {"degrees", move.degrees},
                         {"was_g", move.was},
                         {"now_g", move.now}});
    return {{"felt", pose.felt},
            {"mean_g", pose.g},
            {"words", pose.words},
            {"misfit", pose.misfit.empty() ? Json() : Json(pose.misfit)},
            {"moves", moves}};
}

Json nodeJson(const NodeAnswer& node) {
    return {{"machine", node.machine},
            {"point", node.point},
            {"at", node.at},
            {"node", node.node.empty() ? Json() : Json(node.node)},
            {"recordings", node.recordings},
            {"rate", rateJson(node.grid.rate)},
            {"no_rate_why", node.noGrid.empty() ? Json() : Json(node.noGrid)},
            {"clock", clockJson(node.grid.clock)},
            {"gravity", poseJson(node.pose)},
            {"doubts", node.doubts}};
}

std::string rateText(const NodeAnswer& node) {
    if (!node.grid.rate) return "rate not told: " + node.noGrid;
    const RateError& rate = *node.grid.rate;
    const std::string by = rate.neighbours ? counted(rate.neighbours, "neighbour") : "the grid's name";
    return fmt::format("rate {:+.2f} +- {:.2f} % by {}", rate.error * 100, rate.plusMinus * 100, by);
}

std::string nodeText(const NodeAnswer& node, const Period& period) {
    std::string text =
        fmt::format("{:<12} {:<8} {:<6} {}; {}\n", oneLine(node.machine, 30), oneLine(node.point, 20),
                    node.node.empty() ? "-" : oneLine(node.node, 12), rateText(node), node.pose.words);
    for (const std::string& doubt : node.doubts)
        text += "   ! " + oneLine(doubt, 400) + "\n";
    for (const PoseMove& move : node.pose.moves) {
        const std::string words = movedWords(move, period);
        const bool said = std::any_of(node.doubts.begin(), node.doubts.end(), [&](const std::string& doubt) {
            return doubt.find(words) != std::string::npos;
        });
        if (!said) text += "   " + words + "\n";
    }
    return text;
}

int run(const NodesCommand& command) {
    const auto fleet = openFleet(command.fleet, false);
    if (!fleet) return kCouldNotRun;
    const auto all = nodesOf(*fleet, command.until, command.days);
    if (!all) return couldNotRun(all.error());
    if (command.json) {
        Json nodes = Json::array();
        for (const NodeAnswer& node : all->nodes)
            nodes.push_back(nodeJson(node));
        Json answer = headedJson();
        answer["from"] = all->period.firstDay;
        answer["until"] = all->period.lastDay;
        answer["nodes"] = std::move(nodes);
        printJson(answer);
        return kDone;
    }
    std::size_t doubtful = 0;
    for (const NodeAnswer& node : all->nodes)
        doubtful += !node.doubts.empty();
    print(fmt::format("Nodes {} to {}: {}, {} to see to\n", all->period.firstDay, all->period.lastDay,
                      counted(all->nodes.size(), "node"), doubtful));
    for (const NodeAnswer& node : all->nodes)
        print(nodeText(node, all->period));
    return kDone;
}

}  // namespace

void addNodesCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<NodesCommand>();
    CLI::App* sub = app.add_subcommand("nodes", "What the grid and gravity say of the sensors");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    sub->add_option("--until", command->until, "last day asked (of the newest recording)");
    sub->add_option("--days", command->days, "so many days to it")
        ->check(CLI::Range(1, 400))
        ->capture_default_str();
    sub->add_flag("--json", command->json, "one JSON object instead of lines");
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
