// Why: a job, a greasing or a moved node is judged by the machine before and after it, at like speed and
// load: levels with their limits, the lines of what was found with their sound baseline, weights, and the
// verdict in one sentence. Which event it is about is chosen from the history. Read on a worker; shown in the
// units people read in. Opened with open(); deletes itself when closed. Thread: the window's.
#pragma once

#include <QDialog>
#include <QTimeZone>
#include <optional>
#include <vector>

#include "core/fleet/job_desk.h"
#include "ui/model/units.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QComboBox;
class QLabel;
class QTreeWidget;
class QTreeWidgetItem;

namespace fettle {

class BeforeAfterDialog : public QDialog {
    Q_OBJECT
  public:
    // `around`: the event to begin with; empty: the newest that is work on the machine.
    BeforeAfterDialog(FleetWork& work, const Theme& theme, const QString& machine, const Units& units,
                      std::optional<std::int64_t> around, QWidget* parent);

  private:
    struct Facts {
        std::vector<Event> events;  // newest first
        QTimeZone zone = QTimeZone::utc();
    };
    void build(const Theme& theme);
    void read();
    void fillEvents(Facts facts);
    void compare();
    void show(const JobVerification& found);
    QTreeWidgetItem* group(const QString& name);
    void addLevels(const CureCase& figures);
    void addFindings(const CureCase& figures);
    void say(const QString& verdict, const QString& moments);

    FleetWork& work_;
    QString machine_;
    Units units_;
    std::optional<std::int64_t> around_;
    Facts facts_;
    QComboBox* event_;
    QLabel *verdict_, *moments_;
    QTreeWidget* table_;
};

// "cured", "another fault": the outcome in the window's language.
QString cureWord(CureOutcome outcome);

}  // namespace fettle
