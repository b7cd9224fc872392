#include "tests/house/arrows.h"

#include <gtest/gtest.h>

namespace fettle::house {

namespace {
bool isSource(const std::string& path) {
    return endsWith(path, ".h") || endsWith(path, ".cpp");
}

bool allowed(const std::string& path, const std::string& line) {
    const std::vector<Include> includes = includesOf(line);
    EXPECT_EQ(includes.size(), 1u) << line;
    return !includes.empty() && !brokenRule(path, includes.front());
}
}  // namespace

TEST(Arrows, EveryIncludeOfCoreUiAndAppFollowsAnAllowedOne) {
    const std::vector<SourceFile> sources = filesBelow({"core", "ui", "app"});
    ASSERT_GT(sources.size(), 10u) << "the sources were not found below " << FETTLE_SOURCE_DIR;
    for (const SourceFile& source : sources)
        for (const Include& include : includesOf(source.text))
            if (const auto broken = brokenRule(source.path, include))
                ADD_FAILURE() << source.path << ":" << include.line << ": " << *broken;
}

TEST(Arrows, EveryFileOfCoreUiAndAppIsInARoom) {
    for (const SourceFile& source : filesBelow({"core", "ui", "app"}))
        if (isSource(source.path) && !roomOf(source.path)) ADD_FAILURE() << source.path;
}

TEST(Arrows, DownwardIsAllowedUpwardIsNot) {
    EXPECT_TRUE(allowed("core/diagnosis/views.cpp", "#include \"core/dsp/fft.h\""));
    EXPECT_FALSE(allowed("core/dsp/fft.cpp", "#include \"core/diagnosis/views.h\""));
    EXPECT_FALSE(allowed("core/machine/machine.h", "#include \"core/signal/recording.h\""));
    EXPECT_FALSE(allowed("core/simulate/machine_sound.cpp", "#include \"core/dsp/fft.h\""));
    EXPECT_FALSE(allowed("core/simulate/machine_sound.cpp", "#include \"core/diagnosis/views.h\""));
    EXPECT_FALSE(allowed("core/elsewhere/new.cpp", "#include \"core/base/result.h\""));
}

TEST(Arrows, UiSeesCoreAndTheUiRoomsToItsLeft) {
    EXPECT_TRUE(allowed("ui/plot/spectrum.cpp", "#include \"core/signal/recording.h\""));
    EXPECT_TRUE(allowed("ui/pages/round_page.cpp", "#include \"ui/panels/evidence.h\""));
    EXPECT_FALSE(allowed("ui/theme/colours.cpp", "#include \"ui/plot/spectrum.h\""));
    EXPECT_FALSE(allowed("core/base/text.cpp", "#include \"ui/theme/colours.h\""));
    EXPECT_FALSE(allowed("ui/window/window.cpp", "#include \"app/cli/main.h\""));
    EXPECT_FALSE(allowed("app/cli/main.cpp", "#include \"ui/window/window.h\""));
}

TEST(Arrows, AnIncludeNamesItsFileFromTheRoot) {
    EXPECT_FALSE(allowed("core/dsp/fft.cpp", "#include \"fft.h\""));
    EXPECT_FALSE(allowed("core/dsp/fft.cpp", "#include \"../base/text.h\""));
    EXPECT_FALSE(allowed("core/dsp/fft.cpp", "  #  include \"tests/house/arrows.h\"  // never"));
}

TEST(Arrows, EachOutsideLibraryHasOneOwner) {
    EXPECT_TRUE(allowed("core/dsp/fft.cpp", "#include <fftw3.h>"));
    EXPECT_FALSE(allowed("core/dsp/spectrum.cpp", "#include <fftw3.h>"));
    EXPECT_TRUE(allowed("core/signal/sound_file.cpp", "#include <sndfile.h>"));
    EXPECT_FALSE(allowed("core/signal/csv_file.cpp", "#include <sndfile.h>"));
    EXPECT_FALSE(allowed("core/round/list.cpp", "#include <sqlite3.h>"));
    EXPECT_TRUE(allowed("app/cli/main.cpp", "#include <CLI/CLI.hpp>"));
    EXPECT_FALSE(allowed("core/base/text.cpp", "#include <CLI/CLI.hpp>"));
    EXPECT_FALSE(allowed("core/diagnosis/views.cpp", "#include <gtest/gtest.h>"));
}

TEST(Arrows, CoreAndTheCommandProgramKnowNoQt) {
    for (const std::string header : {"QString", "QtCore/QString", "qglobal.h", "qwt_plot.h", "QPrinter"}) {
        EXPECT_FALSE(allowed("core/base/text.cpp", "#include <" + header + ">")) << header;
        EXPECT_FALSE(allowed("app/cli/main.cpp", "#include <" + header + ">")) << header;
    }
    EXPECT_TRUE(allowed("ui/theme/colours.cpp", "#include <QColor>"));
    EXPECT_FALSE(allowed("ui/theme/colours.cpp", "#include <qwt_plot.h>"));
    EXPECT_TRUE(allowed("core/base/text.cpp", "#include <queue>"));
}

}  // namespace fettle::house
