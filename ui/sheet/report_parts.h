// Why: the parts of the round's report, apart from how they are set on pages: its first page as one block,
// its tables as data. Thread: the window's.
#pragma once

#include "core/fleet/round_report.h"
#include "ui/model/units.h"
#include "ui/sheet/page_flow.h"

namespace fettle {

// Text of the report made ready for paper: dates spelled out, other units beside.
QString reportText(const std::string& text, const Units& units = {});
// What of the summary goes onto the first page: lines of work, and the table by area.
struct SummaryFit {
    std::size_t work = 0;
    bool areas = true;
};
// At most `mostWork` lines of work; what is left over is counted and stands in the tables.
void setSummary(Column& column, const RoundReport& report, const SummaryFit& fit, const Units& units);
void setReportHead(Column& column, const RoundReport& report);       // of the first page
void setReportLaterHead(Column& column, const RoundReport& report);  // of the others

// "2 people, 1 to 3 h"; "not known".
QString effortText(const ReportEffort& effort);
QString standstillText(const ReportEffort& effort);  // "machine stopped"
QString personHoursText(double low, double high);    // "4 to 12 person-hours"

FlowTable workTable(const RoundReport& report, const Units& units);
FlowTable areaTable(const RoundReport& report);
FlowTable asideTable(const QString& heading, const std::vector<ReportAside>& entries, const Units& units);
FlowTable unseenTable(const RoundReport& report);
FlowTable dueTable(const RoundReport& report, const Units& units);
FlowTable blindTable(const RoundReport& report);
FlowTable moveTable(const QString& heading, const RoundComparison& comparison, const Units& units);

}  // namespace fettle
