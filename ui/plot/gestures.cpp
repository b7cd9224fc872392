#include "ui/plot/gestures.h"

#include <QApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QRubberBand>
#include <QWheelEvent>
#include <QWidget>
#include <cmath>

namespace fettle {

namespace {
constexpr double kStep = 1.25;  // one notch of the wheel, one press of + or -
}

Gestures::Gestures(QWidget& canvas) : QObject(&canvas), canvas_(canvas) {
    canvas_.setMouseTracking(true);
    canvas_.setFocusPolicy(Qt::StrongFocus);
    canvas_.installEventFilter(this);
}

Gestures::~Gestures() = default;

QList<std::pair<QString, QString>> Gestures::table() {
    return {{tr("Wheel, + and -"), tr("zoom")},
            {tr("Ctrl and wheel, Alt with + and -"), tr("zoom the upright axis")},
            {tr("Ctrl with + and -"), tr("not of the plot: letters of the whole window larger, smaller")},
            {tr("Drag, Page Up, Page Down"), tr("shift")},
            {tr("Shift and drag"), tr("zoom to a frame")},
            {tr("Double click, Home"), tr("show all")},
            {tr("Click"), tr("choose the moment or peak")},
            {tr("Left, Right"), tr("step to the next; with Shift: farther")},
            {tr("Alt and Left, Right"), tr("in a spectrum: the cursor by a tenth of a line")},
            {tr("Ctrl and Left, Right"),
             tr("in a spectrum: the other cursor, the sidebands' spacing, the number of harmonics")}};
}

bool Gestures::eventFilter(QObject* watched, QEvent* event) {
    if (watched != &canvas_) return false;
    switch (event->type()) {
        case QEvent::Wheel: {
            const auto& wheel = static_cast<QWheelEvent&>(*event);
            const int turned = wheel.angleDelta().y() ? wheel.angleDelta().y() : wheel.angleDelta().x();
            emit zoomed(std::pow(kStep, -turned / 120.0), wheel.position(),
                        wheel.modifiers().testFlag(Qt::ControlModifier));
            return true;
        }
        case QEvent::MouseButtonPress:
            press(static_cast<QMouseEvent&>(*event));
            return false;
        case QEvent::MouseMove:
            move(static_cast<QMouseEvent&>(*event));
            return false;
        case QEvent::MouseButtonRelease:
            release(static_cast<QMouseEvent&>(*event));
            return false;
        case QEvent::MouseButtonDblClick:
            emit showAll();
            return true;
        case QEvent::Leave:
            if (canvas_.isVisible())
                emit left();  // else it is being taken down, and with it the plot's parts
            return false;
        case QEvent::KeyPress:
            return key(static_cast<QKeyEvent&>(*event));
        default:
            return false;
    }
}

void Gestures::press(const QMouseEvent& event) {
    if (event.button() != Qt::LeftButton) return;
    pressed_ = true;
    dragging_ = false;
    framing_ = event.modifiers().testFlag(Qt::ShiftModifier);
    pressedAt_ = lastAt_ = event.position().toPoint();
}

void Gestures::move(const QMouseEvent& event) {
    const QPoint at = event.position().toPoint();
    if (!pressed_) {
        emit hovered(event.position());
        return;
    }
    if (!dragging_ && (at - pressedAt_).manhattanLength() < QApplication::startDragDistance()) return;
    dragging_ = true;
    if (framing_) {
        if (!band_) band_ = std::make_unique<QRubberBand>(QRubberBand::Rectangle, &canvas_);
        band_->setGeometry(QRect(pressedAt_, at).normalized());
        band_->show();
    } else {
        emit panned(at - lastAt_);
    }
    lastAt_ = at;
}

void Gestures::release(const QMouseEvent& event) {
    if (event.button() != Qt::LeftButton || !pressed_) return;
    pressed_ = false;
    if (band_) band_->hide();
    if (!dragging_)
        emit clicked(event.position(), event.modifiers());
    else if (framing_)
        emit framed(QRect(pressedAt_, lastAt_).normalized());
}

bool Gestures::key(const QKeyEvent& event) {
    const bool far = event.modifiers().testFlag(Qt::ShiftModifier);
    const bool other = event.modifiers().testFlag(Qt::ControlModifier);
    const bool upright = other || event.modifiers().testFlag(Qt::AltModifier);
    const QPointF middle = canvas_.rect().center();
    switch (event.key()) {
        case Qt::Key_Plus:
        case Qt::Key_Equal:
            emit zoomed(1 / kStep, middle, upright);
            return true;
        case Qt::Key_Minus:
            emit zoomed(kStep, middle, upright);
            return true;
        case Qt::Key_Home:
            emit showAll();
            return true;
        case Qt::Key_PageUp:
            emit panned(QPointF(canvas_.width() / 2.0, 0));
            return true;
        case Qt::Key_PageDown:
            emit panned(QPointF(-canvas_.width() / 2.0, 0));
            return true;
        case Qt::Key_Left:
        case Qt::Key_Right: {
            const int steps = event.key() == Qt::Key_Left ? -1 : 1;
            const bool fine = event.modifiers().testFlag(Qt::AltModifier);
            if (fine || other)
                emit nudged(steps, other);
            else
                emit stepped(steps, far);
            return true;
        }
        default:
            return false;
    }
}

}  // namespace fettle
