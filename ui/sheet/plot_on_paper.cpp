#include "ui/sheet/plot_on_paper.h"

#include <QPainter>
#include <cmath>

#include "ui/plot/plot_frame.h"
#include "ui/sheet/sheet_page.h"

namespace fettle {

namespace {

constexpr double kLabelPt = 7.5;

void layOut(PlotFrame& frame, const QPainter& painter, const QRectF& device) {
    const double dpi = frame.logicalDpiX(), scale = dpi / painter.device()->logicalDpiX();
    const QWidget* plot = frame.canvas()->parentWidget();
    for (int pass = 0; pass < 2; ++pass) {
        frame.resize(int(std::ceil(device.width() * scale)) + frame.width() - plot->width(),
                     int(std::ceil(device.height() * scale)) + frame.height() - plot->height());
        frame.grab(QRect(0, 0, 1, 1));  // what is not shown is laid out when it is painted
    }
}

}  // namespace

void setPaperLabels(PlotFrame& frame) {
    QFont font = sheetFont(kLabelPt);
    font.setLetterSpacing(QFont::AbsoluteSpacing, 0);
    font.setPixelSize(int(std::lround(kLabelPt * frame.logicalDpiX() / 72)));
    frame.setFont(font);
}

void prepareOnPaper(PlotFrame& frame, const QPainter& painter, const QRectF& rect) {
    layOut(frame, painter, painter.transform().mapRect(rect));
}

void drawOnPaper(PlotFrame& frame, QPainter& painter, const QRectF& rect) {
    const QRectF device = painter.transform().mapRect(rect);
    layOut(frame, painter, device);
    painter.save();
    painter.resetTransform();
    painter.setFont(frame.font());
    frame.renderTo(painter, device);
    painter.restore();
}

}  // namespace fettle
