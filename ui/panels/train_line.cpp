#include "ui/panels/train_line.h"

#include <QEvent>
#include <QKeyEvent>
#include <QPainter>

#include "ui/panels/train_symbol.h"

namespace fettle {

namespace {
constexpr double kRowOfPoints = 1.15, kRowOfSymbols = 1.6, kRowOfCaptions = 1.15;  // heights of text
constexpr int kGap = 6;
}  // namespace

// One symbol with its caption, or one measuring point.
class TrainMark : public QAbstractButton {
  public:
    TrainMark(const Theme& theme, TrainSlot slot, bool point, QWidget* parent)
        : QAbstractButton(parent), theme_(theme), slot_(std::move(slot)), point_(point) {
        setCursor(Qt::PointingHandCursor);
    }
    const TrainSlot& slot() const { return slot_; }
    bool isPoint() const { return point_; }
    void choose(bool chosen) {
        chosen_ = chosen;
        setAccessibleDescription(chosen ? TrainLine::tr("chosen") : QString());
        update();
    }

  protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        if (chosen_) painter.fillRect(rect(), theme_.colour(Role::AccentGround));
        const bool marked = chosen_ || hasFocus() || underMouse();
        painter.setPen(QPen(theme_.colour(marked ? Role::Accent : Role::Ink), chosen_ ? 1.8 : 1.2));
        point_ ? paintPoint(painter) : paintSlot(painter);
        if (!hasFocus()) return;
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(theme_.colour(Role::Accent), 1, Qt::DotLine));
        painter.drawRect(rect().adjusted(0, 0, -1, -1));
    }

  private:
    void paintSlot(QPainter& painter) {
        const double high = fontMetrics().height() * kRowOfSymbols;
        const QColor ground = theme_.colour(chosen_ ? Role::AccentGround : Role::Ground);
        painter.save();
        paintTrainSymbol(painter, slot_.symbol, QRectF(0, 0, width(), high), ground);
        painter.restore();
        if (!chosen_ && !hasFocus()) painter.setPen(theme_.colour(Role::MutedInk));
        painter.drawText(QRectF(0, high, width(), height() - high), Qt::AlignHCenter | Qt::AlignVCenter,
                         fontMetrics().elidedText(slot_.caption, Qt::ElideRight, width()));
    }
    void paintPoint(QPainter& painter) {
        const double size = fontMetrics().height() * 0.32, middle = height() / 2.0;
        painter.setBrush(painter.pen().color());
        painter.drawPolygon(
            QPolygonF({QPointF(2, middle - size * 0.8), QPointF(2 + 2 * size, middle - size * 0.8),
                       QPointF(2 + size, middle + size)}));
        const int left = int(2 + 2 * size + 3);
        painter.drawText(QRect(left, 0, width() - left, height()), Qt::AlignLeft | Qt::AlignVCenter,
                         fontMetrics().elidedText(slot_.caption, Qt::ElideRight, width() - left));
    }

    const Theme& theme_;
    TrainSlot slot_;
    bool point_, chosen_ = false;
};

