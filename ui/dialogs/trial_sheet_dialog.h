// Why: the trial sheet is seen before it is printed or saved, as every sheet is. Opened with open(); deletes
// itself when closed. Thread: the window's. Errors: a sentence over the page.
#pragma once

#include <QDialog>
#include <memory>

#include "ui/sheet/trial_sheet.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QPushButton;

namespace fettle {

class PagePreview;

class TrialSheetDialog : public QDialog {
    Q_OBJECT
  public:
    TrialSheetDialog(FleetWork& work, const Theme& theme, std::int64_t trial, const Units& units,
                     QWidget* parent);

    const TrialSheet* sheet() const { return sheet_.get(); }
    void savePdf(const QString& path);

  signals:
    void saved(const QString& path);

  private:
    void take(Result<TrialSheet> sheet);
    void layOut();
    void say(const QString& trouble);
    void askWhere();
    void print();

    FleetWork& work_;
    Units units_;
    std::shared_ptr<const TrialSheet> sheet_;
    PagePreview* preview_;
    QPushButton *save_, *print_;
};

}  // namespace fettle
