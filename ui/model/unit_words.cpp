#include "ui/model/unit_words.h"

#include <QRegularExpression>
#include <cmath>

namespace fettle {

namespace {

// Three figures in all, as many behind the mark as that takes.
QString threeFigures(double value) {
    if (value == 0) return QStringLiteral("0");
    const int whole = int(std::floor(std::log10(std::abs(value) * (1 + 1e-9)))) + 1;
    return QString::number(value, 'f', std::max(0, 3 - std::max(whole, 0) - (whole < 0 ? whole : 0)));
}

QString beside(const QString& text, const QRegularExpression& pattern, const QString& stored,
               const Units& units) {
    const ShownUnit unit = shownUnit(stored, units);
    QString out;
    qsizetype from = 0;
    for (auto found = pattern.globalMatch(text); found.hasNext();) {
        const QRegularExpressionMatch match = found.next();
        const QString number = match.captured(1);
        const QString sign = number.startsWith(u'+') ? QStringLiteral("+") : QString();
        out += text.mid(from, match.capturedEnd() - from) +
               QStringLiteral(" (%1%2 %3)").arg(sign, threeFigures(unit.shown(number.toDouble())), unit.unit);
        from = match.capturedEnd();
    }
    return out + text.mid(from);
}

}  // namespace

QString withUnitsBeside(const QString& text, const Units& units) {
    static const QRegularExpression velocity(
        QStringLiteral("([+-]?\\d+(?:\\.\\d+)?) mm/s(?! \\([-+.\\d]+ in/s)(?![\\w/])"));
    static const QRegularExpression temperature(
        QStringLiteral("([+-]?\\d+(?:\\.\\d+)?) °C(?! \\([-+.\\d]+ °F)(?!\\w)"));
    QString out = text;
    if (units.inches) out = beside(out, velocity, QStringLiteral("mm/s"), units);
    if (units.fahrenheit) out = beside(out, temperature, QStringLiteral("°C"), units);
    return out;
}

}  // namespace fettle
