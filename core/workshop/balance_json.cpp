#include <fmt/format.h>

#include "core/base/json_parts.h"
#include "core/workshop/balance_job.h"

namespace fettle {

namespace {

constexpr double kMostG = 1e6, kMostMm = 1e5, kMostDegrees = 3600, kMostVibration = 1e6, kMostRpm = 1e6,
                 kMostRecording = 9e15;
constexpr int kMostPlaces = 360;
constexpr std::size_t kMostReadings = 100;
constexpr int kSchema = 1;

Json json(const Polar& polar, const char* amount) {
    return {{amount, polar.amount}, {"degrees", polar.degrees}};
}

Json json(const BalanceRun& run) {
    Json sensors = Json::array();
    for (const auto& readings : run.sensors) {
        Json list = Json::array();
        for (const VibrationReading& one : readings)
            list.push_back({{"amount", one.amount}, {"degrees", orNull(one.degrees)}});
        sensors.push_back({{"readings", list}});
    }
    return {{"trial", run.trial ? json(*run.trial, "mass_g") : Json()},
            {"sensors", sensors},
            {"rpm", orNull(run.rpm)},
            {"load_pct", orNull(run.loadPct)},
            {"source", run.source},
            {"recording", run.recording ? Json(run.recording) : Json()}};
}

Json json(const BalancePlane& plane) {
    Json existing = Json::array();
    for (const FittedMass& one : plane.existing) {
        Json mass = json(one.mass, "mass_g");
        mass["radius_mm"] = one.radiusMm;
        existing.push_back(std::move(mass));
    }
    return {{"name", plane.name},
            {"radius_mm", plane.radiusMm},
            {"from_centre_mm", orNull(plane.fromCentreMm)},
            {"places",
             {{"count", plane.places.count},
              {"first_degrees", plane.places.firstDegrees},
              {"taken", plane.places.taken},
              {"most_g", orNull(plane.places.mostG)},
              {"step_g", plane.places.stepG}}},
            {"existing", existing}};
}

Json json(const SavedInfluence& saved) {
    Json perGram = Json::array();
    for (const Phasor& one : saved.influence.perGram)
        perGram.push_back({{"re", one.real()}, {"im", one.imag()}});
    return {{"from", saved.from},        {"date", saved.date},       {"per_gram", perGram},
            {"radii_mm", saved.radiiMm}, {"rpm", orNull(saved.rpm)}, {"load_pct", orNull(saved.loadPct)}};
}

Json json(const BalanceRotor& rotor) {
    return {{"component", rotor.component},    {"mass_kg", orNull(rotor.massKg)},
            {"rpm", orNull(rotor.rpm)},        {"grade_mm_s", rotor.grade},
            {"viewed_from", rotor.viewedFrom}, {"turns", rotor.clockwise ? "clockwise" : "anticlockwise"}};
}

// What reading shares: the report, and where in the document it stands.
struct Reader {
    JsonReport& report;

    std::optional<Polar> polar(const Json& value, const std::string& place, const char* amount) {
        if (value.is_null()) return std::nullopt;
        JsonObject object(value, place, report);
        return Polar{object.number(amount, 0, kMostG, true).value_or(0),
                     object.number("degrees", -kMostDegrees, kMostDegrees, true).value_or(0)};
    }

    std::vector<VibrationReading> readings(const Json& value, const std::string& place) {
        JsonObject object(value, place, report);
        std::vector<VibrationReading> all;
        const auto list = object.list("readings");
        if (list.size() > kMostReadings)
            report.broken(place, fmt::format("has over {} readings", kMostReadings));
        for (std::size_t i = 0; i < list.size() && i < kMostReadings; ++i) {
            JsonObject one(*list[i], fmt::format("{}/readings/{}", place, i), report);
            all.push_back({one.number("amount", 0, kMostVibration, true).value_or(0),
                           one.number("degrees", -kMostDegrees, kMostDegrees)});
        }
        return all;
    }

