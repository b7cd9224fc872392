// Why: a trial that was started is watched, not edited: what was promised and when it was frozen, what came
// so far line by line, the weight and 1x over the recordings with the moments of change and detection, and
// what can be done next: tell that the change is made, close, print. Plain data in; wishes go out as signals.
// Thread: the window's.
#pragma once

#include <QTimeZone>
#include <QWidget>
#include <memory>

#include "core/fleet/trial_desk.h"
#include "ui/model/selection.h"
#include "ui/plot/time_axis.h"
#include "ui/theme/theme.h"

class QLabel;
class QPushButton;
class QTableWidget;

namespace fettle {

class TrendPlot;

class TrialView : public QWidget {
    Q_OBJECT
  public:
    TrialView(const Theme& theme, const Units& units, bool writable, QWidget* parent);

    void show(const TrialEntry& entry, const TrialResult& result, const QTimeZone& zone);
    void say(const QString& words);  // while the result is read, or why it cannot be
    const TrialEntry& entry() const { return entry_; }
    const TrialResult& result() const { return result_; }

  signals:
    void changeWanted();
    void closeWanted();
    void sheetWanted();

  private:
    QWidget* buildText();
    QWidget* buildButtons();
    void showText();
    void showChecks();
    void showCurves();

    const Theme& theme_;
    Units units_;
    bool writable_;
    QTimeZone zone_ = QTimeZone::utc();
    TrialEntry entry_;
    TrialResult result_;
    Selection selection_;  // of its own: choosing a recording here leaves the page as it is
    TimeAxis axis_{selection_};
    TrendPlot* plot_;
    QLabel *verdict_, *frozen_, *promise_, *notes_;
    QTableWidget* checks_;
    QPushButton *change_, *close_, *sheet_;
};

}  // namespace fettle
