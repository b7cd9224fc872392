#include "core/store/spectrum_codec.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>

namespace fettle {

namespace {
constexpr double kStepDb = 0.75, kLeast = 1e-6;

std::uint8_t byteOf(float line) {
    if (!(line > 0)) return 0;
    const double step = std::round(20 * std::log10(double(line) / kLeast) / kStepDb) + 1;
    return static_cast<std::uint8_t>(std::clamp(step, 0.0, 255.0));
}

std::array<float, 256> makeTable() {
    std::array<float, 256> table{};
    for (std::size_t byte = 1; byte < table.size(); ++byte)
        table[byte] = static_cast<float>(kLeast * std::pow(10, kStepDb * double(byte - 1) / 20));
    return table;
}
}  // namespace

std::string quantised(std::span<const float> lines) {
    std::string bytes;
    bytes.reserve(lines.size());
    for (const float line : lines)
        bytes += static_cast<char>(byteOf(line));
    return bytes;
}

std::vector<float> fromQuantised(std::string_view bytes) {
    static const std::array<float, 256> table = makeTable();
    std::vector<float> lines;
    lines.reserve(bytes.size());
    for (const char byte : bytes)
        lines.push_back(table[static_cast<unsigned char>(byte)]);
    return lines;
}

}  // namespace fettle