    BalanceRun run(const Json& value, const std::string& place) {
        JsonObject object(value, place, report);
        BalanceRun run;
        run.trial = polar(object.raw("trial"), place + "/trial", "mass_g");
        const auto sensors = object.list("sensors");
        for (std::size_t i = 0; i < sensors.size() && i < 2; ++i)
            run.sensors.push_back(readings(*sensors[i], fmt::format("{}/sensors/{}", place, i)));
        run.rpm = object.number("rpm", 0, kMostRpm);
        run.loadPct = object.number("load_pct", 0, 1000);
        run.source = object.text("source");
        run.recording = std::int64_t(object.number("recording", 0, kMostRecording).value_or(0));
        return run;
    }

    PlacesOnRotor places(const Json& value, const std::string& place) {
        PlacesOnRotor places;
        if (value.is_null()) return places;
        JsonObject object(value, place, report);
        places.count = object.integer("count", 0, kMostPlaces).value_or(0);
        places.firstDegrees = object.number("first_degrees", -kMostDegrees, kMostDegrees).value_or(0);
        places.mostG = object.number("most_g", 0, kMostG);
        places.stepG = object.number("step_g", 0, kMostG).value_or(0);
        const Json& taken = object.raw("taken");
        for (const Json& one : taken.is_array() ? taken : Json::array())
            if (one.is_number_integer() && one.get<double>() >= 1 && one.get<double>() <= kMostPlaces)
                places.taken.push_back(one.get<int>());
            else
                report.broken(place + "/taken",
                              fmt::format("must be place numbers from 1 to {}", kMostPlaces));
        return places;
    }

    BalancePlane plane(const Json& value, const std::string& place) {
        JsonObject object(value, place, report);
        BalancePlane plane;
        plane.name = object.text("name");
        plane.radiusMm = object.number("radius_mm", 0, kMostMm).value_or(0);
        plane.fromCentreMm = object.number("from_centre_mm", 0, kMostMm);
        plane.places = places(object.raw("places"), place + "/places");
        const auto existing = object.list("existing");
        for (std::size_t i = 0; i < existing.size() && i < kMostReadings; ++i) {
            JsonObject one(*existing[i], fmt::format("{}/existing/{}", place, i), report);
            plane.existing.push_back({{one.number("mass_g", 0, kMostG, true).value_or(0),
                                       one.number("degrees", -kMostDegrees, kMostDegrees, true).value_or(0)},
                                      one.number("radius_mm", 0, kMostMm, true).value_or(0)});
        }
        return plane;
    }

    BalanceSensor sensor(const Json& value, const std::string& place) {
        JsonObject object(value, place, report);
        return {object.text("name"), object.text("channel"),
                object.number("degrees", -kMostDegrees, kMostDegrees).value_or(0)};
    }

    std::optional<SavedInfluence> saved(const Json& value, std::size_t planes) {
        if (value.is_null()) return std::nullopt;
        JsonObject object(value, "/saved", report);
        SavedInfluence saved{object.text("from"), object.text("date"), {planes, {}}, {}, {}, {}};
        const auto perGram = object.list("per_gram");
        for (std::size_t i = 0; i < perGram.size() && i < planes * planes; ++i) {
            JsonObject one(*perGram[i], fmt::format("/saved/per_gram/{}", i), report);
            saved.influence.perGram.push_back({one.number("re", -1e9, 1e9, true).value_or(0),
                                               one.number("im", -1e9, 1e9, true).value_or(0)});
        }
        if (perGram.size() != planes * planes)
            report.broken("/saved/per_gram", fmt::format("must be {} coefficients", planes * planes));
        saved.radiiMm = object.numbers("radii_mm", planes, 0, kMostMm);
        saved.rpm = object.number("rpm", 0, kMostRpm);
        saved.loadPct = object.number("load_pct", 0, 1000);
        return saved;
    }

