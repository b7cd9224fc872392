#include "core/signal/uff_reader.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

bool universalFile(const std::string& bytes) {
    const auto read = readUff(bytes, "r.uff");
    if (read) requireSound(*read);
    return read.has_value();
}

const Listed kUniversalFile("universal_file", universalFile);

}  // namespace
}  // namespace fettle::fuzz
