// Why: findings sheets are drawn by the desktop program, which has the fonts; the command program starts it
// without a window. Thread: one. Errors: NotFound where it was not built, Unwritable where it failed.
#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"

namespace fettle {

// Runs the program `fettle` that lies beside this one with these arguments, and waits. Its words go to
// stderr.
Status runDesktop(const std::vector<std::string>& arguments);

}  // namespace fettle
