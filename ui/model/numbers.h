// Why: numbers that people read have the decimal mark of their language; those that go into files, clipboard
// tables and JSON have a point. This is the door for the first kind. Thread: any.
#pragma once

#include <QLocale>
#include <QString>

namespace fettle {

// `decimals` digits after the mark, no grouping, no exponent.
inline QString fixedText(double value, int decimals) {
    QLocale locale;
    locale.setNumberOptions(QLocale::OmitGroupSeparator);
    return locale.toString(value, 'f', decimals);
}

}  // namespace fettle
