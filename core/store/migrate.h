// Why: a fleet file made by an older program is brought up to date step by step, each step in a transaction
// of its own, so that a kill leaves the file at a whole step. Steps are handed in, so that each outcome can
// be tested. Errors: Damaged where a table the version must have is missing or another than written down.
#pragma once

#include "core/store/database.h"
#include "core/store/schema.h"

namespace fettle {

int newestOf(const std::vector<Migration>& steps);
Result<int> versionOf(Database& database);
// Lowest newest step a program must know to read the file, as the program that wrote it says.
Result<int> leastReaderOf(Database& database);

// From the file's version to the newest; true where there was something to do.
Result<bool> migrate(Database& database, const std::vector<Migration>& steps);
// To read a file of an older form that stays as it is: what the steps after its version make is there for
// this connection alone, in temporary tables, with what the steps themselves put in. Unwritable where a step
// changes what is in the file already.
Status standInForNewer(Database& database, const std::vector<Migration>& steps);
// Every table, index and trigger the steps up to the file's version make is there, to the letter. What a user
// added is not minded.
Status checkSchema(Database& database, const std::vector<Migration>& steps);

}  // namespace fettle
