// Why: a photograph of an event seen large, with the others of the same machine on the arrow keys, and saved
// again as it was given. Read and decoded on a worker. Opened with open(); deletes itself when closed.
// Thread: the window's.
#pragma once

#include <QDialog>
#include <QImage>
#include <vector>

#include "core/store/photo_store.h"
#include "ui/work/fleet_work.h"

class QLabel;
class QPushButton;

namespace fettle {

class PhotoViewer : public QDialog {
    Q_OBJECT
  public:
    PhotoViewer(FleetWork& work, const QString& machine, std::int64_t photo, QWidget* parent);

    void saveAs(const QString& path);

  protected:
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void build();
    void take(std::vector<Photo> photos, std::int64_t first);
    void go(int step);
    void read();
    void show();
    void askWhere();

    FleetWork& work_;
    std::vector<Photo> photos_;
    int at_ = -1;
    QImage picture_;
    QLabel *page_, *name_;
    QPushButton *before_, *next_, *save_;
};

}  // namespace fettle
