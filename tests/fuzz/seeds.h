// Why: a fuzzer finds its way into a format from files that are good; these are made by the project itself,
// by the same functions that write a user's files. Every one is taken by its target. Thread: one.
#pragma once

#include <map>
#include <string>
#include <vector>

namespace fettle::fuzz {

// By target.
const std::map<std::string, std::vector<std::string>>& madeSeeds();

}  // namespace fettle::fuzz
