#include "core/fleet/sheet_dates.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "core/diagnosis/wording.h"
#include "core/fleet/sheet_words.h"
#include "core/fleet/site_calendar.h"
#include "core/round/words.h"

namespace fettle {

namespace {

constexpr int kOldDays = 14;

std::string plusDays(const std::string& date, int count) {
    return datePlus(date, count).value_or(date);
}

bool isOld(const SheetCase& sheet) {
    return !ageLead(sheet.period.lastDay, sheet.day()).empty();
}

bool hasPassed(const SheetCase& sheet, const std::string& date) {
    return !date.empty() && date < sheet.day();
}

// From the round on; a limit that is reached sooner holds, but never before the round's end.
std::string dueDate(const SheetCase& sheet, const RoundFinding& told, bool firm, const JobDatesTable& table) {
    const auto daysOf = [&](const Severity& severity) {
        return firm ? table.runDays(severity, sheet.row.criticality)
                    : table.inspectDays(severity, sheet.row.criticality);
    };
    auto days = daysOf(told.finding.severity);
    if (!days && told.finding.provedOn != kByHand)
        days = daysOf({"urgency", told.finding.urgency, {}, {}, "", ""});
    if (!days) return "";
    std::string date = plusDays(sheet.period.lastDay, *days);
    if (told.limitDate && told.limitDate->from)
        date = std::min(date, std::max(dateOfDay(*told.limitDate->from), plusDays(sheet.period.lastDay, 1)));
    return date;
}

bool asksForWork(const RoundFinding& told) {
    return told.finding.urgency == "act" || told.finding.urgency == "plan";
}

std::string nameOf(const SheetCase& sheet, const RoundFinding& told) {
    Hypothesis named = told.finding;
    named.at = placeWords(*sheet.machine, named.at);
    return findingName(named);
}

// Another finding of the machine that is due before this one.
struct Sooner {
    std::size_t number = 0;  // 0: none
    std::string date;
};

Sooner soonerThan(const SheetCase& sheet, const std::string& due, const JobDatesTable& table) {
    Sooner first{0, due};
    for (std::size_t i = 1; i <= sheet.row.findings.size(); ++i) {
        const RoundFinding& other = sheet.row.findings[i - 1];
        if (i == sheet.number || !asksForWork(other)) continue;
        const std::string date = dueDate(sheet, other, isFirm(other), table);
        if (!date.empty() && (first.date.empty() || date < first.date)) first = {i, date};
    }
    return first;
}

// Never before the round's end: nobody could have ordered before it was known.
void setOrderWords(const SheetCase& sheet, int leadDays, const std::string& due, SheetDate& date) {
    date.date = std::max(plusDays(due, -leadDays), sheet.period.lastDay);
    date.overdue = hasPassed(sheet, date.date);
    const std::string tight =
        hasPassed(sheet, due)
            ? "borrow or hire until it comes"
            : fmt::format(
                  "a lead time of {} days is longer than the time left, so borrow or hire where it is",
                  leadDays);
    if (date.overdue && isOld(sheet))
        date.words = fmt::format("was due {}: look at newer recordings, then order", spelledDate(date.date));
    else if (date.overdue)
        date.words = fmt::format("was due {}: order now; {}", spelledDate(date.date), tight);
    else if (date.date == sheet.day())
        date.words = "now; " + tight;
    else
        date.words = fmt::format("{}, allowing {} days", spelledDate(date.date), leadDays);
}

SheetDate orderDate(const SheetCase& sheet, const JobDatesTable& table, const std::string& due,
                    bool needsParts, bool listsParts) {
    SheetDate date{"order parts by", "", ""};
    if (!sheet.firm())
        date.words = listsParts
                         ? "order nothing before the inspection; the parts listed are what a repair may take"
                         : "order nothing before the inspection";
    else if (!needsParts)
        date.words = listsParts ? "nothing to wait for; have the small parts listed at hand"
                                : "no part is known to be needed";
    else if (due.empty())
        date.words = "no date: how bad it is was not graded";
    else
        setOrderWords(sheet, table.leadDays(), due, date);
    return date;
}

std::string passedWords(const SheetCase& sheet, bool firm) {
    if (isOld(sheet))
        return "look at newer recordings today; without any, whoever answers for the machine decides whether "
               "it "
               "runs";
    return firm ? "stop it, or measure anew and let whoever answers for the machine decide now"
                : "inspect now";
}

SheetDate runDate(const SheetCase& sheet, bool firm, const std::string& due) {
    SheetDate date{firm ? "do not run beyond" : "inspect by", due, "", hasPassed(sheet, due)};
    if (due.empty())
        date.words = "no date: how bad it is was not graded";
    else if (date.overdue)
        date.words = fmt::format("was due {}: {}", spelledDate(due), passedWords(sheet, firm));
    else if (firm)
        date.words =
            spelledDate(due) + " without a new measurement and a decision of whoever answers for the machine";
    else
        date.words = spelledDate(due) + ", so that a repair can follow";
    return date;
}

// Both dates are said where another finding is due first.
SheetDate soonestDate(const SheetCase& sheet, const std::string& own, const Sooner& first) {
    if (first.number == 0) return runDate(sheet, sheet.firm(), own);
    const RoundFinding& other = sheet.row.findings[first.number - 1];
    SheetDate date = runDate(sheet, isFirm(other), first.date);
    date.words += fmt::format("; this is for finding {}, {}", first.number, nameOf(sheet, other));
    if (!own.empty()) date.words += fmt::format("; finding {}: {}", sheet.number, spelledDate(own));
    return date;
}

SheetDate stopDate(const SheetCase& sheet) {
    static const std::set<std::string> over{"done", "verified", "closed"};
    const bool open = sheet.job && !over.count(sheet.job->state);
    const std::string planned = open ? sheet.job->plannedStop : "";
    if (hasPassed(sheet, planned))
        return {"next planned stop", "", spelledDate(planned) + " has passed; filled in by the planner"};
    return {"next planned stop", planned,
            planned.empty() ? "filled in by the planner" : spelledDate(planned)};
}

// " before 12 June 2026"; what is due tomorrow is due at once, what has passed is due now. Nothing is pressed
// for on an old measurement.
std::string beforeWords(const SheetCase& sheet, const std::string& due) {
    if (due.empty()) return "";
    if (hasPassed(sheet, due))
        return (isOld(sheet) ? " (was due " : " now (was due ") + spelledDate(due) + ")";
    const bool atOnce = due <= plusDays(sheet.day(), 1) && !isOld(sheet);
    return (atOnce ? " at once, not later than " : " before ") + spelledDate(due);
}

std::string orderWords(const SheetCase& sheet, const SheetDate& order) {
    if (order.date.empty()) return "";
    if (order.overdue)
        return (isOld(sheet) ? "; to be ordered (was due " : "; order it now (was due ") +
               spelledDate(order.date) + ")";
    if (isOld(sheet)) return "; to be ordered by " + spelledDate(order.date);
    return order.date <= sheet.day() ? "; order it now" : "; order it by " + spelledDate(order.date);
}

// "Misalignment, motor, inspect by 6 July 2026 (finding 2). "
std::string firstOtherWords(const SheetCase& sheet, const Sooner& first) {
    if (first.number == 0) return "";
    const RoundFinding& other = sheet.row.findings[first.number - 1];
    const std::string by = hasPassed(sheet, first.date) ? "was due "
                           : isFirm(other)              ? "not beyond "
                                                        : "inspect by ";
    return fmt::format("{}, {}{} (finding {}). ", capitalised(nameOf(sheet, other)), by,
                       spelledDate(first.date), first.number);
}

// Nothing is pressed on what is watched.
std::string watchedLine(const SheetCase& sheet, const std::string& inspect, const std::string& due) {
    std::string line = inspect + " at the next planned stop";
    if (hasPassed(sheet, due))
        line += " (was due " + spelledDate(due) + ")";
    else if (!due.empty())
        line += ", before " + spelledDate(due);
    return line + "; no repair is asked for yet.";
}

}  // namespace

std::vector<SheetDate> datesOf(const SheetCase& sheet, const JobDatesTable& table, bool needsParts,
                               bool listsParts) {
    const std::string due = ownDue(sheet, table);
    return {orderDate(sheet, table, due, needsParts, listsParts),
            soonestDate(sheet, due, soonerThan(sheet, due, table)), stopDate(sheet)};
}

std::string ownDue(const SheetCase& sheet, const JobDatesTable& table) {
    return dueDate(sheet, sheet.told, sheet.firm(), table);
}

std::string otherWords(const SheetCase& sheet, std::size_t number, const JobDatesTable& table) {
    const RoundFinding& other = sheet.row.findings[number - 1];
    const bool firm = isFirm(other);
    const std::string due = dueDate(sheet, other, firm, table);
    std::string words = fmt::format("{}. {}: {}", number, nameOf(sheet, other), other.finding.urgency);
    if (due.empty()) return words;
    const char* by = hasPassed(sheet, due) ? ", was due " : firm ? ", not beyond " : ", inspect by ";
    return words + by + spelledDate(due);
}

std::string firstLineOf(const SheetCase& sheet, const std::string& job, const std::string& inspect,
                        const JobDatesTable& table, const std::vector<SheetDate>& dates) {
    if (sheet.byHandOnly())
        return fmt::format("Look at {}: put on the list by hand{}.", machineWords(sheet),
                           sheet.row.byHandWhy.empty() ? "" : ": " + sheet.row.byHandWhy);
    const std::string due = ownDue(sheet, table);
    const std::string lead =
        ageLead(sheet.period.lastDay, sheet.day()) + firstOtherWords(sheet, soonerThan(sheet, due, table));
    if (sheet.firm()) return lead + job + beforeWords(sheet, due) + orderWords(sheet, dates[0]) + ".";
    if (asksForWork(sheet.told)) return lead + inspect + beforeWords(sheet, due) + ".";
    return lead + watchedLine(sheet, inspect, due);
}

std::string limitDateWords(const RoundFinding& finding, const std::string& day) {
    if (!finding.limitDate || !finding.limitDate->median) return "";
    const LimitDate& d = *finding.limitDate;
    const auto spelled = [](int number) { return spelledDate(dateOfDay(number)); };
    const bool passed = dateOfDay(*d.median) < day;
    std::string words = (passed ? "Going on as up to the round, it would have reached the limit about "
                                : "If it goes on like this the limit is reached about ") +
                        spelled(*d.median);
    if (d.from && d.to)
        words += fmt::format(" ({} to {}, 8 in 10)", spelled(*d.from), spelled(*d.to));
    else if (d.from)
        words += fmt::format(" ({} or later)", spelled(*d.from));
    return words + ".";
}

std::string ageLead(const std::string& lastDay, const std::string& today) {
    const int days = daysBetween(lastDay, today).value_or(0);
    return days <= kOldDays ? ""
                            : fmt::format("Measured {} days ago: look at newer recordings first. ", days);
}

std::string ageWords(const SheetCase& sheet) {
    const int days = daysBetween(sheet.period.lastDay, sheet.day()).value_or(0);
    return days <= kOldDays
               ? ""
               : fmt::format("This round is {} days old: order and open nothing on it alone.", days);
}

std::string urgencyWords(const std::string& urgency, const SheetDate& due) {
    const char* none = "";
    const auto with = [&](const char* coming, const char* passed) {
        return due.date.empty() ? none : due.overdue ? passed : coming;
    };
    if (urgency == "act")
        return std::string("act: ahead of the plan") +
               with("; the date below is the latest", "; the date below has passed");
    if (urgency == "plan")
        return std::string("plan: a job for a planned stop") +
               with(" before the date below", "; the date below has passed");
    if (urgency == "watch") return "watch: no repair yet, looked at again in the next round";
    if (urgency == "unseen") return "unseen: nothing could be judged here this week";
    return "leave: nothing asks for work";
}

}  // namespace fettle
