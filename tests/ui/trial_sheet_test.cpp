// The trial sheet as laid out: everything a witness would ask for is there, nothing overlaps, nothing is cut.
#include "ui/sheet/trial_sheet.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/workshop/trial_judge.h"

namespace fettle {
namespace {

using testing::HasSubstr;

TrialSheet made(int recordings) {
    TrialSheet sheet;
    sheet.site = "Test works";
    sheet.service = "test fan";
    sheet.timeZone = "UTC";
    sheet.madeOn = "2026-05-12";
    sheet.engine = "0.1.0 5c1f";
    Trial& trial = sheet.entry.trial;
    trial.name = "10 g at the rim";
    trial.machine = "FN-01";
    trial.change.at = "driven";
    trial.change.words = "M10 bolt and nut in the third hole of the back plate";
    trial.change.point = "F-DE";
    trial.change.channel = "x";
    trial.change.massG = 10;
    trial.change.radiusMm = 100;
    trial.expectation.speedRpm = 1484;
    trial.expectation.unbalanceGmm = 1000;
    trial.expectation.forceN = 24.1;
    trial.promise.sentences = {"Within 10 running recordings it is told.", "Before it never is."};
    trial.precautions = {trialCautions(TrialKind::Mass).front()};
    trial.stopAt = "7.1 mm/s r.m.s.";
    trial.responsible = "A. Fitter";
    trial.startedAt = parseUtc("2026-05-04T06:00:00Z");
    trial.changeFrom = trial.changeUntil = parseUtc("2026-05-04T09:00:00Z");
    std::vector<TrialRecording> all;
    for (int i = 0; i < recordings; ++i)
        all.push_back(
            {i, *trial.changeUntil + std::chrono::hours(12 * (i - recordings / 2)) + std::chrono::hours(1),
             i >= recordings / 2, i < recordings / 2 ? -2.0 : 33.0, 0.5 + i, 1484.0, ""});
    sheet.result = judgeTrial(trial, all);
    return sheet;
}

std::string textOf(const std::vector<SheetPage>& pages) {
    std::string all;
    for (const SheetPage& page : pages)
        for (const PlacedText& text : page.texts)
            all += text.text.toStdString() + "\n";
    return all;
}

TEST(TrialSheetLayout, TellsChangePromiseOutcomeAndCautions) {
    for (const PaperSize size : {PaperSize::A4, PaperSize::Letter}) {
        const auto pages = layOutTrial(made(20), size);
        const std::string text = textOf(pages);
        EXPECT_THAT(text, HasSubstr("Trial in work: passed"));
        EXPECT_THAT(text, HasSubstr("FN-01: test fan"));
        EXPECT_THAT(text, HasSubstr("1000 g mm"));
        EXPECT_THAT(text, HasSubstr("Frozen on 4 May 2026"));
        EXPECT_THAT(text, HasSubstr("at the 3. recording"));
        EXPECT_THAT(text, HasSubstr("neither turn nor fly off"));
        EXPECT_THAT(text, HasSubstr("7.1 mm/s"));
        int figures = 0, filled = 0;
        for (const SheetPage& page : pages) {
            figures += page.trend.isNull() ? 0 : 1;
            for (const PlacedBox& box : page.boxes)
                filled += box.filled ? 1 : 0;
        }
        EXPECT_EQ(figures, 1);
        EXPECT_EQ(filled, 1);  // the one caution that was confirmed
    }
}

TEST(TrialSheetLayout, NothingOverlapsOrLeavesThePage) {
    for (const int recordings : {0, 8, 120})
        for (const SheetPage& page : layOutTrial(made(recordings), PaperSize::Letter)) {
            EXPECT_LE(page.bottom, page.area().bottom() + 1);
            for (std::size_t i = 0; i < page.texts.size(); ++i) {
                EXPECT_TRUE(page.paper().contains(page.texts[i].rect)) << page.texts[i].text.toStdString();
                // An empty rectangle crosses nothing.
                EXPECT_FALSE(page.texts[i].rect.adjusted(5, 5, -5, -5).intersects(page.trend))
                    << page.texts[i].text.toStdString();
                for (std::size_t k = i + 1; k < page.texts.size(); ++k)
                    EXPECT_FALSE(page.texts[i].rect.adjusted(5, 5, -5, -5).intersects(page.texts[k].rect))
                        << page.texts[i].text.toStdString() << " / " << page.texts[k].text.toStdString();
            }
        }
}

TEST(TrialSheetLayout, IsDrawnInBlackAndWhite) {
    const auto pages = trialPages(std::make_shared<const TrialSheet>(made(20)), PaperSize::A4);
    for (std::size_t i = 0; i < pages->pages().size(); ++i) {
        const QImage picture = pages->picture(i, 60);
        for (int y = 0; y < picture.height(); ++y)
            for (int x = 0; x < picture.width(); ++x) {
                const QColor one = picture.pixelColor(x, y);
                ASSERT_LT(std::abs(one.red() - one.blue()), 24) << i << ": " << x << ", " << y;
            }
    }
}

}  // namespace
}  // namespace fettle
