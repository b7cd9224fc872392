// Why: contents of a findings sheet made for the tests: an ordinary bearing job, and the worst that a
// register, a finding and a table of advice could hold. What stands on a page is looked at here too. Values
// are invented.
#pragma once

#include <fmt/format.h>

#include <algorithm>

#include "core/fleet/sheet_content.h"
#include "core/fleet/sheet_words.h"
#include "ui/sheet/sheet_data.h"
#include "ui/sheet/sheet_page.h"

namespace fettle::sheet_test {

inline ArithmeticRow lineRow(const std::string& name, double hz, double dban, LineState state) {
    LineRow line;
    line.name = name;
    line.expectedHz = hz;
    line.foundHz = hz + 0.2;
    line.aboveFloorDb = 12;
    line.weightDban = dban;
    line.state = state;
    return {ArithmeticRow::Kind::Line, name, line, dban, dban};
}

// `count` lines of falling weight, then search and weight, which add up.
inline std::vector<ArithmeticRow> rowsOf(int count, double search = -6.3) {
    std::vector<ArithmeticRow> rows;
    double sum = search;
    for (int i = 0; i < count; ++i) {
        const double dban = (200 - 7 * i) / 10.0;
        const LineState state = i % 5 == 4 ? LineState::Absent : LineState::Found;
        rows.push_back(lineRow(fmt::format("{} x BPFO", i + 1), 76.2 * (i + 1), dban, state));
        sum += dban;
    }
    rows.push_back({ArithmeticRow::Kind::Search, "search", {}, search, search});
    rows.push_back({ArithmeticRow::Kind::Weight, "weight", {}, sum, sum});
    return rows;
}

inline std::vector<DayValue> risingDays(int count) {
    std::vector<DayValue> days;
    for (int i = 0; i < count; ++i)
        days.push_back({20500 + i, 2.0 + 0.02 * i, 1});
    return days;
}

inline SheetContent ordinary() {
    SheetContent s;
    s.firstLine =
        "Replace the motor DE bearing of KL-ID-01 (kiln induced-draught fan) before 12 June 2026; "
        "order it by 28 May 2026.";
    s.tag = "KL-ID-01";
    s.asset = "10023";
    s.service = "kiln induced-draught fan";
    s.site = "Hollin Edge Lime Works";
    s.area = "kiln";
    s.criticality = "A";
    s.job = "job 12, revision 2, replaces job 9";
    s.round = "round of 4 May 2026 to 10 May 2026";
    s.asOf = "2026-05-10";
    s.madeOn = "2026-05-12";
    s.engine = "0.1.0 0123456789abcdef";
    s.fault = "bearing_outer_race";
    s.faultName = "outer-race defect";
    s.at = "driver DE";
    s.atWords = "motor DE";
    s.urgency = "plan";
    s.urgencyWords = "plan: a job for a planned stop before the date below";
    s.verdict = "Outer-race defect of the driver DE bearing, developed stage.";
    s.firm = true;
    s.howSure = "58 decibans: chance lines reach this in at most 1 recording of 600,000.";
    s.siteRecord = "On this site 17 of 20 findings that were opened were confirmed.";
    s.provedOn = "open data";
    s.howBad = "Developed stage: harmonics with sidebands.";
    s.limitDate = "If it goes on like this the limit is reached about 13 July 2026.";
    s.priority = "1 of 4 (1 is first)";
    s.dates = {{"order parts by", "2026-05-28", "28 May 2026, allowing 14 days"},
               {"do not run beyond", "2026-06-12", "12 June 2026 without a new measurement"},
               {"next planned stop", "", "filled in by the planner"}};
    s.leadTime = "lead time of 14 days assumed; ask the stores";
    s.rows = rowsOf(6);
    s.rowsNote = "x, envelope 3000-3920 Hz; the strongest of 7 recordings";
    s.spectrum.caption = "KL-ID-01 x, envelope 3000-3920 Hz";
    s.trend = {"M-DE x velocity r.m.s.", "mm/s", risingDays(90), {{"B/C 4.5 mm/s", 4.5}}, {}, {},
               "daily medians"};
    s.steps = {{"Measure the seats.", "common practice, no source"},
               {"Name the damage.", "ISO 15243, from memory"}};
    s.parts = {
        {"bearing", "motor DE", "6316", "confirm on the plate before ordering", {"clearance", "cage"}, 1},
        {"seal", "motor DE", "", "confirm on the plate before ordering", {}, {}}};
    s.need = {"stopped, isolated, locked out and tried",
              "mechanical fitter",
              2,
              6.0,
              16.0,
              {"bearing puller", "induction heater"},
              {"lifting", "hot work"},
              "hoist",
              "coupling guard off",
              "common practice; the site decides"};
    s.isolation = {{"point of isolation", "locked by", "proved dead by"}, 4, "The site fills these in."};
    s.partBoxes = {"stock number", "on hand", "lead time"};
    s.untilThen = "Watch once a day.";
    s.stopAtOnceIf = "the noise turns to grinding";
    s.ifLeft = "The cage may break.";
    s.measureAfter = "20 recordings over 3 days";
    s.cured = "overall velocity is at most 1.8 mm/s";
    s.blind = {{"rotor bars at driver", "needs 8 s", "a longer recording"}};
    s.blindNote = "What is not named here may still be missed.";
    s.cautions = cautions();
    s.fields = {
        {"work order number", {}}, {"found", {"as told", "nothing found"}}, {"remarks", {}}, {"fitter", {}}};
    return s;
}

inline std::string longText(std::size_t letters) {
    std::string text;
    while (text.size() < letters)
        text += "a long sentence about this machine that somebody wrote, ";
    return text;
}

// Everything that has a length is too long, every list too full.
inline SheetContent crowded() {
    SheetContent s = ordinary();
    for (std::string* text : {&s.firstLine,
                              &s.service,
                              &s.site,
                              &s.area,
                              &s.job,
                              &s.round,
                              &s.urgencyWords,
                              &s.verdict,
                              &s.howSure,
                              &s.siteRecord,
                              &s.provedOn,
                              &s.howBad,
                              &s.limitDate,
                              &s.priority,
                              &s.rowsNote,
                              &s.need.machineState,
                              &s.need.trades,
                              &s.need.lifting,
                              &s.need.access,
                              &s.need.note,
                              &s.isolation.note,
                              &s.ageNote,
                              &s.untilThen,
                              &s.stopAtOnceIf,
                              &s.ifLeft,
                              &s.measureAfter,
                              &s.cured,
                              &s.blindNote,
                              &s.leadTime,
                              &s.engine})
        *text = longText(900);
    s.tag = std::string(300, 'T');
    s.asset = std::string(400, '9');
    s.rows = rowsOf(40);
    for (SheetDate& date : s.dates)
        date.words = longText(300);
    const SheetPart part{longText(100),
                         longText(100),
                         longText(60),
                         longText(200),
                         std::vector<std::string>(20, longText(90)),
                         {}};
    s.need.tools.assign(20, longText(60));
    s.need.permits.assign(20, longText(100));
    s.steps.assign(40, {longText(300), longText(80)});
    s.parts.assign(20, part);
    s.blind.assign(40, {longText(80), longText(200), longText(100)});
    s.cautions.assign(20, longText(200));
    s.against.assign(20, longText(200));
    s.rivals.assign(20, longText(200));
    s.otherFindings.assign(20, longText(100));
    s.fields.assign(30, {longText(100), {}});
    for (std::size_t i = 0; i < s.fields.size(); i += 2)
        s.fields[i].choices.assign(9, longText(40));
    s.spectrum.caption = s.trend.caption = longText(500);
    return s;
}

inline RecordingDetail someDetail() {
    RecordingDetail detail;
    detail.envelope = {0.5, "dB over floor", std::vector<float>(2000, 3.0F)};
    for (std::size_t i = 152; i < 2000; i += 152)
        detail.envelope.values[i] = 20;
    detail.shaftHz = 24.7;
    return detail;
}

inline SheetData withSpectrum(SheetContent content) {
    content.spectrum.view = "x, envelope 3000-3920 Hz";
    content.spectrum.recording = 1;
    for (const ArithmeticRow& row : content.rows)
        if (row.line) content.spectrum.marks.push_back({row.name, row.line->foundHz, true});
    return {std::move(content), someDetail()};
}

inline bool says(const SheetPage& page, const QString& text) {
    for (const PlacedText& placed : page.texts)
        if (placed.text.contains(text)) return true;
    return false;
}

inline bool says(const std::vector<SheetPage>& pages, const QString& text) {
    return std::any_of(pages.begin(), pages.end(), [&](const SheetPage& page) { return says(page, text); });
}

}  // namespace fettle::sheet_test
