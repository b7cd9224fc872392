// Why: all faults considered, by weight: findings first with their urgency disc and word, then what was
// considered and not found, those without a weight last with the reason. Choosing one sets the Selection's
// fault. Thread: the window's.
#pragma once

#include <QTreeWidget>
#include <vector>

#include "ui/model/selection.h"
#include "ui/panels/evidence_rows.h"
#include "ui/theme/theme.h"

namespace fettle {

class FaultList : public QTreeWidget {
    Q_OBJECT
  public:
    FaultList(const Theme& theme, Selection& selection, QWidget* parent);

    void setEntries(std::vector<FaultEntry> entries);
    const std::vector<FaultEntry>& entries() const { return entries_; }
    QSize sizeHint() const override;

  private:
    void fill();
    void addHead(const QString& text);
    void addEntry(std::size_t i);
    void choose();
    void markChosen();
    int rowHeight() const;

    const Theme& theme_;
    Selection& selection_;
    std::vector<FaultEntry> entries_;
    bool choosing_ = false;
};

}  // namespace fettle
