// Why: a picture of plain data that a widget shows and says in words as well, for those who do not see it:
// what the drawings of balancing have in common. Painting only draws. Thread: the window's.
#pragma once

#include <QPainter>
#include <QWidget>
#include <utility>

#include "ui/theme/theme.h"

namespace fettle {

template <class Picture>
class DrawnPicture : public QWidget {
  public:
    void setPicture(Picture picture) {  // its accessible description tells the same in words
        picture_ = std::move(picture);
        const QString words = words_(picture_);
        setAccessibleDescription(words);
        setToolTip(words);
        update();
    }
    const Picture& picture() const { return picture_; }
    QSize sizeHint() const override { return usual_ * fontMetrics().height(); }
    QSize minimumSizeHint() const override { return least_ * fontMetrics().height(); }

  protected:
    using Words = QString (*)(const Picture&);
    using Paint = void (*)(QPainter&, const QRectF&, const Picture&, const Theme&, const QFont&);

    // Sizes in heights of the font.
    DrawnPicture(const Theme& theme, QSize usual, QSize least, Words words, Paint paint, QWidget* parent)
        : QWidget(parent), theme_(theme), usual_(usual), least_(least), words_(words), paint_(paint) {
        connect(&theme, &Theme::changed, this, qOverload<>(&QWidget::update));
    }
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        paint_(painter, rect(), picture_, theme_, font());
    }

  private:
    const Theme& theme_;
    QSize usual_, least_;
    Words words_;
    Paint paint_;
    Picture picture_;
};

}  // namespace fettle
