// Why: a program to run is typed as one line, in the window and on the command line alike, and no shell reads
// it. Words stand apart by blanks; one with a blank in it stands between double quotes, where \" and \\ stand
// for themselves; or all of them as a JSON list, ["/usr/bin/pass", "show", "my mail"]. Thread: pure
// functions. Errors: Invalid, with `place` before the rule.
#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"

namespace fettle {

// At least one word.
Result<std::vector<std::string>> commandWords(const std::string& text, const std::string& place);
// The line that gives these words again.
std::string commandLine(const std::vector<std::string>& words);

}  // namespace fettle
