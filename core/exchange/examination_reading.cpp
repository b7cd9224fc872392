#include <algorithm>

#include "core/diagnosis/family.h"
#include "core/exchange/examination_json.h"

namespace fettle {

namespace {

// Total look-ups: what is absent or of another kind reads as nothing.
const Json& at(const Json& json, const char* key) {
    static const Json nothing;
    if (!json.is_object()) return nothing;
    const auto found = json.find(key);
    return found == json.end() ? nothing : *found;
}

std::string text(const Json& json, const char* key) {
    const Json& value = at(json, key);
    return value.is_string() ? value.get<std::string>() : "";
}

std::optional<double> maybe(const Json& json, const char* key) {
    const Json& value = at(json, key);
    return value.is_number() ? std::optional(value.get<double>()) : std::nullopt;
}

double number(const Json& json, const char* key) {
    return maybe(json, key).value_or(0);
}

std::size_t count(const Json& json, const char* key) {
    const Json& value = at(json, key);
    return value.is_number_unsigned() ? value.get<std::size_t>() : 0;
}

bool yes(const Json& json, const char* key) {
    const Json& value = at(json, key);
    return value.is_boolean() && value.get<bool>();
}

template <class Make>
auto list(const Json& json, const char* key, Make make) {
    std::vector<decltype(make(json))> all;
    const Json& items = at(json, key);
    if (items.is_array())
        for (const Json& item : items)
            all.push_back(make(item));
    return all;
}

std::vector<std::string> texts(const Json& json, const char* key) {
    return list(json, key,
                [](const Json& j) { return j.is_string() ? j.get<std::string>() : std::string(); });
}

SpeedResult speedOf(const Json& json) {
    SpeedResult speed;
    speed.rpm = maybe(json, "rpm");
    speed.plusMinusRpm = number(json, "plus_minus_rpm");
    speed.from = text(json, "from");
    speed.givenRpm = maybe(json, "given_rpm");
    speed.estimates = list(json, "estimates", [](const Json& j) {
        return SpeedEstimate{text(j, "from"), number(j, "rpm"), number(j, "plus_minus_rpm")};
    });
    return speed;
}

ZoneNote zoneOf(const Json& json) {
    return {text(json, "zone"), text(json, "zone_basis"), maybe(json, "next_limit_mm_s"),
            yes(json, "indicative"), yes(json, "note_only")};
}

ChannelLevels levelsOf(const Json& json) {
    ChannelLevels levels;
    levels.channel = text(json, "channel");
    levels.velocityRmsMmS = maybe(json, "velocity_rms_mm_s");
    const Json& band = at(json, "velocity_band_hz");
    if (band.is_array() && band.size() == 2 && band[0].is_number() && band[1].is_number()) {
        levels.velocityLeastHz = band[0].get<double>();
        levels.velocityMostHz = band[1].get<double>();
    }
    levels.accelerationRmsG = maybe(json, "acceleration_rms_g");
    levels.crestFactor = number(json, "crest_factor");
    levels.kurtosis = number(json, "kurtosis");
    levels.order1MmS = maybe(json, "order_1_mm_s");
    levels.order2MmS = maybe(json, "order_2_mm_s");
    levels.order3MmS = maybe(json, "order_3_mm_s");
    levels.zones = list(json, "zones", zoneOf);
    levels.noZoneWhy = text(json, "no_zone_why");
    return levels;
}

RecordingFacts recordingOf(const Json& json) {
    RecordingFacts facts;
    facts.file = text(json, "file");
    facts.channels = list(json, "channels", [](const Json& j) {
        return ChannelFacts{text(j, "name"),
                            text(j, "point"),
                            text(j, "direction"),
                            text(j, "quantity"),
                            number(j, "sample_rate_hz"),
                            count(j, "samples")};
    });
    facts.running = text(json, "running");
    if (const Json& mains = at(json, "mains"); mains.is_object())
        facts.mains = MainsFacts{number(mains, "hz"), number(mains, "plus_minus_hz"), text(mains, "from"),
                                 yes(mains, "output")};
    facts.frameTempC = maybe(json, "frame_temp_c");
    facts.speed = speedOf(at(json, "speed"));
    facts.quality = list(json, "quality", [](const Json& j) {
        return QualityNote{text(j, "code"), text(j, "channel"), text(j, "detail")};
    });
    facts.levels = list(json, "levels", levelsOf);
    facts.measures = list(json, "measures", [](const Json& j) {
        return FaultMeasure{text(j, "fault"), text(j, "at"),       text(j, "name"),
                            text(j, "unit"),  count(j, "channel"), number(j, "value")};
    });
    return facts;
}

LineState stateOf(const std::string& word) {
    for (const LineState state : {LineState::Found, LineState::Absent})
        if (word == toText(state)) return state;
    return LineState::LeftOut;
}

LineRow lineOf(const Json& json) {
    LineRow row;
    row.name = text(json, "name");
    row.order = number(json, "order");
    row.expectedHz = number(json, "expected_hz");
    row.foundHz = number(json, "found_hz");
    row.aboveFloorDb = number(json, "above_floor_db");
    row.rankP = maybe(json, "rank_p").value_or(1);
    row.w = number(json, "w");
    row.weightDban = number(json, "weight_dban");
    row.state = stateOf(text(json, "state"));
    row.why = text(json, "why");
    row.carrier = yes(json, "carrier");
    row.harmonic = int(maybe(json, "harmonic").value_or(1));
    return row;
}

// The row "mean over n recordings" closes the lines where there are several; it is no line.
void takeLines(const Json& json, Hypothesis& h) {
    const Json& lines = at(json, "lines");
    if (!lines.is_array()) return;
    for (const Json& line : lines) {
        if (at(line, "state").is_string())
            h.best.rows.push_back(lineOf(line));
        else
            h.meanDban = number(line, "weight_dban");
    }
}

Hypothesis hypothesisOf(const Json& json) {
    Hypothesis h;
    h.fault = text(json, "fault");
    h.at = text(json, "at");
    h.path = text(json, "path");
    h.weightDban = maybe(json, "weight_dban");
    h.beforeClaimsDban = maybe(json, "before_claims_dban");
    h.why = text(json, "why");
    h.persistence = maybe(json, "persistence");
    h.provedOn = text(json, "proved_on");
    h.causeShare = maybe(json, "cause_share");
    if (!h.weightDban) {  // written by an older program without the number: one
        h.recordingCount = json.contains("recording_count") ? count(json, "recording_count") : 1;
        return h;
    }
    h.recording = count(json, "recording");
    h.recordingCount = count(json, "recording_count");
    takeLines(json, h);
    h.best.weightDban = *h.weightDban - h.meanDban;
    h.best.searchDban = number(json, "search_dban");
    h.best.cageShift = number(json, "cage_shift");
    h.best.variant = text(json, "variant");
    h.best.view = text(json, "view");
    h.best.channel = count(json, "channel");
    h.best.point = text(json, "point");
    h.best.levelG = number(json, "level_g");
    return h;
}

Severity severityOf(const Json& json) {
    return {text(json, "kind"),   text(json, "value"), maybe(json, "level"),
            maybe(json, "limit"), text(json, "unit"),  text(json, "basis")};
}

// What a finding says beyond what was considered.
void takeFinding(const Json& json, Hypothesis& h) {
    h.severity = severityOf(at(json, "severity"));
    h.urgency = text(json, "urgency");
    h.provedOn = text(json, "proved_on");
    h.recording = count(json, "recording");
    h.rivals = list(json, "rivals", [](const Json& j) {
        return Rival{text(j, "fault"), text(j, "at"), number(j, "weight_dban"), text(j, "lines")};
    });
    h.against = texts(json, "against");
    h.sentence = text(json, "sentence");
    h.causeNotes = list(json, "cause_notes", [](const Json& j) {
        return CauseNote{text(j, "feature"), text(j, "unit"), number(j, "value"), number(j, "dban")};
    });
}

void takeFindings(const Json& json, Examination& e) {
    const Json& findings = at(json, "findings");
    if (!findings.is_array()) return;
    for (const Json& finding : findings) {
        const auto same = [&](const Hypothesis& h) {
            return h.fault == text(finding, "fault") && h.at == text(finding, "at");
        };
        auto known = std::find_if(e.considered.begin(), e.considered.end(), same);
        if (known == e.considered.end()) continue;
        takeFinding(finding, *known);
        e.findings.push_back(*known);
    }
}

// Written for each of the four families of a bearing; one spot here, as it was.
void takeBlind(const Json& json, Examination& e) {
    for (BlindSpot& spot : list(json, "blind", [](const Json& j) {
             return BlindSpot{text(j, "fault"), text(j, "at"), text(j, "why"), text(j, "cure"),
                              yes(j, "machine_wide")};
         })) {
        const bool cage = spot.fault == faultKey(BearingElement::Cage);
        const std::size_t n = e.blind.size();
        const bool fourth =
            cage && n >= 3 && std::all_of(e.blind.end() - 3, e.blind.end(), [&](const BlindSpot& b) {
                return b.fault.starts_with("bearing_") && b.at == spot.at && b.why == spot.why;
            });
        if (fourth) {
            e.blind.resize(n - 3);
            spot.fault = "bearing";
        }
        e.blind.push_back(std::move(spot));
    }
}

}  // namespace

Result<Examination> examinationFromJson(const Json& json, const std::string& file) {
    if (number(json, "schema") != 1)
        return fail(ErrorKind::Unsupported, file, "/schema", "is not 1, the schema this program reads");
    Examination e;
    e.engine = text(json, "engine");
    e.machine = text(json, "machine");
    e.service = text(json, "service");
    e.recordings = list(json, "recordings", recordingOf);
    if (e.recordings.empty())
        return fail(ErrorKind::Damaged, file, "/recordings", "an examination has at least one recording");
    e.speed = speedOf(at(json, "speed"));
    e.considered = list(json, "considered", hypothesisOf);
    for (Hypothesis& h : e.considered)
        h.recording = std::min(h.recording, e.recordings.size() - 1);
    takeFindings(json, e);
    takeBlind(json, e);
    e.warnings = texts(json, "warnings");
    return e;
}

Result<Examination> examinationFromText(const std::string& text, const std::string& file) {
    const auto json = parseJson(text, file);
    if (!json) return fail(json.error());
    return examinationFromJson(*json, file);
}

std::string examinationAsText(const Examination& examination) {
    return toJson(examination).dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace fettle
