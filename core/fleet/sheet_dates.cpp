#include "core/fleet/sheet_dates.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "core/fleet/sheet_words.h"
#include "core/fleet/site_calendar.h"

namespace fettle {

namespace {

constexpr int kOldDays = 14;

std::string plusDays(const std::string& date, int count) {
    return datePlus(date, count).value_or(date);
}

bool hasPassed(const SheetCase& sheet, const std::string& date) {
    return !date.empty() && date < sheet.day();
}

// From the round on; a limit that is reached sooner holds, but never before the round's end.
std::string dueDate(const SheetCase& sheet, const RoundFinding& told, bool firm, const JobDatesTable& table) {
    const Severity& severity = told.finding.severity;
    const auto days = firm ? table.runDays(severity, sheet.row.criticality)
                           : table.inspectDays(severity, sheet.row.criticality);
    if (!days) return "";
    std::string date = plusDays(sheet.period.lastDay, *days);
    if (told.limitDate && told.limitDate->from)
        date = std::min(date, std::max(dateOfDay(*told.limitDate->from), plusDays(sheet.period.lastDay, 1)));
    return date;
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
    if (date.overdue)
        date.words = fmt::format("was due {}: order now; {}", spelledDate(date.date), tight);
    else if (date.date == sheet.day())
        date.words = "now; " + tight;
    else
        date.words = fmt::format("{}, allowing {} days", spelledDate(date.date), leadDays);
}

SheetDate orderDate(const SheetCase& sheet, const JobDatesTable& table, const std::string& due,
                    bool needsParts) {
    SheetDate date{"order parts by", "", ""};
    if (!sheet.firm() || !needsParts)
        date.words = sheet.firm() ? "no part is known to be needed" : "nothing before the inspection";
    else if (due.empty())
        date.words = "no date: how bad it is was not graded";
    else
        setOrderWords(sheet, table.leadDays(), due, date);
    return date;
}

SheetDate runDate(const SheetCase& sheet, const std::string& due) {
    SheetDate date{sheet.firm() ? "do not run beyond" : "inspect by", due, "", hasPassed(sheet, due)};
    if (due.empty())
        date.words = "no date: how bad it is was not graded";
    else if (date.overdue)
        date.words = fmt::format("was due {}: {}", spelledDate(due),
                                 sheet.firm() ? "stop it, or measure anew and let whoever answers for the "
                                                "machine decide now"
                                              : "inspect now");
    else if (sheet.firm())
        date.words =
            spelledDate(due) + " without a new measurement and a decision of whoever answers for the machine";
    else
        date.words = spelledDate(due) + ", so that a repair can follow";
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

// " before 12 June 2026"; what is due tomorrow is due at once, what has passed is due now.
std::string beforeWords(const SheetCase& sheet, const SheetDate& due) {
    if (due.date.empty()) return "";
    if (due.overdue) return " now (was due " + spelledDate(due.date) + ")";
    const bool atOnce = due.date <= plusDays(sheet.day(), 1);
    return (atOnce ? " at once, not later than " : " before ") + spelledDate(due.date);
}

std::string orderWords(const SheetCase& sheet, const SheetDate& order) {
    if (order.date.empty()) return "";
    if (order.overdue) return "; order it now (was due " + spelledDate(order.date) + ")";
    return order.date <= sheet.day() ? "; order it now" : "; order it by " + spelledDate(order.date);
}

// Nothing is pressed on what is watched.
std::string watchedLine(const std::string& inspect, const SheetDate& due) {
    std::string line = inspect + " at the next planned stop";
    if (due.overdue)
        line += " (was due " + spelledDate(due.date) + ")";
    else if (!due.date.empty())
        line += ", before " + spelledDate(due.date);
    return line + "; no repair is asked for yet.";
}

}  // namespace

std::vector<SheetDate> datesOf(const SheetCase& sheet, const JobDatesTable& table, bool needsParts) {
    const std::string due = dueDate(sheet, sheet.told, sheet.firm(), table);
    return {orderDate(sheet, table, due, needsParts), runDate(sheet, due), stopDate(sheet)};
}

std::string otherWords(const SheetCase& sheet, std::size_t number, const JobDatesTable& table) {
    const RoundFinding& other = sheet.row.findings[number - 1];
    const bool firm = isFirm(other);
    const std::string due = dueDate(sheet, other, firm, table);
    Hypothesis named = other.finding;
    named.at = placeWords(*sheet.machine, named.at);
    std::string words = fmt::format("{}. {}: {}", number, findingName(named), named.urgency);
    if (due.empty()) return words;
    const char* by = hasPassed(sheet, due) ? ", was due " : firm ? ", not beyond " : ", inspect by ";
    return words + by + spelledDate(due);
}

std::string firstLineOf(const SheetCase& sheet, const std::string& job, const std::string& inspect,
                        const std::vector<SheetDate>& dates) {
    if (sheet.byHandOnly())
        return fmt::format("Look at {}: put on the list by hand{}.", machineWords(sheet),
                           sheet.row.byHandWhy.empty() ? "" : ": " + sheet.row.byHandWhy);
    if (sheet.firm()) return job + beforeWords(sheet, dates[1]) + orderWords(sheet, dates[0]) + ".";
    if (sheet.told.finding.urgency == "act" || sheet.told.finding.urgency == "plan")
        return inspect + beforeWords(sheet, dates[1]) + ".";
    return watchedLine(inspect, dates[1]);
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

std::string ageWords(const SheetCase& sheet) {
    const int days = daysBetween(sheet.period.lastDay, sheet.day()).value_or(0);
    if (days <= kOldDays) return "";
    return fmt::format(
        "This round is {} days old: look at newer recordings before anything is ordered or opened.", days);
}

}  // namespace fettle
