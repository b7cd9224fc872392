#include "core/workshop/trial_json.h"

#include "core/base/json_parts.h"

namespace fettle {

namespace {

Json timeOrNull(const std::optional<Instant>& time) {
    return time ? Json(formatUtc(*time)) : Json();
}

Json changeJson(const TrialChange& c) {
    return {{"kind", toText(c.kind)},
            {"follows", toText(c.follows)},
            {"at", c.at},
            {"words", c.words},
            {"point", c.point},
            {"channel", c.channel},
            {"mass_g", c.massG},
            {"radius_mm", c.radiusMm},
            {"rotor_kg", orNull(c.rotorKg)},
            {"angle_deg", orNull(c.angleDeg)},
            {"grade_mm_s", c.grade},
            {"fault", c.fault}};
}

Json expectationJson(const TrialExpectation& e) {
    Json lines = Json::array();
    for (const ExpectedLine& line : e.lines)
        lines.push_back({{"name", line.name}, {"order", line.order}, {"hz", line.hz}});
    return {{"speed_rpm", e.speedRpm},
            {"unbalance_g_mm", orNull(e.unbalanceGmm)},
            {"force_n", orNull(e.forceN)},
            {"share_of_weight", orNull(e.weightShare)},
            {"permissible_g_mm", orNull(e.permissibleGmm)},
            {"permissible_mass_g", orNull(e.permissibleMassG)},
            {"equivalent_grade_mm_s", orNull(e.equivalentGrade)},
            {"move_low_mm_s", orNull(e.moveLowMmS)},
            {"move_high_mm_s", orNull(e.moveHighMmS)},
            {"once_now_mm_s", orNull(e.onceNowMmS)},
            {"once_low_mm_s", orNull(e.onceLowMmS)},
            {"once_high_mm_s", orNull(e.onceHighMmS)},
            {"how", e.how},
            {"lines", lines},
            {"notes", e.notes},
            {"warnings", e.warnings},
            {"lacking", e.lacking}};
}

Json promiseJson(const TrialPromise& p) {
    return {{"fault", p.fault},
            {"at", p.at},
            {"least_dban", p.leastDban},
            {"within_recordings", p.within},
            {"once_low_mm_s", orNull(p.onceLowMmS)},
            {"once_high_mm_s", orNull(p.onceHighMmS)},
            {"sentences", p.sentences}};
}

Json recordingJson(const TrialRecording& r) {
    return {{"recording", r.recording},
            {"time", formatUtc(r.time)},
            {"after", r.after},
            {"weight_dban", orNull(r.weightDban)},
            {"once_mm_s", orNull(r.onceMmS)},
            {"speed_rpm", orNull(r.speedRpm)},
            {"strongest", r.strongest}};
}

Json resultJson(const TrialResult& r) {
    Json recordings = Json::array(), checks = Json::array();
    for (const TrialRecording& one : r.recordings)
        recordings.push_back(recordingJson(one));
    for (const TrialCheck& c : r.checks)
        checks.push_back(
            {{"what", c.what}, {"promised", c.promised}, {"found", c.found}, {"mark", toText(c.mark)}});
    return {{"outcome", r.outcome},
            {"verdict", r.verdict},
            {"before", r.before},
            {"after", r.after},
            {"first_at", timeOrNull(r.firstAt)},
            {"told_at", timeOrNull(r.toldAt)},
            {"told_after_recordings", r.toldAfter ? Json(*r.toldAfter) : Json()},
            {"false_before", r.falseBefore},
            {"once_before_mm_s", orNull(r.onceBeforeMmS)},
            {"once_after_mm_s", orNull(r.onceAfterMmS)},
            {"weight_before_dban", orNull(r.weightBeforeDban)},
            {"weight_after_dban", orNull(r.weightAfterDban)},
            {"checks", checks},
            {"notes", r.notes},
            {"recordings", recordings}};
}

constexpr double kMost = 1e12;

std::optional<Instant> timeOf(JsonObject& object, const std::string& key) {
    const std::string text = object.text(key);
    if (text.empty()) return std::nullopt;
    const auto time = parseUtc(text);
    if (!time) object.report().broken(object.place(key), "must be UTC as in 2026-05-04T06:20:00Z");
    return time;
}

double numberOf(JsonObject& object, const std::string& key, double usual = 0) {
    return object.number(key, -kMost, kMost).value_or(usual);
}
std::optional<double> maybe(JsonObject& object, const std::string& key) {
    return object.number(key, -kMost, kMost);
}

template <class Kind, class... Kinds>
Kind kindOf(JsonObject& object, const std::string& key, Kind first, Kinds... others) {
    const std::vector<Kind> all{first, others...};
    std::vector<std::string> words;
    for (const Kind one : all)
        words.push_back(toText(one));
    const std::string word = object.word(key, words, true);
    for (const Kind one : all)
        if (toText(one) == word) return one;
    return first;
}

TrialChange readChange(JsonObject& o) {
    TrialChange c;
    c.kind = kindOf(o, "kind", TrialKind::Mass, TrialKind::Bearing, TrialKind::Bolt, TrialKind::Other);
    c.follows = kindOf(o, "follows", TrialFollows::Weight, TrialFollows::Once, TrialFollows::Looseness,
                       TrialFollows::Velocity);
    c.at = o.text("at");
    c.words = o.text("words");
    c.point = o.text("point");
    c.channel = o.text("channel");
    c.massG = numberOf(o, "mass_g");
    c.radiusMm = numberOf(o, "radius_mm");
    c.rotorKg = maybe(o, "rotor_kg");
    c.angleDeg = maybe(o, "angle_deg");
    c.grade = numberOf(o, "grade_mm_s", 6.3);
    c.fault = o.text("fault");
    return c;
}

TrialExpectation readExpectation(JsonObject& o) {
    TrialExpectation e;
    e.speedRpm = numberOf(o, "speed_rpm");
    e.unbalanceGmm = maybe(o, "unbalance_g_mm");
    e.forceN = maybe(o, "force_n");
    e.weightShare = maybe(o, "share_of_weight");
    e.permissibleGmm = maybe(o, "permissible_g_mm");
    e.permissibleMassG = maybe(o, "permissible_mass_g");
    e.equivalentGrade = maybe(o, "equivalent_grade_mm_s");
    e.moveLowMmS = maybe(o, "move_low_mm_s");
    e.moveHighMmS = maybe(o, "move_high_mm_s");
    e.onceNowMmS = maybe(o, "once_now_mm_s");
    e.onceLowMmS = maybe(o, "once_low_mm_s");
    e.onceHighMmS = maybe(o, "once_high_mm_s");
    e.how = o.text("how");
    for (const Json* line : o.list("lines")) {
        JsonObject one(*line, o.place("lines"), o.report());
        e.lines.push_back({one.text("name"), numberOf(one, "order"), numberOf(one, "hz")});
    }
    e.notes = o.texts("notes");
    e.warnings = o.texts("warnings");
    e.lacking = o.text("lacking");
    return e;
}

TrialPromise readPromise(JsonObject& o) {
    TrialPromise p;
    p.fault = o.text("fault");
    p.at = o.text("at");
    p.leastDban = numberOf(o, "least_dban", 20);
    p.within = o.integer("within_recordings", 1, 10000).value_or(10);
    p.onceLowMmS = maybe(o, "once_low_mm_s");
    p.onceHighMmS = maybe(o, "once_high_mm_s");
    p.sentences = o.texts("sentences");
    return p;
}

TrialRecording readRecording(JsonObject& o) {
    TrialRecording r;
    r.recording = std::int64_t(numberOf(o, "recording"));
    r.time = timeOf(o, "time").value_or(Instant{});
    r.after = o.boolean("after").value_or(false);
    r.weightDban = maybe(o, "weight_dban");
    r.onceMmS = maybe(o, "once_mm_s");
    r.speedRpm = maybe(o, "speed_rpm");
    r.strongest = o.text("strongest");
    return r;
}

void readChecks(JsonObject& o, TrialResult& r) {
    for (const Json* check : o.list("checks")) {
        JsonObject one(*check, o.place("checks"), o.report());
        r.checks.push_back({one.text("what"), one.text("promised"), one.text("found"),
                            kindOf(one, "mark", TrialMark::Open, TrialMark::Passed, TrialMark::Failed)});
    }
    for (const Json* recording : o.list("recordings")) {
        JsonObject one(*recording, o.place("recordings"), o.report());
        r.recordings.push_back(readRecording(one));
    }
}

TrialResult readResult(JsonObject& o) {
    TrialResult r;
    r.outcome = o.text("outcome");
    r.verdict = o.text("verdict");
    r.before = std::size_t(o.integer("before", 0, 1 << 30).value_or(0));
    r.after = std::size_t(o.integer("after", 0, 1 << 30).value_or(0));
    r.firstAt = timeOf(o, "first_at");
    r.toldAt = timeOf(o, "told_at");
    r.toldAfter = o.integer("told_after_recordings", 1, 1 << 30);
    r.falseBefore = std::size_t(o.integer("false_before", 0, 1 << 30).value_or(0));
    r.onceBeforeMmS = maybe(o, "once_before_mm_s");
    r.onceAfterMmS = maybe(o, "once_after_mm_s");
    r.weightBeforeDban = maybe(o, "weight_before_dban");
    r.weightAfterDban = maybe(o, "weight_after_dban");
    readChecks(o, r);
    r.notes = o.texts("notes");
    return r;
}

void readParts(JsonObject& o, Trial& trial) {
    {
        JsonObject part(o.raw("change"), o.place("change"), o.report());
        trial.change = readChange(part);
    }
    {
        JsonObject part(o.raw("expectation"), o.place("expectation"), o.report());
        trial.expectation = readExpectation(part);
    }
    {
        JsonObject part(o.raw("promise"), o.place("promise"), o.report());
        trial.promise = readPromise(part);
    }
    if (!o.has("result")) {
        o.raw("result");
        return;
    }
    JsonObject part(o.raw("result"), o.place("result"), o.report());
    trial.result = readResult(part);
}

Trial readTrial(JsonObject& o) {
    Trial trial;
    trial.name = o.text("name");
    trial.machine = o.text("machine", true);
    readParts(o, trial);
    trial.precautions = o.texts("precautions");
    trial.stopAt = o.text("stop_at");
    trial.responsible = o.text("responsible");
    trial.permit = o.text("permit");
    trial.startedBy = o.text("started_by");
    trial.startedAt = timeOf(o, "started_at");
    trial.beforeFrom = timeOf(o, "before_from");
    trial.changeFrom = timeOf(o, "change_from");
    trial.changeUntil = timeOf(o, "change_until");
    trial.afterUntil = timeOf(o, "after_until");
    trial.remarks = o.text("remarks");
    return trial;
}

}  // namespace

Json toJson(const Trial& trial) {
    return {{"name", trial.name},
            {"machine", trial.machine},
            {"change", changeJson(trial.change)},
            {"expectation", expectationJson(trial.expectation)},
            {"promise", promiseJson(trial.promise)},
            {"precautions", trial.precautions},
            {"stop_at", trial.stopAt},
            {"responsible", trial.responsible},
            {"permit", trial.permit},
            {"started_by", trial.startedBy},
            {"started_at", timeOrNull(trial.startedAt)},
            {"before_from", timeOrNull(trial.beforeFrom)},
            {"change_from", timeOrNull(trial.changeFrom)},
            {"change_until", timeOrNull(trial.changeUntil)},
            {"after_until", timeOrNull(trial.afterUntil)},
            {"result", trial.result ? resultJson(*trial.result) : Json()},
            {"remarks", trial.remarks}};
}

std::string trialAsText(const Trial& trial) {
    return toJson(trial).dump(-1, ' ', false, Json::error_handler_t::replace);
}

Result<Trial> trialFromText(const std::string& text, const std::string& file) {
    const auto json = parseJson(text, file);
    if (!json) return fail(json.error());
    JsonReport report;
    report.file = file;
    Trial trial;
    {
        JsonObject object(*json, "", report);
        trial = readTrial(object);
    }
    if (report.error) return fail(*report.error);
    return trial;
}

}  // namespace fettle
