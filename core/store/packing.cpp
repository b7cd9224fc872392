#include "core/store/packing.h"

#include <fmt/format.h>
#include <xxhash.h>
#include <zstd.h>

#include <algorithm>
#include <memory>

namespace fettle {

namespace {
constexpr int kLargestWindow = 23;  // log2 of bytes; level 3 needs 21

template <class Context, auto Free>
struct Freed {
    void operator()(Context* context) const { Free(context); }
};
using Packer = std::unique_ptr<ZSTD_CCtx, Freed<ZSTD_CCtx, ZSTD_freeCCtx>>;
using Unpacker = std::unique_ptr<ZSTD_DCtx, Freed<ZSTD_DCtx, ZSTD_freeDCtx>>;

ZSTD_CCtx* packer(int level) {
    thread_local const Packer context = [] {
        Packer made(ZSTD_createCCtx());
        ZSTD_CCtx_setParameter(made.get(), ZSTD_c_checksumFlag, 1);
        return made;
    }();
    ZSTD_CCtx_setParameter(context.get(), ZSTD_c_compressionLevel, level);
    return context.get();
}

ZSTD_DCtx* unpacker() {
    thread_local const Unpacker context = [] {
        Unpacker made(ZSTD_createDCtx());
        ZSTD_DCtx_setParameter(made.get(), ZSTD_d_windowLogMax, kLargestWindow);
        return made;
    }();
    ZSTD_DCtx_reset(context.get(), ZSTD_reset_session_only);
    return context.get();
}

std::string packWith(ZSTD_CCtx* context, std::string_view bytes) {
    std::string packed(ZSTD_compressBound(bytes.size()), '\0');
    const std::size_t size =
        ZSTD_compress2(context, packed.data(), packed.size(), bytes.data(), bytes.size());
    packed.resize(ZSTD_isError(size) ? 0 : size);
    return packed;
}

tl::expected<std::string, std::string> unpackWith(ZSTD_DCtx* context, std::string_view packed,
                                                  std::size_t most) {
    ZSTD_inBuffer in{packed.data(), packed.size(), 0};
    thread_local std::string piece(ZSTD_DStreamOutSize(), '\0');  // made once: it is 128 KB
    std::string bytes;
    std::size_t left = 1;
    while (left != 0) {
        ZSTD_outBuffer out{piece.data(), piece.size(), 0};
        const std::size_t before = in.pos;
        left = ZSTD_decompressStream(context, &out, &in);
        if (ZSTD_isError(left)) return tl::unexpected<std::string>(ZSTD_getErrorName(left));
        if (bytes.size() + out.pos > most)
            return tl::unexpected(fmt::format("holds more than the {} bytes it may", most));
        bytes.append(piece.data(), out.pos);
        if (left != 0 && out.pos == 0 && in.pos == before) return tl::unexpected<std::string>("breaks off");
    }
    if (in.pos != packed.size()) return tl::unexpected<std::string>("is followed by something else");
    return bytes;
}
}  // namespace

std::string pack(std::string_view bytes, int level) {
    return packWith(packer(level), bytes);
}

tl::expected<std::string, std::string> unpack(std::string_view packed, std::size_t most) {
    return unpackWith(unpacker(), packed, most);
}

// zstd forgets a prefix after one whole frame; one that broke off would leave it to the next.
std::string packAfter(std::string_view before, std::string_view bytes) {
    ZSTD_CCtx* const context = packer(kTextLevel);
    ZSTD_CCtx_refPrefix(context, before.data(), before.size());
    std::string packed = packWith(context, bytes);
    ZSTD_CCtx_reset(context, ZSTD_reset_session_only);
    ZSTD_CCtx_refPrefix(context, nullptr, 0);
    return packed;
}

tl::expected<std::string, std::string> unpackAfter(std::string_view before, std::string_view packed,
                                                   std::size_t most) {
    ZSTD_DCtx* const context = unpacker();
    ZSTD_DCtx_refPrefix(context, before.data(), before.size());
    auto bytes = unpackWith(context, packed, most);
    ZSTD_DCtx_refPrefix(unpacker(), nullptr, 0);
    return bytes;
}

std::uint64_t digest64(std::string_view bytes) {
    return XXH3_64bits(bytes.data(), bytes.size());
}

std::array<std::uint8_t, 16> digest128(std::initializer_list<std::string_view> pieces) {
    const std::unique_ptr<XXH3_state_t, Freed<XXH3_state_t, XXH3_freeState>> state(XXH3_createState());
    XXH3_128bits_reset(state.get());
    for (const std::string_view piece : pieces) {
        const std::uint64_t size = piece.size();
        XXH3_128bits_update(state.get(), &size, sizeof size);
        XXH3_128bits_update(state.get(), piece.data(), piece.size());
    }
    XXH128_canonical_t canonical;
    XXH128_canonicalFromHash(&canonical, XXH3_128bits_digest(state.get()));
    std::array<std::uint8_t, 16> key;
    std::copy(std::begin(canonical.digest), std::end(canonical.digest), key.begin());
    return key;
}

}  // namespace fettle
