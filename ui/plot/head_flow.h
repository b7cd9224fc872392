// Why: the head of a plot holds more controls than a narrow plot is wide. They stand in a row and go on in
// the next one where there is no room, in their order; the last item, the readout, gets what is left of the
// last row, or a row of its own. Height follows from width alone, so that nothing jumps. Ownership: as every
// layout's. Thread: the window's.
#pragma once

#include <QLayout>
#include <QList>

namespace fettle {

class HeadFlow : public QLayout {
    Q_OBJECT
  public:
    explicit HeadFlow(QWidget* parent = nullptr);
    ~HeadFlow() override;

    void insertWidget(int at, QWidget* widget);
    void setTailWidth(int px) { tailWidth_ = px; }  // least room for the last item beside others

    void addItem(QLayoutItem* item) override;
    int count() const override { return int(items_.size()); }
    QLayoutItem* itemAt(int index) const override { return items_.value(index); }
    QLayoutItem* takeAt(int index) override;
    Qt::Orientations expandingDirections() const override { return {}; }
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override { return arranged({0, 0, width, 0}, false); }
    QSize sizeHint() const override;
    QSize minimumSize() const override;
    void setGeometry(const QRect& rect) override;

  private:
    int arranged(const QRect& rect, bool place) const;  // height needed

    QList<QLayoutItem*> items_;
    int tailWidth_ = 0;
};

}  // namespace fettle
