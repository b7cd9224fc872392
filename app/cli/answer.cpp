#include "app/cli/answer.h"

#include "app/cli/load.h"

namespace fettle {

void printJson(const Json& json) {
    print(json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n");
}

int couldNotRun(const Error& error) {
    tell(error.sentence());
    return kCouldNotRun;
}

void refuse(const Error& error) {
    tell("refused: " + error.sentence());
}

bool writeFile(const std::string& path, const std::string& bytes) {
    RealFileSystem files;
    const auto written = files.writeSafely(path, bytes);
    if (!written) tell(written.error().sentence());
    return written.has_value();
}

std::string safeFileName(const std::string& tag) {
    std::string name;
    for (const char c : tag) {
        const bool plain = (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') ||
                           c == '_' || c == '-' || c == '.';
        name += plain ? c : '_';
    }
    if (name.empty() || name[0] == '.' || name[0] == '-') name.insert(0, "_");
    return name;
}

}  // namespace fettle
