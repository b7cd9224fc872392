// Texts of strangers go through the command program: into a fleet file by register, import, event and
// decide, out by every text answer and every export. Source of the sets: RFC 4180 (cells), ECMA-48 (control
// functions of terminals), what spreadsheets take for a formula: common practice, no source.
#include <gmock/gmock.h>

#include <filesystem>
#include <set>

#include "core/base/file_name.h"
#include "core/base/text.h"
#include "core/signal/csv_text.h"
#include "tests/base/hostile_texts.h"
#include "tests/cli/run_program.h"
#include "tests/intake/intake_fixture.h"

namespace fettle::cli_test {
namespace {

namespace fs = std::filesystem;
using made::Ran;
using made::run;

const std::string kHostileDay = "2026-05-05T06:20:00Z";

// A tag is a name on one line, of up to 100 bytes; where the text is none the machine has a plain one.
std::string tagFor(const std::string& text, std::size_t number) {
    const bool name = text == oneLine(text) && text == trimmed(text) && !text.empty() && text.size() <= 100;
    return name ? text : "plain " + std::to_string(number);
}

Json machineFor(const std::string& text, std::size_t number) {
    const std::string tag = tagFor(text, number);
    return {{"tag", tag},
            {"asset", text},
            {"service", text},
            {"site", text},
            {"area", text},
            {"mains_hz", 50},
            {"driver", {{"poles", 4}, {"rated_rpm", 1484}, {"bearings", {{"DE", {{"designation", text}}}}}}},
            {"points", {{{"id", tag}, {"at", "driver DE"}, {"channels", {{{"name", tag}, {"unit", "g"}}}}}}}};
}

// Made once; nothing is written to the template.
class Hostile : public testing::Test {
  protected:
    static void SetUpTestSuite() {
        if (site_) return;
        site_ = std::make_unique<ScratchFolder>();
        EXPECT_EQ(run({"new", fleet(), "--site", "Test <b>works</b>"}).status, 0);
        fs::create_directory(*site_ / "in");
        std::vector<std::string> registers{"register", fleet()};
        Json events = Json::array();
        const auto texts = hostileTexts();
        for (std::size_t i = 0; i < texts.size(); ++i) {
            registers.push_back(*site_ / ("m" + std::to_string(i) + ".json"));
            made::write(registers.back(), machineFor(texts[i], i).dump());
            send(texts[i], i);
            events.push_back({{"machine", tagFor(texts[i], i)},
                              {"time", kHostileDay},
                              {"kind", "repair"},
                              {"at", "driver"},
                              {"text", texts[i] + "."},
                              {"by", texts[i] + "."}});
        }
        made::write(*site_ / "events.json", events.dump());
        EXPECT_EQ(run(registers).status, 0);
        expectTold(run({"import", fleet(), *site_ / "in"}));
        EXPECT_EQ(run({"event", fleet(), "--file", *site_ / "events.json"}).status, 0);
        EXPECT_EQ(run({"round", fleet(), "--until", "2026-05-10", "--open"}).status, 0);
    }

    // A recording whose file is called so, as far as a disk takes it, and whose sidecar says so.
    static void send(const std::string& text, std::size_t number) {
        std::string name = text.substr(0, 60) + std::to_string(number);
        std::replace(name.begin(), name.end(), '/', '_');
        std::replace(name.begin(), name.end(), '\0', '_');
        const std::string tag = tagFor(text, number), stem = *site_ / "in/" + name;
        const Json sidecar = {{"machine", tag},
                              {"point", tag},
                              {"time", kHostileDay},
                              {"time_source", text},
                              {"capture", text},
                              {"speed_rpm", 1480},
                              {"channels", {{{"name", tag}, {"unit", "g"}}}}};
        made::write(stem + ".json", sidecar.dump());
        made::write(stem + ".wav", intake_test::noiseWav(number, 1, 0.1, 6400, 1));
    }

    // Lines of text: no control function of a terminal, all UTF-8.
    static void expectTold(const Ran& ran) {
        EXPECT_LE(ran.status, 1) << ran.err;
        for (const std::string& all : {ran.out, ran.err})
            for (const auto line : split(all, '\n'))
                EXPECT_EQ(oneLine(line, std::string::npos), line);
    }

