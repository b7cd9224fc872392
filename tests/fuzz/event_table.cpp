// A table of events into a fleet file that has two machines; made anew before it grows.
#include "core/fleet/event_table.h"

#include "tests/base/scratch_folder.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

constexpr int kRunsPerFile = 5000;

class EventSite {
  public:
    EventSite() {
        auto made = FleetFile::create(folder_ / "site.fettle", {"Site", "Europe/Berlin", 0.1});
        require(made.has_value(), "a fleet file can be made");
        fleet_ = std::move(*made);
        for (const char* tag : {"A", "KL-ID-01"})
            require(fleet_->machines()
                        .put(std::string(R"({ "tag": ")") + tag + R"(", "mains_hz": 50,
                            "driver": { "poles": 4 }, "points": [ { "id": "P", "at": "driver DE",
                            "channels": [ { "name": "x" } ] } ] })",
                             "m.json")
                        .has_value(),
                    "a machine can be registered");
    }
    FleetFile& fleet() { return *fleet_; }
    bool used() { return ++runs_ > kRunsPerFile; }

  private:
    ScratchFolder folder_;
    std::unique_ptr<FleetFile> fleet_;
    int runs_ = 0;
};

bool eventTable(const std::string& bytes) {
    static auto site = std::make_unique<EventSite>();
    if (site->used()) site = std::make_unique<EventSite>();
    const Instant now = parseUtc("2026-06-01T12:00:00Z").value();
    const auto once = takeEvents(site->fleet(), bytes, "events", "somebody", now);
    if (!once) return false;
    const auto twice = takeEvents(site->fleet(), bytes, "events", "somebody", now);
    require(twice && twice->taken == once->taken, "a table may come twice");
    for (const Error& error : once->refusals)
        require(!error.rule.empty() && error.sentence().find('\n') == std::string::npos,
                "a refusal is one line that names a rule");
    return true;
}

const Listed kEventTable("event_table", eventTable);

}  // namespace
}  // namespace fettle::fuzz
