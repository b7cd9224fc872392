#include "tests/fuzz/seeds.h"

#include <gtest/gtest.h>

#include <cstring>
#include <filesystem>

#include "core/exchange/examination_json.h"
#include "core/exchange/recording_export.h"
#include "core/exchange/round_json.h"
#include "core/fleet/alert_ways.h"
#include "core/fleet/ask_spec.h"
#include "core/fleet/register_csv.h"
#include "core/store/packing.h"
#include "core/store/spectrum_codec.h"
#include "core/store/text_list.h"
#include "core/store/waveform_codec.h"
#include "core/workshop/balance_job.h"
#include "core/workshop/trial_expect.h"
#include "core/workshop/trial_json.h"
#include "tests/intake/intake_fixture.h"
#include "tests/round/made_weeks.h"
#include "tests/signal/sound_bytes.h"
#include "tests/signal/uff_bytes.h"
#include "tests/signal/variable_bytes.h"

namespace fettle::fuzz {

namespace {

using Texts = std::vector<std::string>;

const std::string kParting = "\n----\n";
const std::string kSampleFleet = std::string(FETTLE_SOURCE_DIR) + "/sample_fleet/";

Json fileOf(const std::string& name) {
    const auto text = RealFileSystem().read(kSampleFleet + name);
    return text ? parseJson(*text, name).value_or(Json()) : Json();
}

std::vector<Json> sampleFiles() {
    std::vector<Json> files;
    for (const auto& name : RealFileSystem().list(kSampleFleet).value_or(Texts{}))
        if (name.ends_with(".json") && name != "scenario.json") files.push_back(fileOf(name));
    return files;
}

std::vector<Json> descriptions() {
    std::vector<Json> machines;
    for (const Json& file : sampleFiles())
        machines.push_back(file["machine"]);
    return machines;
}

Texts textsOf(const std::vector<Json>& documents) {
    Texts texts;
    for (const Json& json : documents)
        texts.push_back(json.dump());
    return texts;
}

Texts csvRecordings() {
    return {
        "# sample_rate_hz: 12800\n# machine: KL-ID-01\n# point: M-DE\n# time: 2026-05-04T06:20:00Z\n"
        "# speed_rpm: 1483.2\n# samples: 2\nx [g],flux [1]\n0.5,1e-3\n-0.25,2\n",
        "t [s];x [g]\n0,0000;1,5\n0,0001;-0,25\n0,0002;0,5\n",
        "\xef\xbb\xbf# sample_rate_hz: 6400\r\n\"x [mm/s]\"\t\"y \"\"2\"\" [mm/s]\"\r\n1\t2\r\n3\t4\r\n",
        "time [ms],x\n0,1\n1,2\n2,3\n"};
}

Texts soundFiles() {
    const std::vector<std::vector<double>> samples = {{0.5, -0.25, 0, 1}, {0, 0.125, -1, 0.75}};
    Texts files;
    for (const SoundFormat format : {SoundFormat::WavPcm16, SoundFormat::WavPcm24, SoundFormat::WavFloat32,
                                     SoundFormat::Flac16, SoundFormat::Flac24})
        files.push_back(writeSoundFile(samples, 12800, format).value_or(""));
    for (const int bits : {8, 24, 32})
        files.push_back(bytes::wav({1, 1, 6400, bits, bits == 24}, std::string(std::size_t(bits), '\x11')));
    files.push_back(bytes::wav({3, 1, 6400, 64, true}, std::string(32, '\0')));
    files.push_back(bytes::flac({std::vector<int>(32, 1000)}, 16, 25600));
    return files;
}

Texts universalFiles() {
    const std::vector<double> samples = {0.5, -0.25, 0, 1, 0.125, 2, -3, 0.75};
    bytes::Uff axial;
    axial.direction = 3;
    axial.unit = "g";
    return {bytes::uff({}, samples), bytes::uff({}, samples) + bytes::uff(axial, samples),
            bytes::uff58b({}, samples), bytes::uff58b(axial, samples, true)};
}

Texts sidecars() {
    return {
        R"({ "machine": "KL-ID-01", "point": "M-DE", "time": "2026-05-04T06:20:00Z", "time_source": "node",
  "received": "2026-05-04T06:20:09Z", "capture": "0417-99812", "simultaneous": true, "speed_rpm": 1483.2,
  "output_hz": null, "frame_temp_c": 61.5, "ambient_temp_c": 24.0, "operating": { "load_pct": 80 },
  "channels": [ { "name": "x", "unit": "g", "scale": 2.0 },
                { "name": "flux", "unit": "1", "scale": 1.0, "point": "M-DE" } ] })",
        R"({"machine":"A"})", intake_test::sidecarOf({}).dump()};
}

Texts recordings() {
    Texts all;
    const std::string sidecar = sidecars()[0];
    for (const std::string& file : soundFiles())
        all.push_back(R"({"machine":"A","point":"P","time":"2026-05-04T06:20:00Z"})" + kParting + file);
    all.push_back(sidecar + kParting + soundFiles()[0]);
    for (const std::string& file : csvRecordings())
        all.push_back("{}" + kParting + file);
    return all;
}

