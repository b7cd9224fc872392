// Why: texts and waveforms are kept packed, and what was packed must come back bit for bit or be refused. The
// only user of zstd (with its content checksum) and of xxHash. Unpacking believes no header: memory
// grows with what has really been unpacked, never beyond the bound given. Errors: a sentence's rule, the
// caller adds file and place. Thread: any; each thread has its own working memory.
#pragma once

#include <array>
#include <cstdint>
#include <initializer_list>
#include <span>
#include <string>
#include <string_view>

#include "core/base/result.h"

namespace fettle {

inline constexpr std::size_t kMostPackedText = std::size_t(1) << 26;  // 64 MiB of JSON

// zstd's levels: texts repeat themselves, a waveform's bytes hardly do.
inline constexpr int kTextLevel = 3, kNumbersLevel = 1;
std::string pack(std::string_view bytes, int level = kTextLevel);
// At most `most` bytes, else refused.
tl::expected<std::string, std::string> unpack(std::string_view packed, std::size_t most);

// Of a text that hardly differs from one `before`, which has to be there again to unpack it.
std::string packAfter(std::string_view before, std::string_view bytes);
tl::expected<std::string, std::string> unpackAfter(std::string_view before, std::string_view packed,
                                                   std::size_t most);

std::uint64_t digest64(std::string_view bytes);
// Of several pieces; each counts with its length, so that moving a byte from one to the next is seen.
std::array<std::uint8_t, 16> digest128(std::initializer_list<std::string_view> pieces);

}  // namespace fettle
