// Why: the train drawn as one line of quiet symbols on a shaft: motor, coupling, gears, belt, driven machine,
// bearings (a square with a cross), and above them the measuring points (triangles). Each can be picked by
// mouse and keyboard: the line is one stop of Tab, the arrow keys go along it, Return or Space picks. Each
// symbol is a widget of its own with name and tooltip, so that readers and tests find it. Thread: the
// window's.
#pragma once

#include <QAbstractButton>
#include <memory>
#include <vector>

#include "ui/panels/train_parts.h"
#include "ui/theme/theme.h"

namespace fettle {

class TrainMark;

class TrainLine : public QWidget {
    Q_OBJECT
  public:
    TrainLine(const Theme& theme, QWidget* parent);

    void setMachine(const Machine* machine);  // null: nothing is drawn
    void setChosen(const QString& bearing, const QString& point);
    const std::vector<TrainSlot>& row() const { return row_; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  signals:
    void bearingPicked(const QString& at);
    void pointPicked(const QString& id);
    void componentPicked(const QString& name);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    bool focusNextPrevChild(bool next) override;

  private:
    void place();
    void pick(const TrainMark& mark);
    void goAlong(TrainMark* from, int step);
    TrainMark* add(const QString& key, const QString& name, bool point);
    int slotWidth(const TrainSlot& slot) const;

    const Theme& theme_;
    std::vector<TrainSlot> row_;
    std::vector<TrainMark*> marks_;  // in the order of the arrow keys
    QString bearing_, point_;
};

}  // namespace fettle
