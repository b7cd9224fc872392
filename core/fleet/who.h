// Why: whatever is decided or reported carries a name: the one given, else the one that whoever sits at the
// window has said to sign with, else the login name. Thread: any.
#pragma once

#include <string>

namespace fettle {

// For the whole program, until it ends; empty: the login name again.
void signWith(const std::string& name);

std::string orLoginName(const std::string& name);  // the name given; where empty as above

}  // namespace fettle
