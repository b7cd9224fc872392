// The marks of the controls at the scales of usual screens. Facts are geometry: what is drawn, counted in
// pixels of the screen; scales as in the settings of common desktops (100 to 200 %), common practice, no
// source.
#include "ui/theme/quiet_style.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QDateTimeEdit>
#include <QImage>
#include <QLineEdit>
#include <QListWidget>
#include <QPainter>
#include <QPlainTextEdit>
#include <QSpinBox>
#include <QTextBrowser>
#include <algorithm>
#include <cmath>
#include <vector>

#include "ui/theme/theme.h"

namespace fettle {
namespace {

const double kScales[] = {1, 1.25, 1.5, 1.75, 2};

class QuietControls : public testing::TestWithParam<double> {
  protected:
    QuietControls() : theme_(ThemeChoice::Dark) {}

    void put(QWidget& widget) {
        widget.setStyle(&style_);
        widget.setPalette(theme_.palette());
    }
    // The widget at a place of a window, in pixels of a screen of the scale asked.
    QImage drawn(QWidget& widget, const QPoint& at) const {
        const double scale = GetParam();
        QImage image((QSizeF(widget.width() + 40, widget.height() + 40) * scale).toSize(),
                     QImage::Format_RGB32);
        image.setDevicePixelRatio(scale);
        image.fill(theme_.colour(Role::Ground));
        QPainter painter(&image);
        widget.render(&painter, at);
        return image;
    }
    bool inked(const QImage& image, int x, int y) const {
        return contrast(image.pixelColor(x, y), theme_.colour(Role::Ground)) >= 3;
    }
    // How many pixels of the line of pixels that starts there are ink.
    int run(const QImage& image, QPoint from, const QPoint& step) const {
        int count = 0;
        for (; image.rect().contains(from); from += step)
            count += inked(image, from.x(), from.y());
        return count;
    }

    QuietStyle style_;
    Theme theme_;
};

int firstInkedColumn(const QImage& image, const QColor& ground, int rows) {
    for (int x = 0; x < image.width(); ++x)
        for (int y = 0; y < rows; ++y)
            if (contrast(image.pixelColor(x, y), ground) >= 2) return x;
    return -1;
}

// At 1.5 a hairline of one unit lost sides to the content beside it.
TEST_P(QuietControls, WhatScrollsHasItsFrameOnAllSides) {
    QPlainTextEdit text;
    QTextBrowser browser;
    QListWidget list;
    for (QWidget* one : std::initializer_list<QWidget*>{&text, &browser, &list}) {
        put(*one);
        one->setFixedSize(150, 60);
        for (int at = 0; at < 4; ++at) {
            const QImage image = drawn(*one, {10 + at, 10 + at});
            const int thick = std::max(1, qRound(GetParam()));
            const QPoint middle((QPointF(10 + at + 75, 10 + at + 30) * GetParam()).toPoint());
            EXPECT_EQ(run(image, {middle.x(), 0}, {0, 1}), 2 * thick) << one->metaObject()->className();
            EXPECT_EQ(run(image, {0, middle.y()}, {1, 0}), 2 * thick) << one->metaObject()->className();
        }
    }
}

TEST_P(QuietControls, ARuleIsAsThickWhereverItStands) {
    QLineEdit field;
    put(field);
    field.setFixedWidth(100);
    for (int at = 0; at < 4; ++at) {
        const QImage image = drawn(field, {10, 10 + at});
        EXPECT_EQ(run(image, {qRound(60 * GetParam()), 0}, {0, 1}), std::max(1, qRound(GetParam()))) << at;
    }
}

TEST_P(QuietControls, FieldsBesideEachOtherAreAlike) {
    const QString word = QStringLiteral("H");
    QLineEdit line(word);
    QComboBox list, open;
    list.addItem(word);
    open.setEditable(true);
    open.addItem(word);
    QSpinBox number;
    number.setPrefix(word);
    QDateTimeEdit date;
    date.setDisplayFormat(QStringLiteral("'H'yyyy"));
    date.setCalendarPopup(true);
    std::vector<int> heights, lefts, tops;
    for (QWidget* one : std::initializer_list<QWidget*>{&line, &list, &open, &number, &date}) {
        put(*one);
        one->ensurePolished();
        one->resize(one->sizeHint().width(), one->sizeHint().height());
        heights.push_back(one->sizeHint().height());
        const QImage image = drawn(*one, {0, 0});
        const int rows = int((one->height() - 4) * GetParam());
        lefts.push_back(firstInkedColumn(image, theme_.colour(Role::Ground), rows));
        int top = 0;
        while (top < image.height() && !inked(image, lefts.back() + 1, top))
            ++top;
        tops.push_back(top);
    }
    EXPECT_EQ(heights, std::vector<int>(heights.size(), heights[0]));
    EXPECT_EQ(lefts, std::vector<int>(lefts.size(), lefts[0]));
    const auto [highest, lowest] = std::minmax_element(tops.begin(), tops.end());
    EXPECT_LE(*lowest - *highest, GetParam() == std::floor(GetParam()) ? 0 : 1);
}

TEST_P(QuietControls, MarksOfListsAndNumbersEndAtTheSameDistance) {
    QComboBox list;
    QSpinBox number;
    QDateTimeEdit time;
    std::vector<int> rights;
    for (QWidget* one : std::initializer_list<QWidget*>{&list, &number, &time}) {
        put(*one);
        one->resize(120, 25);
        const QImage image = drawn(*one, {0, 0});
        int right = image.width() - 1;
        const auto marked = [&](int x) {
            for (int y = 0; y < int(20 * GetParam()); ++y)
                if (inked(image, x, y)) return true;
            return false;
        };
        while (right > 0 && !marked(right))
            --right;
        rights.push_back(right);
    }
    const auto [left, right] = std::minmax_element(rights.begin(), rights.end());
    EXPECT_LE(*right - *left, 1);  // a slant is blurred by one
}

TEST_P(QuietControls, ANumberOfItsOwnSizeIsWholeBesideItsMarks) {
    QSpinBox number;
    put(number);
    number.setRange(1, 65535);
    number.setSuffix(QStringLiteral(" an hour"));
    number.setValue(65535);
    number.resize(number.sizeHint());
    drawn(number, {0, 0});
    const auto* line = number.findChild<QLineEdit*>();
    ASSERT_TRUE(line);
    EXPECT_GE(line->width() - 4, number.fontMetrics().horizontalAdvance(number.text()));
    EXPECT_LE(line->geometry().right(),
              number.width() - 2 * 5 - int(std::ceil(2 * number.fontMetrics().height() / 5.0)));
}

INSTANTIATE_TEST_SUITE_P(OfScreens, QuietControls, testing::ValuesIn(kScales));

}  // namespace
}  // namespace fettle
