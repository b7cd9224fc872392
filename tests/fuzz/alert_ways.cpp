#include "core/fleet/alert_ways.h"

#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

bool alertWaysOf(const std::string& bytes) {
    const auto once = alertWaysFrom(bytes, "delivery");
    if (!once) return false;
    require(checkAlertWays(*once).has_value(), "what is taken passes its own check");
    const auto twice = alertWaysFrom(toText(*once), "delivery");
    require(twice && toText(*twice) == toText(*once), "written and read again it is the same");
    for (const std::string& way : once->names())
        require(way.find_first_of("\r\n") == std::string::npos, "no address breaks a line");
    return true;
}

const Listed kAlertWays("alert_ways", alertWaysOf);

}  // namespace
}  // namespace fettle::fuzz
