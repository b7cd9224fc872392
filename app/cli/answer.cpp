#include "app/cli/answer.h"

#include <fmt/format.h>

#include "app/cli/load.h"
#include "core/diagnosis/settings.h"
#include "core/store/file_probe.h"

namespace fettle {

namespace {

// JSON escapes the control characters below 32; a terminal takes orders from DEL and those of Latin-1 as
// well.
std::string withoutOrders(const std::string& json) {
    std::string out;
    out.reserve(json.size());
    for (std::size_t i = 0; i < json.size(); ++i) {
        const auto byte = static_cast<unsigned char>(json[i]);
        const auto next = static_cast<unsigned char>(i + 1 < json.size() ? json[i + 1] : 0);
        if (byte == 0x7f)
            out += "\\u007f";
        else if (byte == 0xc2 && next >= 0x80 && next < 0xa0)
            out += fmt::format("\\u{:04x}", (++i, unsigned(next)));
        else
            out += json[i];
    }
    return out;
}

}  // namespace

void printJson(const Json& json) {
    print(withoutOrders(json.dump(2, ' ', false, Json::error_handler_t::replace)) + "\n");
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
