#include "core/dsp/fft.h"

#include <fftw3.h>

#include <atomic>
#include <map>
#include <mutex>
#include <tuple>

#include "core/dsp/fft_count.h"

namespace fettle {

namespace {

std::atomic<std::uint64_t> run{0};

enum class Kind { RealForward, RealInverse, ComplexForward, ComplexInverse };

// FFTW's two interfaces, double and float, under one name.
template <class Real>
struct Fftw;
template <>
struct Fftw<double> {
    using Plan = fftw_plan;
    using Complex = fftw_complex;
    static constexpr auto r2c = &fftw_plan_dft_r2c_1d;
    static constexpr auto c2r = &fftw_plan_dft_c2r_1d;
    static constexpr auto c2c = &fftw_plan_dft_1d;
    static constexpr auto runR2c = &fftw_execute_dft_r2c;
    static constexpr auto runC2r = &fftw_execute_dft_c2r;
    static constexpr auto runC2c = &fftw_execute_dft;
};
template <>
struct Fftw<float> {
    using Plan = fftwf_plan;
    using Complex = fftwf_complex;
    static constexpr auto r2c = &fftwf_plan_dft_r2c_1d;
    static constexpr auto c2r = &fftwf_plan_dft_c2r_1d;
    static constexpr auto c2c = &fftwf_plan_dft_1d;
    static constexpr auto runR2c = &fftwf_execute_dft_r2c;
    static constexpr auto runC2r = &fftwf_execute_dft_c2r;
    static constexpr auto runC2c = &fftwf_execute_dft;
};

// One lock for both precisions: their planners share state inside FFTW.
std::mutex& plannerLock() {
    static std::mutex lock;
    return lock;
}

template <class Real>
typename Fftw<Real>::Plan makePlan(Kind kind, std::size_t size) {
    using F = Fftw<Real>;
    FftVector<Real> real(size);
    FftVector<std::complex<Real>> first(size), second(size);
    auto* a = reinterpret_cast<typename F::Complex*>(first.data());
    auto* b = reinterpret_cast<typename F::Complex*>(second.data());
    const int n = static_cast<int>(size);
    switch (kind) {
        case Kind::RealForward:
            return F::r2c(n, real.data(), a, FFTW_ESTIMATE | FFTW_PRESERVE_INPUT);
        case Kind::RealInverse:
            return F::c2r(n, a, real.data(), FFTW_ESTIMATE);
        case Kind::ComplexForward:
            return F::c2c(n, a, b, FFTW_FORWARD, FFTW_ESTIMATE);
        case Kind::ComplexInverse:
            break;
    }
    return F::c2c(n, a, b, FFTW_BACKWARD, FFTW_ESTIMATE);
}

template <class Real>
typename Fftw<Real>::Plan planFor(Kind kind, std::size_t size) {
    // Never destroyed: threads may still run at exit, and a leak checker sees the plans as held.
    static auto& plans = *new std::map<std::pair<Kind, std::size_t>, typename Fftw<Real>::Plan>;
    const std::lock_guard hold(plannerLock());
    auto& plan = plans[{kind, size}];
    if (!plan) plan = makePlan<Real>(kind, size);
    return plan;
}

template <class Real>
auto* raw(const FftVector<std::complex<Real>>& v) {
    // FFTW takes non-const input even where it preserves it.
    return reinterpret_cast<typename Fftw<Real>::Complex*>(const_cast<std::complex<Real>*>(v.data()));
}

bool quick(std::size_t n) {
    for (const std::size_t prime : {2, 3, 5, 7})
        while (n % prime == 0)
            n /= prime;
    return n == 1;
}

}  // namespace

std::uint64_t transformsRun() {
    return run;
}

template <class Real>
void forwardReal(const FftVector<Real>& in, FftVector<std::complex<Real>>& out) {
    out.resize(in.size() / 2 + 1);
    if (in.empty()) return;
    ++run;
    Fftw<Real>::runR2c(planFor<Real>(Kind::RealForward, in.size()), const_cast<Real*>(in.data()), raw(out));
}

template <class Real>
void inverseReal(FftVector<std::complex<Real>>& in, std::size_t n, FftVector<Real>& out) {
    out.resize(n);
    if (n == 0) return;
    ++run;
    Fftw<Real>::runC2r(planFor<Real>(Kind::RealInverse, n), raw(in), out.data());
}

template <class Real>
void forwardComplex(const FftVector<std::complex<Real>>& in, FftVector<std::complex<Real>>& out) {
    out.resize(in.size());
    if (in.empty()) return;
    ++run;
    Fftw<Real>::runC2c(planFor<Real>(Kind::ComplexForward, in.size()), raw(in), raw(out));
}

template <class Real>
void inverseComplex(const FftVector<std::complex<Real>>& in, FftVector<std::complex<Real>>& out) {
    out.resize(in.size());
    if (in.empty()) return;
    ++run;
    Fftw<Real>::runC2c(planFor<Real>(Kind::ComplexInverse, in.size()), raw(in), raw(out));
}

template void forwardReal(const FftVector<float>&, FftVector<std::complex<float>>&);
template void forwardReal(const FftVector<double>&, FftVector<std::complex<double>>&);
template void inverseReal(FftVector<std::complex<float>>&, std::size_t, FftVector<float>&);
template void inverseReal(FftVector<std::complex<double>>&, std::size_t, FftVector<double>&);
template void forwardComplex(const FftVector<std::complex<float>>&, FftVector<std::complex<float>>&);
template void forwardComplex(const FftVector<std::complex<double>>&, FftVector<std::complex<double>>&);
template void inverseComplex(const FftVector<std::complex<float>>&, FftVector<std::complex<float>>&);
template void inverseComplex(const FftVector<std::complex<double>>&, FftVector<std::complex<double>>&);

std::size_t quickSizeAtMost(std::size_t n) {
    n -= n % 2;
    while (n > 2 && !quick(n))
        n -= 2;
    return n;
}

std::size_t quickSizeAtLeast(std::size_t n) {
    n += n % 2;
    while (!quick(n))
        n += 2;
    return n;
}

}  // namespace fettle
