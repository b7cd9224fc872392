#include "app/cli/compare_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "core/diagnosis/sensor_checks.h"
#include "core/machine/path.h"

namespace fettle {

namespace {

constexpr double kEarly = 0.3;  // severity below which a story may stay unseen without being called missed

// "driver DE or NDE" stands for "driver DE" and "driver NDE".
bool samePlace(const std::string& found, const std::string& wanted) {
    const std::vector<std::string> places = placesIn(found);
    return std::find(places.begin(), places.end(), wanted) != places.end();
}

bool isBearing(const std::string& fault) {
    return fault.rfind("bearing_", 0) == 0;
}

// Faults whose lines are shaft orders: one node cannot say on which side of a coupling they arise.
bool isShaftFault(const std::string& fault) {
    static const std::set<std::string> all{"unbalance", "misalignment", "bent_shaft", "looseness",
                                           "soft_foot", "resonance",    "rub"};
    return all.count(fault) != 0;
}

bool hits(const Hypothesis& found, const Story& story) {
    return found.fault == story.fault && (isShaftFault(story.fault) || samePlace(found.at, story.at));
}

// Raised vibration whose cause is not named speaks for whatever is at work there.
bool sameKind(const Hypothesis& found, const Story& story) {
    if (found.fault.empty()) return true;
    if (isShaftFault(story.fault)) return isShaftFault(found.fault);
    return isBearing(story.fault) && isBearing(found.fault) && samePlace(found.at, story.at);
}

template <class Rule>
const Hypothesis* firstOf(const std::vector<Hypothesis>& all, Rule rule) {
    const auto found = std::find_if(all.begin(), all.end(), rule);
    return found == all.end() ? nullptr : &*found;
}

// Of a story without a finding.
Marked unseen(const Story& story, const Examination& e) {
    const auto same = [&](const Hypothesis& h) { return hits(h, story); };
    const Hypothesis* weighed = firstOf(e.considered, same);
    for (const BlindSpot& blind : e.blind)
        if ((blind.fault.empty() || blind.fault == story.fault) && samePlace(blind.at, story.at) &&
            !(weighed && weighed->weightDban))
            return {Mark::NotVisible, blind.why, &story, nullptr};
    if (!weighed) return {Mark::NotVisible, "this version does not weigh it", &story, nullptr};
    if (!weighed->weightDban) return {Mark::NotVisible, weighed->why, &story, nullptr};
    const std::string weight = fmt::format("{:.1f} decibans", *weighed->weightDban);
    if (story.severity && *story.severity < kEarly)
        return {Mark::NotVisible, fmt::format("severity {:.2g} of 1, {}", *story.severity, weight), &story,
                nullptr};
    return {Mark::Missed, weight, &story, nullptr};
}

// A sensor is found out by the checks of its recordings, which are notes and no findings. A note on the
// description or on the length of a recording says nothing about the sensor.
Marked sensorMark(const Story& story, const Examination& e) {
    if (story.kind == "silent") return {Mark::NotVisible, "recordings came in these days", &story, nullptr};
    for (const RecordingFacts& r : e.recordings)
        for (const QualityNote& note : r.quality)
            if (speaksOfSensor(note.code))
                return {Mark::Hit, note.code + ": " + note.detail, &story, nullptr};
    return {Mark::Missed, "no check of the recordings objects", &story, nullptr};
}

Marked markOf(const Story& story, const Examination& e) {
    if (const auto* hit = firstOf(e.findings, [&](const Hypothesis& h) { return hits(h, story); }))
        return {Mark::Hit, "", &story, hit};
    if (const auto* near = firstOf(e.findings, [&](const Hypothesis& h) { return sameKind(h, story); }))
        return {Mark::OtherName, "", &story, near};
    if (story.fault == "sensor") return sensorMark(story, e);
    return unseen(story, e);
}

}  // namespace

std::string toText(Mark mark) {
    switch (mark) {
        case Mark::Hit:
            return "hit";
        case Mark::OtherName:
            return "other name";
        case Mark::Missed:
            return "missed";
        case Mark::NotVisible:
            return "not visible";
        case Mark::False:
            return "false";
    }
    return "";
}

bool atWork(const Story& story, const std::string& first, const std::string& last) {
    const std::string from = story.from.substr(0, 10), to = story.to.substr(0, 10);
    return from <= last && (to.empty() || to >= first);
}

std::vector<Marked> marksOf(const std::vector<const Story*>& atWork, const Examination& examination) {
    std::vector<Marked> marks;
    for (const Story* story : atWork)
        if (!story->decoy && !story->fault.empty()) marks.push_back(markOf(*story, examination));
    for (const Hypothesis& found : examination.findings) {
        if (found.fault == "sensor" && !found.weightDban)
            continue;  // of a node's rate or seat, not the machine
        const bool explained = std::any_of(atWork.begin(), atWork.end(), [&](const Story* story) {
            return !story->decoy && (hits(found, *story) || sameKind(found, *story));
        });
        if (!explained) marks.push_back({Mark::False, "", nullptr, &found});
    }
    return marks;
}

}  // namespace fettle