TrainLine::TrainLine(const Theme& theme, QWidget* parent) : QWidget(parent), theme_(theme) {
    setObjectName(QStringLiteral("trainLine"));
    setAccessibleName(tr("Train from driver to driven machine"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(&theme_, &Theme::changed, this, [this] { update(); });
}

TrainMark* TrainLine::add(const QString& key, const QString& name, bool point) {
    TrainSlot slot;
    slot.key = slot.caption = key;
    for (const TrainSlot& one : row_)
        if (!point && one.key == key) slot = one;
    auto* mark = new TrainMark(theme_, slot, point, this);
    mark->setObjectName((point ? QStringLiteral("point/") : QStringLiteral("train/")) + key);
    mark->setAccessibleName(name);
    mark->setToolTip(name);
    mark->setFocusPolicy(Qt::StrongFocus);
    mark->installEventFilter(this);
    connect(mark, &QAbstractButton::clicked, this, [this, mark] { pick(*mark); });
    marks_.push_back(mark);
    mark->show();
    return mark;
}

void TrainLine::setMachine(const Machine* machine) {
    for (TrainMark* mark : marks_) {
        mark->removeEventFilter(this);
        mark->hide();
        mark->deleteLater();
    }
    marks_.clear();
    row_ = machine ? trainSlots(*machine) : std::vector<TrainSlot>{};
    for (const TrainSlot& slot : row_) {
        add(slot.key, slot.tip, false);
        for (const TrainPoint& point : slot.points)
            add(point.id, point.tip, true);
    }
    place();
    setChosen(bearing_, point_);
    updateGeometry();
}

void TrainLine::setChosen(const QString& bearing, const QString& point) {
    bearing_ = bearing;
    point_ = point;
    for (TrainMark* mark : marks_)
        mark->choose(!mark->slot().key.isEmpty() && mark->slot().key == (mark->isPoint() ? point : bearing));
}

int TrainLine::slotWidth(const TrainSlot& slot) const {
    const QFontMetrics metrics = fontMetrics();
    int points = 0;
    for (const TrainPoint& point : slot.points)
        points += metrics.horizontalAdvance(point.id) + metrics.height() + kGap;
    const int symbol = int(metrics.height() * (slot.symbol == TrainSymbol::Belt ? 2.2 : kRowOfSymbols));
    return std::max({symbol, metrics.horizontalAdvance(slot.caption) + kGap, points});
}

// Where the whole is wider than there is room, captions give way.
void TrainLine::place() {
    const int text = fontMetrics().height();
    const int points = int(text * kRowOfPoints), below = height() - points;
    int whole = 0;
    for (const TrainSlot& slot : row_)
        whole += slotWidth(slot) + kGap;
    const double scale = whole > width() && whole > 0 ? double(width()) / whole : 1;
    double x = 0;
    std::size_t mark = 0;
    for (const TrainSlot& slot : row_) {
        const int wide = int(slotWidth(slot) * scale);
        marks_[mark++]->setGeometry(int(x), points, wide, below);
        const int each = slot.points.empty() ? 0 : wide / int(slot.points.size());
        for (std::size_t i = 0; i < slot.points.size(); ++i)
            marks_[mark++]->setGeometry(int(x) + int(i) * each, 0, each, points);
        x += (slotWidth(slot) + kGap) * scale;
    }
    update();
}

QSize TrainLine::sizeHint() const {
    int whole = 0;
    for (const TrainSlot& slot : row_)
        whole += slotWidth(slot) + kGap;
    return {whole, minimumSizeHint().height()};
}

QSize TrainLine::minimumSizeHint() const {
    return {100, int(fontMetrics().height() * (kRowOfPoints + kRowOfSymbols + kRowOfCaptions))};
}

// The shaft behind the symbols.
void TrainLine::paintEvent(QPaintEvent*) {
    if (row_.size() < 2) return;
    QPainter painter(this);
    painter.setPen(QPen(theme_.colour(Role::MutedInk), 1.2));
    const double y = fontMetrics().height() * (kRowOfPoints + kRowOfSymbols / 2);
    const double left = marks_.front()->geometry().center().x();
    double right = left;
    for (const TrainMark* mark : marks_)
        if (!mark->isPoint()) right = mark->geometry().center().x();
    painter.drawLine(QPointF(left, y), QPointF(right, y));
}

void TrainLine::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    place();
}

void TrainLine::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() != QEvent::FontChange && event->type() != QEvent::StyleChange) return;
    updateGeometry();
    place();
}

bool TrainLine::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
    auto* mark = static_cast<TrainMark*>(watched);
    switch (static_cast<QKeyEvent*>(event)->key()) {
        case Qt::Key_Left:
        case Qt::Key_Up:
            goAlong(mark, -1);
            return true;
        case Qt::Key_Right:
        case Qt::Key_Down:
            goAlong(mark, 1);
            return true;
        case Qt::Key_Return:
        case Qt::Key_Enter:
            pick(*mark);
            return true;
        default:
            return QWidget::eventFilter(watched, event);
    }
}

// One stop of Tab: from any mark on, or back, it leaves the line.
bool TrainLine::focusNextPrevChild(bool next) {
    if (!marks_.empty()) (next ? marks_.back() : marks_.front())->setFocus(Qt::OtherFocusReason);
    return QWidget::focusNextPrevChild(next);
}

void TrainLine::goAlong(TrainMark* from, int step) {
    const auto at = std::find(marks_.begin(), marks_.end(), from);
    const auto index = (at - marks_.begin()) + step;
    if (at == marks_.end() || index < 0 || index >= std::ptrdiff_t(marks_.size())) return;
    marks_[std::size_t(index)]->setFocus(Qt::TabFocusReason);
}

void TrainLine::pick(const TrainMark& mark) {
    const TrainSlot& slot = mark.slot();
    if (mark.isPoint()) return emit pointPicked(slot.key);
    if (slot.isBearing()) return emit bearingPicked(slot.key);
    emit componentPicked(slot.key);
}

}  // namespace fettle
