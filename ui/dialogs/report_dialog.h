// Why: the round's report as it will be printed: a page for the planner and the tables behind it, saved as
// PDF, printed, or written as its JSON or CSV twin. Content is read on a worker, a sheet for each machine
// with work, with how far it is; the picture is the pages' own drawing. Opened with open(); deletes itself
// when closed. Thread: the window's. Errors: a sentence over the pages.
#pragma once

#include <QDialog>
#include <memory>
#include <optional>

#include "core/fleet/round_report.h"
#include "ui/model/units.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QPushButton;

namespace fettle {

class PagePreview;

class ReportDialog : public QDialog {
    Q_OBJECT
  public:
    // `round` empty: the open one, else the last, else the week as it is now.
    ReportDialog(FleetWork& work, const Theme& theme, std::optional<std::int64_t> round, const Units& units,
                 QWidget* parent);

    void savePdf(const QString& path);
    const RoundReport* report() const { return report_.get(); }

  signals:
    void saved(const QString& path);

  private:
    void build(const Theme& theme);
    void read(std::optional<std::int64_t> round);
    void take(Result<RoundReport> report);
    void layOut();
    void say(const QString& word);
    void save(const QString& path, std::string bytes);
    void askAndSave(const QString& filter, const QString& suffix, std::function<std::string()> bytes);
    void print();

    FleetWork& work_;
    Units units_;
    std::shared_ptr<const RoundReport> report_;
    PagePreview* preview_ = nullptr;
    std::vector<QPushButton*> outlets_;
};

}  // namespace fettle
