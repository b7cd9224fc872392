#include "core/base/file_name.h"

#include "core/base/text.h"

namespace fettle {

namespace {
constexpr std::size_t kMostBytes = 180;  // of 255: the rest is for a number and an ending
}

std::string fileNameFrom(std::string_view text, std::set<std::string>& used) {
    std::string name = oneLine(text, kMostBytes);
    for (char& c : name)
        if (std::string_view("/\\:*?\"<>|").find(c) != std::string_view::npos) c = '_';
    if (name.empty() || name[0] == '.' || name[0] == '-') name.insert(0, "_");
    std::string free = name;
    for (int number = 2; !used.insert(free).second; ++number)
        free = name + "_" + std::to_string(number);
    return free;
}

}  // namespace fettle
