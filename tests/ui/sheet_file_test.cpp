// The sheet as a file: its pages, letters as letters, black and white, whole or not at all. PDF terms: ISO
// 32000-1 7.7.3 (pages), 9.6 to 9.9 (fonts and embedded font programs), 8.9 (images).
#include "ui/sheet/sheet_file.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QPalette>
#include <QPrinter>
#include <QRegularExpression>
#include <filesystem>

#include "core/base/file_system_fake.h"
#include "tests/base/scratch_folder.h"
#include "tests/ui/sheet_made.h"
#include "ui/sheet/sheet_painter.h"
#include "ui/sheet/sheet_print.h"

namespace fettle::sheet_test {
namespace {

std::string pdfOf(const SheetData& data, PaperSize size = PaperSize::A4) {
    const auto bytes = sheetPdf(data, size);
    return bytes ? bytes->toStdString() : "";
}

int countOf(const std::string& text, const char* pattern) {
    int count = 0;
    auto found = QRegularExpression(QString::fromLatin1(pattern))
                     .globalMatch(QString::fromLatin1(text.c_str(), qsizetype(text.size())));
    for (; found.hasNext(); found.next())
        ++count;
    return count;
}

constexpr const char* kPage = "/Type\\s*/Page[^s]";
constexpr const char* kImage = "/Subtype\\s*/Image";

TEST(SheetFile, HasThePagesOfItsLayout) {
    for (const SheetContent& content : {ordinary(), crowded()})
        for (const PaperSize size : {PaperSize::A4, PaperSize::Letter}) {
            const SheetData data = withSpectrum(content);
            EXPECT_EQ(std::size_t(countOf(pdfOf(data, size), kPage)),
                      SheetPainter(data, size).pages().size());
        }
}

TEST(SheetFile, HasNoPicturesAndItsFontsInside) {
    const std::string pdf = pdfOf(withSpectrum(ordinary()));
    EXPECT_EQ(countOf(pdf, kImage), 0);
    EXPECT_GE(countOf(pdf, "/FontFile"), 1);
    EXPECT_EQ(countOf(pdf, "/FontFile"), countOf(pdf, "/FontDescriptor /|/FontDescriptor\\s+\\d"));
}

TEST(SheetFile, SaysWhatItIsAndNotWhereItWasMade) {
    const std::string pdf = pdfOf(withSpectrum(ordinary()));
    const auto utf16 = [](const char* text) {
        std::string wide;
        for (; *text; ++text)
            wide += std::string("\0", 1) + *text;
        return wide;
    };
    EXPECT_NE(pdf.find(utf16("Findings sheet KL-ID-01")), std::string::npos);
    EXPECT_NE(pdf.find(utf16("Fettle 0.1.0")), std::string::npos);
    EXPECT_EQ(pdf.find(std::filesystem::current_path().string()), std::string::npos);
}

// A4 210 x 297 mm (ISO 216), Letter 8.5 x 11 in; 1 pt = 1/72 in.
TEST(SheetFile, IsAsLargeAsItsPaper) {
    EXPECT_EQ(countOf(pdfOf(withSpectrum(ordinary())), "MediaBox \\[0 0 595(\\.\\d+)? 842(\\.\\d+)?\\]"), 2);
    EXPECT_EQ(countOf(pdfOf(withSpectrum(ordinary()), PaperSize::Letter),
                      "MediaBox \\[0 0 612(\\.\\d+)? 792(\\.\\d+)?\\]"),
              2)
        << "both pages";
}

TEST(SheetFile, AFullDiskIsASentenceAndLeavesTheOldFile) {
    MemoryFileSystem memory;
    memory.put("/out/a.pdf", "old");
    FailingFileSystem disk(memory);
    disk.failWritesAfter(0);
    const Status written = writeSheet(withSpectrum(ordinary()), "/out/a.pdf", PaperSize::A4, disk);
    ASSERT_FALSE(written);
    EXPECT_EQ(written.error().kind, ErrorKind::Unwritable);
    EXPECT_NE(written.error().sentence().find("/out/a.pdf"), std::string::npos);
    EXPECT_EQ(*memory.read("/out/a.pdf"), "old");
}

TEST(SheetFile, AFolderThatIsNotThereIsASentence) {
    const ScratchFolder folder;
    RealFileSystem files;
    const std::string path = folder / "not/there/a.pdf";
    const Status written = writeSheet(withSpectrum(ordinary()), path, PaperSize::A4, files);
    ASSERT_FALSE(written);
    EXPECT_NE(written.error().sentence().find("a.pdf"), std::string::npos);
    EXPECT_FALSE(std::filesystem::exists(path));
}

TEST(SheetFile, NothingIsLeftBesideTheFile) {
    const ScratchFolder folder;
    RealFileSystem files;
    ASSERT_TRUE(writeSheet(withSpectrum(ordinary()), folder / "a.pdf", PaperSize::A4, files));
    EXPECT_EQ(*files.list(folder / ""), std::vector<std::string>{"a.pdf"});
}

bool isGrey(const QImage& picture) {
    for (int y = 0; y < picture.height(); ++y)
        for (int x = 0; x < picture.width(); ++x)
            if (const QRgb p = picture.pixel(x, y); qRed(p) != qGreen(p) || qGreen(p) != qBlue(p))
                return false;
    return true;
}

int darkShare(const QImage& picture) {
    int dark = 0;
    for (int y = 0; y < picture.height(); ++y)
        for (int x = 0; x < picture.width(); ++x)
            dark += qGray(picture.pixel(x, y)) < 128 ? 1 : 0;
    return 100 * dark / (picture.width() * picture.height());
}

// Also out of a dark window: the paper stays white and all inks are greys.
TEST(SheetPicture, IsBlackOnWhiteWhateverTheTheme) {
    const QPalette before = QApplication::palette();
    const QImage light = SheetPainter(withSpectrum(ordinary()), PaperSize::A4).picture(72);
    Theme dark(ThemeChoice::Dark);
    QApplication::setPalette(dark.palette());
    const QImage fromDark = SheetPainter(withSpectrum(ordinary()), PaperSize::A4).picture(72);
    QApplication::setPalette(before);
    EXPECT_TRUE(isGrey(light));
    EXPECT_EQ(light, fromDark);
    EXPECT_GT(darkShare(light), 1);
    EXPECT_LT(darkShare(light), 25);
}

int darkIn(const QImage& picture, const QRectF& place, double dpi) {
    const double scale = dpi / kUnitsPerInch;
    int dark = 0;
    for (int y = int(place.top() * scale); y < int(place.bottom() * scale); ++y)
        for (int x = int(place.left() * scale); x < int(place.right() * scale); ++x)
            dark += qGray(picture.pixel(x, y)) < 128 ? 1 : 0;
    return dark;
}

TEST(SheetPicture, BothFiguresAreDrawnInTheirPlaces) {
    SheetPainter painter(withSpectrum(ordinary()), PaperSize::A4);
    const std::size_t last = painter.pages().size() - 1;
    const QImage picture = painter.picture(last, 96);
    EXPECT_GT(darkIn(picture, painter.pages()[last].spectrum, 96), 300);
    EXPECT_GT(darkIn(picture, painter.pages()[last].trend, 96), 300);
}

TEST(SheetPicture, OfAllPagesHasThemOneUnderTheOther) {
    SheetPainter painter(withSpectrum(ordinary()), PaperSize::A4);
    ASSERT_EQ(painter.pages().size(), 2U);
    const QImage all = painter.picture(72), first = painter.picture(0, 72), second = painter.picture(1, 72);
    EXPECT_EQ(all.copy(0, 0, first.width(), first.height()), first);
    EXPECT_EQ(all.copy(0, all.height() - second.height(), second.width(), second.height()), second);
    EXPECT_GT(all.height(), first.height() + second.height());
}

TEST(SheetPrint, APrinterGetsEveryPage) {
    const ScratchFolder folder;
    for (const auto id : {QPageSize::A4, QPageSize::Letter, QPageSize::A5}) {
        QPrinter printer(QPrinter::HighResolution);
        printer.setOutputFormat(QPrinter::PdfFormat);
        printer.setOutputFileName(QString::fromStdString(folder / "printed.pdf"));
        printer.setPageSize(QPageSize(id));
        ASSERT_TRUE(printOn(printer, withSpectrum(ordinary()), PaperSize::A4));
        const auto pdf = RealFileSystem().read(folder / "printed.pdf");
        ASSERT_TRUE(pdf);
        EXPECT_EQ(countOf(*pdf, kPage), 2);
    }
}

TEST(SheetPrint, APrinterThatTakesNothingIsASentence) {
    QPrinter printer(QPrinter::HighResolution);
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(QStringLiteral("/not/there/printed.pdf"));
    const Status printed = printOn(printer, withSpectrum(ordinary()), PaperSize::A4);
    ASSERT_FALSE(printed);
    EXPECT_EQ(printed.error().kind, ErrorKind::Unwritable);
}

}  // namespace
}  // namespace fettle::sheet_test
