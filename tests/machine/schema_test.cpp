// The JSON schemas are documents for people and editors; these tests keep them in step with what the code
// reads.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <set>

#include "core/base/file_system.h"
#include "tests/machine/describe.h"

namespace fettle {
namespace {

Json schema(const std::string& name) {
    const std::string path = std::string(FETTLE_SOURCE_DIR) + "/resources/schemas/" + name;
    const auto text = RealFileSystem().read(path);
    const auto json = text ? parseJson(*text, path) : fail(text.error());
    if (json) return *json;
    ADD_FAILURE() << json.error().sentence();
    return Json::object();
}

TEST(Schema, AllAreOfTheirDraftAndResolve) {
    for (const char* name : {"machine.schema.json", "recording.schema.json", "examination.schema.json"}) {
        const Json one = schema(name), flat = one.flatten();
        EXPECT_EQ(one.value("$schema", ""), "https://json-schema.org/draft/2020-12/schema") << name;
        for (const auto& leaf : flat.items())
            if (leaf.key().ends_with("/$ref")) {
                const std::string pointer = leaf.value().get<std::string>().substr(1);
                EXPECT_TRUE(one.contains(Json::json_pointer(pointer))) << name << " " << pointer;
            }
    }
}

// A machine with every key there is.
const char* const kEverything =
    R"({ "schema": 1, "engine": "0.1.0", "tag": "CR-99", "asset": "1", "service": "s", "site": "s",
  "area": "a", "criticality": "B", "standby": false, "mains_hz": 50, "support": "rigid", "coupling": "flexible",
  "driver": { "kind": "induction", "power_kw": 75, "poles": 4, "rated_rpm": 1480, "shaft_height_mm": 280,
    "supply": "inverter", "output_hz_range": [10, 60], "rated_hz": 50, "carrier_hz": 4000, "rpm_min": 300, "rpm_max": 1800,
    "rotor_bars": 58, "stator_slots": 72, "thermal_class": "F", "bearings": { "DE": { "designation": "6310",
      "type": "deep_groove", "rows": 1, "turning": "inner", "rolling_elements": 8, "element_mm": 19.05, "pitch_mm": 80,
      "contact_deg": 0, "orders": { "bpfo": 3.0475, "bpfi": 4.9525, "bsf": 1.9807, "ftf": 0.3809 }, "shaft": "S1",
      "source": "plate", "variants": [ { "rolling_elements": 9, "element_mm": 19, "pitch_mm": 80, "contact_deg": 0,
        "orders": { "bpfo": 3.4313, "bpfi": 5.5687, "bsf": 1.9865, "ftf": 0.3813 }, "source": "maker" } ] } } },
  "driven": { "kind": "mill", "blades": 5, "speed_ratio": 0.01, "speed_ratio_tol": 0.01, "bearings": {} },
  "shafts": [ { "id": "S1", "of": "driver" }, { "id": "S2" }, { "id": "S3" }, { "id": "S4" }, { "id": "S5", "of": "driven" } ],
  "gears": [ { "id": "G1", "from": "S1", "to": "S2", "teeth": [21, 67], "kind": "helical" },
    { "id": "G2", "from": "S2", "to": "S3", "sun": 20, "ring": 80, "planet": 30, "planets": 4, "fixed": "ring" },
    { "id": "G3", "from": "S3", "to": "S4",
      "planetary": { "sun": 20, "ring": 80, "planet": 30, "planets": 4, "fixed": "ring" } } ],
  "belts": [ { "id": "B1", "from": "S1", "to": "S2", "kind": "toothed", "pulley_mm": [210, 670], "teeth": [21, 67],
               "length_mm": 2500, "creep_pct": [0, 0] } ],
  "intermediate": [ { "id": "box", "shaft": "S2", "bearings": {} } ],
  "points": [ { "id": "P1", "at": "driver DE", "mount": "foot", "fixing": "stud", "usable_hz": [2, 4000], "range": 16,
    "noise_per_rt_hz": 3e-4, "interval_min": 20, "node": [ { "id": "7", "from": "2025-11-03", "to": "2025-11-04" } ],
    "hears": [ { "at": "driver NDE", "path": "same housing" } ],
    "channels": [ { "name": "x", "quantity": "acceleration", "unit": "g", "direction": "axial" } ] } ] })";

// Which keys a document uses at each object of its schema, beside those the schema lists there.
struct Keys {
    std::set<std::string> listed, used;
};

class Walk {
  public:
    explicit Walk(const Json& root) : root_(root) { visit(root_, "/", nullptr); }

    void document(const Json& value) { visit(root_, "/", &value); }
    const std::map<std::string, Keys>& objects() const { return objects_; }

  private:
    void visit(const Json& node, const std::string& path, const Json* value) {
        if (node.contains("$ref")) {
            const std::string target = node["$ref"].get<std::string>().substr(1);
            return visit(root_[Json::json_pointer(target)], target, value);
        }
        if (node.contains("items")) {
            if (!value) return visit(node["items"], path + "[]", nullptr);
            for (const Json& item : *value)
                visit(node["items"], path + "[]", &item);
        }
        if (node.contains("additionalProperties") && value)
            for (const Json& item : *value)
                visit(node["additionalProperties"], path + "*", &item);
        if (node.contains("properties")) visitObject(node["properties"], path, value);
    }

    void visitObject(const Json& properties, const std::string& path, const Json* value) {
        for (const auto& property : properties.items()) {
            objects_[path].listed.insert(property.key());
            if (!value) visit(property.value(), path + "/" + property.key(), nullptr);
        }
        if (!value) return;
        for (const auto& item : value->items()) {
            objects_[path].used.insert(item.key());
            if (properties.contains(item.key()))
                visit(properties[item.key()], path + "/" + item.key(), &item.value());
        }
    }

    const Json& root_;
    std::map<std::string, Keys> objects_;
};

TEST(Schema, MachineSchemaAndParserKnowTheSameKeys) {
    EXPECT_FALSE(parsed(Json::parse(kEverything)).machine.gears.empty());
    for (const std::string& warning : parsed(Json::parse(kEverything)).warnings)
        EXPECT_EQ(warning.find("unknown key"), std::string::npos) << warning;
    const Json root = schema("machine.schema.json");
    Walk walk(root);
    walk.document(Json::parse(kEverything));
    ASSERT_GE(walk.objects().size(), 10u);
    for (const auto& [path, keys] : walk.objects())
        EXPECT_EQ(keys.listed, keys.used) << path;
}

// The fault keys are a fixed list that other programs may rely on.
TEST(Schema, ExaminationListsEveryFaultKey) {
    const Json root = schema("examination.schema.json");
    std::set<std::string> keys;
    for (const Json& key : root["$defs"]["fault"]["enum"])
        keys.insert(key.get<std::string>());
    EXPECT_EQ(keys.size(), 26u);
    for (const char* key :
         {"bearing_outer_race", "bearing_cage", "unbalance", "electrical_2x_mains", "sensor"})
        EXPECT_TRUE(keys.count(key)) << key;
}

}  // namespace
}  // namespace fettle
