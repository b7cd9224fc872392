// Why: everything about the seeded-fault trials of one machine at one place: the list of them, a form to plan
// one, a view that follows one as recordings arrive. Reads and writes through FleetWork; when the fleet file
// changes (an import) what is shown is read again. Opened with open(); deletes itself when closed. Thread:
// the window's. Errors: a sentence in the dialog.
#pragma once

#include <QDialog>
#include <memory>
#include <optional>

#include "core/fleet/trial_desk.h"
#include "ui/model/units.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QLabel;
class QListWidget;
class QPushButton;
class QStackedWidget;

namespace fettle {

class TrialForm;
class TrialView;

class TrialDialog : public QDialog {
    Q_OBJECT
  public:
    TrialDialog(FleetWork& work, const Theme& theme, const QString& machine, const Units& units,
                QWidget* parent);

    TrialForm& form() { return *form_; }
    TrialView& view() { return *view_; }
    const std::vector<TrialEntry>& trials() const { return trials_; }

  signals:
    void said(const QString& sentence);

  private:
    void build(const Theme& theme);
    void read();
    void readPlan(std::optional<Instant> beforeFrom);
    void takeTrials(Result<std::vector<TrialEntry>> trials);
    void choose(int row);
    void planNew();
    void readResult(const TrialEntry& entry);
    void keep(const Trial& trial, bool start);
    void askChange();
    void askClose();
    void take(const Result<TrialEntry>& entry, const QString& done);
    void say(const QString& trouble);
    const TrialEntry* chosen() const;
    Instant newest() const;

    FleetWork& work_;
    const Theme& theme_;
    QString machine_;
    Units units_;
    std::vector<TrialEntry> trials_;
    std::shared_ptr<const TrialPlan> plan_;
    std::int64_t shown_ = 0;    // id of the trial that is shown; 0: a new one
    bool planning_ = false;     // a new one is being typed and stays, whatever is written meanwhile
    std::int64_t inForm_ = -1;  // id of the plan in the form; what was typed there stays
    QListWidget* list_;
    QPushButton* new_;
    QStackedWidget* middle_;
    QLabel* trouble_;
    TrialForm* form_;
    TrialView* view_;
};

}  // namespace fettle
