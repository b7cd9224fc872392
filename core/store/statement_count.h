// Why: what paints must not ask the fleet file, and what is asked of the whole fleet must not read through
// its history; tests that watch these see it where it does. Thread: any.
#pragma once

#include <cstdint>
#include <string>

namespace fettle {

std::uint64_t statementsStepped();  // rows fetched or statements run by this program so far

// Called with every statement's text as it is asked, on the thread that asks; null: nobody.
using StatementSeen = void (*)(const std::string& sql);
void watchStatements(StatementSeen seen);

}  // namespace fettle
