#include <gtest/gtest.h>

#include "tests/house/source_tree.h"

namespace fettle::house {

// Paint never computes: no transform, no query and no file is within reach of a plot.
TEST(Plots, IncludeNeitherStoreNorTransformsNorWork) {
    int read = 0;
    for (const SourceFile& source : filesBelow({"ui/plot"}))
        for (const Include& include : includesOf(source.text)) {
            ++read;
            // A line read as another motion, and the figures of what a zoom shows: sums over what is there.
            if (include.target == "core/dsp/motion_lines.h" || include.target == "core/dsp/statistics.h")
                continue;
            for (const char* room :
                 {"core/store", "core/dsp", "core/fleet", "core/signal", "core/intake", "ui/work"})
                EXPECT_FALSE(include.target.rfind(room, 0) == 0)
                    << source.path << " includes " << include.target;
            EXPECT_NE(include.target, "QFile") << source.path;
        }
    EXPECT_GT(read, 100);
}

}  // namespace fettle::house
