// Why: the round on paper for those who read no spectra: what needs work this week and in which order, what
// to do by when in shop words, which machines nobody saw and why, which jobs are to be verified, what changed
// since the last round, how often the list was right here, and what it cannot tell. One plain value for the
// printed page, its JSON twin and its CSV, so that none says something else; the words of a job are those of
// its findings sheet. A disputed entry asks for no work, a deferred one for none yet: both stand apart. Dates
// "2026-06-12" in the site's calendar, spelled out in sentences. Texts are never empty where a comment does
// not say so. Thread: as the FleetFile; reads only; costs a sheet for each finding to act on or plan for.
// Errors: those of the stores and tables, Cancelled.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/json_object.h"
#include "core/base/progress.h"
#include "core/fleet/due.h"
#include "core/fleet/report_effort.h"
#include "core/round/comparison.h"
#include "core/store/fleet_file.h"

namespace fettle {

struct ReportJob {
    int place = 0;  // in the order of work, from 1
    std::string tag, asset, service, area, criticality;
    std::string urgency;                     // of the machine
    std::string firstLine;                   // the sheet's: what to do by when
    std::string finding;                     // "outer-race defect, motor DE"
    bool firm = false;                       // a repair may be planned on it; else an inspection decides
    std::string doBy, doByLabel, doByWords;  // date (may be empty), "do not run beyond", spelled out
    bool overdue = false;
    std::string orderBy, orderWords;  // date (may be empty), words
    int priority = 4;                 // of the site, 1 is first
    std::string job;                  // "job 12, revision 2, ..."; "no job yet"
    std::string untilThen, stopAtOnceIf;
    std::size_t moreFindings = 0;
    std::string changed;
    std::string decided;  // "accepted"; "not decided yet"
    std::string howBad;   // as on its sheet
    ReportEffort effort;
};

// An entry that asks for no work now.
struct ReportAside {
    std::string tag, service, area, urgency, finding;
    std::string words;  // "put off to 1 June 2026: stop in June"; of a watched one what to watch
};

struct ReportUnseen {
    std::string tag, service, area, reason;  // key
    std::string words, whose;                // "no recording since ..."; "whoever keeps the sensors"
    std::string foundBefore;                 // may be empty
    bool answered = false;
};

struct ReportBlind {
    std::string fault, name;        // key and words
    std::size_t blind = 0, of = 0;  // machines with no place at which it could be seen, of those asked
    std::size_t somewhere = 0;      // of the others, those with a place at which it could not
    std::string cure;               // what would show it on most of them; may be empty
};

struct RoundReport {
    std::string site, from, until, madeOn, engine;
    std::string state;    // "open, 3 of 9 listed decided", "closed on 11 May 2026 by mk", "a draft"
    std::string ageNote;  // may be empty
    std::size_t machines = 0, act = 0, plan = 0, watch = 0, unseen = 0, leave = 0;
    std::vector<ReportJob> work;               // act and plan that ask for work, in the order to do it
    std::vector<ReportSum> byUrgency, byArea;  // of this work
    std::vector<ReportAside> watched, deferred, disputed;
    std::vector<ReportUnseen> notSeen;
    std::vector<DueItem> due;
    std::optional<RoundComparison> changes;  // against the kept round before; empty: there is none
    std::string promise;
    std::vector<std::string> record;  // how often the list was right here
    std::string leaveWords;           // what was done about those on leave
    std::vector<ReportBlind> blind;   // of the listed machines, most often blind first
    std::vector<std::string> limits;  // what the list cannot tell
    std::vector<std::string> cautions;
};

struct ReportRequest {
    std::optional<std::int64_t> round;  // empty: the open or last kept one, else the week as it is now
    std::string today;                  // day of making; empty: the last day of the round
};
Result<RoundReport> roundReport(FleetFile& fleet, const ReportRequest& request, const Progress& progress = {},
                                const CancelToken& cancel = {});

// The comparison of two kept rounds of the fleet file.
Result<RoundComparison> compareKept(FleetFile& fleet, std::int64_t before, std::int64_t after);

Json toJson(const RoundReport& report);  // resources/schemas/round_report.schema.json
Json toJson(const RoundComparison& comparison);
// Rows for a spreadsheet, no cell of which starts a formula: the work in order; the moves.
std::string reportCsv(const RoundReport& report);
std::string comparisonCsv(const RoundComparison& comparison);

}  // namespace fettle
