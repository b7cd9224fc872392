#include "tests/signal/memory_meter.h"

#include <malloc.h>

#include <algorithm>
#include <atomic>
#include <cstdlib>
#include <new>

namespace {
std::atomic<std::size_t> held{0}, peak{0};
}

void* operator new(std::size_t size) {
    void* memory = std::malloc(size);
    if (!memory) throw std::bad_alloc();
    held += malloc_usable_size(memory);
    peak = std::max(peak.load(), held.load());
    return memory;
}

void operator delete(void* memory) noexcept {
    if (memory) held -= malloc_usable_size(memory);
    std::free(memory);
}

void operator delete(void* memory, std::size_t) noexcept {
    operator delete(memory);
}

namespace fettle {

MemoryMeter::MemoryMeter() : before_(held.load()) {
    peak = before_;
}

std::size_t MemoryMeter::peakBytes() const {
    return peak.load() - before_;
}

}  // namespace fettle
