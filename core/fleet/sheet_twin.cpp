#include <fmt/format.h>

#include "core/base/json_parts.h"
#include "core/base/text.h"
#include "core/exchange/csv_cell.h"
#include "core/fleet/sheet_content.h"
#include "core/fleet/site_calendar.h"

namespace fettle {

namespace {

template <class List, class Make>
Json list(const List& items, Make make) {
    Json all = Json::array();
    for (const auto& item : items)
        all.push_back(make(item));
    return all;
}

const char* kindText(ArithmeticRow::Kind kind) {
    switch (kind) {
        case ArithmeticRow::Kind::Line:
            return "line";
        case ArithmeticRow::Kind::Search:
            return "search";
        case ArithmeticRow::Kind::Mean:
            return "mean";
        case ArithmeticRow::Kind::Weight:
            break;
    }
    return "weight";
}

Json rowJson(const ArithmeticRow& row) {
    Json json{{"kind", kindText(row.kind)},
              {"name", row.name},
              {"weight_dban", row.dban},
              {"printed_dban", row.printed}};
    if (!row.line) return json;
    const bool looked = row.line->state != LineState::LeftOut;
    json["order"] = row.line->order;
    json["expected_hz"] = row.line->expectedHz;
    json["found_hz"] = looked ? Json(row.line->foundHz) : Json();
    json["above_floor_db"] = looked ? Json(row.line->aboveFloorDb) : Json();
    json["rank_p"] = looked ? Json(row.line->rankP) : Json();
    json["w"] = row.line->w;
    json["state"] = toText(row.line->state);
    json["why"] = orNull(row.line->why);
    return json;
}

Json headJson(const SheetContent& s) {
    return {{"tag", s.tag},
            {"asset", orNull(s.asset)},
            {"service", s.service},
            {"site", orNull(s.site)},
            {"area", orNull(s.area)},
            {"criticality", s.criticality},
            {"job", s.job},
            {"round", s.round},
            {"as_of", s.asOf},
            {"made_on", s.madeOn},
            {"age_note", orNull(s.ageNote)}};
}

Json findingJson(const SheetContent& s) {
    return {{"number", s.number},
            {"of", s.ofFindings},
            {"fault", orNull(s.fault)},
            {"name", s.faultName},
            {"at", orNull(s.at)},
            {"at_words", orNull(s.atWords)},
            {"urgency", s.urgency},
            {"urgency_words", s.urgencyWords},
            {"firm", s.firm},
            {"verdict", s.verdict},
            {"how_sure", s.howSure},
            {"site_record", s.siteRecord},
            {"proved_on", s.provedOn},
            {"how_bad", s.howBad},
            {"severity",
             {{"kind", orNull(s.severityKind)},
              {"value", orNull(s.severityValue)},
              {"level", orNull(s.level)},
              {"limit", orNull(s.limit)},
              {"unit", s.unit},
              {"growth_per_week", orNull(s.growthPerWeek)}}},
            {"limit_reached", orNull(s.limitDate)},
            {"own_due", orNull(s.ownDue)}};
}

Json datesJson(const SheetContent& s) {
    return list(s.dates, [](const SheetDate& d) {
        return Json{{"label", d.label}, {"date", orNull(d.date)}, {"words", d.words}, {"overdue", d.overdue}};
    });
}

Json spectrumJson(const SheetSpectrum& s) {
    return {{"recording", s.recording ? Json(s.recording) : Json()},
            {"time", orNull(s.time)},
            {"channel", orNull(s.channel)},
            {"view", orNull(s.view)},
            {"marks", list(s.marks,
                           [](const SheetMark& m) {
                               return Json{{"name", m.name}, {"hz", m.hz}, {"found", m.found}};
                           })},
            {"carrier_hz", s.carrierHz > 0 ? Json(s.carrierHz) : Json()},
            {"band_hz", s.carrierHz > 0 ? Json{s.fromHz, s.toHz} : Json()},
            {"caption", s.caption}};
}

Json pastJson(const TrendPast& past) {
    const auto day = [](const std::optional<int>& one) { return one ? Json(dateOfDay(*one)) : Json(); };
    const auto& b = past.baseline;
    const auto& h = past.heading;
    return {{"baseline", b ? Json{{"from", dateOfDay(b->from)},
                                  {"to", dateOfDay(b->to)},
                                  {"days", b->days},
                                  {"low", b->low},
                                  {"middle", b->middle},
                                  {"high", b->high}}
                           : Json()},
            {"own_limit", past.limits ? Json(past.limits->tolerance) : Json()},
            {"since", day(past.since)},
            {"limit_reached", h ? Json{{"limit", h->limit},
                                       {"median", day(h->date.median)},
                                       {"from", day(h->date.from)},
                                       {"to", day(h->date.to)}}
                                : Json()}};
}

Json trendJson(const SheetTrend& t) {
    return {{"title", t.title},
            {"unit", t.unit},
            {"days", list(t.days,
                          [](const DayValue& d) {
                              return Json{{"day", dateOfDay(d.day)}, {"value", d.value}};
                          })},
            {"limits", list(t.limits,
                            [](const SheetLimit& l) {
                                return Json{{"label", l.label}, {"value", l.value}};
                            })},
            {"events", list(t.events,
                            [](const SheetTrendEvent& e) {
                                return Json{{"time", formatUtc(e.time)}, {"label", e.label}};
                            })},
            {"past", pastJson(t.past)},
            {"caption", t.caption}};
}

Json needJson(const SheetNeed& n) {
    return {{"machine_state", n.machineState},   {"trades", n.trades},
            {"heads", orNull(n.heads)},          {"hours_low", orNull(n.hoursLow)},
            {"hours_high", orNull(n.hoursHigh)}, {"tools", n.tools},
            {"lifting", orNull(n.lifting)},      {"access", orNull(n.access)},
            {"likely_permits", n.permits},       {"note", n.note}};
}

Json workJson(const SheetContent& s) {
    return {{"need", needJson(s.need)},
            {"isolation",
             {{"columns", s.isolation.columns}, {"rows", s.isolation.rows}, {"note", s.isolation.note}}},
            {"steps", list(s.steps,
                           [](const SheetStep& step) {
                               return Json{{"text", step.text}, {"source", step.source}};
                           })},
            {"parts", list(s.parts,
                           [](const SheetPart& p) {
                               return Json{{"what", p.what},
                                           {"place", p.place},
                                           {"designation", orNull(p.designation)},
                                           {"note", p.note},
                                           {"quantity", orNull(p.quantity)},
                                           {"blanks", p.blanks}};
                           })},
            {"part_boxes", s.partBoxes},
            {"until_then", s.untilThen},
            {"stop_at_once_if", s.stopAtOnceIf},
            {"if_left", s.ifLeft},
            {"measure_after", s.measureAfter},
            {"cured_when", s.cured}};
}

// Column and cell in one list, so that header and row cannot part.
std::vector<std::pair<std::string, std::string>> columns(const SheetContent& s) {
    std::vector<std::string> parts;
    for (const SheetPart& p : s.parts)
        parts.push_back((p.quantity ? fmt::format("{} x ", *p.quantity) : "") + p.what + " " +
                        (p.designation.empty() ? "(unknown)" : p.designation) +
                        (p.place.empty() ? "" : ", " + p.place));
    const auto number = [](const auto& value) { return value ? fmt::format("{:g}", double(*value)) : ""; };
    const auto date = [&](std::size_t i) { return i < s.dates.size() ? s.dates[i].date : ""; };
    return {{"tag", s.tag},
            {"asset", s.asset},
            {"service", s.service},
            {"site", s.site},
            {"area", s.area},
            {"criticality", s.criticality},
            {"title", s.firstLine},
            {"fault", s.fault},
            {"at", s.at},
            {"urgency", s.urgency},
            {"priority", s.priority},
            {"order_parts_by", date(0)},
            {"do_by", date(1)},
            {"planned_stop", date(2)},
            {"how_bad", s.howBad},
            {"parts", joined(parts, "; ")},
            {"trades", s.need.trades},
            {"machine_state", s.need.machineState},
            {"cured_when", s.cured},
            {"round", s.round},
            {"made_on", s.madeOn},
            {"at_words", s.atWords},
            {"as_of", s.asOf},
            {"order_overdue", s.dates.empty()      ? ""
                              : s.dates[0].overdue ? "yes"
                                                   : "no"},
            {"do_overdue", s.dates.size() < 2   ? ""
                           : s.dates[1].overdue ? "yes"
                                                : "no"},
            {"heads", number(s.need.heads)},
            {"hours_low", number(s.need.hoursLow)},
            {"hours_high", number(s.need.hoursHigh)},
            {"tools", joined(s.need.tools, "; ")},
            {"lifting", s.need.lifting},
            {"access", s.need.access},
            {"likely_permits", joined(s.need.permits, "; ")},
            {"job", s.job},
            {"until_then", s.untilThen},
            {"stop_at_once_if", s.stopAtOnceIf},
            {"if_left", s.ifLeft}};
}

}  // namespace

Json toJson(const SheetContent& s) {
    return {{"schema", 1},
            {"engine", s.engine},
            {"first_line", s.firstLine},
            {"machine", headJson(s)},
            {"finding", findingJson(s)},
            {"priority", s.priority},
            {"dates", datesJson(s)},
            {"lead_time", s.leadTime},
            {"lines", list(s.rows, rowJson)},
            {"lines_note", s.rowsNote},
            {"against", s.against},
            {"would_speak_against", s.wouldSpeakAgainst},
            {"rivals", s.rivals},
            {"other_findings", s.otherFindings},
            {"spectrum", spectrumJson(s.spectrum)},
            {"trend", trendJson(s.trend)},
            {"work", workJson(s)},
            {"blind", list(s.blind,
                           [](const SheetBlind& b) {
                               return Json{{"what", b.what}, {"why", b.why}, {"cure", orNull(b.cure)}};
                           })},
            {"blind_note", s.blindNote},
            {"cautions", s.cautions},
            {"return", list(s.fields, [](const SheetField& f) {
                 return Json{{"label", f.label}, {"choices", f.choices}};
             })}};
}

std::string sheetCsvHeader() {
    std::vector<std::string> names;
    for (const auto& [name, text] : columns({}))
        names.push_back(name);
    return csvLine(names);
}

std::string sheetCsvRow(const SheetContent& sheet) {
    std::vector<std::string> cells;
    for (const auto& [name, text] : columns(sheet))
        cells.push_back(text);
    return csvLine(cells);
}

}  // namespace fettle
