#include "app/cli/sample_folder.h"

#include <algorithm>
#include <filesystem>
#include <map>

#include "core/base/json_object.h"

namespace fettle {

namespace {

namespace fs = std::filesystem;

using Machines = std::map<std::string, SampleMachine>;

std::vector<std::string> jsonPathsBelow(const std::string& folder) {
    std::vector<std::string> paths;
    std::error_code problem;
    for (auto it = fs::recursive_directory_iterator(folder, problem); !problem && it != fs::end(it);
         it.increment(problem))
        if (it->path().extension() == ".json" && it->path().filename() != "truth.json")
            paths.push_back(it->path().string());
    std::sort(paths.begin(), paths.end());
    return paths;
}

std::optional<std::string> recordingBeside(const FileSystem& files, const std::string& sidecar) {
    for (const char* extension : {".wav", ".flac", ".csv"})
        if (auto path = withExtension(sidecar, extension); files.exists(path)) return path;
    return std::nullopt;
}

std::string textOf(const Json& object, const char* key) {
    const auto found = object.find(key);
    return found != object.end() && found->is_string() ? found->get<std::string>() : std::string();
}

// A machine description, a sidecar, or something else that is passed over.
void take(const FileSystem& files, const std::string& path, Machines& machines) {
    const auto text = files.read(path);
    const auto json = text ? parseJson(*text, path) : Result<Json>(Json());
    if (!json || !json->is_object()) return;
    if (const std::string tag = textOf(*json, "tag"); !tag.empty()) {
        machines[tag].description = path;
        return;
    }
    const auto recording = recordingBeside(files, path);
    const auto time = parseUtc(textOf(*json, "time"));
    if (const std::string tag = textOf(*json, "machine"); !tag.empty() && recording && time)
        machines[tag].recordings.push_back({*time, *recording});
}

Story storyFrom(JsonObject& row) {
    Story story;
    story.tag = row.text("tag", true);
    story.kind = row.text("kind");
    story.text = row.text("story");
    story.fault = row.text("fault");
    story.at = row.text("at");
    story.from = row.text("from");
    story.to = row.text("to");
    story.decoy = row.boolean("decoy").value_or(false);
    story.severity = row.number("severity", 0, 1);
    const Json& weeks = row.raw("severity_by_week");
    for (const Json& value : weeks)
        story.byWeek.push_back(value.is_number() ? value.get<double>() : 0);
    return story;
}

// What truth.json tells, the machines still without their files.
struct Truth {
    SampleFolder span;
    std::vector<Story> stories;
};

Result<Truth> readTruth(const FileSystem& files, const std::string& path) {
    const auto text = files.read(path);
    if (!text) return fail(text.error());
    const auto json = parseJson(*text, path);
    if (!json) return fail(json.error());
    JsonReport report{path, {}, {}};
    Truth truth;
    {
        JsonObject root(*json, "", report);
        const auto from = parseUtc(root.text("from", true) + "T00:00:00Z");
        const auto to = parseUtc(root.text("to", true) + "T00:00:00Z");
        if (!from || !to) report.broken(root.place("from"), "two dates like 2026-01-05 are expected");
        truth.span.start = from.value_or(Instant{});
        if (from && to) truth.span.weeks = int((*to - *from + std::chrono::days(1)) / std::chrono::days(7));
        std::size_t count = 0;
        for (const Json* row : root.list("stories")) {
            JsonObject object(*row, "/stories/" + std::to_string(count++), report);
            truth.stories.push_back(storyFrom(object));
        }
    }
    if (report.error) return fail(*report.error);
    return truth;
}

}  // namespace

Result<SampleFolder> readSampleFolder(const FileSystem& files, const std::string& folder) {
    auto truth = readTruth(files, folder + "/truth.json");
    if (!truth) return fail(truth.error());
    Machines machines;
    for (const std::string& path : jsonPathsBelow(folder))
        take(files, path, machines);
    for (const Story& story : truth->stories)
        machines[story.tag].stories.push_back(story);
    SampleFolder all = std::move(truth->span);
    for (auto& [tag, machine] : machines) {
        if (machine.description.empty())
            return fail(ErrorKind::NotFound, folder, "", "no machine description with the tag " + tag);
        machine.tag = tag;
        std::sort(machine.recordings.begin(), machine.recordings.end(), [](const auto& a, const auto& b) {
            return a.time != b.time ? a.time < b.time : a.path < b.path;
        });
        all.machines.push_back(std::move(machine));
    }
    return all;
}

}  // namespace fettle
