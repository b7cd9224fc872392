#include <gtest/gtest.h>

#include "core/base/file_system_fake.h"
#include "core/simulate/scenario.h"

namespace fettle::sim {
namespace {

const std::string kHead = R"({ "site": "T", "start": "2026-01-05", "weeks": 2, "machines": ["A"],
    "node_kinds": [ { "name": "n", "rate_hz": 3200, "bits": 16, "range_g": 8, "noise_g_per_rt_hz": 1e-4 } ] })";

std::string machineText(const std::string& nodes, const std::string& stories) {
    return R"({ "about": "x", "machine": { "tag": "A", "mains_hz": 50, "driver": { "poles": 4 }, "points": [
        { "id": "P", "at": "driver DE", "channels": [ { "name": "x", "quantity": "acceleration" } ] } ] }, "nodes": [)" +
           nodes + R"(], "stories": [)" + stories + "] }";
}
const std::string kNode = R"({ "point": "P", "kind": "n", "id": "1", "captures": [ { "seconds": 2 } ] })";

std::string refusal(const std::string& head, const std::string& machine) {
    MemoryFileSystem files;
    EXPECT_TRUE(files.writeSafely("s/scenario.json", head));
    EXPECT_TRUE(files.writeSafely("s/A.json", machine));
    const auto scenario = loadScenario(files, "s");
    return scenario ? "" : scenario.error().sentence();
}

TEST(ScenarioRefused, SoundOneIsTaken) {
    EXPECT_EQ(refusal(kHead, machineText(kNode, "")), "");
    EXPECT_EQ(refusal(kHead, machineText(kNode, R"({ "kind": "unbalance", "at": "driver", "story": "s",
        "severity": [ { "on": "2026-01-05", "value": 0.5 } ] })")),
              "");
}

TEST(ScenarioRefused, NamesFileAndPlace) {
    EXPECT_NE(
        refusal(
            kHead,
            machineText(R"({ "point": "Q", "kind": "n", "id": "1", "captures": [ { "seconds": 2 } ] })", ""))
            .find("s/A.json: /nodes/0/point"),
        std::string::npos);
    EXPECT_NE(
        refusal(
            kHead,
            machineText(R"({ "point": "P", "kind": "m", "id": "1", "captures": [ { "seconds": 2 } ] })", ""))
            .find("/nodes/0/kind"),
        std::string::npos);
    EXPECT_NE(refusal(kHead, machineText(kNode, R"({ "kind": "gremlins", "story": "s",
        "severity": [ { "on": "2026-01-05", "value": 1 } ] })"))
                  .find("/stories/0/kind"),
              std::string::npos);
    EXPECT_NE(refusal(kHead, machineText(kNode, R"({ "kind": "unbalance", "at": "propeller", "story": "s",
        "severity": [ { "on": "2026-01-05", "value": 1 } ] })"))
                  .find("/stories/0/at"),
              std::string::npos);
    EXPECT_NE(refusal(kHead, machineText(kNode, R"({ "kind": "unbalance", "at": "driver", "story": "s",
        "severity": [ { "on": "2026-02-05", "value": 1 }, { "on": "2026-01-05", "value": 0 } ] })"))
                  .find("dates must rise"),
              std::string::npos);
    EXPECT_NE(
        refusal(kHead, machineText(
                           kNode, R"({ "kind": "unbalance", "at": "driver", "story": "s", "severity": [] })"))
            .find("/stories/0/severity"),
        std::string::npos);
}

TEST(ScenarioRefused, HeadingAndMissingFiles) {
    EXPECT_NE(refusal("{", machineText(kNode, "")).find("s/scenario.json"), std::string::npos);
    EXPECT_NE(refusal(R"({ "site": "T", "start": "5 January", "weeks": 2 })", "{}").find("/start"),
              std::string::npos);
    EXPECT_NE(refusal(R"({ "site": "T", "start": "2026-01-05", "weeks": 2, "machines": ["B"] })", "{}")
                  .find("s/B.json"),
              std::string::npos);
    EXPECT_NE(refusal(kHead, R"({ "machine": { "tag": "A" } })").find("/mains_hz"), std::string::npos);
}

TEST(ScenarioRefused, CapturesEventsAndSpoiledRecordings) {
    const auto withCapture = [](const std::string& more) {
        return machineText(
            R"({ "point": "P", "kind": "n", "id": "1", "captures": [ { "seconds": 2, )" + more + "} ] }", "");
    };
    EXPECT_EQ(refusal(kHead, withCapture(R"("on": ["monday", "sunday"], "bits": 24)")), "");
    EXPECT_NE(refusal(kHead, withCapture(R"("on": ["moonday"])")).find("/captures/0/on"), std::string::npos);
    EXPECT_NE(refusal(kHead, withCapture(R"("bits": 20)")).find("/captures/0/bits"), std::string::npos);
    const auto withEvent = [](const std::string& event) {
        const std::string text = machineText(kNode, "");
        return text.substr(0, text.size() - 1) + R"(, "events": [)" + event + "] }";
    };
    EXPECT_EQ(
        refusal(kHead, withEvent(R"({ "time": "2026-01-06T08:00:00Z", "kind": "greasing", "text": "t" })")),
        "");
    EXPECT_NE(refusal(kHead, withEvent(R"({ "time": "6 January", "kind": "greasing", "text": "t" })"))
                  .find("/events/0/time"),
              std::string::npos);
    EXPECT_NE(refusal(kHead, withEvent(R"({ "time": "2026-01-06T08:00:00Z", "kind": "tea", "text": "t" })"))
                  .find("/events/0/kind"),
              std::string::npos);
    const std::string spoiled = R"(, "intake": [ { "kind": "cut_off", "machine": "A", "point": "Q",
        "from": "2026-01-06", "to": "2026-01-06", "should": "refuse", "text": "t" } ] })";
    EXPECT_NE(refusal(kHead.substr(0, kHead.size() - 1) + spoiled, machineText(kNode, "")).find("/intake/0"),
              std::string::npos);
}

}  // namespace
}  // namespace fettle::sim
