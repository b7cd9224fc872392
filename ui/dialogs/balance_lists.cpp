#include "ui/dialogs/balance_lists.h"

#include <QStringList>

#include "core/base/text.h"

namespace fettle {

namespace {

QString plain(double value) {
    return QString::number(value, 'g', 6);
}

}  // namespace

std::optional<std::vector<int>> numbersIn(const QString& text) {
    std::vector<int> numbers;
    for (const QString& part : text.split(QChar(','), Qt::SkipEmptyParts)) {
        if (part.trimmed().isEmpty()) continue;
        const auto number = parseInteger(part.toStdString());
        if (!number || *number < 1 || *number > 360) return std::nullopt;
        numbers.push_back(int(*number));
    }
    return numbers;
}

QString numbersText(const std::vector<int>& numbers) {
    QStringList parts;
    for (const int number : numbers)
        parts << QString::number(number);
    return parts.join(QStringLiteral(", "));
}

std::optional<std::vector<FittedMass>> massesIn(const QString& text, double usualRadiusMm) {
    std::vector<FittedMass> masses;
    for (const QString& part : text.split(QChar(';'), Qt::SkipEmptyParts)) {
        if (part.trimmed().isEmpty()) continue;
        const QStringList numbers = part.split(QChar('@'));
        if (numbers.size() < 2 || numbers.size() > 3) return std::nullopt;
        std::vector<double> values;
        for (const QString& number : numbers) {
            const auto value = parseNumber(number.toStdString());
            if (!value || !(*value > -1e6 && *value < 1e6)) return std::nullopt;
            values.push_back(*value);
        }
        const double radius = values.size() == 3 ? values[2] : usualRadiusMm;
        if (values[0] < 0 || radius < 0 || values[1] < -3600 || values[1] > 3600 || radius > 1e5)
            return std::nullopt;
        masses.push_back({{values[0], values[1]}, radius});
    }
    return masses;
}

QString massesText(const std::vector<FittedMass>& masses, double usualRadiusMm) {
    QStringList parts;
    for (const FittedMass& one : masses) {
        QString text = plain(one.mass.amount) + QStringLiteral(" @ ") + plain(one.mass.degrees);
        if (one.radiusMm != usualRadiusMm) text += QStringLiteral(" @ ") + plain(one.radiusMm);
        parts << text;
    }
    return parts.join(QStringLiteral("; "));
}

}  // namespace fettle
