#include "ui/plot/head_flow.h"

#include <QWidget>
#include <algorithm>

namespace fettle {

namespace {
constexpr int kRowGap = 2;
}

HeadFlow::HeadFlow(QWidget* parent) : QLayout(parent) {
    setSpacing(8);
    setContentsMargins(0, 0, 0, 0);
}

HeadFlow::~HeadFlow() {
    while (QLayoutItem* item = takeAt(0))
        delete item;
}

void HeadFlow::insertWidget(int at, QWidget* widget) {
    addChildWidget(widget);
    items_.insert(at, new QWidgetItem(widget));
    invalidate();
}

void HeadFlow::addItem(QLayoutItem* item) {
    items_.append(item);
}

QLayoutItem* HeadFlow::takeAt(int index) {
    return index >= 0 && index < items_.size() ? items_.takeAt(index) : nullptr;
}

QSize HeadFlow::minimumSize() const {
    int width = 0;
    for (const QLayoutItem* item : items_)
        if (!item->isEmpty() && item != items_.back()) width = std::max(width, item->minimumSize().width());
    return {width, 0};
}

QSize HeadFlow::sizeHint() const {
    int width = 0, height = 0;
    for (const QLayoutItem* item : items_) {
        if (item->isEmpty()) continue;
        width += item->sizeHint().width() + spacing();
        height = std::max(height, item->sizeHint().height());
    }
    return {width, height};
}

void HeadFlow::setGeometry(const QRect& rect) {
    QLayout::setGeometry(rect);
    arranged(rect, true);
}

int HeadFlow::arranged(const QRect& rect, bool place) const {
    QList<QLayoutItem*> row;
    int x = rect.left(), y = rect.top(), high = 0;
    const auto endRow = [&] {
        for (QLayoutItem* item : row) {
            const QRect at = item->geometry();
            if (place) item->setGeometry({at.left(), y + (high - at.height()) / 2, at.width(), at.height()});
        }
        row.clear();
        y += high + kRowGap;
        x = rect.left();
        high = 0;
    };
    for (QLayoutItem* item : items_) {
        if (item->isEmpty()) continue;
        const bool tail = item == items_.back();
        const QSize wanted = item->sizeHint();
        const int width = tail ? tailWidth_ : wanted.width();
        if (x > rect.left() && x + width > rect.right() + 1) endRow();
        const int given = tail ? rect.right() + 1 - x : std::min(width, rect.width());
        if (place) item->setGeometry({x, y, given, wanted.height()});
        row.append(item);
        x += given + spacing();
        high = std::max(high, wanted.height());
    }
    endRow();
    return y - kRowGap - rect.top();
}

}  // namespace fettle
