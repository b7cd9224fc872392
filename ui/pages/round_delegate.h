// Why: paints the lines of the round's ledger from plain data: disc and word, tag over service, finding over
// what changed, the strip of 26 weeks with its limit. Nothing is computed here but where ink goes. Thread:
// the window's.
#pragma once

#include <QStyledItemDelegate>

#include "ui/model/ledger_model.h"
#include "ui/theme/theme.h"

namespace fettle {

class RoundDelegate : public QStyledItemDelegate {
    Q_OBJECT
  public:
    RoundDelegate(const LedgerModel& model, const Theme& theme, QObject* parent = nullptr)
        : QStyledItemDelegate(parent), model_(model), theme_(theme) {}

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;

    static int lineHeight(const QFontMetrics& metrics);       // of a machine
    static int groupLineHeight(const QFontMetrics& metrics);  // of a group
    // Width a column needs; 0: what is left.
    static int columnWidth(const QFontMetrics& metrics, int column);

  private:
    void paintGroup(QPainter& painter, const QStyleOptionViewItem& option, int row) const;
    void paintMachine(QPainter& painter, const QStyleOptionViewItem& option, const RoundMachine& machine,
                      int column) const;
    void paintTwoLines(QPainter& painter, const QStyleOptionViewItem& option, const QString& upper,
                       const QString& lower, int column) const;
    void paintStrip(QPainter& painter, const QStyleOptionViewItem& option, const RoundMachine& machine) const;
    void paintUrgency(QPainter& painter, const QStyleOptionViewItem& option,
                      const RoundMachine& machine) const;

    const LedgerModel& model_;
    const Theme& theme_;
};

}  // namespace fettle
