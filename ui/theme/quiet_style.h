// Why: the controls of the window as a quiet report has them: fields, lists and numbers stand on a thin rule,
// buttons, lists and fields of long text in a hairline, check boxes as a plain square, focus in the accent
// ink; fields beside each other have one height, and their text and marks begin and end alike; visible in the
// light and the dark theme alike (3:1 against the ground). Everything else is Fusion. Colours come from the
// application's palette, which the theme made: Dark is its muted ink, Link its accent. Thread: the window's.
#pragma once

#include <QProxyStyle>

namespace fettle {

class QuietStyle : public QProxyStyle {
    Q_OBJECT
  public:
    QuietStyle() : QProxyStyle(QStringLiteral("Fusion")) {}

    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget) const override;
    void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                            const QWidget* widget) const override;
    QRect subControlRect(ComplexControl control, const QStyleOptionComplex* option, SubControl part,
                         const QWidget* widget) const override;
    QRect subElementRect(SubElement element, const QStyleOption* option,
                         const QWidget* widget) const override;
    int pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const override;
    QSize sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& contents,
                           const QWidget* widget) const override;
    // Labels and tips show text as it is; who means markup says Qt::RichText.
    void polish(QWidget* widget) override;
    using QProxyStyle::polish;
    int styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                  QStyleHintReturn* returned) const override;
};

}  // namespace fettle
