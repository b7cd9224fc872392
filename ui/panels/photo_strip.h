// Why: photographs beside a note as a strip of small pictures: those kept with an event, or new ones that are
// dropped, pasted, or chosen before the note is kept. What is refused is said in the strip and leaves the
// others. Enter or a double click asks for the large view; Del takes a new one out again. Files are read and
// decoded on a worker. Thread: the window's.
#pragma once

#include <QImage>
#include <QWidget>
#include <optional>
#include <vector>

#include "core/fleet/planner_return.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QLabel;
class QListWidget;
class QPushButton;

namespace fettle {

class PhotoStrip : public QWidget {
    Q_OBJECT
  public:
    // `takes`: new ones may be added.
    PhotoStrip(FleetWork& work, const Theme& theme, bool takes, QWidget* parent = nullptr);

    void setKept(const std::vector<Photo>& photos);  // of the fleet file
    void take(const QStringList& paths);
    void take(const QImage& picture);  // pasted
    void setNew(std::vector<NewPhoto> photos);
    const std::vector<NewPhoto>& photos() const { return new_; }
    QString trouble() const;

  signals:
    void keptWanted(qlonglong photo);  // show it large
    void changed();

  protected:
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void build(const Theme& theme);
    void choose();
    void paste();
    void add(NewPhoto photo);
    void removeCurrent();
    void showNew();
    void askPicture(int row, std::function<Result<QImage>(FleetFile&)> read);
    void say(const QString& trouble);
    void fit();

    FleetWork& work_;
    bool takes_;
    std::vector<NewPhoto> new_;
    std::vector<Photo> kept_;
    QListWidget* list_;
    QLabel *words_, *trouble_;
    QPushButton* choose_ = nullptr;
};

}  // namespace fettle