    BalanceRotor rotor(const Json& value) {
        JsonObject object(value, "/rotor", report);
        BalanceRotor rotor;
        rotor.component = object.word("component", {"driver", "driven"}, true);
        rotor.massKg = object.number("mass_kg", 0, kMostG);
        rotor.rpm = object.number("rpm", 0, kMostRpm);
        rotor.grade = object.number("grade_mm_s", 0.1, 10000).value_or(rotor.grade);
        rotor.viewedFrom = object.text("viewed_from");
        rotor.clockwise = object.word("turns", {"clockwise", "anticlockwise"}) != "anticlockwise";
        return rotor;
    }
};

BalanceMethod methodOf(const std::string& word) {
    if (word == "two_planes") return BalanceMethod::TwoPlanes;
    return word == "four_runs" ? BalanceMethod::FourRuns : BalanceMethod::OnePlane;
}

BalanceJob readRoot(JsonObject& root, Reader& reader) {
    BalanceJob job;
    job.machine = root.text("machine");
    job.name = root.text("name");
    job.by = root.text("by");
    job.note = root.text("note");
    job.cautionsRead = root.boolean("cautions_read").value_or(false);
    job.method = methodOf(root.word("method", {"one_plane", "two_planes", "four_runs"}, true));
    if (root.word("places_counted", {"against_rotation", "with_rotation"}) == "with_rotation")
        job.convention.rotor = Counted::WithRotation;
    if (root.word("phase_is", {"lag", "lead"}) == "lead") job.convention.phase = PhaseIs::Lead;
    if (root.word("trial_masses", {"removed", "left_on"}) == "left_on") job.trialMasses = TrialMasses::LeftOn;
    if (root.has("unit")) job.unit = root.text("unit", true);
    job.rotor = reader.rotor(root.raw("rotor"));
    const auto planes = root.list("planes"), sensors = root.list("sensors"), trials = root.list("trials");
    for (std::size_t i = 0; i < planes.size() && i < 2; ++i)
        job.planes.push_back(reader.plane(*planes[i], fmt::format("/planes/{}", i)));
    for (std::size_t i = 0; i < sensors.size() && i < 2; ++i)
        job.sensors.push_back(reader.sensor(*sensors[i], fmt::format("/sensors/{}", i)));
    job.saved = reader.saved(root.raw("saved"), planesOf(job.method));
    job.initial = reader.run(root.raw("initial"), "/initial");
    for (std::size_t i = 0; i < trials.size() && i < 3; ++i)
        job.trials.push_back(reader.run(*trials[i], fmt::format("/trials/{}", i)));
    const Json& check = root.raw("check");
    if (!check.is_null()) job.check = reader.run(check, "/check");
    return job;
}

}  // namespace

std::string balanceJson(const BalanceJob& job) {
    Json planes = Json::array(), sensors = Json::array(), trials = Json::array();
    for (const BalancePlane& plane : job.planes)
        planes.push_back(json(plane));
    for (const BalanceSensor& sensor : job.sensors)
        sensors.push_back({{"name", sensor.name}, {"channel", sensor.channel}, {"degrees", sensor.degrees}});
    for (const BalanceRun& run : job.trials)
        trials.push_back(json(run));
    const bool with = job.convention.rotor == Counted::WithRotation;
    const Json root = {{"schema", kSchema},
                       {"machine", job.machine},
                       {"name", job.name},
                       {"by", job.by},
                       {"note", job.note},
                       {"cautions_read", job.cautionsRead},
                       {"method", toText(job.method)},
                       {"places_counted", with ? "with_rotation" : "against_rotation"},
                       {"phase_is", job.convention.phase == PhaseIs::Lead ? "lead" : "lag"},
                       {"trial_masses", job.trialMasses == TrialMasses::LeftOn ? "left_on" : "removed"},
                       {"unit", job.unit},
                       {"rotor", json(job.rotor)},
                       {"planes", planes},
                       {"sensors", sensors},
                       {"saved", job.saved ? json(*job.saved) : Json()},
                       {"initial", json(job.initial)},
                       {"trials", trials},
                       {"check", job.check ? json(*job.check) : Json()}};
    return root.dump(1, ' ', false, Json::error_handler_t::replace);
}

Result<BalanceJob> readBalance(const std::string& text, const std::string& file) {
    const auto document = parseJson(text, file);
    if (!document) return fail(document.error());
    JsonReport report{file, {}, {}};
    BalanceJob job;
    {
        JsonObject root(*document, "", report);
        const auto schema = root.integer("schema", 0, 1000, true);
        if (schema && *schema != kSchema)
            return fail(ErrorKind::Unsupported, file, "/schema", "is not 1, the schema this program reads");
        Reader reader{report};
        job = readRoot(root, reader);
    }
    if (report.error) return fail(*report.error);
    fitToMethod(job);
    return job;
}

}  // namespace fettle
