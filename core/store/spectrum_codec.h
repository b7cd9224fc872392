// Why: a waterfall of a year holds millions of lines; one byte a line in steps of 0.75 dB is finer than its
// colours. Byte 0: nothing; else 1e-6 x 10^(0.0375 (byte - 1)) of the unit, from 1e-6 to 3.3e3. Error at most
// 0.375 dB within that range; what is larger stays at the top. Thread: any.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace fettle {

std::string quantised(std::span<const float> lines);
std::vector<float> fromQuantised(std::string_view bytes);

}  // namespace fettle
