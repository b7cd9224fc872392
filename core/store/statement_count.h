// Why: what paints must not ask the fleet file; a test that watches this number sees it where it does.
// Thread: any.
#pragma once

#include <cstdint>

namespace fettle {

std::uint64_t statementsStepped();  // rows fetched or statements run by this program so far

}  // namespace fettle
