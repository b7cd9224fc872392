// A spectrum's blob, and two of them raised into one span.
#include <algorithm>
#include <cmath>

#include "core/store/spectrum_codec.h"
#include "core/store/spectrum_spans.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

unsigned char byteAt(const std::string& lines, std::size_t i) {
    return static_cast<unsigned char>(lines[i]);
}

bool spectrumLines(const std::string& bytes) {
    const std::vector<float> lines = fromQuantised(bytes);
    require(lines.size() == bytes.size(), "a line a byte");
    for (const float line : lines)
        require(std::isfinite(line) && line >= 0, "lines are amplitudes");
    require(quantised(lines) == bytes, "out and in again is the same");

    auto [raised, by] = halvesOf(bytes);
    const std::string before = raised;
    raiseLines(raised, by);
    require(raised.size() == std::max(before.size(), by.size()), "as many lines as the finer one");
    const unsigned char peak =
        by.empty() ? 0 : static_cast<unsigned char>(*std::ranges::max_element(by, {}, [](char c) {
            return static_cast<unsigned char>(c);
        }));
    if (raised.size() == before.size())
        for (std::size_t i = 0; i < before.size(); ++i)
            require(byteAt(raised, i) >= byteAt(before, i), "no line is lowered");
    require(by.empty() ||
                std::ranges::any_of(raised, [&](char c) { return static_cast<unsigned char>(c) >= peak; }),
            "no peak is lost");
    return !lines.empty();
}

const Listed kSpectrumLines("spectrum_lines", spectrumLines);

}  // namespace
}  // namespace fettle::fuzz
