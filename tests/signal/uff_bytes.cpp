#include "tests/signal/uff_bytes.h"

#include <fmt/format.h>

#include <bit>

#include "tests/signal/sound_bytes.h"

namespace fettle::bytes {

std::string uffHead(const Uff& u, std::size_t values) {
    const long long count = u.count ? u.count : static_cast<long long>(values);
    std::string head = u.description + "\nNONE\n" + u.date + "\nNONE\nNONE\n";
    head += fmt::format("{:5}{:10}{:5}{:10} {:<10}{:10}{:4} {:<10}{:10}{:4}\n", u.type, 0, 0, 0, u.entity,
                        u.node, u.direction, "NONE", 0, 0);
    head += fmt::format("{:10}{:10}{:10}{:13.5E}{:13.5E}{:13.5E}\n", u.ordinate, count, u.spacing, u.least,
                        u.step, 0.0);
    head += fmt::format("{:10}{:5}{:5}{:5} {:<20} {:<20}\n", u.abscissa, 0, 0, 0, "Time", "s");
    head += fmt::format("{:10}{:5}{:5}{:5} {:<20} {:<20}\n", u.quantity, 1, 0, 0, "NONE", u.unit);
    for (int axis = 0; axis < 2; ++axis)
        head += fmt::format("{:10}{:5}{:5}{:5} {:<20} {:<20}\n", 0, 0, 0, 0, "NONE", "NONE");
    return head;
}

std::string uffColumns(const std::vector<double>& values, bool isDouble) {
    std::string text;
    const std::size_t each = isDouble ? 4 : 6;
    for (std::size_t i = 0; i < values.size(); ++i) {
        text += isDouble ? fmt::format("{:20.12E}", values[i]) : fmt::format("{:13.5E}", values[i]);
        if (i % each == each - 1 || i + 1 == values.size()) text += '\n';
    }
    return text;
}

std::string uff(const Uff& u, const std::vector<double>& values) {
    return kUffMark + "    58\n" + uffHead(u, values.size()) + uffColumns(values, u.ordinate == 4) + kUffMark;
}

std::string uff58b(const Uff& u, const std::vector<double>& values, bool bigEndian) {
    std::string raw;
    for (const double value : values) {
        const bool isDouble = u.ordinate == 4;
        const std::uint64_t number = isDouble ? std::bit_cast<std::uint64_t>(value)
                                              : std::bit_cast<std::uint32_t>(static_cast<float>(value));
        raw += bigEndian ? big(number, isDouble ? 8 : 4) : little(number, isDouble ? 8 : 4);
    }
    return kUffMark +
           fmt::format("    58b{:6}{:6}{:12}{:12}{:6}{:6}{:12}{:12}\n", bigEndian ? 2 : 1, 2, 11, raw.size(),
                       0, 0, 0, 0) +
           uffHead(u, values.size()) + raw + kUffMark;
}

}  // namespace fettle::bytes
