#include "core/exchange/examination_json.h"
#include "core/exchange/examination_text.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

bool examination(const std::string& bytes) {
    const auto read = examinationFromText(bytes, "examination");
    if (!read) return false;
    const std::string text = examinationAsText(*read);
    const auto again = examinationFromText(text, "examination");
    require(again.has_value(), "an examination that was read can be read again");
    require(examinationAsText(*again) == text, "it is the same examination");
    require(!asText(*read).empty(), "it can be told");
    return true;
}

const Listed kExamination("examination", examination);

}  // namespace
}  // namespace fettle::fuzz
