#include "core/diagnosis/speed_phase.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/dsp/fft.h"
#include "core/dsp/statistics.h"

namespace fettle {

namespace {

using Complex = std::complex<double>;
constexpr double kTurn = 2 * std::numbers::pi;
constexpr int kOrders = 12;
constexpr double kSwingHz = 4;      // swings of the speed up to here are followed
constexpr double kRateHz = 32;      // of the phase
constexpr double kSteady = 0.92;    // mean height squared over mean square: 0.785 is noise, 1 a lone line
constexpr double kOverNoise = 3.5;  // of a cosine of the phase that is kept
constexpr double kBesideMainsHz = 3;

// The order's band about its middle, at kRateHz or a little more.
FftVector<Complex> bandAbout(const FftVector<Complex>& bins, std::size_t middle, std::size_t half,
                             std::size_t count) {
    FftVector<Complex> band(count, Complex(0)), signal;
    for (std::ptrdiff_t off = -std::ptrdiff_t(half); off <= std::ptrdiff_t(half); ++off) {
        const std::ptrdiff_t k = std::ptrdiff_t(middle) + off;
        if (k <= 0 || k >= std::ptrdiff_t(bins.size())) continue;
        band[std::size_t((off + std::ptrdiff_t(count)) % std::ptrdiff_t(count))] = bins[std::size_t(k)];
    }
    inverseComplex(band, signal);
    return signal;
}

std::vector<double> unwrapped(const FftVector<Complex>& signal) {
    std::vector<double> phase(signal.size());
    for (std::size_t i = 0; i < signal.size(); ++i) {
        const double now = std::arg(signal[i]);
        phase[i] = i == 0 ? now : phase[i - 1] + std::remainder(now - phase[i - 1], kTurn);
    }
    return phase;
}

bool isSteady(const FftVector<Complex>& signal) {
    double sum = 0, square = 0;
    for (const Complex& s : signal) {
        sum += std::abs(s);
        square += std::norm(s);
    }
    return sum * sum > kSteady * square * double(signal.size());
}

// Straight line and cosines of `phase` that stand out of its noise; the rest is left out.
std::vector<double> smooth(const std::vector<double>& phase, double seconds) {
    const std::size_t n = phase.size();
    const double middle = double(n - 1) / 2;
    double mean = 0, slope = 0, square = 0;
    for (std::size_t i = 0; i < n; ++i) {
        mean += phase[i] / double(n);
        slope += phase[i] * (double(i) - middle);
        square += (double(i) - middle) * (double(i) - middle);
    }
    slope /= square;
    std::vector<double> cosine(4 * n);  // of every step that occurs
    for (std::size_t m = 0; m < cosine.size(); ++m)
        cosine[m] = std::cos(std::numbers::pi * double(m) / double(2 * n));
    const auto cosineAt = [&](std::size_t k, std::size_t i) { return cosine[k * (2 * i + 1) % (4 * n)]; };
    const auto last = std::min(n / 2, std::size_t(2 * kSwingHz * seconds));
    std::vector<double> part(last + 1, 0);
    for (std::size_t k = 1; k <= last; ++k)
        for (std::size_t i = 0; i < n; ++i)
            part[k] += 2 / double(n) * (phase[i] - mean - slope * (double(i) - middle)) * cosineAt(k, i);
    std::vector<double> heights;  // of the upper half: mostly noise
    for (std::size_t k = last / 2 + 1; k <= last; ++k)
        heights.push_back(std::abs(part[k]));
    std::nth_element(heights.begin(), heights.begin() + std::ptrdiff_t(heights.size() / 2), heights.end());
    const double noise = heights.empty() ? 0 : heights[heights.size() / 2] / 0.6745;
    std::vector<double> out(n);
    for (std::size_t i = 0; i < n; ++i)
        out[i] = slope * (double(i) - middle);
    for (std::size_t k = 1; k <= last; ++k)
        if (std::abs(part[k]) > kOverNoise * noise)
            for (std::size_t i = 0; i < n; ++i)
                out[i] += part[k] * cosineAt(k, i);
    return out;
}

double speedAt(const std::vector<ShaftAngle::SpeedSample>& rough, double seconds) {
    if (seconds <= rough.front().seconds) return rough.front().speed.value;
    for (std::size_t i = 1; i < rough.size(); ++i) {
        if (seconds > rough[i].seconds) continue;
        const double part = (seconds - rough[i - 1].seconds) / (rough[i].seconds - rough[i - 1].seconds);
        return rough[i - 1].speed.value * (1 - part) + rough[i].speed.value * part;
    }
    return rough.back().speed.value;
}

bool besideMains(double hz, double mainsHz) {
    const double times = std::floor(hz / (2 * mainsHz) + 0.5);
    return times >= 1 && std::abs(hz - 2 * times * mainsHz) < kBesideMainsHz;
}

// The shaft's angle as known so far, at even times.
struct Course {
    std::vector<double> turns;
    double middleHz = 0, reachHz = 0;

