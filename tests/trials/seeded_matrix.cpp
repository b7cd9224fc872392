// Every kind of fault the simulator knows, at four severities, three noise levels and every kind of node,
// each a week after sound ones, as the round tells it: what is named, what is named instead, and what the
// blind spots had said.
#include <fmt/format.h>
#include <unistd.h>

#include <filesystem>

#include "tests/trials/seeded_cells.h"
#include "tests/trials/seeded_matrix_table.h"
#include "tests/trials/trials.h"

namespace fettle::trials {

namespace {

Told toldOf(const MatrixBench& bench, const BenchOrder& order, const SeededCell& cell) {
    Told told;
    told.kind = cell.kind;
    told.at = cell.at;
    told.node = order.node;
    told.noise = order.noiseFactor;
    told.severity = cell.severity;
    const CellVerdict said = bench.weekWith(conditionsOf(cell), keyOf(cell));
    read(said, told);
    return told;
}

std::vector<Told> tell(const sim::Scenario& scenario, const SeededBenches& benches,
                       const std::string& folder) {
    const std::vector<std::pair<BenchOrder, std::vector<SeededCell>>> all(benches.begin(), benches.end());
    std::vector<std::vector<Told>> told(all.size());
    onAllCores(all.size(), [&](std::size_t i) {
        const auto& [order, cells] = all[i];
        const MatrixBench bench(scenario, order, folder);
        for (const SeededCell& cell : cells) {
            told[i].push_back(toldOf(bench, order, cell));
            told[i].back().machine = scenario.machines[order.like].machine.tag;
        }
    });
    std::vector<Told> flat;
    for (const auto& some : told)
        flat.insert(flat.end(), some.begin(), some.end());
    return flat;
}

}  // namespace

int seededMatrix(const Arguments& arguments) {
    const auto scenario = sampleScenario(textAfter(arguments, "--scenario", "sample_fleet"));
    SeededBenches benches = seededBenches(scenario, textAfter(arguments, "--kinds", ""),
                                          numberAfter(arguments, "--upper", 0) > 0 ? kUpper : 0);
    thin(benches, std::size_t(numberAfter(arguments, "--cells", 0)));
    const auto folder = std::filesystem::temp_directory_path() / fmt::format("fettle-matrix-{}", getpid());
    std::filesystem::create_directories(folder);
    const std::vector<Told> told = tell(scenario, benches, folder.string());
    std::filesystem::remove_all(folder);
    printMatrix(told);
    const long list = numberAfter(arguments, "--list", 0);
    if (list > 0) printMissed(told, list == 2, list > 2);
    return 0;
}

}  // namespace fettle::trials
