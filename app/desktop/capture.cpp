#include "app/desktop/capture.h"

#include <QApplication>
#include <QDialog>
#include <QPainter>
#include <cstdio>

#include "ui/window/main_window.h"

namespace fettle {

namespace {

constexpr int kStepMs = 25;
constexpr int kQuietSteps = 8;  // nothing at work for so long: whatever an answer asks for has been asked

// Dialogs are windows of their own: each is set in the middle, under its title, as it stands on the screen.
void addDialogs(const QWidget& window, QPixmap& picture) {
    QPainter painter(&picture);
    for (QDialog* dialog : window.findChildren<QDialog*>()) {
        if (!dialog->isVisible()) continue;
        const QPixmap part = dialog->grab();
        const QSizeF size = part.deviceIndependentSize();
        const double head = dialog->fontMetrics().height() + 12;
        const QPointF corner((window.width() - size.width()) / 2,
                             (window.height() - size.height() + head) / 2);
        const QRectF title(corner.x(), corner.y() - head, size.width(), head);
        const QPalette& palette = dialog->palette();
        painter.fillRect(title, palette.color(QPalette::Button));
        painter.setPen(palette.color(QPalette::WindowText));
        painter.setFont(dialog->font());
        painter.drawText(title, Qt::AlignCenter, dialog->windowTitle());
        painter.drawPixmap(corner, part);
        painter.setPen(QPen(palette.color(QPalette::Dark), 1));
        painter.drawRect(title.united(QRectF(corner, size)));
    }
}

}  // namespace

Capture::Capture(MainWindow& window, QString file, QObject* parent)
    : QObject(parent), window_(window), file_(std::move(file)) {
    connect(&timer_, &QTimer::timeout, this, &Capture::look);
}

void Capture::start() {
    clock_.start();
    timer_.start(kStepMs);
}

void Capture::look() {
    if (clock_.elapsed() > qint64(kMostSeconds) * 1000)
        return end(QStringLiteral("the page was not complete within %1 s").arg(kMostSeconds));
    quiet_ = window_.settled() ? quiet_ + 1 : 0;
    if (quiet_ < kQuietSteps) return;
    if (!window_.trouble().isEmpty()) return end(window_.trouble());
    save();
}

void Capture::save() {
    QPixmap picture = window_.grab();
    addDialogs(window_, picture);
    end(picture.save(file_, "PNG") ? QString()
                                   : QStringLiteral("%1: the picture cannot be written").arg(file_));
}

void Capture::end(const QString& trouble) {
    timer_.stop();
    if (!trouble.isEmpty()) std::fprintf(stderr, "fettle: %s\n", trouble.toUtf8().constData());
    QApplication::exit(trouble.isEmpty() ? 0 : 3);
}

}  // namespace fettle
