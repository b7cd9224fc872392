// Why: whatever is decided or reported carries a name: that of whom the program runs for, where no other is
// given. Thread: any.
#pragma once

#include <string>

namespace fettle {

std::string orLoginName(const std::string& name);  // the name given; where empty the user's login name

}  // namespace fettle
