#include "core/fleet/register_csv.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

std::vector<Json> rowsOf(const std::string& text) {
    std::vector<Json> rows;
    const auto machines = machinesOfCsv(text, "register.csv");
    if (!machines) return rows;
    for (const CsvMachine& machine : *machines) {
        if (machine.json.empty()) continue;
        auto json = parseJson(machine.json, "row");
        require(json.has_value(), "a row becomes JSON");
        rows.push_back(std::move(*json));
    }
    return rows;
}

bool registerCsv(const std::string& bytes) {
    const auto once = rowsOf(bytes);
    if (once.empty()) return false;
    const auto twice = rowsOf(machinesAsCsv(once));
    require(twice.size() == once.size(), "as many machines come back");
    for (std::size_t i = 0; i < once.size(); ++i)
        require(nlohmann::json(once[i]) == nlohmann::json(twice[i]), "out and in again is the same register");
    return true;
}

const Listed kRegisterCsv("register_csv", registerCsv);

}  // namespace
}  // namespace fettle::fuzz
