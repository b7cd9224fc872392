// Why: a line is judged by how far it stands above its own neighbourhood, so that a coloured spectrum becomes
// an even one. Source: running median by moving histogram, Huang, Yang and Tang, IEEE Trans. ASSP 27 (1979)
// 13-18; the median of an exponentially distributed power is ln 2 times its mean. Resolution: powers are
// counted in buckets of 2^-7 of an octave's mantissa (at most 0.07 dB wide).
#pragma once

#include <cstddef>
#include <span>

namespace fettle {

// out[k] = power[k] over (sliding median of power, width bins about k) / ln 2. At the ends the window is what
// there is of it. Powers must be finite and >= 0; where the median is 0 out is 0. `out` has the size of
// `power`.
void overLocalFloor(std::span<const float> power, std::size_t width, std::span<float> out);

}  // namespace fettle
