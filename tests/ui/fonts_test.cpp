// Without a font Qt draws every letter as an empty box and reports nothing, so pictures and sheets would be
// worthless in silence. common practice, no source.
#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>

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
    const QImage missing = drawn(QString(QChar(0xE9F3)));  // of the private area: no font has it
    for (const QChar sign :
         {QChar(u'z'), QChar(u'\u00b5'), QChar(u'\u00d7'), QChar(u'\u00b1'), QChar(u'\u2265')})
        EXPECT_NE(drawn(QString(sign)), missing) << int(sign.unicode());
}
