// Why: a room that looks into a room it should not know makes every later change cost more. The table of
// allowed arrows is written once, in arrows.cpp, and held against every #include of core, ui and app. Errors:
// a broken rule comes back as one sentence without the file's name; no sentence, no fault. Thread: any, it
// holds no state.
#pragma once

#include <optional>
#include <string>

#include "tests/house/source_tree.h"

namespace fettle::house {

// "core/dsp/fft.cpp" lives in "core/dsp", "ui/window/main.cpp" in "ui/window"; nothing for a file in no room.
std::optional<std::string> roomOf(const std::string& path);

std::optional<std::string> brokenRule(const std::string& path, const Include& include);

}  // namespace fettle::house
