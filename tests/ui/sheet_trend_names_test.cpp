// A limit's name is not struck through by the line of another limit: on a sheet "own 3.17" ran through
// "B/C 2.80". As a figure on paper has them: 40 mm high, five marks.
#include <gtest/gtest.h>
#include <qwt_scale_map.h>

#include "ui/plot/trend_marks.h"

namespace fettle {
namespace {

TEST(TrendNames, NoLineOfAnotherLimitRunsThroughAName) {
    const Theme theme(ThemeChoice::Paper);
    for (const double own : {1.6, 2.9, 3.17, 3.3, 4.3, 4.7}) {
        LimitLines lines(theme);
        lines.setLimits({{"A/B", 1.4}, {"B/C", 2.8}, {"C/D", 4.5}, {"own", own, true}});
        QwtScaleMap map;
        map.setScaleInterval(0, 7.5);
        map.setPaintInterval(150, 0);
        const auto named = lines.named(map, QRectF(0, 0, 600, 150), QFontMetricsF(QFont()));
        ASSERT_EQ(named.size(), 4u);
        for (const auto& name : named)
            for (const auto& line : named)
                EXPECT_FALSE(line.y > name.box.top() + 1 && line.y < name.box.bottom() - 1)
                    << name.name.toStdString() << " is struck through by " << line.name.toStdString();
    }
}

}  // namespace
}  // namespace fettle
