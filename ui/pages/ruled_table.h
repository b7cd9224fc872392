// Why: tables look like those of a well-set report: a thin rule under the head and between lines, no boxes,
// no buttons for heads. One helper for all tables of pages and dialogs. Thread: the window's.
#pragma once

#include <QHeaderView>
#include <QStyledItemDelegate>
#include <QTableView>

#include "ui/theme/theme.h"

namespace fettle {

class RuledHeader : public QHeaderView {
    Q_OBJECT
  public:
    RuledHeader(const Theme& theme, QWidget* parent = nullptr);
    QSize sizeHint() const override;

  protected:
    QSize sectionSizeFromContents(int section) const override;
    void paintSection(QPainter* painter, const QRect& rect, int section) const override;

  private:
    const Theme& theme_;
};

// Cells with the head's margins and a thin rule under each.
class RuledDelegate : public QStyledItemDelegate {
    Q_OBJECT
  public:
    RuledDelegate(const Theme& theme, QObject* parent) : QStyledItemDelegate(parent), theme_(theme) {}
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

  protected:
    const Theme& theme_;
};

// Gives `view` a ruled head, no grid, whole-row selection of one row, tabular line height.
void setRuled(QTableView& view, const Theme& theme);
// Columns are at least as wide as the words of their heads, whatever the language.
void keepHeadsWhole(QTableView& view);

}  // namespace fettle
