// A whole round and a row of one, as the fleet file keeps it.
#include "core/exchange/round_json.h"
#include "core/exchange/round_text.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

bool machineRow(const std::string& bytes) {
    const auto read = roundMachineFromText(bytes);
    if (!read) return false;
    const std::string text = roundMachineAsText(*read);
    const auto again = roundMachineFromText(text);
    require(again.has_value(), "a row that was read can be read again");
    require(roundMachineAsText(*again) == text, "it is the same row");
    return true;
}

bool round(const std::string& bytes) {
    if (machineRow(bytes)) return true;
    const auto json = parseJson(bytes, "round");
    const auto read = json ? roundListFromJson(*json) : fail(json.error());
    if (!read) return false;
    const auto again = roundListFromJson(toJson(*read));
    require(again && toJson(*again) == toJson(*read), "it is the same round");
    require(!asText(*read).empty(), "it can be told");
    return true;
}

const Listed kRound("round", round);

}  // namespace
}  // namespace fettle::fuzz
