#include "core/exchange/round_json.h"

#include <cmath>

#include "core/base/json_parts.h"

namespace fettle {

namespace {

Json dateJson(const std::optional<int>& day) {
    return day ? Json(formatDate(startOfDay(*day))) : Json();
}

Json limitJson(const std::optional<LimitDate>& date) {
    if (!date) return Json();
    return {{"median", dateJson(date->median)}, {"from", dateJson(date->from)}, {"to", dateJson(date->to)}};
}

Json severityJson(const RoundFinding& f) {
    const Severity& s = f.finding.severity;
    if (s.kind.empty()) return Json();
    Json json{{"kind", s.kind},           {"value", s.value},       {"level", orNull(s.level)},
              {"limit", orNull(s.limit)}, {"unit", orNull(s.unit)}, {"basis", orNull(s.basis)}};
    json["growth_per_week"] = orNull(f.growthPerWeek);
    return json;
}

Json limitsJson(const std::optional<StatisticalLimits>& limits) {
    if (!limits) return Json();
    return {{"mean_plus_3s", limits->meanPlus3s},   {"log_normal", limits->logNormal},
            {"median_mad", limits->medianMad},      {"p95", limits->p95},
            {"tolerance_95_95", limits->tolerance}, {"days", limits->count}};
}

Json changeJson(const std::optional<ChangeFacts>& change) {
    if (!change) return Json();
    const ChangeFacts& c = *change;
    return {{"quantity", c.quantity},
            {"point", c.point},
            {"channel", c.channel},
            {"direction", c.direction},
            {"unit", c.unit},
            {"was", c.was},
            {"now", c.now},
            {"step", c.step},
            {"baseline_days", c.baselineDays},
            {"baseline_from", dateJson(c.baselineFrom)},
            {"baseline_to", dateJson(c.baselineTo)},
            {"since", dateJson(c.since)},
            {"statistical_limits", limitsJson(c.limits)}};
}

Json rivalsJson(const std::vector<Rival>& rivals) {
    Json all = Json::array();
    for (const Rival& r : rivals)
        all.push_back({{"fault", r.fault}, {"at", r.at}, {"weight_dban", r.weightDban}, {"lines", r.lines}});
    return all;
}

Json findingJson(const RoundFinding& f) {
    const Hypothesis& h = f.finding;
    Json json{{"fault", orNull(h.fault)},
              {"at", h.at},
              {"weight_dban", orNull(h.weightDban)},
              {"persistence", f.persistence},
              {"cause_share", orNull(f.causeShare)},
              {"severity", severityJson(f)},
              {"limit_reached", limitJson(f.limitDate)},
              {"sentence", h.sentence}};
    json["urgency"] = orNull(h.urgency);
    json["before_claims_dban"] = orNull(h.beforeClaimsDban);
    json["mean_dban"] = h.meanDban;
    json["recording"] = h.recording;
    json["recording_count"] = h.recordingCount;
    json["view"] = orNull(h.best.view);
    json["variant"] = orNull(h.best.variant);
    json["cage_shift"] = h.best.cageShift;
    json["proved_on"] = orNull(h.provedOn);
    json["why"] = h.why;
    json["rivals"] = rivalsJson(h.rivals);
    json["against"] = h.against;
    json["change"] = changeJson(f.change);
    return json;
}

Json findingsJson(const std::vector<RoundFinding>& findings) {
    Json all = Json::array();
    for (const RoundFinding& f : findings)
        all.push_back(findingJson(f));
    return all;
}

Json stripJson(const std::vector<double>& strip) {
    Json all = Json::array();
    for (const double value : strip)
        all.push_back(std::isfinite(value) ? Json(value) : Json());
    return all;
}

}  // namespace

Json toJson(const RoundMachine& m) {
    Json json{{"tag", m.tag},
              {"urgency", m.urgency},
              {"listed_by", toText(m.listedBy)},
              {"weight_dban", orNull(m.weightDban)},
              {"changed", m.changed},
              {"newest_recording", m.newest ? Json(formatUtc(*m.newest)) : Json()},
              {"unseen_reason", orNull(m.unseenReason)},
              {"findings", findingsJson(m.findings)}};
    json["prior_dban"] = m.priorDban;
    json["asset"] = m.asset;
    json["service"] = m.service;
    json["area"] = m.area;
    json["criticality"] = m.criticality;
    json["unseen_words"] = orNull(m.unseenWords);
    json["found_before"] = orNull(m.foundBefore);
    json["by_hand_why"] = orNull(m.byHandWhy);
    json["governing"] = orNull(m.governing);
    json["unit"] = orNull(m.unit);
    json["strip"] = stripJson(m.strip);
    json["limit"] = orNull(m.limit);
    json["zone"] = orNull(m.zone);
    json["late_recordings"] = m.lateRecordings;
    json["in_sample"] = m.inSample;
    json["baseline"] = orNull(m.baseline);
    return json;
}

Json toJson(const RoundList& list) {
    Json json{{"schema", 1},
              {"engine", list.engine},
              {"from", list.from},
              {"until", list.until},
              {"alpha", list.alpha},
              {"list_needs_dban", list.listNeedsDban},
              {"machines", Json::array()}};
    for (const RoundMachine& m : list.machines)
        json["machines"].push_back(toJson(m));
    json["warnings"] = list.warnings;
    return json;
}

std::string roundMachineAsText(const RoundMachine& machine) {
    return toJson(machine).dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace fettle
