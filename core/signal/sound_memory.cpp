#include "core/signal/sound_memory.h"

#include <algorithm>
#include <cstdio>

namespace fettle {

namespace {
std::size_t copyFrom(std::string_view bytes, std::size_t at, char* to, std::size_t count) {
    return at < bytes.size() ? bytes.copy(to, count, at) : 0;
}

template <class Memory>
Memory& memory(void* user) {
    return *static_cast<Memory*>(user);
}

template <class Memory>
sf_count_t length(void* user) {
    return static_cast<sf_count_t>(memory<Memory>(user).size());
}

template <class Memory>
sf_count_t tell(void* user) {
    return static_cast<sf_count_t>(memory<Memory>(user).at());
}

template <class Memory>
sf_count_t seek(sf_count_t offset, int whence, void* user) {
    const sf_count_t from = whence == SEEK_SET   ? 0
                            : whence == SEEK_CUR ? tell<Memory>(user)
                                                 : length<Memory>(user);
    if (from + offset < 0) return -1;
    memory<Memory>(user).moveTo(static_cast<std::size_t>(from + offset));
    return from + offset;
}

template <class Memory>
sf_count_t read(void* to, sf_count_t count, void* user) {
    const auto wanted = static_cast<std::size_t>(std::max<sf_count_t>(count, 0));
    return static_cast<sf_count_t>(memory<Memory>(user).read(static_cast<char*>(to), wanted));
}

sf_count_t write(const void* from, sf_count_t count, void* user) {
    memory<SoundSink>(user).write(static_cast<const char*>(from), static_cast<std::size_t>(count));
    return count;
}

sf_count_t writeNothing(const void*, sf_count_t, void*) {
    return 0;
}
}  // namespace

SF_VIRTUAL_IO SoundSource::calls() const {
    return {length<SoundSource>, seek<SoundSource>, fettle::read<SoundSource>, writeNothing,
            tell<SoundSource>};
}

std::size_t SoundSource::read(char* to, std::size_t count) {
    const std::size_t fromHead = copyFrom(head_, at_, to, count);
    at_ += fromHead;
    if (at_ < head_.size()) return fromHead;
    const std::size_t fromBody = copyFrom(body_, at_ - head_.size(), to + fromHead, count - fromHead);
    at_ += fromBody;
    return fromHead + fromBody;
}

SF_VIRTUAL_IO SoundSink::calls() const {
    return {length<SoundSink>, seek<SoundSink>, fettle::read<SoundSink>, fettle::write, tell<SoundSink>};
}

std::size_t SoundSink::read(char* to, std::size_t count) {
    const std::size_t done = copyFrom(bytes_, at_, to, count);
    at_ += done;
    return done;
}

void SoundSink::write(const char* from, std::size_t count) {
    if (bytes_.size() < at_ + count) bytes_.resize(at_ + count);
    bytes_.replace(at_, count, from, count);
    at_ += count;
}

}  // namespace fettle
