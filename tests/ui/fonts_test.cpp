// Without a font Qt draws every letter as an empty box and reports nothing, so pictures and sheets would be
// worthless in silence. common practice, no source.
#include <gtest/gtest.h>

#include <QApplication>
#include <QImage>
#include <QPainter>
#include <QRawFont>

namespace {

QImage drawn(const QString& text) {
    QImage image(40, 40, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.drawText(image.rect(), Qt::AlignCenter, text);
    return image;
}

}  // namespace

TEST(Fonts, LettersAreNotAllTheSameBox) {
    EXPECT_NE(drawn("i"), drawn("W"));
    EXPECT_NE(drawn("3"), drawn("8"));
}

TEST(Fonts, HaveTheSignsOfTheTrade) {
    const QRawFont font = QRawFont::fromFont(QApplication::font());
    for (const QChar sign : {QChar(u'A'), QChar(u'z'), QChar(u'\u00b5'), QChar(u'\u00d7'), QChar(u'\u00b1')})
        EXPECT_TRUE(font.supportsCharacter(sign)) << int(sign.unicode());
}
