// Why: what will be on paper is seen before it goes there: the findings sheet of one machine as a picture of
// its page, with the finding and the paper to choose, saved as PDF or printed. Content is read on a worker;
// the picture is the page's own drawing. Opened with open(); deletes itself when closed. Thread: the
// window's. Errors: a sentence over the page.
#pragma once

#include <QDialog>
#include <memory>

#include "ui/model/units.h"
#include "ui/sheet/sheet_painter.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QComboBox;
class QPushButton;

namespace fettle {

class PagePreview;

class SheetDialog : public QDialog {
    Q_OBJECT
  public:
    // `units` people read in: inches stand beside millimetres, and Letter is offered first.
    SheetDialog(FleetWork& work, const Theme& theme, const QString& machine, QWidget* parent,
                const Units& units = {});

    void savePdf(const QString& path);
    const SheetData* sheet() const { return sheet_.get(); }
    double zoom() const;
    void setZoom(double zoom);

  signals:
    void saved(const QString& path);

  private:
    void build(const Theme& theme);
    void read(std::size_t finding);
    void take(Result<SheetData> sheet);
    void fillFindings();
    void say(const QString& trouble);
    void layOut();
    void askWhere();
    void print();

    FleetWork& work_;
    QString machine_;
    Units units_;
    std::shared_ptr<const SheetData> sheet_;
    PagePreview* preview_ = nullptr;
    QComboBox* findings_ = nullptr;
    QPushButton *save_ = nullptr, *print_ = nullptr;
};

}  // namespace fettle
