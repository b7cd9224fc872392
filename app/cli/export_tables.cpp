#include "app/cli/export_tables.h"

#include <algorithm>

#include "app/cli/export_more_tables.h"
#include "app/cli/out_file.h"
#include "core/base/file_system.h"
#include "core/base/json_object.h"
#include "core/base/json_parts.h"
#include "core/base/text.h"
#include "core/exchange/csv_cell.h"

namespace fettle {

namespace {

using Cells = std::vector<Json>;

std::string csvOf(const Json& cell) {
    if (cell.is_null()) return "";
    if (cell.is_string()) return csvCell(cell.get<std::string>());
    if (cell.is_object()) return csvCell(cell.dump(-1, ' ', false, Json::error_handler_t::replace));
    if (!cell.is_array()) return cell.dump();
    std::vector<std::string> parts;
    for (const Json& part : cell)
        parts.push_back(part.get<std::string>());
    return csvCell(joined(parts, "; "));
}

// Rows as they come, none kept.
class Table {
  public:
    Table(const std::string& path, std::vector<std::string> columns)
        : out_(path), columns_(std::move(columns)), csv_(extensionOf(path) == "csv") {
        out_.add(csv_ ? joined(columns_, ",") + kCsvEnd : "[");
    }
    void row(const Cells& cells) {
        out_.add(csv_ ? csvRow(cells) : (rows_ == 0 ? "\n" : ",\n") + jsonRow(cells));
        ++rows_;
    }
    Result<std::size_t> finish() {
        if (!csv_) out_.add(rows_ == 0 ? "]\n" : "\n]\n");
        if (auto done = out_.finish(); !done) return fail(done.error());
        return rows_;
    }

  private:
    std::string csvRow(const Cells& cells) const {
        std::vector<std::string> line;
        std::transform(cells.begin(), cells.end(), std::back_inserter(line), csvOf);
        return joined(line, ",") + kCsvEnd;
    }
    std::string jsonRow(const Cells& cells) const {
        Json row = Json::object();
        for (std::size_t i = 0; i < columns_.size(); ++i)
            row[columns_[i]] = cells[i];
        return row.dump(-1, ' ', false, Json::error_handler_t::replace);
    }

