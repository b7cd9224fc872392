#include "core/dsp/motion_lines.h"

#include <cmath>
#include <numbers>

#include "core/base/units.h"

namespace fettle {

namespace {

// Of one line, one integration after the other; to the left: divided by the same.
double factorOf(Motion from, Motion to, Hertz at) {
    const double toVelocity = velocityMmPerS(1, at), toDisplacement = displacementUm(1, at);
    const auto fromAcceleration = [&](Motion motion) {
        if (motion == Motion::Acceleration) return 1.0;
        return motion == Motion::Velocity ? toVelocity : toVelocity * toDisplacement;
    };
    return fromAcceleration(to) / fromAcceleration(from);
}

}  // namespace

std::vector<float> motionLines(std::span<const float> rms, double stepHz, Motion from, Motion to,
                               double cornerHz) {
    std::vector<float> lines(rms.begin(), rms.end());
    if (from == to) return lines;
    const bool integrates = to > from;
    for (std::size_t k = 0; k < lines.size(); ++k) {
        const double hz = stepHz * double(k);
        const bool kept = k > 0 && (!integrates || hz >= cornerHz);
        lines[k] = kept ? float(double(rms[k]) * factorOf(from, to, Hertz(hz))) : 0.0F;
    }
    return lines;
}

double lineReading(double rms, LineReading reading, double bandwidthHz) {
    switch (reading) {
        case LineReading::Rms:
            return rms;
        case LineReading::Peak:
            return rms * std::numbers::sqrt2;
        case LineReading::PeakToPeak:
            return rms * 2 * std::numbers::sqrt2;
        case LineReading::Density:
            break;
    }
    return bandwidthHz > 0 ? rms * rms / bandwidthHz : 0;
}

}  // namespace fettle
