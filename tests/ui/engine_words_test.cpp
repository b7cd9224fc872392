// What the engine says out of a fixed set is read in the window's language, word for word as the engine says
// it today: a sentence that was changed there and not here stays English and fails. Source: the engine's own
// tables and functions.
#include "ui/model/engine_words.h"

#include <QCoreApplication>
#include <QTranslator>

#include "core/diagnosis/wording.h"
#include "core/fleet/advice.h"
#include "core/fleet/sheet_dates.h"
#include "core/fleet/sheet_words.h"
#include "core/fleet/sheet_work.h"
#include "core/fleet/trial_desk.h"
#include "core/round/round.h"
#include "core/workshop/trial_expect.h"
#include "tests/ui/desk_fixture.h"
#include "ui/model/words.h"

namespace fettle {
namespace {

class EngineWords : public testing::Test {
  protected:
    void SetUp() override {
        ASSERT_TRUE(german_.load(QStringLiteral("fettle_de"), QStringLiteral(":/i18n")));
        QCoreApplication::installTranslator(&german_);
    }
    void TearDown() override { QCoreApplication::removeTranslator(&german_); }

    void expectListed(const std::string& text) {
        if (text.empty()) return;
        const QString there = german_.translate("Engine", text.c_str());
        EXPECT_FALSE(there.isEmpty()) << text;
    }
    void expectListed(const std::vector<std::string>& texts) {
        for (const std::string& text : texts)
            expectListed(text);
    }

    QTranslator german_;
};

TEST_F(EngineWords, EveryFaultHasItsName) {
    for (const std::string& fault : faultKeys())
        expectListed(faultName(fault));
    EXPECT_EQ(faultWords("bearing_outer_race", "driver DE").toStdString(), "Außenringschaden, driver DE");
    EXPECT_EQ(blindWhatText({{"gear_mesh"}, {"G1"}, "", ""}).toStdString(),
              "verschlissener Zahneingriff an G1");
}

TEST_F(EngineWords, TheFixedPartsOfASheetAreAllThere) {
    expectListed(cautions());
    for (const char* urgency : {"act", "plan", "watch", "unseen", "leave"})
        for (const char* date : {"", "2026-05-04"})
            for (const bool overdue : {false, true})
                expectListed(urgencyWords(urgency, {"", date, "", overdue}));
    Hypothesis possible;
    expectListed(howSureWords(possible));
    expectListed(howSureWords(possible, true));
    possible.weightDban = 0;
    expectListed(howSureWords(possible));
    expectListed(siteRecordWords({}, {}, ""));
    expectListed(jobWords({}));
    const SheetIsolation boxes = isolationBoxes();
    expectListed(boxes.columns);
    expectListed(boxes.note);
}

TEST_F(EngineWords, PartsPermitsAndTheHalfToSendBackAreAllThere) {
    const auto table = AdviceTable::load();
    ASSERT_TRUE(table) << table.error().sentence();
    expectListed(table->partBoxes());
    SheetCase sheet;
    sheet.machine = std::make_shared<Machine>();
    for (const std::string& fault : faultKeys()) {
        const Advice& advice = table->of(fault);
        expectListed(advice.need.permits);
        expectListed(advice.inspectNeed.permits);
        for (const AdvicePart& part : advice.parts)
            expectListed(part.blanks);
        sheet.finding.fault = fault;
        for (const SheetField& field : returnFields(sheet, advice)) {
            expectListed(field.label);
            expectListed(field.choices);
        }
        expectListed(needOf(sheet, advice).note);
    }
}

TEST_F(EngineWords, CautionsOfATrialAndWhatItLacksAreAllThere) {
    for (const TrialKind kind : {TrialKind::Mass, TrialKind::Bearing, TrialKind::Bolt, TrialKind::Other}) {
        expectListed(trialCautions(kind));
        Trial trial;
        trial.change.kind = kind;
        trial.precautions = trialCautions(kind);
        expectListed(startLacks(trial));
        expectListed(expectedOf(trial.change, Machine(), {}, 20).lacking);
    }
    EXPECT_EQ(trialLackText("2 of 5 cautions are confirmed").toStdString(),
              "2 von 5 Hinweisen sind bestätigt");
    EXPECT_EQ(engineText(trialCautions(TrialKind::Bolt).back()).left(12).toStdString(), "Die Schraube");
}

TEST_F(EngineWords, WhatARoundLacksIsReadWithItsCountAndTags) {
    RoundList list;
    for (int i = 0; i < 7; ++i) {
        for (const char* urgency : {"act", "unseen", "leave"}) {
            RoundMachine machine;
            machine.tag = std::string(urgency) + std::to_string(i);
            machine.urgency = urgency;
            machine.inSample = true;
            list.machines.push_back(machine);
        }
    }
    const std::vector<std::string> several = progressOf(list, {}).missing;
    ASSERT_EQ(several.size(), 4u);
    EXPECT_EQ(roundLackText(several[0]).toStdString(),
              "7 aufgelistete Maschinen ohne Entscheidung: act0, act1, act2, act3, act4 und 2 weitere");
    list.machines.resize(3);
    for (const std::vector<std::string>& lacks : {several, progressOf(list, {}).missing})
        for (const std::string& lack : lacks)
            EXPECT_NE(roundLackText(lack).toStdString(), lack);
    EXPECT_EQ(roundLackText(progressOf(list, {}).missing[0]).toStdString(),
              "1 aufgelistete Maschine ohne Entscheidung: act0");
}

// Words of a person are nobody's to translate, nor what is none of the set.
TEST_F(EngineWords, WhatIsNoneOfThemStaysAsItIs) {
    EXPECT_EQ(engineText("5.6 mm/s is zone D").toStdString(), "5.6 mm/s is zone D");
    EXPECT_EQ(engineText("").toStdString(), "");
}

}  // namespace
}  // namespace fettle
