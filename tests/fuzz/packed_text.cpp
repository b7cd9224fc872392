#include "core/store/packing.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

constexpr std::size_t kMostHere = std::size_t(1) << 22;

bool packedText(const std::string& bytes) {
    const auto text = unpack(bytes, kMostHere);
    if (text) require(text->size() <= kMostHere, "no more than may be");
    const auto back = unpack(pack(bytes), bytes.size());
    require(back && *back == bytes, "what was packed comes back");
    return text.has_value();
}

const Listed kPackedText("packed_text", packedText);

}  // namespace
}  // namespace fettle::fuzz
