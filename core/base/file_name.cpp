#include "core/base/file_name.h"

namespace fettle {

std::string fileNameFrom(std::string_view text, std::set<std::string>& used) {
    std::string name(text);
    for (char& c : name)
        if ((c >= 0 && c < 32) || std::string_view("/\\:*?\"<>|").find(c) != std::string_view::npos) c = '_';
    if (name.empty() || name[0] == '.' || name[0] == '-') name.insert(0, "_");
    std::string free = name;
    for (int number = 2; !used.insert(free).second; ++number)
        free = name + "_" + std::to_string(number);
    return free;
}

}  // namespace fettle
