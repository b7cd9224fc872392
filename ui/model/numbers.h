// Why: numbers that people read have the decimal mark of their language; those that go into files, clipboard
// tables and JSON have a point. This is the door for the first kind. Thread: any.
#pragma once

#include <QLocale>
#include <QString>

namespace fettle {

// `decimals` digits after the mark, no grouping, no exponent; rounded as everywhere else in the program, so
// that rows still add up to what files say.
inline QString fixedText(double value, int decimals) {
    return QString::number(value, 'f', decimals).replace(QChar('.'), QLocale().decimalPoint());
}

}  // namespace fettle
