// Why: the layout of the fleet file, as numbered steps from an empty file to today's. This is the one place
// where it is written down; comments in the SQL are kept in the file, so `.schema` in any SQLite shell shows
// them. Rules: a step that was released is never changed; a new one is appended with the next number, and
// says the lowest version of this list with which a program may still read the file. Numbers stand in files:
// never change them.
#pragma once

#include <cstdint>
#include <vector>

namespace fettle {

struct Migration {
    int version = 0;  // user_version after it; 1, 2, 3 ..
    const char* description = "";
    const char* sql = "";
    int minReader = 1;  // programs that know the steps up to this one may read the file
};

const std::vector<Migration>& migrations();
const char* fourthStep();  // schema_4.cpp

inline constexpr std::int32_t kApplicationId = 0x46746c31;  // "Ftl1"

}  // namespace fettle