Texts readingRules() {
    const std::string keys = R"({ "machine": "KL-ID-01", "point": "M-DE", "channels": [ { "unit": "g" } ] })";
    return {"**/*.csv" + kParting + keys,
            "/in/*/{machine}_{time_utc}.csv" + kParting + R"({ "point": "M-DE", "speed_rpm": 1480 })",
            "/in/**" + kParting + R"({ "channels": [ { "name": "x", "unit": "mm/s", "scale": 2 } ] })"};
}

Texts examinations() {
    const auto motor = made::machineOf(made::motorText());
    auto setup = made::with(made::setupOf(motor, 3, 1), "bearing_outer_race", "driver DE", 0.8);
    const auto examined = examine(motor, {made::made(setup).recording});
    Texts texts{examinationAsText(made::examination({made::weighed("unbalance", "driver", 23)}))};
    if (examined) texts.push_back(examinationAsText(*examined));
    return texts;
}

RoundList roundOfAllKinds() {
    auto grows =
        made::inZone(made::with(made::plain("G"), {made::cause("unbalance", "C", 3.8, 0.9)}), "C", 4, 4.5);
    auto staged = made::with(made::plain("F"), {made::staged("bearing_outer_race", "driver DE", 34, "late")});
    staged.byHand = true;
    staged.byHandWhy = "operator heard it";
    return made::round({grows, staged, made::plain("L")});
}

Texts rounds() {
    const RoundList list = roundOfAllKinds();
    Texts texts{toJson(list).dump()};
    for (const RoundMachine& machine : list.machines)
        texts.push_back(roundMachineAsText(machine));
    return texts;
}

const std::vector<std::pair<std::vector<double>, int>>& waveforms() {
    static const std::vector<std::pair<std::vector<double>, int>> all = {{{0.5, -0.25, 0, 0.75}, 16},
                                                                         {{1.25, -3.5, 0.001}, 0},
                                                                         {{1.0 / 3, 2.0 / 7}, 0},
                                                                         {{double(1.1f), 2}, 0},
                                                                         {{}, 0}};
    return all;
}

Texts packedWaveforms() {
    Texts packed;
    for (const auto& [samples, bits] : waveforms())
        packed.push_back(packWaveform(samples, bits, 1));
    return packed;
}

Texts bareWaveforms() {
    Texts bare;
    for (const auto& [samples, bits] : waveforms()) {
        const double scale = 1;
        std::string text(9 + samples.size() * sizeof(double), char(bits));
        std::memcpy(text.data() + 1, &scale, sizeof scale);
        if (!samples.empty()) std::memcpy(text.data() + 9, samples.data(), samples.size() * sizeof(double));
        bare.push_back(text);
    }
    return bare;
}

Texts smallDocuments() {
    AskSpec spec;
    spec.seconds = 32;
    spec.topHz = 1000;
    spec.tachometer = true;
    spec.note = "heard a knock";
    return {toText(spec), toJsonText({"x", "flux \"2\""}), "2026-05-04T06:20:00Z",
            "2026-05-04T06:20:00.250Z"};
}

BalanceRun readingOf(std::size_t sensors, std::optional<Polar> trial) {
    BalanceRun run;
    run.trial = trial;
    for (std::size_t i = 0; i < sensors; ++i)
        run.sensors.push_back({{6 + double(i), 110}, {6.1 + double(i), 112}});
    return run;
}

Texts balances() {
    Texts texts;
    for (const BalanceMethod method :
         {BalanceMethod::OnePlane, BalanceMethod::TwoPlanes, BalanceMethod::FourRuns}) {
        BalanceJob job = proposedJob(made::machineOf(made::motorText()), "driver");
        job.method = method;
        job.rotor.massKg = 60;
        fitToMethod(job);
        for (BalancePlane& plane : job.planes)
            plane.radiusMm = 150;
        job.initial = readingOf(job.sensors.size(), {});
        for (std::size_t i = 0; i < job.trials.size(); ++i)
            job.trials[i] = readingOf(job.sensors.size(), Polar{4 + double(i), 65 + 120 * double(i)});
        texts.push_back(balanceJson(job));
    }
    return texts;
}

Texts trials() {
    Trial trial;
    trial.name = "outer race, seeded";
    trial.machine = "T-1";
    trial.change.kind = TrialKind::Bearing;
    trial.change.follows = TrialFollows::Weight;
    trial.change.at = "driver DE";
    trial.change.fault = "bearing_outer_race";
    trial.expectation = expectedOf(trial.change, made::machineOf(made::motorText()), {});
    trial.promise = promisedOf(trial.change, trial.expectation, {});
    Texts texts{trialAsText(trial)};
    trial.startedAt = trial.changeFrom = trial.changeUntil = intake_test::kNow;
    trial.precautions = trialCautions(trial.change.kind);
    TrialResult result;
    result.recordings = {{17, intake_test::kNow, true, 23.5, 1.2, 1483, ""}};
    result.checks = {{"weight", "20", "23.5", TrialMark::Passed}};
    result.outcome = "passed";
    trial.result = result;
    texts.push_back(trialAsText(trial));
    return texts;
}

