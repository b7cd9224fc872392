// Why: before the list comes what was promised: jobs to verify, overdue ones, what was put off and is due,
// late recordings, and the machines nobody saw, by reason and by whose matter it is. One line of counts;
// unfolded a list in which Return or a click goes there. Thread: the window's.
#pragma once

#include <QWidget>

#include "ui/model/round_shown.h"
#include "ui/model/units.h"
#include "ui/theme/theme.h"

class QLabel;
class QListWidget;
class QListWidgetItem;
class QToolButton;

namespace fettle {

class RoundBefore : public QWidget {
    Q_OBJECT
  public:
    RoundBefore(const Theme& theme, QWidget* parent = nullptr);

    void show(const RoundShown& round, const Units& units);
    bool unfolded() const;
    void setUnfolded(bool unfolded);
    // Unfolds and takes the focus; where it has it, folds and says `left`.
    void visit();

  signals:
    void machineWanted(const QString& tag);
    void unseenWanted(const QString& reasonKey);
    void left();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void fill(const RoundShown& round, const Units& units);
    void add(const QString& text, const QString& tag, const QString& reason);
    void go(QListWidgetItem* item);
    void fitHeight();
    void dress();

    const Theme& theme_;
    QToolButton* fold_;
    QLabel* counts_;
    QListWidget* list_;
    qlonglong shownRound_ = -1;
};

QString beforeText(const RoundShown& round);  // the counts in one line; empty: nothing comes before

}  // namespace fettle
