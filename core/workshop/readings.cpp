#include "core/workshop/readings.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace fettle {

namespace {

Result<MeanReading> refused(const std::string& what) {
    return fail(ErrorKind::Invalid, "", "",
                what + "; let the machine settle, look for looseness or changing load, and read again");
}

Result<MeanReading> ifSteady(MeanReading reading) {
    if (reading.scatterShare > kMostScatterShare)
        return refused(
            fmt::format("the readings scatter by {:.0f} % of their mean, at most {:.0f} % is taken",
                        100 * reading.scatterShare, 100 * kMostScatterShare));
    if (reading.scatterDegrees > kMostScatterDegrees)
        return refused(fmt::format("the phases scatter by {:.0f} degrees, at most {:.0f} are taken",
                                   reading.scatterDegrees, kMostScatterDegrees));
    return reading;
}

}  // namespace

MeanReading averaged(std::span<const Phasor> readings) {
    MeanReading all;
    all.count = readings.size();
    if (readings.empty()) return all;
    double most = 0, least = std::abs(readings.front());
    for (const Phasor& one : readings) {
        all.mean += one / double(readings.size());
        all.amount += std::abs(one) / double(readings.size());
        most = std::max(most, std::abs(one));
        least = std::min(least, std::abs(one));
    }
    const double middle = polarOf(all.mean).degrees;
    double low = 0, high = 0;
    for (const Phasor& one : readings) {
        const double off = degreesBetween(middle, polarOf(one).degrees);
        low = std::min(low, off);
        high = std::max(high, off);
    }
    all.scatterDegrees = high - low;
    all.scatterShare = all.amount > 0 ? (most - least) / all.amount : 0;
    return all;
}

Result<MeanReading> steadyMean(std::span<const Phasor> readings) {
    if (readings.empty()) return fail(ErrorKind::Invalid, "", "", "has no reading yet");
    return ifSteady(averaged(readings));
}

Result<MeanReading> steadyAmount(std::span<const double> amounts) {
    const std::vector<Phasor> readings(amounts.begin(), amounts.end());
    return steadyMean(readings);
}

}  // namespace fettle
