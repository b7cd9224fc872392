// Why: the head of the round page: site and period, which of the kept rounds is shown, what the list
// promises, what comes before it, how far the round is, and how the ledger is looked at. Shows a RoundShown;
// emits which round is wanted. Thread: the window's.
#pragma once

#include <QDate>
#include <QWidget>
#include <optional>

#include "ui/model/ledger_model.h"
#include "ui/theme/theme.h"

class QComboBox;
class QLabel;
class QToolButton;

namespace fettle {

class RoundBefore;
class RoundFilters;

class RoundHeading : public QWidget {
    Q_OBJECT
  public:
    RoundHeading(const Theme& theme, QWidget* parent = nullptr);

    void show(const LedgerModel& model);
    void say(const QString& word, bool trouble);  // instead of the promise
    RoundFilters& filters() { return *filters_; }
    RoundBefore& before() { return *before_; }
    void step(int rounds);  // to an older (-1) or newer one; nothing where there is none

  signals:
    void roundWanted(std::optional<std::int64_t> id);

  private:
    void nameParts();
    void arrange();
    void dress();
    void fillRounds(const RoundShown& round);
    void chosen(int row);

    const Theme& theme_;
    QLabel *title_, *period_, *promise_, *progress_;
    QToolButton *older_, *newer_;
    QComboBox* rounds_;
    RoundBefore* before_;
    RoundFilters* filters_;
    bool trouble_ = false;
};

QString periodText(const RoundShown& round);
// Where the period ended more than a fortnight before `today` (the site's): that it did; else empty.
QString periodAge(const RoundShown& round, const QDate& today);
QString progressText(const RoundShown& round);

}  // namespace fettle
