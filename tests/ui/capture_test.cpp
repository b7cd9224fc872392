// The program itself, run as others run it: pictures of pages, exit status, and words where it refuses.
#include <QImage>
#include <QProcess>
#include <QProcessEnvironment>
#include <set>

#include "core/base/file_system.h"
#include "tests/fleet/small_site.h"

namespace fettle {
namespace {

using testing::HasSubstr;
using testing::Not;

struct Ended {
    int status = -1;
    std::string words;
};

class CaptureTest : public fleet_test::SmallSite {
  protected:
    Ended run(const QStringList& arguments, const QProcessEnvironment& around = bare()) {
        QProcess program;
        program.setProcessEnvironment(around);
        program.start(FETTLE_DESKTOP_PROGRAM, arguments);
        EXPECT_TRUE(program.waitForFinished(240000));
        return {program.exitStatus() == QProcess::NormalExit ? program.exitCode() : -1,
                program.readAllStandardError().toStdString()};
    }
    // No display and no platform named: the program has to find its way.
    static QProcessEnvironment bare() {
        QProcessEnvironment around = QProcessEnvironment::systemEnvironment();
        for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM", "QT_SCALE_FACTOR"})
            around.remove(name);
        return around;
    }
    QString fleet() const { return QString::fromStdString(path_); }
    QString picture() const { return QString::fromStdString(folder_ / "page.png"); }
};

// How many colours a picture has: an empty one has few.
std::size_t coloursOf(const QImage& image) {
    std::set<QRgb> colours;
    for (int y = 0; y < image.height(); y += 2)
        for (int x = 0; x < image.width(); x += 2)
            colours.insert(image.pixel(x, y));
    return colours.size();
}

TEST_F(CaptureTest, EveryPageIsAPictureOfTheSizeAskedForInBothThemes) {
    for (const char* theme : {"light", "dark"})
        for (const char* page : {"round", "machine", "register"}) {
            const Ended ended = run({fleet(), "--page", page, "--machine", "A-RACE", "--theme", theme,
                                     "--size", "1280x800", "--capture", picture()});
            ASSERT_EQ(ended.status, 0) << page << ": " << ended.words;
            const QImage image(picture());
            EXPECT_EQ(image.size(), QSize(1280, 800));
            EXPECT_GT(coloursOf(image), 20u) << page;
            EXPECT_EQ(qGray(image.pixel(3, 790)) < 128, std::string(theme) == "dark");
        }
}

TEST_F(CaptureTest, ScaleMakesAPictureOfMorePixels) {
    const Ended ended = run({fleet(), "--size", "1000x700", "--scale", "1.5", "--capture", picture()});
    ASSERT_EQ(ended.status, 0) << ended.words;
    EXPECT_EQ(QImage(picture()).size(), QSize(1500, 1050));
}

// Of no use to who takes a picture: Qt's word about its own stand-in for a display.
TEST_F(CaptureTest, TheStandInForADisplayIsNotHeard) {
    EXPECT_THAT(run({fleet(), "--capture", picture()}).words, Not(HasSubstr("propagateSizeHints")));
}

TEST_F(CaptureTest, ADialogIsInThePicture) {
    ASSERT_EQ(run({fleet(), "--capture", picture()}).status, 0);
    const QImage plain(picture());
    ASSERT_EQ(run({fleet(), "--dialog", "keys", "--capture", picture()}).status, 0);
    EXPECT_NE(QImage(picture()), plain);
}

TEST_F(CaptureTest, TheStartPageNeedsNoFleet) {
    EXPECT_EQ(run({"--capture", picture()}).status, 0);
}

TEST_F(CaptureTest, TheFleetIsNotChangedByAPicture) {
    fleet_.reset();
    const auto before = RealFileSystem().read(path_);
    ASSERT_EQ(run({fleet(), "--page", "machine", "--machine", "C-SHAKE", "--capture", picture()}).status, 0);
    EXPECT_EQ(*RealFileSystem().read(path_), *before);
}

TEST_F(CaptureTest, WhatCannotBeShownIsRefusedWithAWordAndStatusThree) {
    const Ended gone = run({"nosuch.fettle", "--capture", picture()});
    EXPECT_EQ(gone.status, 3);
    EXPECT_THAT(gone.words, HasSubstr("nosuch.fettle"));
    const Ended stranger = run({fleet(), "--machine", "NO-SUCH", "--capture", picture()});
    EXPECT_EQ(stranger.status, 3);
    EXPECT_THAT(stranger.words, HasSubstr("NO-SUCH"));
    const Ended nowhere = run({fleet(), "--capture", "/nonexistent/folder/page.png"});
    EXPECT_EQ(nowhere.status, 3);
    EXPECT_THAT(nowhere.words, HasSubstr("cannot be written"));
    EXPECT_FALSE(QImage(picture()).width() > 0);
}

TEST_F(CaptureTest, WithoutAFontItRefuses) {
    QProcessEnvironment around = bare();
    const std::string config = folder_ / "fonts.conf";
    ASSERT_TRUE(RealFileSystem().writeSafely(
        config,
        "<?xml version=\"1.0\"?><!DOCTYPE fontconfig SYSTEM \"fonts.dtd\"><fontconfig></fontconfig>\n"));
    around.insert("FONTCONFIG_FILE", QString::fromStdString(config));
    const Ended ended = run({fleet(), "--capture", picture()}, around);
    EXPECT_EQ(ended.status, 3);
    EXPECT_THAT(ended.words, HasSubstr("font"));
}

TEST_F(CaptureTest, WrongUsageIsStatusTwo) {
    EXPECT_EQ(run({fleet(), "--page", "cellar"}).status, 2);
    EXPECT_EQ(run({fleet(), "--size", "12by8", "--capture", picture()}).status, 2);
    EXPECT_EQ(run({fleet(), "--time", "yesterday"}).status, 2);
    EXPECT_EQ(run({"--sheet", "x.pdf"}).status, 2);
    for (const QString& target : {fleet(), QString(fleet() + "-wal")})
        EXPECT_EQ(run({fleet(), "--sheet", target, "--machine", "A-RACE"}).status, 2);
    EXPECT_EQ(run({"--nonsense"}).status, 2);
}

TEST_F(CaptureTest, WithoutADisplayAWindowIsRefusedWithAWord) {
    const Ended ended = run({fleet()});
    EXPECT_EQ(ended.status, 3);
    EXPECT_THAT(ended.words, HasSubstr("display"));
}

}  // namespace
}  // namespace fettle
