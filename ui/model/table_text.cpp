#include "ui/model/table_text.h"

#include <QRegularExpression>
#include <QStringList>

namespace fettle {

namespace {

bool startsFormula(const QString& cell) {
    static const QRegularExpression number(QStringLiteral("^[+-]?[0-9]*[.,]?[0-9]+([eE][+-]?[0-9]+)?$"));
    static const QString signs = QStringLiteral("=+-@\uFF1D\uFF0B\uFF0D\uFF20\r");
    return !cell.isEmpty() && signs.contains(cell.front()) && !number.match(cell).hasMatch();
}

}  // namespace

QString withoutFormulas(const QString& tabbed) {
    QStringList rows = tabbed.split(u'\n');
    for (QString& row : rows) {
        QStringList cells = row.split(u'\t');
        for (QString& cell : cells)
            if (startsFormula(cell)) cell.prepend(u'\'');
        row = cells.join(u'\t');
    }
    return rows.join(u'\n');
}

}  // namespace fettle
