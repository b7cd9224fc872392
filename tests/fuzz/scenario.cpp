// The sample fleet's data: the scenario and one machine of it.
#include "core/simulate/scenario.h"
#include "core/base/file_system_fake.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

bool scenario(const std::string& bytes) {
    const Halves halves = halvesOf(bytes);
    MemoryFileSystem files;
    files.put("s/scenario.json", halves.first);
    files.put("s/M.json", halves.second);
    return sim::loadScenario(files, "s").has_value();
}

const Listed kScenario("scenario", scenario);

}  // namespace
}  // namespace fettle::fuzz
