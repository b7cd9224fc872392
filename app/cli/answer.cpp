#include "app/cli/answer.h"

#include "app/cli/load.h"
#include "core/diagnosis/settings.h"
#include "core/store/file_probe.h"

namespace fettle {

void printJson(const Json& json) {
    print(json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n");
}

Json headedJson() {
    return {{"schema", 1}, {"engine", WeighingSettings().engine()}};
}

int couldNotRun(const Error& error) {
    tell(error.sentence());
    return kCouldNotRun;
}

void refuse(const Error& error) {
    tell("refused: " + error.sentence());
}

std::string counted(std::size_t count, const std::string& one, const std::string& several) {
    const std::string word = count == 1 ? one : several.empty() ? one + "s" : several;
    return std::to_string(count) + " " + word;
}

bool writeFile(const std::string& path, const std::string& bytes) {
    RealFileSystem files;
    const auto written = files.writeSafely(path, bytes);
    if (!written) tell(written.error().sentence());
    return written.has_value();
}

bool overwritesFleet(const std::string& path, const std::string& fleetPath) {
    if (!isPartOfFleet(path, fleetPath)) return false;
    tell(Error{ErrorKind::Invalid, path, "", "is the fleet file or a part of it and is left as it is"}
             .sentence());
    return true;
}

}  // namespace fettle
