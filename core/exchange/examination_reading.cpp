#include <fmt/format.h>
#include <simdjson.h>

#include <algorithm>

#include "core/diagnosis/family.h"
#include "core/exchange/examination_json.h"

namespace fettle {

namespace {

using Value = simdjson::dom::element;

// Total look-ups: what is absent or of another kind reads as nothing.
template <class T>
std::optional<T> read(const Value& value, const char* key) {
    simdjson::dom::object object;
    Value found;
    T read{};
    if (value.get(object) || object[key].get(found) || found.get(read)) return std::nullopt;
    return read;
}

std::string textOf(const Value& value) {
    std::string_view text;
    return value.get(text) ? std::string() : std::string(text);
}

std::string text(const Value& value, const char* key) {
    return std::string(read<std::string_view>(value, key).value_or(std::string_view()));
}

std::optional<double> maybe(const Value& value, const char* key) {
    return read<double>(value, key);
}

double number(const Value& value, const char* key) {
    return maybe(value, key).value_or(0);
}

std::size_t count(const Value& value, const char* key) {
    return std::size_t(read<std::uint64_t>(value, key).value_or(0));
}

bool yes(const Value& value, const char* key) {
    return read<bool>(value, key).value_or(false);
}

template <class Make>
auto list(const Value& value, const char* key, Make make) {
    std::vector<decltype(make(value))> all;
    const auto items = read<simdjson::dom::array>(value, key);
    if (!items) return all;
    all.reserve(items->size());
    for (const Value item : *items)
        all.push_back(make(item));
    return all;
}

template <class Make>
auto one(const Value& value, const char* key, Make make) -> decltype(make(value)) {
    const auto found = read<Value>(value, key);
    if (!found) return {};
    return make(*found);
}

std::vector<std::string> texts(const Value& value, const char* key) {
    return list(value, key, textOf);
}

SpeedResult speedOf(const Value& json) {
    SpeedResult speed;
    speed.rpm = maybe(json, "rpm");
    speed.plusMinusRpm = number(json, "plus_minus_rpm");
    speed.from = text(json, "from");
    speed.givenRpm = maybe(json, "given_rpm");
    speed.estimates = list(json, "estimates", [](const Value& j) {
        return SpeedEstimate{text(j, "from"), number(j, "rpm"), number(j, "plus_minus_rpm")};
    });
    return speed;
}

ZoneNote zoneOf(const Value& json) {
    return {text(json, "zone"), text(json, "zone_basis"), maybe(json, "next_limit_mm_s"),
            yes(json, "indicative"), yes(json, "note_only")};
}

void takeBand(const Value& json, ChannelLevels& levels) {
    const auto band = read<simdjson::dom::array>(json, "velocity_band_hz");
    double least = 0, most = 0;
    if (!band || band->size() != 2 || band->at(0).get(least) || band->at(1).get(most)) return;
    levels.velocityLeastHz = least;
    levels.velocityMostHz = most;
}

ChannelLevels levelsOf(const Value& json) {
    ChannelLevels levels;
    levels.channel = text(json, "channel");
    levels.velocityRmsMmS = maybe(json, "velocity_rms_mm_s");
    takeBand(json, levels);
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

RecordingFacts recordingOf(const Value& json) {
    RecordingFacts facts;
    facts.file = text(json, "file");
    facts.channels = list(json, "channels", [](const Value& j) {
        return ChannelFacts{text(j, "name"),
                            text(j, "point"),
                            text(j, "direction"),
                            text(j, "quantity"),
                            number(j, "sample_rate_hz"),
                            count(j, "samples")};
    });
    facts.running = text(json, "running");
    if (const auto mains = read<Value>(json, "mains"); mains && mains->is_object())
        facts.mains = MainsFacts{number(*mains, "hz"), number(*mains, "plus_minus_hz"), text(*mains, "from"),
                                 yes(*mains, "output")};
    facts.frameTempC = maybe(json, "frame_temp_c");
    facts.speed = one(json, "speed", speedOf);
    facts.quality = list(json, "quality", [](const Value& j) {
        return QualityNote{text(j, "code"), text(j, "channel"), text(j, "detail")};
    });
    facts.levels = list(json, "levels", levelsOf);
    facts.measures = list(json, "measures", [](const Value& j) {
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

LineRow lineOf(const Value& json) {
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
    row.harmonic = int(read<std::int64_t>(json, "harmonic").value_or(1));
    return row;
}

// The row "mean over n recordings" closes the lines where there are several; it is no line.
void takeLines(const Value& json, Hypothesis& h) {
    const auto lines = read<simdjson::dom::array>(json, "lines");
    if (!lines) return;
    h.best.rows.reserve(lines->size());
    for (const Value line : *lines) {
        if (read<std::string_view>(line, "state"))
            h.best.rows.push_back(lineOf(line));
        else
            h.meanDban = number(line, "weight_dban");
    }
}

Hypothesis hypothesisOf(const Value& json) {
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
        h.recordingCount = read<std::uint64_t>(json, "recording_count").value_or(1);
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

Severity severityOf(const Value& json) {
    return {text(json, "kind"),   text(json, "value"), maybe(json, "level"),
            maybe(json, "limit"), text(json, "unit"),  text(json, "basis")};
}

// What a finding says beyond what was considered.
void takeFinding(const Value& json, Hypothesis& h) {
    h.severity = one(json, "severity", severityOf);
    h.urgency = text(json, "urgency");
    h.provedOn = text(json, "proved_on");
    h.recording = count(json, "recording");
    h.rivals = list(json, "rivals", [](const Value& j) {
        return Rival{text(j, "fault"), text(j, "at"), number(j, "weight_dban"), text(j, "lines")};
    });
    h.against = texts(json, "against");
    h.sentence = text(json, "sentence");
    h.causeNotes = list(json, "cause_notes", [](const Value& j) {
        return CauseNote{text(j, "feature"), text(j, "unit"), number(j, "value"), number(j, "dban")};
    });
}

void takeFindings(const Value& json, Examination& e) {
    const auto findings = read<simdjson::dom::array>(json, "findings");
    if (!findings) return;
    for (const Value finding : *findings) {
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
void takeBlind(const Value& json, Examination& e) {
    for (BlindSpot& spot : list(json, "blind", [](const Value& j) {
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

Result<Examination> examinationOf(const Value& json, const std::string& file) {
    if (number(json, "schema") != 1)
        return fail(ErrorKind::Unsupported, file, "/schema", "is not 1, the schema this program reads");
    Examination e;
    e.engine = text(json, "engine");
    e.machine = text(json, "machine");
    e.service = text(json, "service");
    e.recordings = list(json, "recordings", recordingOf);
    if (e.recordings.empty())
        return fail(ErrorKind::Damaged, file, "/recordings", "an examination has at least one recording");
    for (std::size_t i = 0; i < e.recordings.size(); ++i)
        if (e.recordings[i].levels.size() > e.recordings[i].channels.size())
            return fail(ErrorKind::Damaged, file, fmt::format("/recordings/{}/levels", i),
                        "are more than the channels");
    e.speed = one(json, "speed", speedOf);
    e.considered = list(json, "considered", hypothesisOf);
    takeFindings(json, e);
    for (std::vector<Hypothesis>* all : {&e.considered, &e.findings})
        for (Hypothesis& h : *all)
            h.recording = std::min(h.recording, e.recordings.size() - 1);
    takeBlind(json, e);
    e.warnings = texts(json, "warnings");
    return e;
}

// Why it could not be read; the slower reader knows the place.
tl::unexpected<Error> refused(const std::string& text, const std::string& file) {
    const auto json = parseJson(text, file);
    if (!json) return fail(json.error());
    return fail(ErrorKind::Damaged, file, "byte 0", "is JSON of which a part cannot be held");
}

}  // namespace

Result<Examination> examinationFromText(const std::string& text, const std::string& file) {
    thread_local simdjson::dom::parser parser;
    Value json;
    if (parser.parse(text).get(json)) return refused(text, file);
    return examinationOf(json, file);
}

std::string examinationAsText(const Examination& examination) {
    return toJson(examination).dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace fettle
