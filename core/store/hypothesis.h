// Why: a fault at a place stands in the fleet file once and is named by a number in everything that was
// weighed. Thread: that of the Database. Errors: those of the database.
#pragma once

#include <cstdint>
#include <string>

#include "core/base/result.h"

namespace fettle {

class Database;

// Of a hypothesis; it is put in where it is not there yet.
Result<std::int64_t> hypothesisId(Database& database, const std::string& fault, const std::string& at);

}  // namespace fettle
