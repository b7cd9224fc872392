// Why: whatever is decided or reported carries a name and a moment: of whom the program runs for, and the
// computer's clock. Thread: any.
#pragma once

#include <string>

#include "core/base/time.h"

namespace fettle {

std::string orLoginName(const std::string& name);  // the name given; where empty the user's login name
Instant nowUtc();

}  // namespace fettle
