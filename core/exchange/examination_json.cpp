#include "core/exchange/examination_json.h"

#include "core/base/json_parts.h"
#include "core/diagnosis/family.h"

namespace fettle {

namespace {

template <class List, class Make>
Json list(const List& items, Make make) {
    Json all = Json::array();
    all.get_ref<Json::array_t&>().reserve(items.size());
    for (const auto& item : items)
        all.push_back(make(item));
    return all;
}

Json speedJson(const SpeedResult& speed) {
    return {{"rpm", orNull(speed.rpm)},
            {"plus_minus_rpm", speed.plusMinusRpm},
            {"from", speed.from},
            {"given_rpm", orNull(speed.givenRpm)},
            {"estimates", list(speed.estimates, [](const SpeedEstimate& e) {
                 return Json{{"from", e.from}, {"rpm", e.rpm}, {"plus_minus_rpm", e.plusMinusRpm}};
             })}};
}

Json channelJson(const ChannelFacts& c) {
    return {{"name", c.name},
            {"point", c.point},
            {"quantity", c.quantity},
            {"direction", c.direction},
            {"sample_rate_hz", c.sampleRateHz},
            {"samples", c.samples}};
}

Json zoneJson(const ZoneNote& z) {
    return {{"zone", z.zone},
            {"zone_basis", z.basis},
            {"next_limit_mm_s", orNull(z.limit)},
            {"indicative", z.indicative},
            {"note_only", z.greyOnly}};
}

Json levelsJson(const ChannelLevels& l) {
    Json json{{"channel", l.channel},
              {"velocity_rms_mm_s", orNull(l.velocityRmsMmS)},
              {"velocity_band_hz", {l.velocityLeastHz, l.velocityMostHz}},
              {"acceleration_rms_g", orNull(l.accelerationRmsG)},
              {"crest_factor", l.crestFactor},
              {"kurtosis", l.kurtosis},
              {"order_1_mm_s", orNull(l.order1MmS)},
              {"order_2_mm_s", orNull(l.order2MmS)},
              {"order_3_mm_s", orNull(l.order3MmS)},
              {"zone", l.zones.empty() ? Json() : Json(l.zones[0].zone)},
              {"zone_basis", l.zones.empty() ? orNull(l.noZoneWhy) : Json(l.zones[0].basis)}};
    json["zones"] = list(l.zones, zoneJson);
    json["no_zone_why"] = l.noZoneWhy;
    if (!l.zones.empty()) {
        json["zone_indicative"] = l.zones[0].indicative;
        json["zone_note_only"] = l.zones[0].greyOnly;
    }
    return json;
}

Json measureJson(const FaultMeasure& m) {
    return JsonRow(6)
        .put("fault", m.fault)
        .put("at", m.at)
        .put("name", m.name)
        .put("unit", m.unit)
        .put("channel", m.channel)
        .put("value", m.value)
        .take();
}

Json mainsJson(const std::optional<MainsFacts>& m) {
    if (!m) return Json();
    return {{"hz", m->hz}, {"plus_minus_hz", m->plusMinusHz}, {"from", m->from}, {"output", m->output}};
}

Json recordingJson(const RecordingFacts& r) {
    return {{"file", r.file},
            {"channels", list(r.channels, channelJson)},
            {"running", r.running},
            {"speed", speedJson(r.speed)},
            {"mains", mainsJson(r.mains)},
            {"frame_temp_c", orNull(r.frameTempC)},
            {"quality", list(r.quality,
                             [](const QualityNote& q) {
                                 return Json{{"code", q.code}, {"channel", q.channel}, {"detail", q.detail}};
                             })},
            {"levels", list(r.levels, levelsJson)},
            {"measures", list(r.measures, measureJson)}};
}

Json lineJson(const LineRow& row) {
    const bool looked = row.state != LineState::LeftOut;
    return JsonRow(12)
        .put("name", row.name)
        .put("order", row.order)
        .put("expected_hz", row.expectedHz)
        .put("found_hz", looked ? Json(row.foundHz) : Json())
        .put("above_floor_db", looked ? Json(row.aboveFloorDb) : Json())
        .put("rank_p", looked ? Json(row.rankP) : Json())
        .put("w", row.w)
        .put("weight_dban", row.weightDban)
        .put("state", toText(row.state))
        .put("why", row.why)
        .put("carrier", row.carrier)
        .put("harmonic", row.harmonic)
        .take();
}

Json meanRow(const Hypothesis& h) {
    return {{"name", "mean over " + std::to_string(h.recordingCount) + " recordings"},
            {"weight_dban", h.meanDban},
            {"why", ""}};
}

Json severityJson(const Severity& s) {
    if (s.kind.empty()) return Json();
    return {{"kind", s.kind},           {"value", s.value},       {"level", orNull(s.level)},
            {"limit", orNull(s.limit)}, {"unit", orNull(s.unit)}, {"basis", orNull(s.basis)}};
}

// What every weighed hypothesis carries: rows that add up with the search to the weight.
void addArithmetic(Json& json, const Hypothesis& h) {
    if (!h.weightDban) return;
    Json lines = list(h.best.rows, lineJson);
    if (h.recordingCount > 1) lines.push_back(meanRow(h));
    json["variant"] = orNull(h.best.variant);
    json["cage_shift"] = h.best.cageShift;
    json["lines"] = std::move(lines);
    json["search_dban"] = h.best.searchDban;
    json["recording"] = h.recording;
    json["view"] = h.best.view;
    json["channel"] = h.best.channel;
    json["point"] = orNull(h.best.point);
    json["level_g"] = h.best.levelG;
    json["recording_count"] = h.recordingCount;
}

Json causeNotesJson(const std::vector<CauseNote>& notes) {
    return list(notes, [](const CauseNote& n) {
        return Json{{"feature", n.feature}, {"unit", n.unit}, {"value", n.value}, {"dban", n.dban}};
    });
}

Json findingJson(const Hypothesis& h) {
    Json json{{"fault", h.fault},
              {"variant", Json()},
              {"at", h.at},
              {"weight_dban", orNull(h.weightDban)},
              {"cage_shift", Json()},
              {"lines", Json::array()},
              {"search_dban", Json()},
              {"recording", h.recording},
              {"view", Json()},
              {"persistence", orNull(h.persistence)}};
    addArithmetic(json, h);
    json["urgency"] = orNull(h.urgency);
    json["proved_on"] = orNull(h.provedOn);
    json["severity"] = severityJson(h.severity);
    json["why"] = h.why;
    json["rivals"] = list(h.rivals, [](const Rival& r) {
        return Json{{"fault", r.fault}, {"at", r.at}, {"weight_dban", r.weightDban}, {"lines", r.lines}};
    });
    json["against"] = h.against;
    json["sentence"] = h.sentence;
    if (!h.path.empty()) json["path"] = h.path;
    if (h.causeShare) json["cause_share"] = *h.causeShare;
    if (!h.causeNotes.empty()) json["cause_notes"] = causeNotesJson(h.causeNotes);
    return json;
}

Json consideredJson(const Hypothesis& h) {
    Json json = JsonRow(20)
                    .put("fault", h.fault)
                    .put("at", h.at)
                    .put("weight_dban", orNull(h.weightDban))
                    .put("before_claims_dban", orNull(h.beforeClaimsDban))
                    .put("persistence", orNull(h.persistence))
                    .put("proved_on", orNull(h.provedOn))
                    .put("why", h.why)
                    .take();
    if (!h.path.empty()) json["path"] = h.path;
    if (h.causeShare) json["cause_share"] = *h.causeShare;
    if (!h.weightDban) json["recording_count"] = h.recordingCount;
    addArithmetic(json, h);
    return json;
}

// Fault keys only: "bearing" stands for its four families, nothing for whatever would be looked for there.
Json blindJson(const std::vector<BlindSpot>& spots) {
    Json all = Json::array();
    const auto add = [&](const BlindSpot& b, const std::string& fault) {
        all.push_back(JsonRow(5)
                          .put("fault", orNull(fault))
                          .put("at", b.at)
                          .put("why", b.why)
                          .put("cure", b.cure)
                          .take());
        if (b.machineWide) all.back()["machine_wide"] = true;
    };
    for (const BlindSpot& b : spots) {
        if (b.fault != "bearing")
            add(b, b.fault);
        else
            for (const BearingElement element : kBearingElements)
                add(b, faultKey(element));
    }
    return all;
}

}  // namespace

Json toJson(const Examination& e) {
    return {{"schema", 1},
            {"engine", e.engine},
            {"machine", e.machine},
            {"service", e.service},
            {"recordings", list(e.recordings, recordingJson)},
            {"speed", speedJson(e.speed)},
            {"findings", list(e.findings, findingJson)},
            {"considered", list(e.considered, consideredJson)},
            {"blind", blindJson(e.blind)},
            {"warnings", e.warnings}};
}

}  // namespace fettle
