#include "ui/plot/readout.h"

#include <algorithm>
#include <cmath>

#include "ui/model/numbers.h"

namespace fettle {

QString significant(double value, int digits) {
    if (!std::isfinite(value)) return QStringLiteral("-");
    if (value == 0) return QStringLiteral("0");
    const int whole = int(std::floor(std::log10(std::abs(value)))) + 1;
    return fixedText(value, std::clamp(digits - whole, 0, 9));
}

QString valueText(double value, const QString& unit, bool decibels) {
    if (!decibels) return significant(value) + QChar(' ') + unit;
    return fixedText(20 * std::log10(std::max(value, 1e-9)), 1) + QChar(' ') + unit;
}

QString frequencyText(double hz, double shaftHz) {
    QString text = fixedText(hz, 2) + QStringLiteral(" Hz");
    if (shaftHz > 0) text += QStringLiteral(", %1 x").arg(fixedText(hz / shaftHz, 3));
    return text + QStringLiteral(", %1 r/min").arg(fixedText(hz * 60, 1));
}

}  // namespace fettle
