// Why: rounds run by the site's calendar: a week ends when the site's day does, not when Greenwich's does,
// and a day with a clock change has 23 or 25 hours. Zones are IANA names from the computer's own table ("UTC"
// needs none). Dates "2026-05-04", which sort as text. The only user of the date library (its time zones are
// those of C++20, which GCC 12 lacks). Thread: any. Errors: Invalid for a zone that the table has not and for
// a date that is none.
#pragma once

#include <string>

#include "core/base/result.h"
#include "core/base/time.h"

namespace fettle {

Status checkTimeZone(const std::string& zone);
Result<std::string> dateIn(const std::string& zone, Instant time);
// The clock there, read as if it were Greenwich's: its day (dayOf) is the site's.
Result<Instant> clockIn(const std::string& zone, Instant time);
// The same for many moments: what holds of the zone between two changes of its clocks is asked once.
class SiteClock {
  public:
    static Result<SiteClock> of(const std::string& zone);
    Instant at(Instant time);

  private:
    const void* zone_ = nullptr;  // of the date library; null: Greenwich
    Instant from_{}, until_{};    // the offset holds within [from, until)
    std::chrono::milliseconds offset_{};
};
// The first moment of a date there.
Result<Instant> startOfDate(const std::string& zone, const std::string& date);

// `days` later in the calendar; Invalid where `date` is none.
Result<std::string> datePlus(const std::string& date, int days);
Result<int> daysBetween(const std::string& from, const std::string& to);
// Days since 1970-01-01 of a date, and back.
Result<int> dayNumber(const std::string& date);
std::string dateOfDay(int day);
// "12 June 2026, 07:20 Europe/London"; in UTC where the zone is not known here.
std::string momentIn(const std::string& zone, Instant time);
// "12 June 2026"; a text that is no date comes back as it is.
std::string spelledDate(const std::string& date);

}  // namespace fettle
