#include "core/fleet/site_calendar.h"

#include <date/tz.h>
#include <fmt/format.h>

namespace fettle {

namespace {

using namespace std::chrono;

constexpr const char* kMonths[] = {"January", "February", "March",     "April",   "May",      "June",
                                   "July",    "August",   "September", "October", "November", "December"};

// Null: Greenwich, which needs no table.
Result<const date::time_zone*> zoneOf(const std::string& name) {
    if (name.empty() || name == "UTC") return nullptr;
    try {
        return date::locate_zone(name);
    } catch (const std::exception&) {
        return fail(ErrorKind::Invalid, "", "time zone",
                    fmt::format("\"{}\" is not in this computer's table of time zones (IANA names such as "
                                "Europe/London; package tzdata)",
                                name));
    }
}

Result<sys_days> dayOfDate(const std::string& text) {
    const auto midnight = text.size() == 10 ? parseUtc(text + "T00:00:00Z") : std::nullopt;
    if (!midnight)
        return fail(ErrorKind::Invalid, "", "date", fmt::format("\"{}\" is not a day as 2026-05-04", text));
    return floor<days>(*midnight);
}

}  // namespace

Status checkTimeZone(const std::string& zone) {
    return zoneOf(zone).map([](auto) {});
}

Result<Instant> clockIn(const std::string& zone, Instant time) {
    return SiteClock::of(zone).map([time](SiteClock clock) { return clock.at(time); });
}

Result<SiteClock> SiteClock::of(const std::string& zone) {
    const auto at = zoneOf(zone);
    if (!at) return fail(at.error());
    SiteClock clock;
    clock.zone_ = *at;
    return clock;
}

Instant SiteClock::at(Instant time) {
    if (!zone_) return time;
    if (time < from_ || time >= until_) {
        const auto info = static_cast<const date::time_zone*>(zone_)->get_info(floor<seconds>(time));
        from_ = info.begin, until_ = info.end, offset_ = info.offset;
    }
    return time + offset_;
}

Result<std::string> dateIn(const std::string& zone, Instant time) {
    return clockIn(zone, time).map([](Instant clock) { return formatDate(clock); });
}

Result<Instant> startOfDate(const std::string& zone, const std::string& date) {
    const auto day = dayOfDate(date);
    if (!day) return fail(day.error());
    const auto at = zoneOf(zone);
    if (!at) return fail(at.error());
    if (!*at) return Instant(*day);
    const date::local_days local(day->time_since_epoch());
    return Instant((*at)->to_sys(local, date::choose::earliest));
}

std::string momentIn(const std::string& zone, Instant time) {
    const auto clock = clockIn(zone, time);
    const Instant shown = clock.value_or(time);
    const auto minute = duration_cast<minutes>(shown - floor<days>(shown)).count();
    return fmt::format("{}, {:02}:{:02} {}", spelledDate(formatDate(shown)), minute / 60, minute % 60,
                       clock && !zone.empty() ? zone : "UTC");
}

Result<std::string> datePlus(const std::string& date, int count) {
    return dayNumber(date).map([count](int day) { return dateOfDay(day + count); });
}

Result<int> daysBetween(const std::string& from, const std::string& to) {
    const auto first = dayNumber(from), last = dayNumber(to);
    if (!first) return fail(first.error());
    if (!last) return fail(last.error());
    return *last - *first;
}

Result<int> dayNumber(const std::string& date) {
    return dayOfDate(date).map([](sys_days day) { return int(day.time_since_epoch().count()); });
}

std::string dateOfDay(int day) {
    return formatDate(Instant(sys_days(days(day))));
}

std::string spelledDate(const std::string& date) {
    const auto day = dayOfDate(date);
    if (!day) return date;
    const year_month_day d(*day);
    return fmt::format("{} {} {}", unsigned(d.day()), kMonths[unsigned(d.month()) - 1], int(d.year()));
}

}  // namespace fettle
