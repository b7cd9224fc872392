// Why: all faults considered, by weight with a bar about a zero line: findings first with their urgency disc
// and word and what is known of them (stage or zone, how steadily, since when), then what was considered and
// not found (which folds), those without a weight last with the reason. Choosing one sets the Selection's
// fault; up and down go through them. Thread: the window's.
#pragma once

#include <QTreeWidget>
#include <optional>
#include <vector>

#include "ui/model/selection.h"
#include "ui/panels/evidence_rows.h"
#include "ui/theme/theme.h"

namespace fettle {

class FaultRows;

class FaultList : public QTreeWidget {
    Q_OBJECT
  public:
    FaultList(const Theme& theme, Selection& selection, QWidget* parent);

    void setEntries(std::vector<FaultEntry> entries);
    // In a low window what was not found is folded away while there is a finding; its head unfolds it.
    void setLow(bool low);
    bool folded() const;
    const std::vector<FaultEntry>& entries() const { return entries_; }
    QSize sizeHint() const override;

  private:
    void fill();
    void addHead(const QString& text);
    void fold();  // shows and hides
    void toggle(const QTreeWidgetItem* item);
    void addEntry(std::size_t i);
    void choose();
    void markChosen();
    QString detailOf(const FaultEntry& entry) const;
    QString spokenOf(const FaultEntry& entry, const QString& name) const;
    int rowHeight() const;

    const Theme& theme_;
    Selection& selection_;
    FaultRows* rows_;
    std::vector<FaultEntry> entries_;
    QTreeWidgetItem* head_ = nullptr;  // of what was not found; null: no such
    QString headText_;
    bool choosing_ = false, low_ = false;
    std::optional<bool> wanted_;  // folded, as the user last said
};

}  // namespace fettle
