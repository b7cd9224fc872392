// Why: the rows of a verdict's arithmetic as a Qt table: texts with units in the heads, numbers to the right,
// the state by the same symbol as in the plots, reasons as tool tips; and the delegate that draws the bars.
// Frequencies in the units people read in. The running sum ends at the weight. Nothing is computed here but
// text.
#pragma once

#include <QAbstractTableModel>
#include <QStyledItemDelegate>

#include "ui/model/units.h"
#include "ui/panels/evidence_rows.h"
#include "ui/theme/theme.h"

namespace fettle {

class EvidenceModel : public QAbstractTableModel {
    Q_OBJECT
  public:
    enum Column { Name, Order, Expected, Found, Db, RankP, Share, Decibans, Sum, Bar, kColumns };

    EvidenceModel(const Theme& theme, QObject* parent);

    void setRows(ArithmeticRows rows);
    void setUnits(const Units& units);
    QString asTable() const;  // all columns but the bars, tabs between, for a spreadsheet
    const ArithmeticRows& rows() const { return rows_; }
    double mostOfLines() const;   // largest deciban of a line or the search, at least 1
    double leastOfLines() const;  // the same downwards, at most -1

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    QString textOf(const ArithmeticRow& row, int column) const;
    QString lineText(const LineRow& line, int column) const;
    QString frequency(double hz) const;
    double sumTo(const ArithmeticRow& row) const;  // of what is printed
    QString spoken(const ArithmeticRow& row, int column) const;
    QString helpOf(const ArithmeticRow& row) const;

    const Theme& theme_;
    ArithmeticRows rows_;
    Units units_;
};

class EvidenceBars : public QStyledItemDelegate {
    Q_OBJECT
  public:
    EvidenceBars(const Theme& theme, const EvidenceModel& model, QObject* parent);
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;

  private:
    void paintBar(QPainter& painter, const ArithmeticRow& row, const QRect& in) const;

    const Theme& theme_;
    const EvidenceModel& model_;
};

}  // namespace fettle
