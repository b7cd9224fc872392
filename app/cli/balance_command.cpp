// Why: a balancing kept as a document (as the fleet file keeps it) is computed without a window: masses,
// where they go, what is left against the grade, and every remark at its value.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "core/base/file_system.h"
#include "core/base/text.h"
#include "core/workshop/balance_solve.h"
#include "core/workshop/unbalance.h"

namespace fettle {

namespace {

struct BalanceCommand {
    std::string file;
    bool json = false;
};

const char* kindOf(const BalanceRemark& remark) {
    const char* names[] = {"missing", "doubt", "refusal"};
    return names[int(remark.kind)];
}

Json polarJson(const Polar& polar, const char* amount) {
    return {{amount, polar.amount}, {"degrees", polar.degrees}};
}

template <class Value>
Json orNull(const std::optional<Value>& value) {
    return value ? Json(*value) : Json();
}

Json planeJson(const PlaneAnswer& plane, bool solved) {
    Json split = Json::array();
    for (const PlacedMass& one : plane.split.masses) {
        Json mass = polarJson(one.mass, "mass_g");
        mass["place"] = one.place > 0 ? Json(one.place) : Json();
        split.push_back(std::move(mass));
    }
    return {{"fit", solved ? polarJson(plane.toFit, "mass_g") : Json()},
            {"split", split},
            {"left_over", polarJson(plane.split.leftOver, "mass_g")},
            {"instead", plane.instead ? polarJson(*plane.instead, "mass_g") : Json()},
            {"trial_most_g", orNull(plane.trialMostG)},
            {"unbalance_as_found_g_mm", solved ? Json(plane.initialGmm) : Json()},
            {"permissible_g_mm", orNull(plane.permissibleGmm)},
            {"residual_g_mm", orNull(plane.residualGmm)},
            {"trim", plane.trim ? polarJson(*plane.trim, "mass_g") : Json()}};
}

Json sensorJson(const SensorAnswer& sensor) {
    const auto read = [](const std::optional<Polar>& one) {
        return one ? polarJson(*one, "amount") : Json();
    };
    return {{"initial", read(sensor.initial)},
            {"predicted", read(sensor.predicted)},
            {"check", read(sensor.check)}};
}

Json answerJson(const BalanceJob& job, const BalanceAnswer& answer) {
    Json planes = Json::array(), sensors = Json::array(), remarks = Json::array();
    for (const PlaneAnswer& plane : answer.planes)
        planes.push_back(planeJson(plane, answer.solved));
    for (const SensorAnswer& sensor : answer.sensors)
        sensors.push_back(sensorJson(sensor));
    for (const BalanceRemark& remark : answer.remarks)
        remarks.push_back({{"kind", kindOf(remark)}, {"place", remark.place}, {"words", remark.words}});
    Json json = headedJson();
    json["name"] = job.name;
    json["solved"] = answer.solved;
    json["method"] = toText(job.method);
    json["unit"] = job.unit;
    json["planes"] = std::move(planes);
    json["sensors"] = std::move(sensors);
    json["offset_um"] = orNull(answer.offsetUm);
    json["permissible_g_mm"] = orNull(answer.permissibleGmm);
    json["condition"] = answer.condition <= 1e9 ? Json(answer.condition) : Json();
    json["circles_miss_share"] = answer.circles ? Json(answer.circles->missShare) : Json();
    json["within_grade"] = orNull(answer.withinGrade);
    json["remarks"] = std::move(remarks);
    return json;
}

std::string massText(const Polar& mass) {
    return fmt::format("{:.4g} g at {:.1f} degrees", mass.amount, mass.degrees);
}

std::string planeText(const BalancePlane& plane, const PlaneAnswer& answer) {
    std::string text = fmt::format("{}: fit {}\n", oneLine(plane.name), massText(answer.toFit));
    for (const PlacedMass& one : answer.split.masses)
        if (one.place > 0) text += fmt::format("  place {:>3}: {}\n", one.place, massText(one.mass));
    if (answer.split.leftOver.amount > 0)
        text += fmt::format("  left over: {}\n", massText(answer.split.leftOver));
    if (answer.residualGmm)
        text += fmt::format("  residual {:.4g} g mm, permissible {}\n", *answer.residualGmm,
                            answer.permissibleGmm ? fmt::format("{:.4g} g mm", *answer.permissibleGmm)
                                                  : std::string("not known"));
    return text;
}

int run(const BalanceCommand& command) {
    const auto text = RealFileSystem().read(command.file);
    if (!text) return couldNotRun(text.error());
    const auto job = readBalance(*text, command.file);
    if (!job) return couldNotRun(job.error());
    const BalanceAnswer answer = solveBalance(*job);
    if (command.json) {
        printJson(answerJson(*job, answer));
    } else {
        for (std::size_t p = 0; answer.solved && p < answer.planes.size(); ++p)
            print(planeText(job->planes[p], answer.planes[p]));
        for (const BalanceRemark& remark : answer.remarks)
            print(fmt::format("{}: {}: {}\n", kindOf(remark), remark.place, oneLine(remark.words)));
    }
    return answer.solved ? kDone : kRefusedSome;
}

}  // namespace

void addBalanceCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<BalanceCommand>();
    CLI::App* sub = app.add_subcommand("balance", "Compute a balancing from its document");
    sub->add_option("FILE", command->file, "document of a balancing (JSON)")->required();
    sub->add_flag("--json", command->json, "one JSON object instead of lines");
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
