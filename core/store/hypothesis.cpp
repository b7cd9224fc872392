#include "core/store/hypothesis.h"

#include "core/store/database.h"

namespace fettle {

Result<std::int64_t> hypothesisId(Database& database, const std::string& fault, const std::string& at) {
    const auto known =
        database.one<std::int64_t>("SELECT id FROM hypothesis WHERE fault=? AND at=?", fault, at);
    if (!known) return fail(known.error());
    if (*known) return **known;
    if (auto good = database.run("INSERT INTO hypothesis(fault, at) VALUES (?,?)", fault, at); !good)
        return fail(good.error());
    return database.lastId();
}

}  // namespace fettle
