#include "core/base/child_process.h"

#include <fcntl.h>
#include <sys/mman.h>
#include <unistd.h>

#include <cerrno>
#include <utility>

namespace fettle {

namespace {
constexpr int kAboveStandard = 10;  // descriptors from here on do not collide with those handed over
}

Descriptor::Descriptor(Descriptor&& other) noexcept : number_(std::exchange(other.number_, -1)) {}

Descriptor& Descriptor::operator=(Descriptor&& other) noexcept {
    std::swap(number_, other.number_);
    return *this;
}

void Descriptor::reset() {
    if (number_ >= 0) ::close(number_);
    number_ = -1;
}

Descriptor Descriptor::above() const {
    return Descriptor(::fcntl(number_, F_DUPFD_CLOEXEC, kAboveStandard));
}

Descriptor memoryFile(const std::string& bytes) {
    Descriptor memory(memfd_create("fettle", MFD_CLOEXEC));
    if (memory.get() < 0) return memory;
    for (std::size_t at = 0; at < bytes.size();) {
        const ssize_t wrote = ::write(memory.get(), bytes.data() + at, bytes.size() - at);
        if (wrote < 0 && errno == EINTR) continue;
        if (wrote <= 0) return Descriptor();
        at += std::size_t(wrote);
    }
    ::lseek(memory.get(), 0, SEEK_SET);
    return memory;
}

std::vector<char*> argumentPointers(std::vector<std::string>& texts) {
    std::vector<char*> all;
    for (std::string& text : texts)
        all.push_back(text.data());
    all.push_back(nullptr);
    return all;
}

}  // namespace fettle
