#include "ui/model/table_text.h"

#include <QRegularExpression>
#include <QStringList>

#include "core/exchange/csv_cell.h"

namespace fettle {

namespace {

bool isFormula(const QString& cell) {
    static const QRegularExpression number(QStringLiteral("^[+-]?[0-9]*[.,]?[0-9]+([eE][+-]?[0-9]+)?$"));
    return startsFormula(cell.left(1).toStdString()) && !number.match(cell).hasMatch();
}

}  // namespace

QString withoutFormulas(const QString& tabbed) {
    QStringList rows = tabbed.split(u'\n');
    for (QString& row : rows) {
        QStringList cells = row.split(u'\t');
        for (QString& cell : cells)
            if (isFormula(cell)) cell.prepend(u'\'');
        row = cells.join(u'\t');
    }
    return rows.join(u'\n');
}

}  // namespace fettle
