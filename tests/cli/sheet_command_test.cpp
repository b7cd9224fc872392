// `fettle-cli sheet` and `export`: what leaves the fleet file.
#include <fmt/format.h>

#include "core/signal/reader.h"
#include "tests/cli/site_fixture.h"

namespace fettle::cli_test {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

class Out : public Site {
  protected:
    RecordingPtr readAt(const std::string& path) const {
        auto recording = readRecording(RealFileSystem(), path);
        EXPECT_TRUE(recording) << (recording ? "" : recording.error().sentence());
        return recording ? *recording : nullptr;
    }
    // A second fleet with T-1 and this recording in it, exported; the path of what came out.
    std::string throughAFleet(const std::string& recording) {
        const std::string fleet = at("second.fettle"), out = at("out");
        std::filesystem::remove(fleet);
        std::filesystem::remove_all(out);
        EXPECT_EQ(run({"new", fleet}).status, 0);
        made::write(at("T-1.json"), made::motorText());
        EXPECT_EQ(run({"register", fleet, at("T-1.json")}).status, 0);
        const Ran in = run({"import", fleet, recording});
        EXPECT_EQ(in.status, 0) << in.err;
        const Ran ran = run({"export", fleet, "recordings", "-o", out});
        EXPECT_EQ(ran.status, 0) << ran.err;
        EXPECT_EQ(ran.out, "1 recording written\n");
        for (const auto& entry : std::filesystem::directory_iterator(out + "/T-1"))
            if (entry.path().extension() != ".json") return entry.path().string();
        return "";
    }
    std::string send(const std::string& name, const std::string& bytes, const std::string& more = "") {
        made::write(at(name), bytes);
        made::write(
            withExtension(at(name), ".json"),
            R"({ "machine": "T-1", "point": "P", "time": "2026-05-04T06:20:00Z", "speed_rpm": 1484.5, "frame_temp_c": 61.5, "operating": { "load_pct": 80 },
                         "channels": [ { "name": "x", "unit": "g")" +
                more + R"( }, { "name": "z", "unit": "g")" + more + " } ] }");
        return at(name);
    }
    static std::vector<std::vector<double>> numbers(double step) {
        std::vector<std::vector<double>> samples;
        for (std::uint64_t c = 1; c <= 2; ++c) {
            samples.push_back(made::noise(4480, 0.1, c));
            for (double& x : samples.back())
                x = std::round(std::clamp(x, -0.99, 0.99) / step) * step;
        }
        return samples;
    }
};

TEST_F(Out, SheetTwinsStandOnStandardOutputOrInAFile) {
    const Json json = jsonOf("sheet", {"--machine", "A-RACE", "--today", "2026-05-10"});
    EXPECT_THAT(json["first_line"].get<std::string>(), StartsWith("Replace the motor DE bearing of A-RACE"));
    const Ran csv = on("sheet", {"--machine", "C-SHAKE", "--csv"});
    EXPECT_EQ(csv.status, 0);
    EXPECT_THAT(csv.out, HasSubstr("\"C-SHAKE\""));
    EXPECT_EQ(std::count(csv.out.begin(), csv.out.end(), '\n'), 2);
    EXPECT_EQ(
        on("sheet", {"--machine", "A-RACE", "--today", "2026-05-10", "--json", "-o", at("a.json")}).status,
        0);
    EXPECT_EQ(Json::parse(made::contentOf(at("a.json")), nullptr, false).dump(), json.dump());
}

TEST_F(Out, TheDayOfMakingIsTheClocksOrTheOneGiven) {
    const Json then = jsonOf("sheet", {"--machine", "A-RACE", "--today", "2026-05-10"});
    EXPECT_EQ(then["machine"]["made_on"], "2026-05-10");
    EXPECT_EQ(then["dates"][1]["overdue"], false);
    const Json late = jsonOf("sheet", {"--machine", "A-RACE", "--today", "2030-01-01"});
    EXPECT_EQ(late["dates"][1]["overdue"], true);
    EXPECT_EQ(late["dates"][1]["date"], then["dates"][1]["date"]);
    const Json now = jsonOf("sheet", {"--machine", "A-RACE"});
    EXPECT_NE(now["machine"]["made_on"], now["machine"]["as_of"]) << "the round is of May 2026";
    EXPECT_EQ(on("sheet", {"--machine", "A-RACE", "--json", "--today", "tomorrow"}).status, 2);
}

TEST_F(Out, SheetsForEveryMachineToActOnOrPlanFor) {
    const Ran ran = on("sheet", {"--all", "--json", "-o", at("sheets")});
    EXPECT_EQ(ran.status, 0) << ran.err;
    EXPECT_TRUE(std::filesystem::exists(at("sheets/A-RACE.json")));
    EXPECT_TRUE(std::filesystem::exists(at("sheets/C-SHAKE.json")));
    EXPECT_FALSE(std::filesystem::exists(at("sheets/B-SOUND.json")));
    EXPECT_EQ(std::count(ran.out.begin(), ran.out.end(), '\n'), 2);
}

TEST_F(Out, ASheetAsAPageNeedsTheDesktopProgram) {
    const std::string desktop = (std::filesystem::path(FETTLE_CLI).parent_path() / "fettle").string();
    const Ran ran = on("sheet", {"--machine", "A-RACE", "-o", at("a.pdf")});
    if (std::filesystem::exists(desktop)) {
        EXPECT_EQ(ran.status, 0) << ran.err;
        EXPECT_THAT(made::contentOf(at("a.pdf")), StartsWith("%PDF-"));
        EXPECT_EQ(on("sheet", {"--machine", "A-RACE", "-o", at("no/such/a.pdf")}).status, 3);
    } else {
        EXPECT_EQ(ran.status, 3);
        EXPECT_THAT(ran.err, HasSubstr("not built"));
        EXPECT_EQ(ran.out, "");
    }
}

TEST_F(Out, SheetRefusesWhatThereIsNot) {
    for (const char* tag : {"B-SOUND", "D-MUTE", "NO-SUCH"}) {
        const Ran ran = on("sheet", {"--machine", tag, "--json"});
        EXPECT_EQ(ran.status, 3) << tag;
        EXPECT_EQ(ran.out, "");
        EXPECT_THAT(ran.err, HasSubstr(tag));
    }
    EXPECT_EQ(on("sheet", {"--machine", "A-RACE", "--finding", "50", "--json"}).status, 3);
    for (const std::vector<std::string>& wrong : {std::vector<std::string>{},
                                                  {"--machine", "A-RACE"},
                                                  {"--all", "--json"},
                                                  {"--machine", "A-RACE", "--all", "-o", at("x")},
                                                  {"--machine", "A-RACE", "--json", "--csv"},
                                                  {"--machine", "A-RACE", "--finding", "0", "--json"}})
        EXPECT_EQ(on("sheet", wrong).status, 2) << wrong.size();
    EXPECT_EQ(on("sheet", {"--all", "--json", "-o", "/proc/nowhere"}).status, 3);
}

TEST_F(Out, EveryRecordingComesOutAsItWentIn) {
    const Ran ran = on("export", {"recordings", "-o", at("out")});
    EXPECT_EQ(ran.status, 0) << ran.err;
    EXPECT_EQ(ran.out, "9 recordings written\n");
    for (const char* tag : {"A-RACE", "B-SOUND", "C-SHAKE"})
        for (int day = 5; day <= 7; ++day) {
            const std::string d = std::to_string(day);
            const auto in = readAt(recordings() + "/" + tag + "_" + d + ".wav");
            const auto out = readAt(at("out/") + tag + "/2026050" + d + "T062000Z_P.wav");
            ASSERT_TRUE(in && out);
            ASSERT_EQ(out->channels.size(), in->channels.size());
            for (std::size_t c = 0; c < in->channels.size(); ++c) {
                EXPECT_EQ(out->channels[c].samples, in->channels[c].samples);
                EXPECT_EQ(out->channels[c].unit, in->channels[c].unit);
                EXPECT_EQ(out->channels[c].fullScale, in->channels[c].fullScale);
            }
            EXPECT_EQ(out->time, in->time);
            EXPECT_EQ(out->machine, in->machine);
        }
    EXPECT_EQ(on("import", {at("out"), "--recursive"}).status, 0) << "and goes in again";
}

TEST_F(Out, WholeNumbersComeOutAsTheSameWholeNumbers) {
    for (const auto& [format, bits] : {std::pair{SoundFormat::WavPcm16, 16},
                                       {SoundFormat::WavPcm24, 24},
                                       {SoundFormat::Flac16, 16},
                                       {SoundFormat::Flac24, 24}}) {
        const bool flac = format == SoundFormat::Flac16 || format == SoundFormat::Flac24;
        const auto bytes = writeSoundFile(numbers(std::ldexp(1, 1 - bits)), 6400, format);
        ASSERT_TRUE(bytes);
        const std::string in = send(flac ? "a.flac" : "a.wav", *bytes, R"(, "scale": 15.7)");
        const std::string out = throughAFleet(in);
        EXPECT_TRUE(out.ends_with(".wav")) << out;
        const auto before = readAt(in), after = readAt(out);
        ASSERT_TRUE(before && after);
        for (std::size_t c = 0; c < 2; ++c)
            EXPECT_EQ(after->channels[c].samples, before->channels[c].samples) << bits << " bits";
        EXPECT_EQ(after->speedRpm, before->speedRpm);
        EXPECT_EQ(after->loadPct, before->loadPct);
        EXPECT_EQ(after->frameTempC, before->frameTempC);
        EXPECT_TRUE(flac || made::contentOf(out) == *bytes) << "byte for byte, " << bits << " bits";
        EXPECT_EQ(made::contentOf(withExtension(out, ".json")), made::contentOf(withExtension(in, ".json")));
    }
}

TEST_F(Out, FloatsAndTextsLoseNothing) {
    auto bytes = writeSoundFile(numbers(1e-9), 6400, SoundFormat::WavFloat32);
    ASSERT_TRUE(bytes);
    std::string csv = "# sample_rate_hz: 6400.5\nx [g],z [g]\n";
    const auto samples = numbers(1e-12);
    for (std::size_t i = 0; i < samples[0].size(); ++i)
        csv += fmt::format("{},{}\n", samples[0][i], samples[1][i]);
    for (const std::string& in : {send("f.wav", *bytes, R"(, "scale": 0.3)"),
                                  send("c.csv", csv, R"(, "scale": 0.3)"), send("d.csv", csv)}) {
        const std::string out = throughAFleet(in);
        EXPECT_EQ(out.substr(out.size() - 4), in.substr(in.size() - 4));
        const auto before = readAt(in), after = readAt(out);
        ASSERT_TRUE(before && after);
        for (std::size_t c = 0; c < 2; ++c) {
            EXPECT_EQ(after->channels[c].samples, before->channels[c].samples) << in;
            EXPECT_EQ(after->channels[c].sampleRateHz, before->channels[c].sampleRateHz) << in;
        }
    }
}

TEST_F(Out, TrendsAreOneTableWithUnits) {
    EXPECT_EQ(on("export", {"trends", "-o", at("t.csv"), "--machine", "C-SHAKE"}).status, 0);
    const std::string csv = made::contentOf(at("t.csv"));
    const auto lines = split(csv, '\n');
    ASSERT_EQ(lines.size(), 1u + 3 * 2 + 1);  // header, three recordings of two channels, the last line's end
    EXPECT_THAT(std::string(lines[0]), HasSubstr("velocity_rms_mm_s"));
    for (std::size_t i = 0; i + 1 < lines.size(); ++i)
        EXPECT_EQ(split(lines[i], ',').size(), split(lines[0], ',').size()) << lines[i];
    EXPECT_EQ(
        on("export", {"trends", "-o", at("t.csv"), "--from", "2026-05-06", "--until", "2026-05-06"}).out,
        "6 rows written\n");
}

TEST_F(Out, ExportWrongUsageIsTwoAndWhatIsNotThereIsThree) {
    for (const std::vector<std::string>& wrong :
         {std::vector<std::string>{}, {"recordings"}, {"weather", "-o", at("x")}, {"trends", "-o"}})
        EXPECT_EQ(on("export", wrong).status, 2) << wrong.size();
    EXPECT_EQ(on("export", {"trends", "-o", at("x"), "--machine", "NO-SUCH"}).status, 3);
    EXPECT_EQ(on("export", {"trends", "-o", at("x"), "--from", "May"}).status, 3);
    EXPECT_EQ(on("export", {"trends", "-o", at("no/such/x.csv")}).status, 3);
    EXPECT_EQ(on("export", {"recordings", "-o", fleet_ + "/below a file"}).status, 3);
    EXPECT_EQ(run({"export", at("nosuch.fettle"), "trends", "-o", at("x")}).status, 3);
}

TEST_F(Out, NothingIsWrittenOverTheFleetFile) {
    namespace fs = std::filesystem;
    const std::string before = made::contentOf(fleet_);
    fs::create_symlink(fleet_, at("link"));
    fs::create_hard_link(fleet_, at("same"));
    fs::create_directory_symlink(folder_.path(), at("around"));
    for (const std::string& target : {fleet_, fleet_ + "-wal", fleet_ + "-shm", at("link"), at("same"),
                                      at("around/site.fettle"), at("around/site.fettle-wal")}) {
        for (const char* what : {"events", "register", "trends", "recordings"}) {
            const Ran ran = on("export", {what, "-o", target});
            EXPECT_EQ(ran.status, 2) << what << " " << target;
            EXPECT_THAT(ran.err, HasSubstr("is the fleet file or a part of it"));
        }
        for (const std::vector<std::string>& form :
             {std::vector<std::string>{"--json"}, {"--csv"}, std::vector<std::string>{}}) {
            std::vector<std::string> words{"--machine", "A-RACE", "-o", target};
            words.insert(words.end(), form.begin(), form.end());
            EXPECT_EQ(on("sheet", words).status, 2) << target;
        }
    }
    EXPECT_EQ(made::contentOf(fleet_), before);
    EXPECT_EQ(on("check", {"--deep"}).out, "clean\n");
}

// Tags are any text; files are not.
TEST_F(Out, ATagIsNeverAPath) {
    for (const std::string tag : {"../../escape", "a/b", ".hidden", "-o", "=1+2"}) {
        std::string text = description("X");
        text.replace(text.find("\"X\""), 3, "\"" + tag + "\"");
        made::write(at("tag.json"), text);
        ASSERT_EQ(on("register", {at("tag.json")}).status, 0) << tag;
        const auto wav = intake_test::noiseWav(3);
        intake_test::Said said;
        said.machine = tag;
        said.time = "2026-05-08T06:20:00Z";
        ASSERT_EQ(on("import", {intake_test::send(at("odd"), "odd", wav, said)}).status, 0) << tag;
        const Ran ran = on("export", {"recordings", "-o", at("odd out"), "--machine=" + tag});
        EXPECT_EQ(ran.status, 0) << tag << ran.err;
    }
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder_.path()))
        EXPECT_EQ(entry.path().string().find("escape_"), std::string::npos);
    EXPECT_FALSE(std::filesystem::exists(folder_.path() + "/../../escape"));
    EXPECT_EQ(std::distance(std::filesystem::directory_iterator(at("odd out")), {}), 5);
}

}  // namespace
}  // namespace fettle::cli_test
