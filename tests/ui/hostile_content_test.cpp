// Texts of strangers in the window and on paper: shown as they are, never as markup, links or pictures, and
// no page or dialog loses its shape over them. Qt's documentation, QLabel::textFormat and Qt::mightBeRichText
// (what AutoText takes for markup); ISO 32000-1 12.6.4 (what a PDF can be made to do).
#include <qwt_text.h>

#include <QApplication>
#include <QDialog>
#include <QLabel>
#include <QTextBrowser>
#include <QTextFormat>
#include <QToolTip>

#include "tests/base/hostile_texts.h"
#include "tests/ui/desk_fixture.h"
#include "tests/ui/sheet_made.h"
#include "ui/model/table_text.h"
#include "ui/sheet/sheet_file.h"
#include "ui/sheet/sheet_painter.h"

namespace fettle {
namespace {

std::string described(const std::string& tag, const std::string& text) {
    Json machine = Json::parse(fleet_test::description("X"));
    machine["tag"] = tag;
    for (const char* key : {"asset", "service", "site", "area"})
        machine[key] = text;
    machine["driven"] = {{"kind", text}};
    machine["points"][0]["channels"][0]["direction"] = "horizontal";
    return machine.dump();
}

// One text that is all of it at once where a name may be, each by itself in the register and the history.
class HostileContent : public desk_test::Desk {
  protected:
    void SetUp() override {
        Desk::SetUp();
        theme_.applyTo(*qApp, 1.0);
        const auto texts = hostileTexts();
        for (std::size_t i = 0; i < texts.size(); ++i) {
            const bool name = texts[i].size() <= 100 && i < 6;
            const std::string tag = name ? texts[i] : "X-" + std::to_string(i);
            ASSERT_TRUE(fleet_->machines().put(described(tag, texts[i]), "m.json"));
            ASSERT_TRUE(fleet_->log().addEvent({0, "C-SHAKE", intake_test::at("2026-05-05T08:00:00Z"), "note",
                                                "driver", texts[i] + ".", texts[i] + "."}));
        }
        ASSERT_TRUE(fleet_->machines().put(described("C-SHAKE", texts[0]), "m.json"));
    }

    // What would be drawn as markup though nobody of the program wrote it.
    static QStringList markupIn(QWidget& root) {
        QStringList found;
        for (const QLabel* label : root.findChildren<QLabel*>()) {
            if (!label->isVisible()) continue;
            const bool guessed = label->textFormat() == Qt::AutoText && Qt::mightBeRichText(label->text());
            const bool foreign =
                label->textFormat() == Qt::RichText && label->text().contains(QStringLiteral("<img"));
            if (guessed || foreign)
                found << label->objectName() + QStringLiteral(": ") + label->text().left(80);
        }
        for (const QTextBrowser* text : root.findChildren<QTextBrowser*>())
            for (const QTextFormat& format : text->document()->allFormats())
                if (format.isImageFormat()) found << text->objectName() + QStringLiteral(": a picture");
        return found;
    }
    static void expectPlain(QWidget& root, const std::string& what) {
        EXPECT_EQ(markupIn(root).join(u'\n').toStdString(), "") << what;
    }
};

TEST_F(HostileContent, PagesShowItAsItIs) {
    for (const char* page : {"round", "machine", "register"}) {
        PagePlace place;
        place.page = QString::fromLatin1(page);
        place.machine = QStringLiteral("C-SHAKE");
        openWindow(place);
        window_->resize(1280, 800);
        settle();
        expectPlain(*window_, page);
        EXPECT_LE(window_->width(), 1280) << page;
        EXPECT_LE(window_->minimumSizeHint().width(), 1280) << page;
    }
}

TEST_F(HostileContent, DialogsShowItAsItIs) {
    PagePlace place;
    place.page = QStringLiteral("machine");
    place.machine = QStringLiteral("C-SHAKE");
    openWindow(place);
    window_->resize(1280, 800);
    settle();
    eachDialog([](QDialog& dialog, const std::string& name) {
        expectPlain(dialog, name);
        EXPECT_LE(dialog.width(), 1280) << name;
    });
}

// The check can fail.
TEST_F(HostileContent, MarkupIsSeen) {
    QWidget root;
    auto* label = new QLabel(QStringLiteral("<b>bold</b>"), &root);
    root.show();
    EXPECT_EQ(label->textFormat(), Qt::PlainText);  // the style's doing
    expectPlain(root, "plain");
    label->setTextFormat(Qt::AutoText);
    EXPECT_EQ(markupIn(root).size(), 1);
    label->setTextFormat(Qt::RichText);
    label->setText(QStringLiteral("<img src='x'>"));
    EXPECT_EQ(markupIn(root).size(), 1);
}

TEST_F(HostileContent, TipsShowItAsItIsWithinTheScreen) {
    for (const std::string& text : hostileTexts()) {
        QToolTip::showText({10, 10}, QString::fromStdString(text));
        for (QWidget* tip : QApplication::topLevelWidgets())
            if (auto* label = qobject_cast<QLabel*>(tip); label && label->inherits("QTipLabel")) {
                EXPECT_EQ(label->textFormat(), Qt::PlainText);
            }
        QToolTip::hideText();
    }
}

TEST_F(HostileContent, PlotsKnowNoMarkup) {
    PagePlace place;
    place.page = QStringLiteral("machine");
    place.machine = QStringLiteral("C-SHAKE");
    openWindow(place);
    EXPECT_EQ(QwtText::textEngine(QStringLiteral("<b>x</b>"), QwtText::AutoText),
              QwtText::textEngine(QwtText::PlainText));
}

TEST(HostileTables, NoCellStartsAFormula) {
    EXPECT_EQ(withoutFormulas(QStringLiteral("=A1\t-1.5\t-1,5e-3\t+x\n@y\t-\tz=\t\uFF1D1")),
              QStringLiteral("'=A1\t-1.5\t-1,5e-3\t'+x\n'@y\t'-\tz=\t'\uFF1D1"));
}

TEST(HostileSheets, APdfHoldsNothingThatActs) {
    for (const std::string& text : hostileTexts()) {
        SheetContent sheet = sheet_test::ordinary();
        sheet.firstLine = sheet.tag = sheet.asset = sheet.service = sheet.site = sheet.area = text;
        const auto pdf = sheetPdf(sheet_test::withSpectrum(sheet), PaperSize::A4);
        ASSERT_TRUE(pdf) << text.substr(0, 60);
        EXPECT_TRUE(pdf->startsWith("%PDF-")) << text.substr(0, 60);
        for (const char* acts : {"/URI", "/JavaScript", "/Launch", "/OpenAction", "/GoToR", "/EmbeddedFile"})
            EXPECT_FALSE(pdf->contains(acts)) << acts << " for " << text.substr(0, 60);
        EXPECT_LE(SheetPainter(sheet_test::withSpectrum(sheet), PaperSize::A4).pages().size(), 6u)
            << text.substr(0, 60);
    }
}

}  // namespace
}  // namespace fettle
