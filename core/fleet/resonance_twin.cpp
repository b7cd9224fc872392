// The resonance map as JSON, see resonance_desk.h.
#include "core/base/json_parts.h"
#include "core/fleet/resonance_desk.h"

namespace fettle {

namespace {

template <class Item>
Json listOf(const std::vector<Item>& items, Json (*make)(const Item&)) {
    Json all = Json::array();
    for (const Item& item : items)
        all.push_back(make(item));
    return all;
}

Json bandJson(const SkipBand& band) {
    return {{"from_rpm", band.fromRpm},      {"to_rpm", band.toRpm},
            {"order", band.order},           {"hz", band.hz},
            {"rise_db", band.riseDb},        {"level_mm_s", band.level},
            {"recordings", band.recordings}, {"orders", band.orders},
            {"channels", band.channels},     {"hardly_worth", band.small}};
}

Json crossingJson(const Crossing& one) {
    return {{"channel", one.channel},
            {"order", one.order},
            {"rpm", one.rpm},
            {"hz", one.hz},
            {"from_rpm", one.fromRpm},
            {"to_rpm", one.toRpm},
            {"rise_db", one.riseDb},
            {"level_mm_s", one.level},
            {"recordings", one.recordings},
            {"both_sides_run", one.whole}};
}

Json resonanceJson(const Resonance& one) {
    return {{"hz", one.hz},
            {"sharpness_q", one.sharpness > 0 ? Json(one.sharpness) : Json()},
            {"orders", one.orders},
            {"channels", one.channels},
            {"crossings", listOf(one.crossings, crossingJson)}};
}

Json fixedJson(const FixedLine& line) {
    return {{"channel", line.channel}, {"hz", line.hz}, {"level_mm_s", line.level}};
}

}  // namespace

Json toJson(const MachineResonance& found) {
    const ResonanceMap& map = found.map;
    return {{"from", formatUtc(found.from)},
            {"until", formatUtc(found.until)},
            {"time_zone", found.timeZone},
            {"lacking", orNull(map.lacking)},
            {"recordings", map.recordings},
            {"least_rpm", map.leastRpm},
            {"most_rpm", map.mostRpm},
            {"bands", listOf(map.bands, bandJson)},
            {"resonances", listOf(map.resonances, resonanceJson)},
            {"fixed", listOf(map.fixed, fixedJson)},
            {"cannot_say", map.unseen}};
}

}  // namespace fettle
