#include "core/workshop/trial_json.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

bool trial(const std::string& bytes) {
    const auto read = trialFromText(bytes, "trial");
    if (!read) return false;
    const std::string text = trialAsText(*read);
    const auto again = trialFromText(text, "trial");
    require(again.has_value(), "a trial that was read can be read again");
    require(trialAsText(*again) == text, "it is the same trial");
    return true;
}

const Listed kTrial("trial", trial);

}  // namespace
}  // namespace fettle::fuzz
