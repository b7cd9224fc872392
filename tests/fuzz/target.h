// Why: whatever comes from outside as bytes goes into one function here, so that the same function is run by
// libFuzzer (driver/driver.cpp) and, over the kept corpus, by a plain test (corpus_test.cpp). A target takes
// any bytes, must come back, and throws std::logic_error where a promise of its room does not hold: what was
// taken breaks a limit, or does not come back the same after writing. Two texts in one input are parted by a
// line "----". Thread: one.
#pragma once

#include <string>
#include <vector>

#include "core/signal/recording.h"

namespace fettle::fuzz {

struct Target {
    std::string name;                       // of its file, its program fuzz_NAME and its folder in corpus/
    bool (*run)(const std::string& bytes);  // whether it was taken
};
const std::vector<Target>& targets();

// One constant of this kind in each target's file.
struct Listed {
    Listed(const char* name, bool (*run)(const std::string& bytes));
};

void require(bool holds, const std::string& promise);

struct Halves {
    std::string first, second;  // second: empty without the parting line
};
Halves halvesOf(const std::string& bytes);

// Three samples at 12800 Hz, told nothing of.
Channel plainChannel(const std::string& name);
// What every reader promises of a recording it has taken.
void requireSound(const Recording& recording);

}  // namespace fettle::fuzz
