#include "ui/plot/spectrum_reading.h"

#include <algorithm>
#include <cmath>

#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr double kLeast = 1e-9;        // of a ratio in decibels
constexpr double kDecibelsShown = 80;  // below the highest value

const QString kRms = QStringLiteral(" r.m.s.");

QString squared(const QString& unit) {
    const bool compound = unit.contains(QLatin1Char('/')) || unit.contains(QLatin1Char(' '));
    return compound ? QStringLiteral("(%1)²/Hz").arg(unit) : unit + QStringLiteral("²/Hz");
}

QString unitOf(const QString& base, LineReading reading) {
    switch (reading) {
        case LineReading::Rms:
            return base + kRms;
        case LineReading::Peak:
            return tr("%1 peak").arg(base);
        case LineReading::PeakToPeak:
            return tr("%1 peak to peak").arg(base);
        case LineReading::Density:
            break;
    }
    return squared(base);
}

}  // namespace

SpectrumReading::SpectrumReading(const SpectrumData& data, AmplitudeChoice choice, Units units) {
    const ShownUnit shownAs = shownUnit(data.unit, units);
    factor_ = shownAs.factor;
    unit_ = shownAs.unit;
    decibels_ = data.decibels;
    readable_ = !data.decibels && data.unit.endsWith(kRms);
    if (!readable_ && !(choice.scale == AmplitudeScale::Decibels && !data.decibels)) return;
    asIs_ = false;
    bandwidthHz_ = data.bandwidthHz;
    if (readable_) {
        reading_ =
            choice.reading == LineReading::Density && !(bandwidthHz_ > 0) ? LineReading::Rms : choice.reading;
        unit_.chop(kRms.size());
        unit_ = unitOf(unit_, reading_);
    }
    decibels_ = choice.scale == AmplitudeScale::Decibels;
    if (decibels_) unit_ = tr("dB re 1 %1").arg(unit_);
}

double SpectrumReading::shown(double rms) const {
    const double value = rms * factor_;
    if (asIs_) return value;
    const double read = lineReading(value, reading_, bandwidthHz_);
    if (!decibels_) return read;
    return (reading_ == LineReading::Density ? 10 : 20) * std::log10(std::max(read, kLeast));
}

double SpectrumReading::ratioDb(double shownA, double shownB) const {
    if (decibels_) return shownA - shownB;
    if (!(shownA > 0) || !(shownB > 0)) return 0;
    return (reading_ == LineReading::Density ? 10 : 20) * std::log10(shownA / shownB);
}

std::vector<float> SpectrumReading::shown(std::span<const float> rms) const {
    std::vector<float> values(rms.size());
    std::transform(rms.begin(), rms.end(), values.begin(),
                   [this](float value) { return float(shown(double(value))); });
    return values;
}

double SpectrumReading::bottom(double top) const {
    return top - kDecibelsShown;
}

}  // namespace fettle