    Course(const std::vector<ShaftAngle::SpeedSample>& rough, double seconds) {
        const std::size_t count = quickSizeAtLeast(std::max<std::size_t>(64, std::size_t(kRateHz * seconds)));
        turns.assign(count, 0);
        double least = 1e9, most = 0, before = 0;
        for (std::size_t i = 0; i < count; ++i) {
            const double speed = speedAt(rough, seconds * double(i) / double(count));
            if (i > 0) turns[i] = turns[i - 1] + (before + speed) / 2 * seconds / double(count);
            least = std::min(least, speed);
            most = std::max(most, speed);
            before = speed;
        }
        middleHz = (least + most) / 2;
        reachHz = (most - least) / 2;
    }
};

FftVector<Complex> binsOf(std::span<const double> signal) {
    const double offset = mean(signal);
    FftVector<double> samples(signal.begin(), signal.end());
    for (double& x : samples)
        x -= offset;
    FftVector<Complex> bins;
    forwardReal(samples, bins);
    return bins;
}

// What is farther than kSwingHz from 0 is taken out.
void keepSlow(FftVector<Complex>& signal, double seconds) {
    FftVector<Complex> spectrum;
    forwardComplex(signal, spectrum);
    const std::size_t count = signal.size();
    const auto low = std::min(count / 2 - 1, std::size_t(kSwingHz * seconds));
    for (std::size_t k = low + 1; k < count - low; ++k)
        spectrum[k] = 0;
    inverseComplex(spectrum, signal);
}

// An order turned back by the angle known so far: what still moves is the angle's error.
FftVector<Complex> heldStill(const FftVector<Complex>& bins, const Course& course, int order,
                             double seconds) {
    const std::size_t count = course.turns.size();
    const auto middle = std::size_t(std::lround(order * course.middleHz * seconds));
    const double half = kSwingHz + order * course.reachHz;
    FftVector<Complex> signal =
        bandAbout(bins, middle, std::min(count / 2 - 1, std::size_t(half * seconds)), count);
    for (std::size_t i = 0; i < count; ++i) {
        const double back = order * course.turns[i] - double(middle) * double(i) / double(count);
        signal[i] *= std::polar(1.0, -kTurn * back);
    }
    keepSlow(signal, seconds);
    return signal;
}

// r.m.s. about the straight line through it.
double swingOf(const std::vector<double>& turns) {
    const double middle = double(turns.size() - 1) / 2;
    double sum = 0, slope = 0, square = 0;
    for (std::size_t i = 0; i < turns.size(); ++i) {
        sum += turns[i] / double(turns.size());
        slope += turns[i] * (double(i) - middle);
        square += (double(i) - middle) * (double(i) - middle);
    }
    slope /= square;
    double rest = 0;
    for (std::size_t i = 0; i < turns.size(); ++i) {
        const double off = turns[i] - sum - slope * (double(i) - middle);
        rest += off * off;
    }
    return std::sqrt(rest / double(turns.size()));
}

}  // namespace

FollowedPhase followPhase(std::span<const double> signal, double sampleRateHz,
                          const std::vector<ShaftAngle::SpeedSample>& rough, double mainsHz) {
    const auto part = signal.first(quickSizeAtMost(signal.size()));
    const double seconds = double(part.size()) / sampleRateHz;
    FollowedPhase followed;
    Course course(rough, seconds);
    const FftVector<Complex> bins = binsOf(part);
    for (int h = 1; h <= kOrders; ++h) {
        if (h * course.middleHz + kSwingHz > 0.45 * sampleRateHz) break;
        if (besideMains(h * course.middleHz, mainsHz)) continue;
        const FftVector<Complex> order = heldStill(bins, course, h, seconds);
        if (!isSteady(order)) continue;
        const std::vector<double> more = smooth(unwrapped(order), seconds);
        for (std::size_t i = 0; i < course.turns.size(); ++i)
            course.turns[i] += more[i] / (kTurn * h);
        ++followed.orders;
    }
    followed.swingTurns = swingOf(course.turns);
    const double step = seconds / double(course.turns.size());
    for (std::size_t i = 0; i + 1 < course.turns.size(); ++i)
        followed.samples.push_back(
            {step * (double(i) + 0.5), Hertz((course.turns[i + 1] - course.turns[i]) / step)});
    return followed;
}

}  // namespace fettle
