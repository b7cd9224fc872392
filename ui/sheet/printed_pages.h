// Why: whatever is printed is a list of laid-out pages; screen, PDF and printer all draw the same ones, black
// on white whatever the window's theme. Sheets add their figures by `paintFigures`. Pages count from 0.
// Drawing lays out nothing anew. A PDF is vector, its letters are letters. Thread: the window's. Errors:
// Unwritable with the reason.
#pragma once

#include <QByteArray>
#include <QImage>
#include <functional>
#include <memory>
#include <vector>

#include "core/base/result.h"
#include "ui/sheet/sheet_page.h"

class QPagedPaintDevice;
class QPdfWriter;

namespace fettle {

inline constexpr double kBetweenPagesMm = 4;  // in the picture of all

class PrintedPages {
  public:
    PrintedPages(std::vector<SheetPage> pages, PaperSize size) : pages_(std::move(pages)), size_(size) {}
    virtual ~PrintedPages() = default;

    const std::vector<SheetPage>& pages() const { return pages_; }
    PaperSize size() const { return size_; }
    // One whole paper from the painter's origin; `scale` 1: in its true size.
    void paint(QPainter& painter, std::size_t page, double scale = 1);
    QImage picture(std::size_t page, double dotsPerInch);
    QImage picture(double dotsPerInch);  // all of them, one under the other

  protected:
    virtual void paintFigures(QPainter&, const SheetPage&) {}

  private:
    std::vector<SheetPage> pages_;
    PaperSize size_;
    Theme paper_{ThemeChoice::Paper};
};

struct PdfTitle {
    QString title, engine;
};
Result<QByteArray> pdfOf(PrintedPages& pages, const PdfTitle& title);

// A PDF that grows by one document after another, so that fifty sheets need the memory of one and the window
// lives in between.
class PdfBook {
  public:
    PdfBook(PaperSize size, const PdfTitle& title);
    ~PdfBook();
    Status add(PrintedPages& pages);
    std::size_t pages() const { return count_; }
    QByteArray finish();  // the whole file; nothing may be added afterwards

  private:
    struct Parts;
    std::unique_ptr<Parts> parts_;
    std::size_t count_ = 0;
};

}  // namespace fettle
