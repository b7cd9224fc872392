// Why: how a fault stands in the list: its urgency disc and name, under a finding what is known of it in
// smaller letters, and its weight as a bar about a zero line, for to the right, against to the left, with the
// weight of a finding as a dashed line. Paints only. Thread: the window's.
#pragma once

#include <QStyledItemDelegate>

#include "ui/panels/evidence_rows.h"
#include "ui/theme/theme.h"

namespace fettle {

class FaultRows : public QStyledItemDelegate {
    Q_OBJECT
  public:
    enum Column { Fault, Weight, Bar, kColumns };
    static constexpr int kEntry = Qt::UserRole, kDetail = Qt::UserRole + 1, kWeight = Qt::UserRole + 2;

    FaultRows(const Theme& theme, QObject* parent) : QStyledItemDelegate(parent), theme_(theme) {}
    void setSpan(double least, double most);  // decibans from end to end; 0 and a finding are within

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

  private:
    void paintFault(QPainter& painter, const QStyleOptionViewItem& option, const QModelIndex& index) const;
    void paintBar(QPainter& painter, const QRect& in, double dban) const;

    const Theme& theme_;
    double least_ = -10, most_ = 30;
};

}  // namespace fettle
