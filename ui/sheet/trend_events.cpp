#include "ui/sheet/trend_events.h"

#include <QStringList>
#include <algorithm>

#include "ui/model/words.h"
#include "ui/plot/time_axis.h"
#include "ui/sheet/sheet_page.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

// A kind in the words of the window; what has no kind in its own.
QString wordsOf(const std::string& label) {
    std::string key = label;
    std::replace(key.begin(), key.end(), ' ', '_');
    for (const Word& kind : eventKinds())
        if (kind.key == key) return kind.text;
    return plainText(label);
}

std::vector<SheetTrendEvent> inOrder(std::vector<SheetTrendEvent> events) {
    std::stable_sort(events.begin(), events.end(),
                     [](const SheetTrendEvent& a, const SheetTrendEvent& b) { return a.time < b.time; });
    return events;
}

QString dayOf(double ms) {
    return dateText(Instant(std::chrono::milliseconds(qint64(ms))));
}

}  // namespace

std::vector<PaperEvent> paperEvents(const SheetTrend& trend) {
    std::vector<PaperEvent> all;
    for (const SheetTrendEvent& event : inOrder(trend.events)) {
        const double ms = toMs(event.time);
        const QString words = wordsOf(event.label);
        if (all.empty() || dayOf(all.back().ms) != dayOf(ms))
            all.push_back({ms, words});
        else if (!all.back().words.split(QStringLiteral(", ")).contains(words))
            all.back().words = tr("%1, %2").arg(all.back().words, words);
    }
    return all;
}

QString eventsCaption(const SheetTrend& trend) {
    QStringList parts;
    int number = 0;
    for (const PaperEvent& event : paperEvents(trend))
        parts << tr("%1 %2, %3").arg(++number).arg(event.words, dayOf(event.ms));
    return parts.join(QStringLiteral("; "));
}

}  // namespace fettle
