#include <cmath>
#include <limits>

#include "core/exchange/round_json.h"

namespace fettle {

namespace {

constexpr double kMost = std::numeric_limits<double>::max();
constexpr int kMostCount = std::numeric_limits<int>::max();

const std::vector<std::string> kUrgencies = {"leave", "watch", "plan", "act"};
const std::vector<std::string> kRoundUrgencies = {"leave", "watch", "plan", "act", "unseen"};
const std::vector<std::string> kListedBy = {"none", "evidence", "change", "zone", "hand"};
const std::vector<std::string> kReasons = {"silent", "low_battery", "poor_data", "moved",
                                           "idle",   "not_fitted",  "not_judged"};

std::optional<double> maybe(JsonObject& json, const char* key) {
    return json.number(key, -kMost, kMost);
}

double number(JsonObject& json, const char* key, bool required = false) {
    return json.number(key, -kMost, kMost, required).value_or(0);
}

std::size_t count(JsonObject& json, const char* key) {
    return std::size_t(json.integer(key, 0, kMostCount).value_or(0));
}

std::optional<int> date(JsonObject& json, const char* key) {
    const std::string text = json.text(key);
    if (text.empty()) return std::nullopt;
    const auto time = parseUtc(text + "T00:00:00Z");
    if (!time) json.report().broken(json.place(key), "is no date like 2026-05-04");
    return time ? std::optional(dayOf(*time)) : std::nullopt;
}

std::optional<LimitDate> limitDateOf(JsonObject& finding) {
    if (!finding.has("limit_reached")) return std::nullopt;
    JsonObject json(finding.raw("limit_reached"), finding.place("limit_reached"), finding.report());
    LimitDate limit;
    limit.median = date(json, "median");
    limit.from = date(json, "from");
    limit.to = date(json, "to");
    return limit;
}

std::optional<StatisticalLimits> limitsOf(JsonObject& change) {
    if (!change.has("statistical_limits")) return std::nullopt;
    JsonObject json(change.raw("statistical_limits"), change.place("statistical_limits"), change.report());
    StatisticalLimits limits;
    limits.meanPlus3s = number(json, "mean_plus_3s");
    limits.logNormal = number(json, "log_normal");
    limits.medianMad = number(json, "median_mad");
    limits.p95 = number(json, "p95");
    limits.tolerance = number(json, "tolerance_95_95");
    limits.count = int(count(json, "days"));
    return limits;
}

std::optional<ChangeFacts> changeOf(JsonObject& finding) {
    if (!finding.has("change")) return std::nullopt;
    JsonObject json(finding.raw("change"), finding.place("change"), finding.report());
    ChangeFacts c;
    c.quantity = json.text("quantity", true);
    c.point = json.text("point");
    c.channel = json.text("channel");
    c.direction = json.text("direction");
    c.unit = json.text("unit");
    c.was = number(json, "was", true);
    c.now = number(json, "now", true);
    c.step = number(json, "step");
    c.baselineDays = int(count(json, "baseline_days"));
    c.baselineFrom = date(json, "baseline_from").value_or(0);
    c.baselineTo = date(json, "baseline_to").value_or(0);
    c.since = date(json, "since");
    c.limits = limitsOf(json);
    return c;
}

void takeSeverity(JsonObject& finding, RoundFinding& f) {
    if (!finding.has("severity")) return;
    JsonObject json(finding.raw("severity"), finding.place("severity"), finding.report());
    Severity& s = f.finding.severity;
    s.kind = json.text("kind", true);
    s.value = json.text("value");
    s.level = maybe(json, "level");
    s.limit = maybe(json, "limit");
    s.unit = json.text("unit");
    s.basis = json.text("basis");
    f.growthPerWeek = maybe(json, "growth_per_week");
}

std::vector<Rival> rivalsOf(JsonObject& finding) {
    std::vector<Rival> rivals;
    for (const Json* one : finding.list("rivals")) {
        JsonObject json(*one, finding.place("rivals"), finding.report());
        Rival rival;
        rival.fault = json.text("fault");
        rival.at = json.text("at");
        rival.weightDban = number(json, "weight_dban");
        rival.lines = json.text("lines");
        rivals.push_back(std::move(rival));
    }
    return rivals;
}

void takeHypothesis(JsonObject& json, Hypothesis& h) {
    h.fault = json.text("fault");
    h.at = json.text("at");
    h.weightDban = maybe(json, "weight_dban");
    h.beforeClaimsDban = maybe(json, "before_claims_dban");
    h.meanDban = number(json, "mean_dban");
    h.recording = count(json, "recording");
    h.recordingCount = count(json, "recording_count");
    h.best.view = json.text("view");
    h.best.variant = json.text("variant");
    h.best.cageShift = number(json, "cage_shift");
    h.urgency = json.word("urgency", kUrgencies);
    h.provedOn = json.text("proved_on");
    h.why = json.text("why");
    h.rivals = rivalsOf(json);
    h.against = json.texts("against");
    h.sentence = json.text("sentence");
}

RoundFinding findingOf(JsonObject& json) {
    RoundFinding f;
    takeHypothesis(json, f.finding);
    f.persistence = json.number("persistence", 0, 1).value_or(0);
    f.finding.persistence = f.persistence;
    f.causeShare = json.number("cause_share", 0, 1);
    takeSeverity(json, f);
    f.finding.causeShare = f.causeShare;
    f.limitDate = limitDateOf(json);
    f.change = changeOf(json);
    return f;
}

std::vector<double> stripOf(JsonObject& json) {
    std::vector<double> strip;
    const Json& values = json.raw("strip");
    if (!values.is_array()) return strip;
    for (const Json& value : values)
        strip.push_back(value.is_number() ? value.get<double>() : std::numeric_limits<double>::quiet_NaN());
    return strip;
}

std::optional<Instant> newestOf(JsonObject& json) {
    const std::string text = json.text("newest_recording");
    if (text.empty()) return std::nullopt;
    const auto time = parseUtc(text);
    if (!time) json.report().broken(json.place("newest_recording"), "is no time like 2026-05-04T06:20:00Z");
    return time;
}

void takeState(JsonObject& json, RoundMachine& m) {
    m.urgency = json.word("urgency", kRoundUrgencies, true);
    m.listedBy = listedByFrom(json.word("listed_by", kListedBy, true)).value_or(ListedBy::None);
    m.weightDban = maybe(json, "weight_dban");
    m.priorDban = number(json, "prior_dban");
    m.changed = json.text("changed");
    m.newest = newestOf(json);
    m.unseenReason = json.word("unseen_reason", kReasons);
    m.unseenWords = json.text("unseen_words");
    m.foundBefore = json.text("found_before");
    m.byHandWhy = json.text("by_hand_why");
}

RoundMachine machineOf(const Json& value, const std::string& place, JsonReport& report) {
    JsonObject json(value, place, report);
    RoundMachine m;
    m.tag = json.text("tag", true);
    m.asset = json.text("asset");
    m.service = json.text("service");
    m.area = json.text("area");
    m.criticality = json.text("criticality");
    takeState(json, m);
    std::size_t index = 0;
    for (const Json* one : json.list("findings")) {
        JsonObject finding(*one, json.place("findings") + "/" + std::to_string(index++), report);
        m.findings.push_back(findingOf(finding));
    }
    m.governing = json.text("governing");
    m.unit = json.text("unit");
    m.strip = stripOf(json);
    m.limit = maybe(json, "limit");
    m.zone = json.text("zone");
    m.lateRecordings = count(json, "late_recordings");
    m.inSample = json.boolean("in_sample").value_or(false);
    m.baseline = json.text("baseline");
    return m;
}

}  // namespace

Result<RoundMachine> roundMachineFromJson(const Json& json, const std::string& file) {
    JsonReport report{file, {}, {}};
    RoundMachine machine = machineOf(json, "", report);
    if (report.error) return fail(*report.error);
    return machine;
}

Result<RoundMachine> roundMachineFromText(const std::string& text, const std::string& file) {
    const auto json = parseJson(text, file);
    if (!json) return fail(json.error());
    return roundMachineFromJson(*json, file);
}

Result<RoundList> roundListFromJson(const Json& value, const std::string& file) {
    JsonReport report{file, {}, {}};
    RoundList list;
    {
        JsonObject json(value, "", report);
        const auto schema = json.integer("schema", 0, kMostCount, true);
        if (schema && *schema != 1)
            return fail(ErrorKind::Unsupported, file, "/schema", "is not 1, the schema this program reads");
        list.engine = json.text("engine");
        list.from = json.text("from");
        list.until = json.text("until");
        list.alpha = number(json, "alpha", true);
        list.listNeedsDban = number(json, "list_needs_dban", true);
        list.warnings = json.texts("warnings");
        std::size_t index = 0;
        for (const Json* one : json.list("machines"))
            list.machines.push_back(machineOf(*one, "/machines/" + std::to_string(index++), report));
    }
    if (report.error) return fail(*report.error);
    return list;
}

}  // namespace fettle
