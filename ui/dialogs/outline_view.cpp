#include "ui/dialogs/outline_view.h"

#include <QPainter>
#include <algorithm>

#include "ui/plot/readout.h"

namespace fettle {

OutlineView::OutlineView(const Theme& theme, QWidget* parent) : QWidget(parent), theme_(theme) {
    setObjectName(QStringLiteral("previewOutline"));
    setAccessibleName(tr("Outline of the first channel"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(&theme, &Theme::changed, this, [this] { update(); });
}

void OutlineView::set(std::vector<std::array<float, 2>> outline, const QString& unit) {
    outline_ = std::move(outline);
    unit_ = unit;
    if (!outline_.empty()) {
        least_ = outline_[0][0];
        most_ = outline_[0][1];
        for (const auto& [low, high] : outline_) {
            least_ = std::min(least_, low);
            most_ = std::max(most_, high);
        }
        setAccessibleDescription(
            tr("from %1 to %2 %3").arg(significant(double(least_)), significant(double(most_)), unit_));
        setToolTip(accessibleDescription());
    }
    update();
}

QSize OutlineView::sizeHint() const {
    return {fontMetrics().averageCharWidth() * 50, fontMetrics().height() * 4};
}

void OutlineView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setPen(theme_.colour(Role::Rule));
    painter.drawRect(rect().adjusted(0, 0, -1, -1));
    if (outline_.empty()) return;
    const int margin = fontMetrics().averageCharWidth() * 10;
    const QRectF field = QRectF(rect()).adjusted(margin, 4, -4, -4);
    const double span = std::max(double(most_ - least_), 1e-30);
    const auto y = [&](float value) {
        return field.bottom() - (double(value) - double(least_)) / span * field.height();
    };
    painter.setPen(QPen(theme_.colour(Role::Curve), 1));
    for (std::size_t i = 0; i < outline_.size(); ++i) {
        const double x = field.left() + (double(i) + 0.5) / double(outline_.size()) * field.width();
        painter.drawLine(QPointF(x, y(outline_[i][0])), QPointF(x, y(outline_[i][1]) - 0.5));
    }
    painter.setPen(theme_.colour(Role::MutedInk));
    const QRect left(4, 2, margin - 8, height() - 4);
    painter.drawText(left, Qt::AlignRight | Qt::AlignTop, significant(double(most_)));
    painter.drawText(left, Qt::AlignRight | Qt::AlignBottom, significant(double(least_)));
    painter.drawText(left, Qt::AlignRight | Qt::AlignVCenter, unit_);
}

}  // namespace fettle