    OutFile out_;
    std::vector<std::string> columns_;
    bool csv_;
    std::size_t rows_ = 0;
};

Status addMachines(FleetFile&, const ExportSpan& span, Table& table) {
    for (const MachineEntry& m : span.machines)
        table.row({m.tag, m.asset, m.service, m.site, m.area, m.criticality, m.standby, m.byHand, m.byHandWhy,
                   orNull(m.removedOn), m.removedWhy});
    return {};
}

Status addDecisionsOf(FleetFile& fleet, const RoundEntry& round, const ExportSpan& span, Table& table) {
    const auto state = fleet.rounds().state(round.id);
    if (!state) return fail(state.error());
    for (const Decision& d : state->decisions)
        if (span.has(d.machine))
            table.row({round.id, round.until, d.machine, toText(d.kind), d.reason, orNull(d.deferTo), d.by,
                       formatUtc(d.at)});
    const auto marks = fleet.rounds().marks(round.id);
    if (!marks) return fail(marks.error());
    for (const RoundMark& m : *marks)
        if (span.has(m.machine))
            table.row({round.id, round.until, m.machine, m.mark, m.reason, Json(), m.by, formatUtc(m.at)});
    return {};
}

Status addDecisions(FleetFile& fleet, const ExportSpan& span, Table& table) {
    const auto rounds = fleet.rounds().all();
    if (!rounds) return fail(rounds.error());
    for (const RoundEntry& round : *rounds)
        if (span.hasRound(round.until))
            if (auto good = addDecisionsOf(fleet, round, span, table); !good) return good;
    return {};
}

Status addJobs(FleetFile& fleet, const ExportSpan& span, Table& table) {
    const auto jobs = fleet.log().jobs(span.machine);
    if (!jobs) return fail(jobs.error());
    for (const Job& j : *jobs)
        if (span.has(j.createdAt))
            table.row({j.id, j.machine, j.findings, j.workOrder, j.state, j.urgency, j.revision,
                       orNull(j.replaces), orNull(j.orderPartsBy), orNull(j.runUntil), orNull(j.plannedStop),
                       formatUtc(j.createdAt)});
    return {};
}

Status addFeedback(FleetFile& fleet, const ExportSpan& span, Table& table) {
    const auto reports = fleet.log().feedback();
    if (!reports) return fail(reports.error());
    for (const Feedback& f : *reports)
        if (span.has(f.machine) && span.has(f.time))
            table.row({f.machine, formatUtc(f.time), f.fault, orNull(f.at), f.outcome, f.code, f.text, f.by});
    return {};
}

Status addEvents(FleetFile& fleet, const ExportSpan& span, Table& table) {
    const auto events = fleet.log().events(span.machine);
    if (!events) return fail(events.error());
    for (const Event& e : *events)
        if (span.has(e.time)) table.row({e.machine, formatUtc(e.time), e.kind, orNull(e.at), e.text, e.by});
    return {};
}

Status addRefusals(FleetFile& fleet, const ExportSpan& span, Table& table) {
    const auto refusals = fleet.log().refusals(true);
    if (!refusals) return fail(refusals.error());
    for (const Refusal& r : *refusals)
        if (span.has(r.lastSeen))
            table.row({r.path, r.place, r.rule, r.kind, formatUtc(r.firstSeen), formatUtc(r.lastSeen),
                       r.times, r.answered});
    return {};
}

Status addWeights(FleetFile& fleet, const ExportSpan& span, Table& table) {
    for (const MachineEntry& machine : span.machines) {
        const auto month = [&](Instant from, Instant until) -> Status {
            const auto weights = fleet.recordings().weights(machine.id, from, until);
            if (!weights) return fail(weights.error());
            for (const WeightEntry& w : *weights)
                table.row({machine.tag, formatUtc(w.time), w.recording, w.fault, w.at, w.weightDban});
            return {};
        };
        if (auto good = monthByMonth(fleet, machine, span, month); !good) return good;
    }
    return {};
}

Status addSeries(FleetFile& fleet, const MachineEntry& machine, const MeasureSeries& series,
                 const ExportSpan& span, Table& table) {
    const auto values = fleet.trends().measured(series, span.from, span.until);
    if (!values) return fail(values.error());
    for (const TrendPoint& v : *values)
        table.row({machine.tag, formatUtc(v.time), v.recording, series.point, series.channelName,
                   series.direction, v.running, series.fault, series.at, series.name, series.unit, v.value});
    return {};
}

Status addMeasures(FleetFile& fleet, const ExportSpan& span, Table& table) {
    for (const MachineEntry& machine : span.machines) {
        const auto all = fleet.trends().measures(machine.id);
        if (!all) return fail(all.error());
        for (const MeasureSeries& series : *all)
            if (auto good = addSeries(fleet, machine, series, span, table); !good) return good;
    }
    return {};
}

struct Kind {
    std::string name;
    std::vector<std::string> columns;
    Status (*fill)(FleetFile&, const ExportSpan&, Table&);
};

const std::vector<Kind>& kinds() {
    static const std::vector<Kind> all = {
        {"machines",
         {"tag", "asset", "service", "site", "area", "criticality", "standby", "by_hand", "by_hand_why",
          "removed_on", "removed_why"},
         addMachines},
        {"decisions",
         {"round", "until", "machine", "decision", "reason", "defer_to", "by", "at"},
         addDecisions},
        {"jobs",
         {"id", "machine", "findings", "work_order", "state", "urgency", "revision", "replaces",
          "order_parts_by", "run_until", "planned_stop", "created"},
         addJobs},
        {"feedback", {"machine", "time", "fault", "at", "outcome", "code", "text", "by"}, addFeedback},
        {"events", {"machine", "time", "kind", "at", "text", "by"}, addEvents},
        {"refusals",
         {"path", "place", "rule", "kind", "first_seen", "last_seen", "times", "answered"},
         addRefusals},
        {"weights", {"machine", "time", "recording", "fault", "at", "weight_dban"}, addWeights},
        {"measures",
         {"machine", "time", "recording", "point", "channel", "direction", "running", "fault", "at",
          "measure", "unit", "value"},
         addMeasures}};
    return all;
}

}  // namespace

const std::vector<std::string>& exportTableNames() {
    static const std::vector<std::string> names = [] {
        std::vector<std::string> all;
        for (const Kind& kind : kinds())
            all.push_back(kind.name);
        for (const MoreTable& more : moreTables())
            all.push_back(more.name);
        return all;
    }();
    return names;
}

Result<std::size_t> exportTable(FleetFile& fleet, const std::string& name, const ExportSpan& span,
                                const std::string& path) {
    for (const Kind& kind : kinds()) {
        if (kind.name != name) continue;
        Table table(path, kind.columns);
        if (auto filled = kind.fill(fleet, span, table); !filled) return fail(filled.error());
        return table.finish();
    }
    for (const MoreTable& more : moreTables()) {
        if (more.name != name) continue;
        Table table(path, more.columns);
        const auto row = [&table](const std::vector<Json>& cells) { table.row(cells); };
        if (auto filled = more.fill(fleet, span, row); !filled) return fail(filled.error());
        return table.finish();
    }
    return fail(ErrorKind::Invalid, "", name, "is no table of a fleet file");
}

}  // namespace fettle
