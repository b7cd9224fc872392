#include "ui/sheet/trend_past_data.h"

#include "core/fleet/site_calendar.h"
#include "core/trend/daily.h"
#include "ui/model/words.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr double kNoonMs = 12 * 3600 * 1e3;

// A day of the site's calendar stands at its noon.
double dayMs(int day) {
    return toMs(startOfDay(day)) + kNoonMs;
}

TrendFan fanOf(const Heading& heading) {
    TrendFan fan;
    fan.ms = dayMs(heading.day);
    fan.value = heading.level;
    fan.limit = heading.limit;
    const LimitDate& date = heading.date;
    fan.middleMs = dayMs(*date.median);
    fan.earliestMs = dayMs(date.from.value_or(*date.median));
    if (date.to) fan.latestMs = dayMs(*date.to);
    fan.words = tr("%1 about %2").arg(shown(heading.limitName), dayText(*date.median));
    if (date.from && date.to)
        fan.words += tr(" (%1 to %2)").arg(dayText(*date.from), dayText(*date.to));
    else if (date.from)
        fan.words += tr(" (%1 or later)").arg(dayText(*date.from));
    return fan;
}

}  // namespace

QString dayText(int day) {
    return dateText(dateOfDay(day));
}

void addPast(const TrendPast& past, TrendData& data) {
    if (past.baseline)
        data.baseline =
            TrendBaseline{dayMs(past.baseline->from) - kNoonMs, dayMs(past.baseline->to) + kNoonMs,
                          past.baseline->low, past.baseline->middle, past.baseline->high};
    if (past.limits) data.limits.push_back({tr("own"), past.limits->tolerance, true});
    if (past.since) data.sinceMs = dayMs(*past.since) - kNoonMs;
    if (past.heading) data.fan = fanOf(*past.heading);
}

}  // namespace fettle
