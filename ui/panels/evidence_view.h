// Why: the table of lines: what was expected, what was found, and how many decibans it added (bar to the
// right of the zero line) or took away (to the left), down to the weight. Choosing a line sets the cursor of
// every plot; a cursor set elsewhere marks the line it stands on. As high as its rows: the panel scrolls, not
// the table. Which columns stand depends on the room: what decides a line stands always. Thread: the
// window's.
#pragma once

#include <QTableView>

#include "ui/model/selection.h"
#include "ui/panels/evidence_rows.h"
#include "ui/theme/theme.h"

namespace fettle {

class EvidenceModel;

class EvidenceView : public QTableView {
    Q_OBJECT
  public:
    EvidenceView(const Theme& theme, Selection& selection, QWidget* parent);

    void setRows(ArithmeticRows rows);
    const ArithmeticRows& rows() const;
    void showSum(bool shown);  // the running sum
    void copyTable() const;    // onto the clipboard, as it stands with all its columns
    void setToleranceHz(double hz) { toleranceHz_ = hz; }
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

  protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

  private:
    void chooseRow(const QModelIndex& index);
    void markCursor();
    void fitColumns();
    void spareColumns();

    Selection& selection_;
    EvidenceModel* model_;
    double toleranceHz_ = 0.5;
    bool choosing_ = false, sum_ = false;
};

}  // namespace fettle
