// Why: the only user of FFTW. Plans are made once a size and kind, kept for the life of the program, and
// shared by all threads: planning is guarded by one mutex (FFTW's planner is not thread-safe), executing is
// not and need not be. Source: FFTW 3.3 manual, sections 4.2 (planner flags), 5.4 (thread safety), new-array
// execute functions. Shapes: n real samples give n / 2 + 1 bins. Unnormalised: inverse(forward(x)) = n x.
// Memory: buffers are FftVector, aligned for SIMD; new-array execution needs every buffer to be one.
#pragma once

#include <complex>
#include <cstddef>
#include <new>
#include <vector>

namespace fettle {

template <class T>
struct FftAllocator {
    using value_type = T;
    static constexpr std::align_val_t kAlign{64};
    FftAllocator() = default;
    template <class U>
    FftAllocator(const FftAllocator<U>&) {}
    T* allocate(std::size_t n) { return static_cast<T*>(::operator new(n * sizeof(T), kAlign)); }
    void deallocate(T* p, std::size_t) { ::operator delete(p, kAlign); }
    bool operator==(const FftAllocator&) const { return true; }
};
template <class T>
using FftVector = std::vector<T, FftAllocator<T>>;

// Real is float or double. Outputs are resized. The input of a c2r transform is destroyed, all others are
// kept.
template <class Real>
void forwardReal(const FftVector<Real>& in, FftVector<std::complex<Real>>& out);
template <class Real>
void inverseReal(FftVector<std::complex<Real>>& in, std::size_t n, FftVector<Real>& out);
template <class Real>
void forwardComplex(const FftVector<std::complex<Real>>& in, FftVector<std::complex<Real>>& out);
template <class Real>
void inverseComplex(const FftVector<std::complex<Real>>& in, FftVector<std::complex<Real>>& out);

// The largest (smallest) even number <= n (>= n) without prime factors above 7: sizes FFTW is quick at. For n
// >= 2.
std::size_t quickSizeAtMost(std::size_t n);
std::size_t quickSizeAtLeast(std::size_t n);

}  // namespace fettle
