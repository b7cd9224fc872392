// Why: the findings sheet of one machine as plain data: every word, number and table that the page, its JSON
// twin and its work-order row show, so that none of them can say something else. Words are for a planner who
// reads no spectra; the table of lines is for the sceptic. Whoever draws it lays out and formats numbers, and
// computes nothing. Dates "2026-06-12" in the site's calendar; wherever a date stands in a sentence it is
// spelled out. Texts are never empty where a comment does not say so. Thread: as the FleetFile; reads only.
// Errors: NotFound for a tag or finding that is not there, those of the stores and tables.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/json_object.h"
#include "core/exchange/arithmetic.h"
#include "core/fleet/trend_past.h"
#include "core/store/fleet_file.h"
#include "core/trend/daily.h"

namespace fettle {

// One of the three dates a planner asks for. `date` empty: nothing can be said, or the site fills it in.
struct SheetDate {
    std::string label, date, words;  // "order parts by", "2026-05-28", "28 May 2026, allowing 14 days"
    bool overdue = false;            // before the day of making: the words say "was due ..."
};

struct SheetPart {
    std::string what, place;          // "bearing", "motor DE"; place may be empty
    std::string designation;          // "6316"; empty: unknown, a box stands there
    std::string note;                 // "clearance, seal and cage: confirm on the plate before ordering"
    std::vector<std::string> blanks;  // boxes to fill in: "clearance", "seal", "cage"
    std::optional<int> quantity;      // empty: a box
};

struct SheetStep {
    std::string text, source;  // source: "common practice, no source", or a standard
};

struct SheetBlind {
    std::string what, why, cure;  // "rotor bars at driver"; cure may be empty
};

// A line of the verdict to be marked in the spectrum.
struct SheetMark {
    std::string name;
    double hz = 0;
    bool found = false;
};

// The spectrum of the recording that spoke loudest: ask machine_desk's detailOf for it. `view` as a finding
// names it, for detailOf; "velocity": the velocity spectrum (detailOf with an empty view); "own": that of the
// channel as it is, for flux. Where `carrierHz` is given only the band [fromHz, toHz] about it is shown, in
// decibels relative to the line there.
struct SheetSpectrum {
    std::int64_t recording = 0;  // 0: its waveform is not kept, or the finding has no lines
    std::string time, channel, view;
    std::vector<SheetMark> marks;
    double carrierHz = 0, fromHz = 0, toHz = 0;
    std::string caption;
};

struct SheetLimit {
    std::string label;  // "B/C 4.5 mm/s"
    double value = 0;
};

struct SheetTrendEvent {
    Instant time{};
    std::string label;  // "greasing", "repair"
};

struct SheetTrend {
    std::string title, unit;  // "M-DE x velocity r.m.s.", "mm/s"
    std::vector<DayValue> days;
    std::vector<SheetLimit> limits;
    std::vector<SheetTrendEvent> events;
    TrendPast past;  // what was usual, limits of its own, since when, where it is heading
    std::string caption;
};

// What the job takes, by common practice; what is empty the site fills in.
struct SheetNeed {
    std::string machineState, trades;  // "stopped, locked out"; "mechanical fitter"
    std::optional<int> heads;
    std::optional<double> hoursLow, hoursHigh;  // of the work itself
    std::vector<std::string> tools, permits;    // permits: likely ones
    std::string lifting, access;
    std::string note;  // where the figures come from and who decides
};

// Boxes for the points of isolation; never filled in here.
struct SheetIsolation {
    std::vector<std::string> columns;  // "point", "locked by"
    int rows = 0;
    std::string note;  // that the site fills them in, and that they are no list of what there is
};

// An empty box of the return half, with the codes it offers.
struct SheetField {
    std::string label;
    std::vector<std::string> choices;  // empty: free text
};

struct SheetContent {
    // Head.
    std::string
        firstLine;  // "Replace the DE bearing of the kiln fan motor before 12 June 2026; order it by ..."
    std::string tag, asset, service, site, area, criticality;  // asset, site and area may be empty
    std::string job;      // "job 12, revision 2, replaces revision 1"; "no job yet"
    std::string round;    // "round of 4 to 10 May 2026"
    std::string asOf;     // last day of the round
    std::string madeOn;   // the day of making
    std::string ageNote;  // said where the round is old by then; may be empty
    std::string engine;
    // The finding.
    std::size_t number = 1, ofFindings = 1;  // which of the machine's findings this sheet is for
    std::string fault, faultName, at;        // key (empty: no cause named), words, place (may be empty)
    std::string atWords;                     // the place in shop words, "motor DE"
    std::string urgency, urgencyWords;       // "plan", "plan: a job for the next planned stop before ..."
    std::string verdict;                     // the finding's own sentence
    bool firm = false;                       // weighed and graded: a repair may be planned on it
    std::string howSure;                     // chance words
    std::string siteRecord;                  // "14 of 20 opened here were confirmed"; words only below 20
    std::string provedOn;
    std::string howBad;  // one sentence: stage or zone, level, limit, growth
    std::string severityKind, severityValue, unit;
    std::optional<double> level, limit, growthPerWeek;
    std::string limitDate;  // "the limit is reached about 13 July 2026 (20 June to 30 August)"; may be empty
    std::string priority;   // the site's own number, apart from urgency: "1 of 4"
    std::vector<SheetDate> dates;  // order parts by, do not run beyond, next planned stop
    std::string ownDue;            // of this finding alone: dates[1] may be another's; may be empty
    std::string leadTime;          // what is assumed about it
    // Why.
    std::vector<ArithmeticRow> rows;  // empty for a finding without a weight
    std::string rowsNote;             // which recording, channel and view; or why there are none
    std::vector<std::string> against, wouldSpeakAgainst, rivals, otherFindings;  // may be empty
    SheetSpectrum spectrum;
    SheetTrend trend;
    // What to do.
    std::vector<SheetStep> steps;  // in order
    std::vector<SheetPart> parts;
    std::vector<std::string> partBoxes;  // behind every part: "stock number", "on hand", "lead time"
    SheetNeed need;
    SheetIsolation isolation;
    std::string untilThen, stopAtOnceIf, ifLeft;
    std::string measureAfter, cured;  // what to measure, and the value that counts as cured
    // Limits of it, and safety.
    std::vector<SheetBlind> blind;
    std::string blindNote;  // said when the table is empty or was cut
    std::vector<std::string> cautions;
    // Return half.
    std::vector<SheetField> fields;
};

struct SheetRequest {
    std::string machine;
    std::size_t finding = 0;            // 1 the strongest; 0: that, without asking
    std::optional<std::int64_t> round;  // empty: the open or last kept round, else the week as it is now
    std::string today = {};             // "2026-05-12", day of making; empty: the last day of the round
};

Result<SheetContent> sheetContent(FleetFile& fleet, const SheetRequest& request);
// The same out of a list that is at hand; `round`: the kept round it is, if it is one. `request.round` is let
// be.
Result<SheetContent> sheetContent(FleetFile& fleet, const RoundList& list, std::optional<std::int64_t> round,
                                  const SheetRequest& request);

// The JSON twin (resources/schemas/sheet.schema.json) and the one-row CSV with its header for a work-order
// system. No cell of the CSV starts a formula in a spreadsheet.
Json toJson(const SheetContent& sheet);
std::string sheetCsvHeader();
std::string sheetCsvRow(const SheetContent& sheet);

}  // namespace fettle
