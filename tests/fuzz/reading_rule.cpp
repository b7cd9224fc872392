// Pattern and keys of a rule that fills what a file does not say, tried on a recording.
#include "core/intake/rules.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

ReadFile unnamed() {
    Recording recording;
    recording.file = "/in/site 1/KL-ID-01_20260504T062000.csv";
    recording.channels.push_back(plainChannel("1"));
    return {std::make_shared<const Recording>(std::move(recording)), "", "", "CSV"};
}

bool readingRule(const std::string& bytes) {
    const Halves halves = halvesOf(bytes);
    auto rule = readRule(halves.first, halves.second);
    if (!rule) return false;
    RuleBook book;
    book.add(std::move(*rule));
    ReadFile read = unnamed();
    const bool applied = applyRules(book, read).has_value();
    requireSound(*read.recording);
    return applied;
}

const Listed kReadingRule("reading_rule", readingRule);

}  // namespace
}  // namespace fettle::fuzz