    static std::string fleet() { return *site_ / "site.fettle"; }
    static inline std::unique_ptr<ScratchFolder> site_;
    ScratchFolder folder_;
};

TEST_F(Hostile, NoAnswerGivesATerminalOrders) {
    for (const std::vector<std::string>& command : std::vector<std::vector<std::string>>{
             {"round", fleet()},
             {"round", fleet(), "--json"},
             {"nodes", fleet()},
             {"jobs", fleet()},
             {"asks", fleet()},
             {"feedback", fleet(), "--summary"},
             {"check", fleet()},
             {"event", fleet(), "--list", "--machine", "@SUM(1)"},
             {"event", fleet(), "--list", "--machine", "plain 11", "--json"},
             {"export", fleet(), "events", "-o", folder_ / "e.json"},
             {"examine", "\x1b[31mno such.wav", "--machine", "\x1b[31mnone.json"},
             {"import", fleet(), "\x1b]0;no such folder\x07"},
             {"event", fleet(), "--list", "--\x1b[31mred"},
             {"\x1b[31mred"}}) {
        const Ran ran = run(command);
        SCOPED_TRACE(oneLine(joined(command, " ")));
        for (const std::string& all : {ran.out, ran.err})
            for (const auto line : split(all, '\n'))
                EXPECT_EQ(oneLine(line, std::string::npos), line);
    }
}

TEST_F(Hostile, EveryTextComesOutAsItCame) {
    ASSERT_EQ(run({"export", fleet(), "all", "-o", folder_ / "out"}).status, 0);
    const Json events = Json::parse(made::contentOf(folder_ / "out/events.json"));
    std::multiset<std::string> told, came;
    for (const Json& event : events)
        told.insert(event["text"].get<std::string>());
    for (const std::string& text : hostileTexts())
        came.insert(text + ".");
    EXPECT_EQ(told, came);
    const std::string registered = made::contentOf(folder_ / "out/register.json");
    for (const std::string& text : hostileTexts())
        EXPECT_THAT(registered, testing::HasSubstr(Json(text).dump())) << text.substr(0, 60);
    EXPECT_EQ(run({"check", fleet(), "--deep"}).out, "clean\n");
}

// Nothing beside or above the folder, no link, as many recordings as there are machines.
TEST_F(Hostile, ExportsStayInTheirFolder) {
    ASSERT_EQ(run({"export", fleet(), "all", "-o", folder_ / "out"}).status, 0);
    std::size_t waves = 0;
    for (const auto& entry : fs::recursive_directory_iterator(folder_.path())) {
        const std::string path = entry.path().string();
        EXPECT_FALSE(entry.is_symlink());
        if (entry.is_regular_file()) {
            EXPECT_EQ(path.find(folder_ / "out/"), 0u) << path;
        }
        waves += entry.path().extension() == ".wav";
    }
    EXPECT_EQ(waves, hostileTexts().size());
}

TEST_F(Hostile, NoCellStartsAFormula) {
    for (const char* what : {"machines", "events", "decisions", "jobs", "feedback", "refusals", "trends"}) {
        const std::string file = folder_ / (std::string(what) + ".csv");
        ASSERT_EQ(run({"export", fleet(), what, "-o", file}).status, 0) << what;
        const std::string text = made::contentOf(file);
        CsvLines lines(text);
        CsvFields fields;
        for (; !lines.atEnd(); lines.next()) {
            ASSERT_TRUE(fields.split(lines.line(), ',', 1000)) << lines.line();
            for (std::size_t i = 0; i < fields.count(); ++i) {
                const std::string_view cell = fields[i];
                if (cell.empty() || parseNumber(cell)) continue;
                EXPECT_EQ(std::string_view("=+-@\t\r").find(cell[0]), std::string_view::npos) << cell;
                EXPECT_FALSE(cell.starts_with("\uFF1D")) << cell;
            }
        }
    }
}

}  // namespace
}  // namespace fettle::cli_test
