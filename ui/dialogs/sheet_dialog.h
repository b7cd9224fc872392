// Why: what will be on paper is seen before it goes there: the findings sheet of one machine as a picture of
// its page, with the finding and the paper to choose, saved as PDF or printed. Content is read on a worker;
// the picture is the page's own drawing. Opened with open(); deletes itself when closed. Thread: the
// window's. Errors: a sentence over the page.
#pragma once

#include <QDialog>
#include <memory>

#include "ui/sheet/sheet_painter.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QComboBox;
class QLabel;
class QPushButton;
class QScrollArea;
class QToolButton;

namespace fettle {

class SheetDialog : public QDialog {
    Q_OBJECT
  public:
    SheetDialog(FleetWork& work, const Theme& theme, const QString& machine, QWidget* parent);

    void savePdf(const QString& path);
    const SheetData* sheet() const { return sheet_.get(); }
    double zoom() const { return zoom_; }  // 1: true size on the screen
    void setZoom(double zoom);             // 0: as wide as the window

  signals:
    void saved(const QString& path);

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    void build(const Theme& theme);
    QWidget* buildHead();
    void read(std::size_t finding);
    void take(Result<SheetData> sheet);
    void fillFindings();
    void show(const QString& trouble);
    void layOut();
    void showPicture();
    void askWhere();
    void print();
    PaperSize paper() const;
    double widthZoom() const;

    FleetWork& work_;
    QString machine_;
    std::shared_ptr<const SheetData> sheet_;
    std::unique_ptr<SheetPainter> painter_;
    double zoom_ = 1;
    bool fitsWidth_ = true;
    QComboBox *findings_, *paper_;
    QLabel *trouble_, *page_;
    QScrollArea* scroll_;
    QPushButton *save_, *print_;
};

}  // namespace fettle
