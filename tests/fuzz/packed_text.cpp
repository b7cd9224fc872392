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
    const std::string_view all = bytes, before = all.substr(0, bytes.size() / 2),
                           after = all.substr(before.size());
    const auto beside = unpackAfter(before, packAfter(before, after), after.size());
    require(beside && *beside == after, "what was packed after another text comes back");
    if (const auto odd = unpackAfter(before, after, kMostHere))
        require(odd->size() <= kMostHere, "no more than may be after another text");
    return text.has_value();
}

const Listed kPackedText("packed_text", packedText);

}  // namespace
}  // namespace fettle::fuzz
