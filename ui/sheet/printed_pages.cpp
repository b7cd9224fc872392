#include "ui/sheet/printed_pages.h"

#include <QBuffer>
#include <QPainter>
#include <QPdfWriter>
#include <QTextLayout>
#include <cmath>

namespace fettle {

namespace {

constexpr double kBoxLineMm = 0.18;
constexpr Qt::GlobalColor kBetweenPages = Qt::lightGray;
constexpr int kDotsPerInch = 1200;

void paintRules(QPainter& painter, const SheetPage& page, const Theme& theme) {
    for (const PlacedRule& rule : page.rules) {
        painter.setPen(QPen(theme.colour(rule.ink), rule.widthMm * kMm,
                            rule.dashed ? Qt::DashLine : Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(rule.line);
    }
}

void paintBoxes(QPainter& painter, const SheetPage& page, const Theme& theme) {
    painter.setPen(
        QPen(theme.colour(Role::MutedInk), kBoxLineMm * kMm, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    for (const PlacedBox& box : page.boxes) {
        painter.setBrush(box.filled ? QBrush(theme.colour(Role::Ink)) : QBrush(Qt::NoBrush));
        painter.drawRect(box.rect);
    }
}

void paintDiscs(QPainter& painter, const SheetPage& page, const Theme& theme) {
    if (!page.disc.isNull()) paintUrgencyDisc(painter, page.disc, page.urgency, theme.colour(Role::Ink));
    for (const PlacedDisc& disc : page.discs)
        paintUrgencyDisc(painter, disc.rect, disc.urgency, theme.colour(Role::Ink));
}

void paintTexts(QPainter& painter, const SheetPage& page, const Theme& theme) {
    for (const PlacedText& text : page.texts) {
        painter.setPen(theme.colour(text.ink));
        text.layout->draw(&painter, text.at);
    }
}

QPageSize pageSize(PaperSize size) {
    return QPageSize(size == PaperSize::A4 ? QPageSize::A4 : QPageSize::Letter);
}

}  // namespace

void PrintedPages::paint(QPainter& painter, std::size_t number, double scale) {
    const SheetPage& page = pages_[number];
    painter.save();
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    const double perUnit = scale * painter.device()->logicalDpiX() / kUnitsPerInch;
    painter.scale(perUnit, perUnit);
    paintRules(painter, page, paper_);
    paintBoxes(painter, page, paper_);
    paintDiscs(painter, page, paper_);
    paintTexts(painter, page, paper_);
    paintFigures(painter, page);
    painter.restore();
}

QImage PrintedPages::picture(std::size_t page, double dotsPerInch) {
    const QSizeF inches = paperMm(size_) / 25.4;
    QImage image(int(std::lround(inches.width() * dotsPerInch)),
                 int(std::lround(inches.height() * dotsPerInch)), QImage::Format_RGB32);
    image.setDotsPerMeterX(int(std::lround(dotsPerInch / 0.0254)));
    image.setDotsPerMeterY(image.dotsPerMeterX());
    image.fill(paper_.colour(Role::Ground));
    QPainter painter(&image);
    paint(painter, page);
    return image;
}

QImage PrintedPages::picture(double dotsPerInch) {
    if (pages_.size() == 1) return picture(0, dotsPerInch);
    const int gap = int(std::lround(kBetweenPagesMm / 25.4 * dotsPerInch));
    QImage all;
    for (std::size_t i = 0; i < pages_.size(); ++i) {
        const QImage one = picture(i, dotsPerInch);
        if (all.isNull()) {
            all = QImage(one.width(), int(pages_.size()) * (one.height() + gap) - gap, one.format());
            all.fill(kBetweenPages);
        }
        QPainter(&all).drawImage(0, int(i) * (one.height() + gap), one);
    }
    return all;
}

struct PdfBook::Parts {
    QByteArray bytes;
    QBuffer buffer{&bytes};
    std::unique_ptr<QPdfWriter> writer;
    QPainter painter;
};

PdfBook::PdfBook(PaperSize size, const PdfTitle& title) : parts_(std::make_unique<Parts>()) {
    parts_->buffer.open(QIODevice::WriteOnly);
    parts_->writer = std::make_unique<QPdfWriter>(&parts_->buffer);
    parts_->writer->setResolution(kDotsPerInch);
    parts_->writer->setPageSize(pageSize(size));
    parts_->writer->setPageMargins(QMarginsF());
    parts_->writer->setTitle(title.title);
    parts_->writer->setCreator(QStringLiteral("Fettle %1").arg(title.engine));
}

PdfBook::~PdfBook() {
    if (parts_->painter.isActive()) parts_->painter.end();
}

Status PdfBook::add(PrintedPages& pages) {
    QPainter& painter = parts_->painter;
    if (!painter.isActive() && !painter.begin(parts_->writer.get()))
        return fail(ErrorKind::Unwritable, "", "", "the page could not be begun");
    for (std::size_t page = 0; page < pages.pages().size(); ++page) {
        if (count_ > 0 && !parts_->writer->newPage())
            return fail(ErrorKind::Unwritable, "", "", "the next page could not be begun");
        pages.paint(painter, page);
        ++count_;
    }
    return {};
}

QByteArray PdfBook::finish() {
    if (parts_->painter.isActive()) parts_->painter.end();
    parts_->writer.reset();
    parts_->buffer.close();
    return parts_->bytes;
}

Result<QByteArray> pdfOf(PrintedPages& pages, const PdfTitle& title) {
    PdfBook book(pages.size(), title);
    if (auto added = book.add(pages); !added) return fail(added.error());
    return book.finish();
}

}  // namespace fettle
