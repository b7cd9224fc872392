#include "core/fleet/planner_return.h"

#include <fmt/format.h>

#include "core/base/text.h"
#include "core/diagnosis/wording.h"
#include "core/fleet/reports.h"
#include "core/fleet/who.h"
#include "core/store/day.h"

namespace fettle {

namespace {

std::string outcomeWords(const std::string& outcome) {
    if (outcome == "not_found") return "nothing found";
    if (outcome == "another_fault") return "another fault";
    if (outcome == "not_opened") return "not opened";
    return outcome;
}

Status checkHalf(const PlannerReturn& half) {
    const auto broken = [](const char* place, std::string rule) {
        return fail(ErrorKind::Invalid, "", place, std::move(rule));
    };
    if (half.outcome == "another_fault" && trimmed(half.text).empty())
        return broken("in words", "say which other fault was found");
    if (half.hours && !(*half.hours >= 0 && *half.hours <= 10000))
        return broken("people x hours", "must be between 0 and 10,000");
    return {};
}

Event eventOf(const PlannerReturn& half, Instant time, const std::string& code) {
    Event event;
    event.machine = half.machine;
    event.time = time;
    event.kind = "inspection";
    event.at = half.finding.at;
    const std::string whose = half.job ? fmt::format("job {}, ", half.job) : "";
    event.text = whose + faultName(half.finding.fault) + ": " + outcomeWords(half.outcome);
    for (const std::string& more : {code, returnWords(half)})
        if (!more.empty()) event.text += "; " + more;
    event.by = half.by;
    return event;
}

}  // namespace

std::string returnWords(const PlannerReturn& half) {
    std::vector<std::string> parts;
    if (!trimmed(half.text).empty()) parts.emplace_back(trimmed(half.text));
    if (half.hours) parts.push_back(fmt::format("{:g} people x hours", *half.hours));
    if (half.partKept)
        parts.push_back(!*half.partKept        ? "old part not kept"
                        : half.partTag.empty() ? "old part kept"
                                               : "old part kept, tag " + half.partTag);
    if (!half.alignmentBefore.empty()) parts.push_back("alignment before: " + half.alignmentBefore);
    if (!half.alignmentAfter.empty()) parts.push_back("alignment after: " + half.alignmentAfter);
    return joined(parts, "; ");
}

const ReturnCodes& returnCodes() {
    static const ReturnCodes codes{
        {"VIB vibration", "NOI noise", "OHE overheating", "STD structural", "BRD breakdown", "SER minor",
         "OTH other"},
        {"wear", "fatigue", "looseness", "misalignment", "breakage", "corrosion", "dirt or build-up",
         "lubrication", "electrical", "other"},
        {"fatigue", "wear", "corrosion", "electrical erosion", "plastic deformation", "cracking"}};
    return codes;
}

bool isBearingFault(const std::string& fault) {
    return fault.starts_with("bearing_");
}

Result<std::int64_t> keepEventWithPhotos(FleetFile& fleet, const Event& event,
                                         const std::vector<NewPhoto>& photos, Instant now) {
    for (const NewPhoto& photo : photos)
        if (auto good = photoMedia(photo.name, photo.bytes); !good) return fail(good.error());
    Result<std::int64_t> id = 0;
    const auto done = fleet.together([&]() -> Status {
        id = keepEvent(fleet, event, now);
        if (!id) return fail(id.error());
        for (const NewPhoto& photo : photos)
            if (auto kept = fleet.photos().add(*id, photo.name, photo.bytes); !kept)
                return fail(kept.error());
        return {};
    });
    if (!done) return fail(done.error());
    return id;
}

Result<KeptReturn> keepReturn(FleetFile& fleet, const PlannerReturn& half,
                              const std::vector<NewPhoto>& photos) {
    if (auto good = checkHalf(half); !good) return fail(good.error());
    for (const NewPhoto& photo : photos)
        if (auto good = photoMedia(photo.name, photo.bytes); !good) return fail(good.error());
    const auto time = momentOf(fleet, half.on);
    if (!time) return fail(time.error());
    PlannerReturn said = half;
    said.by = orLoginName(half.by);
    const std::string code = joined(half.codes, "; ");
    Feedback report{
        0,       half.machine, half.finding.fault, half.finding.at, half.outcome, code, returnWords(half),
        said.by, *time};
    KeptReturn both;
    const auto done = fleet.together([&]() -> Status {
        const auto kept = keepReport(fleet, report, nowUtc());
        if (!kept) return fail(kept.error());
        const auto event = keepEventWithPhotos(fleet, eventOf(said, *time, code), photos, nowUtc());
        if (!event) return fail(event.error());
        both = {kept->id, *event, kept->already};
        return {};
    });
    if (!done) return fail(done.error());
    return both;
}

}  // namespace fettle
