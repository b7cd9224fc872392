#include "core/workshop/balance_job.h"
#include "core/workshop/balance_solve.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

bool balance(const std::string& bytes) {
    auto job = readBalance(bytes, "balance");
    if (!job) return false;
    const std::string text = balanceJson(*job);
    const auto again = readBalance(text, "balance");
    require(again.has_value(), "a job that was read can be read again");
    require(balanceJson(*again) == text, "it is the same job");
    solveBalance(*job);
    fitToMethod(*job);
    solveBalance(*job);
    return true;
}

const Listed kBalance("balance", balance);

}  // namespace
}  // namespace fettle::fuzz