Texts scenarios() {
    Json scenario = fileOf("scenario.json");
    scenario["machines"] = Json::array({"M"});
    Texts texts;
    for (Json file : sampleFiles()) {
        file["machine"]["tag"] = "M";
        for (Json& trouble : scenario["intake"]) {
            trouble["machine"] = "M";
            trouble["point"] = file["machine"]["points"][0]["id"];
        }
        texts.push_back(scenario.dump() + kParting + file.dump());
    }
    return texts;
}

Texts eventTables() {
    return {
        "machine,time,kind,at,text,by\nA,2026-05-04,greasing,driver DE,\"12 g; it hissed\",J. Doe\n"
        "KL-ID-01,2026-05-04T06:20:00Z,repair,,fan cleaned,\n",
        "time;kind;machine\n2026-05-04;cleaning;A\n",
        R"([{"machine": "A", "time": "2026-05-04", "kind": "part", "at": "driver", "text": "=1+1"}])"};
}

Texts levelTables() {
    return {
        "time,machine,point,quantity,unit,value,direction\n"
        "2026-05-04T06:20:00Z,KL-ID-01,M-DE,velocity_rms,mm/s,2.8,x\n"
        "2026-05-04T06:40:00Z,KL-ID-01,M-DE,temperature,F,140,\n",
        "time;machine;point;channel;channel_quantity;channel_unit;running;velocity_rms_mm_s;temperature_c\n"
        "2026-05-04T06:20:00Z;A;P;x;acceleration;g;yes;2,8;61,5\n2026-05-04T06:40:00Z;A;P;x;;;;;60\n"};
}

Texts alertWays() {
    AlertWays ways;
    MailWay mail;
    mail.server.host = "mail.hollin.example";
    mail.password.file = "/etc/fettle/mail";
    mail.from = "fettle@hollin.example";
    mail.to = {"planner@hollin.example", "shift@hollin.example"};
    ways.mail = mail;
    Texts texts{toText(ways)};
    ways.mail->password = {"", "", {"/usr/bin/secret", "show", "mail \"1\""}};
    ways.command = CommandWay{{"/usr/local/bin/tell", "{machine}"}};
    ways.quietFrom = ways.quietTo;
    texts.push_back(toText(ways));
    return texts;
}

Texts spectrumLines() {
    return {std::string("\x00\x10\x80\xff", 4) + kParting + std::string("\x20\x20", 2),
            quantised(std::vector<float>{0, 1e-6f, 0.5f, 3300, 1e9f})};
}

Texts variableFiles() {
    std::vector<double> swing;
    for (int i = 0; i < 48; ++i)
        swing.push_back(i % 5 - 2);
    return {bytes::mat({{"x", swing}, {"fs", {12800}}}), bytes::mat({{"x", swing}, {"fs", {12800}}}, true),
            bytes::mat73({{"x", swing}, {"fs", {12800}}}),
            bytes::hdf5({{{"x", swing, {{"unit", "g"}}, {{"sample_rate_hz", 12800}}}},
                         {{"machine", "KL-ID-01"}, {"time", "2026-05-04T06:20:00Z"}}})};
}

Texts variableLists() {
    return {
        R"({"first_fastest":true,"variables":[{"name":"x","shape":[48,1],"real":true},)"
        R"({"name":"t","shape":[48],"real":true}],"values":{"machine":"A"},"notes":["a cell array"]})",
        R"({"variables":[{"name":"run/x","shape":[3,4800],"real":true,"attributes":{"unit":"g","fs":12800}},)"
        R"({"name":"run/y","shape":[4800],"real":true}],"values":{}})" +
            kParting + "run/x,*/y"};
}

std::map<std::string, Texts> makeSeeds() {
    return {{"csv_recording", csvRecordings()},
            {"sound_file", soundFiles()},
            {"recording", recordings()},
            {"universal_file", universalFiles()},
            {"sidecar", sidecars()},
            {"machine_description", textsOf(descriptions())},
            {"reading_rule", readingRules()},
            {"register_csv", {machinesAsCsv(descriptions()), "tag;driver/power_kw;mains_hz\nA;7,5;50\n"}},
            {"examination", examinations()},
            {"round", rounds()},
            {"waveform_unpack", packedWaveforms()},
            {"waveform_pack", bareWaveforms()},
            {"packed_text", {pack("fettle"), pack(std::string(3000, 'a')), pack("")}},
            {"small_documents", smallDocuments()},
            {"balance", balances()},
            {"trial", trials()},
            {"scenario", scenarios()},
            {"event_table", eventTables()},
            {"level_table", levelTables()},
            {"alert_ways", alertWays()},
            {"spectrum_lines", spectrumLines()},
            {"variable_file", variableFiles()},
            {"variable_list", variableLists()}};
}

}  // namespace

const std::map<std::string, std::vector<std::string>>& madeSeeds() {
    static const std::map<std::string, Texts> seeds = makeSeeds();
    return seeds;
}

}  // namespace fettle::fuzz
