// Why: every plot is moved the same way, by mouse and by keyboard: wheel zooms (with Ctrl: the upright
// axis), drag shifts, Shift and drag frames a part, a double click or Home shows all, arrows step, + and -
// zoom. Watches one canvas and says what was meant; the plot decides what that is in its axes. Positions in
// pixels of the canvas. Thread: the window's.
#pragma once

#include <QObject>
#include <QPointF>
#include <QRect>
#include <memory>

class QKeyEvent;
class QMouseEvent;
class QRubberBand;
class QWidget;

namespace fettle {

class Gestures : public QObject {
    Q_OBJECT
  public:
    explicit Gestures(QWidget& canvas);
    ~Gestures() override;

    // The table the help shows: keys or mouse, what they do.
    static QList<std::pair<QString, QString>> table();

  signals:
    void zoomed(double factor, const QPointF& at, bool upright);
    void panned(const QPointF& by);
    void framed(const QRect& part);
    void showAll();
    void clicked(const QPointF& at, Qt::KeyboardModifiers with);
    void hovered(const QPointF& at);
    void left();
    void stepped(int steps, bool far);   // left, right; far: with Shift
    void nudged(int steps, bool other);  // with Alt: finely; with Ctrl: what belongs to the cursor

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    bool key(const QKeyEvent& event);
    void press(const QMouseEvent& event);
    void move(const QMouseEvent& event);
    void release(const QMouseEvent& event);

    QWidget& canvas_;
    QPoint pressedAt_, lastAt_;
    bool pressed_ = false, dragging_ = false, framing_ = false;
    std::unique_ptr<QRubberBand> band_;
};

}  // namespace fettle
