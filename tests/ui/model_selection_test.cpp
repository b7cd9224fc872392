// One selection for all parts of a page: setting what is already set is silent; another machine clears all.
#include "ui/model/selection.h"

#include <gtest/gtest.h>

#include <QSignalSpy>

namespace fettle {
namespace {

TEST(Selection, SettingWhatIsAlreadySetIsSilent) {
    Selection selection;
    QSignalSpy machine(&selection, &Selection::machineChanged), fault(&selection, &Selection::faultChanged),
        cursor(&selection, &Selection::cursorChanged);
    for (int i = 0; i < 2; ++i) {
        selection.setMachine("KL-ID-01");
        selection.setFault("unbalance", "driven");
        selection.setCursorHz(24.7);
    }
    EXPECT_EQ(machine.count(), 1);
    EXPECT_EQ(fault.count(), 1);
    EXPECT_EQ(cursor.count(), 1);
}

TEST(Selection, AnotherMachineClearsWhatHungOnTheOldOneBeforeAnybodyIsTold) {
    Selection selection;
    selection.setMachine("A");
    selection.setRecording(17, Instant{std::chrono::hours(1)});
    selection.setFault("looseness", "driver");
    selection.setChannel("M-DE x");
    QString faultSeen = "not asked";
    std::optional<std::int64_t> recordingSeen = 1;
    QObject::connect(&selection, &Selection::machineChanged, &selection, [&] {
        faultSeen = selection.fault();
        recordingSeen = selection.recording();
    });
    selection.setMachine("B");
    EXPECT_EQ(faultSeen, QString());
    EXPECT_EQ(recordingSeen, std::nullopt);
    EXPECT_EQ(selection.channel(), QString());
    EXPECT_EQ(selection.time(), std::nullopt);
}

}  // namespace
}  // namespace fettle
