// The one target that is linked in, as libFuzzer calls it.
#include <cstddef>
#include <cstdint>

#include "tests/fuzz/target.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    fettle::fuzz::targets().front().run(std::string(reinterpret_cast<const char*>(bytes), size));
    return 0;
}
