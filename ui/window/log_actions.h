// Why: everything that is noted of a machine goes through here: events with photographs and corrections, a
// new baseline, jobs, before and after, tables of events. It opens the dialogs, writes what they give through
// FleetWork and says what came of it; what was refused is asked again with what was typed. Thread: the
// window's. Errors: `troubled` with a sentence.
#pragma once

#include <QTimeZone>
#include <QWidget>
#include <functional>
#include <optional>

#include "core/fleet/planner_return.h"
#include "ui/model/selection.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

namespace fettle {

class EventDialog;
class HistoryList;

class LogActions : public QObject {
    Q_OBJECT
  public:
    // `window`: over which dialogs open; `zone`: the site's.
    LogActions(FleetWork& work, Selection& selection, const Theme& theme, std::function<QTimeZone()> zone,
               QWidget* window);

    void noteEvent(const QString& machine);
    void correct(const Event& of);
    void rebaseline(const QString& machine);
    void showHistory(const QString& machine);
    void showJobs(const QString& machine, bool fleet);
    void compare(const QString& machine, std::optional<std::int64_t> around = {});
    void showPhoto(const QString& machine, qlonglong photo);
    void askEventTable();
    void takeEventTable(const QString& path);
    void serve(HistoryList& list);  // does what its buttons ask for

  signals:
    void said(const QString& sentence);
    void troubled(const QString& sentence);
    void sheetWanted(const QString& machine);

  private:
    EventDialog* eventDialog(const QString& machine);
    void writeEvent(const Event& event, const std::vector<NewPhoto>& photos);
    void writeBaseline(const Event& event);
    void fillPlaces(const QString& machine, EventDialog* dialog);
    bool mayWrite(const QString& machine, const QString& lack);

    FleetWork& work_;
    Selection& selection_;
    const Theme& theme_;
    std::function<QTimeZone()> zone_;
    QWidget* window_;
};

}  // namespace fettle
