#include "ui/plot/plot_export.h"

#include <qwt_plot.h>

#include <QApplication>
#include <QBuffer>
#include <QClipboard>
#include <QFileInfo>
#include <QGuiApplication>
#include <QMimeData>
#include <QPainter>
#include <QPdfWriter>
#include <QPointer>
#include <QSaveFile>
#include <QSvgGenerator>
#include <QThreadPool>

#include "core/exchange/csv_cell.h"
#include "ui/model/table_text.h"
#include "ui/plot/plot_frame.h"

namespace fettle {

namespace {

constexpr double kInchMm = 25.4;
constexpr double kPdfWidthMm = 180;
constexpr int kPdfDpi = 300;

QSize sizeOf(const PlotFrame& plot) {
    return plot.size().expandedTo({200, 120});
}

// Words above, the plot below them; `rect` in units of the device.
void paintAll(PlotFrame& plot, QPainter& painter, const QRectF& rect) {
    painter.fillRect(rect, plot.plot().canvasBackground());
    const QFontMetricsF metrics(plot.font(), painter.device());
    const QString words = plot.caption();
    QRectF head = rect.adjusted(metrics.averageCharWidth(), 0, -metrics.averageCharWidth(), 0);
    head.setHeight(0);
    if (!words.isEmpty()) {
        head.setHeight(
            metrics.boundingRect(head.adjusted(0, 0, 0, rect.height()), Qt::TextWordWrap, words).height());
        painter.setFont(plot.font());
        painter.setPen(plot.palette().color(QPalette::Text));
        painter.drawText(head, Qt::TextWordWrap, words);
    }
    plot.renderTo(painter, rect.adjusted(0, head.height(), 0, 0));
}

Status notWritten(const QString& path, const QString& why) {
    return fail(ErrorKind::Unwritable, path.toStdString(), "", why.toStdString());
}

// `write` fills the open file.
template <class Write>
Status written(const QString& path, Write write) {
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly)) return notWritten(path, file.errorString());
    if (!write(file)) return notWritten(path, QStringLiteral("the plot could not be drawn"));
    if (!file.commit()) return notWritten(path, file.errorString());
    return {};
}

bool drawPdf(PlotFrame& plot, QIODevice& file) {
    QPdfWriter writer(&file);
    const double ratio = double(sizeOf(plot).height()) / sizeOf(plot).width();
    writer.setPageSize(QPageSize(QSizeF(kPdfWidthMm, kPdfWidthMm * ratio), QPageSize::Millimeter));
    writer.setPageMargins({});
    writer.setResolution(kPdfDpi);
    writer.setTitle(plot.caption());
    QPainter painter;
    if (!painter.begin(&writer)) return false;
    paintAll(plot, painter, QRectF(0, 0, writer.width(), writer.height()));
    return painter.end();
}

}  // namespace

QImage plotPicture(PlotFrame& plot, double scale) {
    QImage image(sizeOf(plot) * scale, QImage::Format_RGB32);
    image.setDotsPerMeterX(int(plot.logicalDpiX() * scale * 1000 / kInchMm + 0.5));
    image.setDotsPerMeterY(int(plot.logicalDpiY() * scale * 1000 / kInchMm + 0.5));
    QPainter painter(&image);
    paintAll(plot, painter, image.rect());
    return image;
}

QByteArray plotSvg(PlotFrame& plot) {
    QBuffer buffer;
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setSize(sizeOf(plot));
    generator.setViewBox(QRect({}, sizeOf(plot)));
    generator.setResolution(plot.logicalDpiX());
    generator.setTitle(plot.caption());
    QPainter painter(&generator);
    paintAll(plot, painter, QRectF({}, sizeOf(plot)));
    painter.end();
    return buffer.data();
}

QString asCsv(const QString& tabbed) {
    QStringList rows;
    for (const QString& line : withoutFormulas(tabbed).split(QLatin1Char('\n'))) {
        QStringList fields = line.split(QLatin1Char('\t'));
        for (QString& field : fields)
            if (field.contains(QLatin1Char(',')) || field.contains(QLatin1Char('"')))
                field = QLatin1Char('"') + field.replace(QLatin1Char('"'), QLatin1String("\"\"")) +
                        QLatin1Char('"');
        rows << fields.join(QLatin1Char(','));
    }
    return rows.join(QLatin1String(kCsvEnd));
}

void copyPicture(PlotFrame& plot) {
    auto* data = new QMimeData;
    data->setImageData(plotPicture(plot));
    data->setData(QStringLiteral("image/svg+xml"), plotSvg(plot));
    QGuiApplication::clipboard()->setMimeData(data);
}

void copyTable(const QString& table) {
    QGuiApplication::clipboard()->setText(withoutFormulas(table));
}

Status savePlot(PlotFrame& plot, const QString& path, TableExtent extent) {
    const QString ending = QFileInfo(path).suffix().toLower();
    if (ending == QLatin1String("png"))
        return written(path, [&](QIODevice& file) { return plotPicture(plot).save(&file, "PNG"); });
    if (ending == QLatin1String("svg"))
        return written(path, [&](QIODevice& file) { return file.write(plotSvg(plot)) > 0; });
    if (ending == QLatin1String("pdf"))
        return written(path, [&](QIODevice& file) { return drawPdf(plot, file); });
    if (ending == QLatin1String("csv")) return written(path, plot.tableWriter(extent));
    return fail(ErrorKind::Invalid, path.toStdString(), "", "the name must end in .png, .svg, .pdf or .csv");
}

void saveTableBeside(PlotFrame& plot, const QString& path, TableWriter writer,
                     std::function<void(Status)> done) {
    QThreadPool::globalInstance()->start(
        [to = QPointer<PlotFrame>(&plot), path, writer = std::move(writer), done = std::move(done)] {
            const Status status = written(path, writer);
            QMetaObject::invokeMethod(
                qApp,
                [to, status, done] {
                    if (to) done(status);
                },
                Qt::QueuedConnection);
        });
}

}  // namespace fettle
