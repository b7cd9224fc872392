#include "core/fleet/history.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "core/base/text.h"
#include "core/fleet/grease.h"

namespace fettle {

namespace {

constexpr std::string_view kAbout = "about the ";

std::string headOf(const Event& of) {
    return fmt::format("{}{} of {}", kAbout, of.kind, formatUtc(of.time));
}

// Where two events share kind and moment the place parts them.
std::string fullHeadOf(const Event& of) {
    return headOf(of) + (of.at.empty() ? "" : " at " + of.at) + ": ";
}

}  // namespace

std::string correctionText(const Event& of, const std::string& words) {
    return fullHeadOf(of) + std::string(trimmed(words));
}

bool corrects(const Event& note, const Event& of) {
    return note.kind == "note" && note.id != of.id && note.machine == of.machine &&
           note.text.starts_with(fullHeadOf(of));
}

std::string correctionWords(const Event& note) {
    const std::size_t end =
        note.text.starts_with(kAbout) ? note.text.find("Z", kAbout.size()) : note.text.npos;
    const std::size_t colon = end == note.text.npos ? end : note.text.find(": ", end);
    return colon == note.text.npos ? note.text : note.text.substr(colon + 2);
}

Result<std::vector<HistoryEntry>> machineHistory(FleetFile& fleet, const std::string& tag) {
    auto events = fleet.log().events(tag);
    if (!events) return fail(events.error());
    auto photos = fleet.photos().ofMachine(tag);
    if (!photos) return fail(photos.error());
    const auto greasings = greasingsHeard(fleet, tag);
    if (!greasings) return fail(greasings.error());
    std::vector<HistoryEntry> entries;
    for (const Event& event : *events) {
        const auto about = std::find_if(entries.begin(), entries.end(), [&](const HistoryEntry& entry) {
            return corrects(event, entry.event);
        });
        if (about != entries.end())
            about->corrections.push_back(event);
        else
            entries.push_back({event, {}, {}, ""});
    }
    for (HistoryEntry& entry : entries) {
        const auto isOf = [&](std::int64_t id) {
            return id == entry.event.id || std::any_of(entry.corrections.begin(), entry.corrections.end(),
                                                       [&](const Event& note) { return note.id == id; });
        };
        for (const Photo& photo : *photos)
            if (isOf(photo.event)) entry.photos.push_back(photo);
        for (const GreasingHeard& one : *greasings)
            if (one.event == entry.event.id) entry.heard = one.witness.words;
    }
    std::reverse(entries.begin(), entries.end());
    return entries;
}

}  // namespace fettle
