#include "core/signal/uff_channel.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <set>
#include <tuple>

#include "core/base/text.h"

namespace fettle {

namespace {

struct UnitLabel {
    const char* label;
    const char* unit;
};
constexpr UnitLabel kLabels[] = {
    {"g", "g"},         {"g's", "g"},       {"gs", "g"},        {"grav", "g"},       {"m/s2", "m/s2"},
    {"m/s^2", "m/s2"},  {"m/s**2", "m/s2"}, {"m/sec2", "m/s2"}, {"m/sec^2", "m/s2"}, {"m/s/s", "m/s2"},
    {"mm/s", "mm/s"},   {"mm/sec", "mm/s"}, {"m/s", "m/s"},     {"m/sec", "m/s"},    {"in/s", "in/s"},
    {"in/sec", "in/s"}, {"um", "um"},       {"micron", "um"},   {"microns", "um"},   {"mm", "mm"},
    {"mil", "mil"},     {"mils", "mil"},    {"v", "V"},         {"volt", "V"},       {"volts", "V"},
};

const char* siUnitOf(int quantity) {
    switch (quantity) {
        case kUffAcceleration:
            return "m/s2";
        case kUffVelocity:
            return "m/s";
        case kUffDisplacement:
            return "m";
        default:
            return "";
    }
}

const char* quantityName(int quantity) {
    switch (quantity) {
        case kUffAcceleration:
            return "acceleration";
        case kUffVelocity:
            return "velocity";
        case kUffDisplacement:
            return "displacement";
        default:
            return "";
    }
}

std::string unitOf(const UffAxis& axis, bool si, std::string& note) {
    for (const UnitLabel& known : kLabels)
        if (lowerAscii(axis.unit) == known.label) return known.unit;
    if (!axis.unit.empty()) return oneLine(axis.unit, 40);
    const std::string quantity = quantityName(axis.quantity);
    if (quantity.empty()) return "";
    if (!si) {
        note = quantity + " without a label of units and no data set 164 that says SI: no unit taken";
        return "";
    }
    note = fmt::format("{} without a label of units: taken for {}, as data set 164 says SI", quantity,
                       siUnitOf(axis.quantity));
    return siUnitOf(axis.quantity);
}

// Whether direction letters alone tell the channels apart.
bool lettersTell(const std::vector<const UffFunction*>& functions) {
    std::set<int> directions;
    for (const UffFunction* f : functions) {
        const int direction = std::abs(f->direction);
        if (direction > 3 || f->node != functions[0]->node || f->entity != functions[0]->entity) return false;
        if (direction > 0 && !directions.insert(direction).second) return false;
    }
    return true;
}

std::string nameOf(const UffFunction& f, std::size_t place, bool letters) {
    static constexpr const char* axes[] = {"x", "y", "z"};
    const int direction = std::abs(f.direction);
    return letters && direction >= 1 && direction <= 3 ? axes[direction - 1] : std::to_string(place + 1);
}

std::string directionWord(int direction) {
    static constexpr const char* words[] = {"scalar", "X", "Y", "Z", "about X", "about Y", "about Z"};
    const int which = std::abs(direction);
    if (which > 6) return "unknown direction";
    return (direction < 0 ? "-" : "") + std::string(words[which]);
}

std::string wordsOf(const UffFunction& f) {
    std::string words = fmt::format("node {} {}", f.node, directionWord(f.direction));
    if (!f.entity.empty()) words = oneLine(f.entity) + " " + words;
    if (!f.description.empty() && lowerAscii(f.description) != "none")
        words += ", \"" + oneLine(f.description, 80) + "\"";
    return words;
}

}  // namespace

std::vector<Channel> uffChannels(const std::vector<const UffFunction*>& functions, bool si,
                                 std::vector<std::string>& warnings, const std::string& file) {
    std::vector<Channel> channels;
    const bool letters = lettersTell(functions);
    for (const UffFunction* f : functions) {
        Channel& channel = channels.emplace_back();
        std::string note;
        channel.name = nameOf(*f, channels.size() - 1, letters);
        channel.unit = unitOf(f->ordinate, si, note);
        channel.pointHint = f->entity.empty() && f->node > 0 ? std::to_string(f->node) : oneLine(f->entity);
        if (channels.size() <= 8)
            warnings.push_back(fmt::format("{}: channel {} is {}", oneLine(file), channel.name, wordsOf(*f)));
        if (!note.empty())
            warnings.push_back(fmt::format("{}: channel {}: {}", oneLine(file), channel.name, note));
    }
    return channels;
}

}  // namespace fettle
