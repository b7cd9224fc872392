#include "app/cli/export_kept.h"

#include "app/cli/out_file.h"
#include "core/base/json_object.h"

namespace fettle {

namespace {

std::string asText(const Json& json) {
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

Json orNull(const std::optional<Instant>& time) {
    return time ? Json(formatUtc(*time)) : Json();
}

// The facts of a round, its last brace left open.
std::string headOf(const RoundEntry& round) {
    const Json head{{"round", round.id},
                    {"from", round.from},
                    {"until", round.until},
                    {"engine", round.engine},
                    {"alpha", round.alpha},
                    {"list_needs_dban", round.listNeedsDban},
                    {"sample_seed", round.sampleSeed},
                    {"opened_at", formatUtc(round.openedAt)},
                    {"leave_accepted_at", orNull(round.leaveAcceptedAt)},
                    {"leave_accepted_by", round.leaveAcceptedBy},
                    {"closed_at", orNull(round.closedAt)},
                    {"closed_by", round.closedBy}};
    std::string text = asText(head);
    text.pop_back();
    return text;
}

// A list whose elements are JSON texts.
class JsonList {
  public:
    explicit JsonList(OutFile& out) : out_(out) {}
    void begin(const std::string& opening) { out_.add(opening + "["), first_ = true; }
    void add(const std::string& element) {
        out_.add((first_ ? "\n" : ",\n") + element);
        first_ = false;
    }
    void end() { out_.add("]"); }

  private:
    OutFile& out_;
    bool first_ = true;
};

Status addWeeks(FleetFile& fleet, const RoundEntry& round, const ExportSpan& span,
                const std::vector<RoundRow>& rows, JsonList& list) {
    for (const RoundRow& row : rows) {
        if (!span.has(row.machine)) continue;
        const auto week = fleet.rounds().examinationJson(round.id, row.machine);
        if (!week && week.error().kind == ErrorKind::NotFound) continue;
        if (!week) return fail(week.error());
        list.add("{\"machine\":" + asText(row.machine) + ",\"examination\":" + *week + "}");
    }
    return {};
}

Status addRound(FleetFile& fleet, const RoundEntry& round, const ExportSpan& span, OutFile& out) {
    const auto rows = fleet.rounds().rows(round.id);
    if (!rows) return fail(rows.error());
    JsonList list(out);
    list.begin(headOf(round) + ",\"machines\":");
    for (const RoundRow& row : *rows)
        if (span.has(row.machine)) list.add(row.json);
    list.end();
    list.begin(",\"examinations\":");
    if (auto good = addWeeks(fleet, round, span, *rows, list); !good) return good;
    list.end();
    out.add("}");
    return {};
}

std::string examinationOf(const MachineEntry& machine, const RecordingStore::Weighed& one) {
    const Json head{{"machine", machine.tag},
                    {"recording", one.recording},
                    {"time", formatUtc(one.time)},
                    {"running", one.running}};
    std::string text = asText(head);
    text.back() = ',';
    return text + "\"examination\":" + one.json + "}";
}

Result<std::size_t> finished(OutFile& out, std::size_t count) {
    out.add(count == 0 ? "]\n" : "\n]\n");
    if (auto done = out.finish(); !done) return fail(done.error());
    return count;
}

}  // namespace

Result<std::size_t> exportRounds(FleetFile& fleet, const ExportSpan& span, const std::string& path) {
    const auto rounds = fleet.rounds().all();
    if (!rounds) return fail(rounds.error());
    OutFile out(path);
    out.add("[");
    std::size_t count = 0;
    for (const RoundEntry& round : *rounds) {
        if (!span.hasRound(round.until)) continue;
        out.add(count++ == 0 ? "\n" : ",\n");
        if (auto good = addRound(fleet, round, span, out); !good) return fail(good.error());
    }
    return finished(out, count);
}

Result<std::size_t> exportExaminations(FleetFile& fleet, const ExportSpan& span, const std::string& path) {
    OutFile out(path);
    out.add("[");
    std::size_t count = 0;
    for (const MachineEntry& machine : span.machines) {
        const auto month = [&](Instant from, Instant until) -> Status {
            const auto all = fleet.recordings().examinations(machine.id, from, until);
            if (!all) return fail(all.error());
            for (const RecordingStore::Weighed& one : *all)
                out.add((count++ == 0 ? "\n" : ",\n") + examinationOf(machine, one));
            return {};
        };
        if (auto good = monthByMonth(fleet, machine, span, month); !good) return fail(good.error());
    }
    return finished(out, count);
}

}  // namespace fettle
