#include "core/intake/preview.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "core/base/caught.h"
#include "core/base/text.h"
#include "core/diagnosis/prepare.h"
#include "core/intake/discover.h"
#include "core/intake/level_intake.h"
#include "core/intake/level_table.h"
#include "core/signal/sidecar.h"

namespace fettle {

namespace {

// What stands in the sidecar as it came, and what rules added.
struct Sources {
    Json sidecar = Json::object(), added = Json::object();

    FactFrom of(const char* key) const {
        if (added.contains(key)) return FactFrom::Rule;
        return has(sidecar, key) ? FactFrom::Sidecar : FactFrom::File;
    }
    FactFrom ofChannel(std::size_t index, const char* key) const {
        for (const auto& [object, from] :
             {std::pair(&added, FactFrom::Rule), std::pair(&sidecar, FactFrom::Sidecar)})
            if (has(*object, "channels") && (*object)["channels"].is_array() &&
                index < (*object)["channels"].size() && has((*object)["channels"][index], key))
                return from;
        return FactFrom::File;
    }
    static bool has(const Json& object, const char* key) {
        return object.is_object() && object.contains(key) && !object[key].is_null();
    }
};

Fact fact(const std::string& value, FactFrom from) {
    return value.empty() ? Fact{} : Fact{value, from};
}

std::string number(const std::optional<double>& value) {
    return value ? fmt::format("{}", *value) : std::string();
}

std::vector<std::array<float, 2>> outlineOf(const std::vector<double>& samples, std::size_t most) {
    std::vector<std::array<float, 2>> outline;
    const std::size_t count = std::min(most, samples.size());
    for (std::size_t i = 0; i < count; ++i) {
        const auto from = samples.begin() + std::ptrdiff_t(i * samples.size() / count);
        const auto until = samples.begin() + std::ptrdiff_t((i + 1) * samples.size() / count);
        const auto [least, greatest] = std::minmax_element(from, until);
        outline.push_back({float(*least), float(*greatest)});
    }
    return outline;
}

class Viewer {
  public:
    Viewer(FleetFile& fleet, const FileSystem& files, RegisterBook book, RuleBook rules,
           const PreviewOptions& options)
        : fleet_(fleet),
          files_(files),
          book_(std::move(book)),
          rules_(std::move(rules)),
          options_(options),
          now_(options.now.value_or(
              std::chrono::floor<std::chrono::milliseconds>(std::chrono::system_clock::now()))) {}

    FilePreview view(const std::string& path) {
        FilePreview view;
        view.path = path;
        if (const std::string thrown = caught([&] { fillIn(view); }); !thrown.empty())
            object(view, {false, "", thrown});
        return view;
    }

  private:
    void fillIn(FilePreview& view) {
        auto read = readWithSource(files_, view.path, hintsOf(rules_, view.path));
        if (!read) return unread(view, read.error());
        view.format = read->format;
        Sources sources;
        if (auto sidecar = parseJson(read->sidecar.empty() ? "{}" : read->sidecar, ""); sidecar)
            sources.sidecar = std::move(*sidecar);
        const auto applied = applyRules(rules_, *read);
        if (applied) {
            sources.added = applied->added;
            view.rules = applied->patterns;
        }
        const auto admitted = admit(*read->recording, book_, now_);
        const Machine* machine = admitted ? admitted->description.get() : described(*read->recording);
        facts(view, *read->recording, sources);
        channels(view, *read->recording, sources, machine);
        notes(view, *read->recording);
        if (!applied) return object(view, objectionFrom(applied.error(), view.path));
        if (!admitted) return object(view, admitted.error());
        settle(view, *read, *admitted->description);
    }

    void unread(FilePreview& view, const Error& error) {
        const auto table = levelTableOf(files_, view.path);
        if (!table) return object(view, objectionFrom(error, view.path));
        view.format = kLevelsFormat;
        const auto levels = takeLevels(fleet_, *table, view.path, {book_, closed_, now_, false});
        if (!levels) return object(view, objectionFrom(levels.error(), view.path));
        view.notes.push_back(
            fmt::format("{} levels to come in, {} already there", levels->levels, levels->already));
        for (const std::string& warning : levels->warnings)
            view.notes.push_back(warning);
        for (const Objection& objection : levels->objections)
            view.notes.push_back(objection.place + ": " + objection.rule);
        view.state = levels->levels > 0 || levels->already == 0 ? FilePreview::State::Ready
                                                                : FilePreview::State::Known;
        if (levels->levels + levels->already == 0 && !levels->objections.empty())
            object(view, levels->objections[0]);
    }

    // The machine that is named, even where something else keeps the recording out.
    const Machine* described(const Recording& recording) const {
        const BookedMachine* machine = book_.find(recording.machine);
        return machine && !machine->descriptions.empty() ? machine->descriptions.back().machine.get()
                                                         : nullptr;
    }

    void settle(FilePreview& view, ReadFile& read, const Machine& machine) {
        const RecordingPtr pointed = withPoints(read.recording, machine);
        if (view.point.value.empty()) view.point = fact(pointed->point, FactFrom::Register);
        for (std::size_t c = 0; c < view.channels.size(); ++c) {
            const Channel& channel = pointed->channels[c];
            const FactFrom from = channel.point == channel.pointHint ? FactFrom::File : FactFrom::Register;
            if (view.channels[c].point.value.empty()) view.channels[c].point = fact(channel.point, from);
        }
        const auto known = fleet_.recordings().knows(recordingKey(read.bytes, *pointed));
        view.state = known && *known ? FilePreview::State::Known : FilePreview::State::Ready;
        for (std::string& note : notesOn(*pointed, machine))
            view.notes.push_back(std::move(note));
    }

    void facts(FilePreview& view, const Recording& recording, const Sources& sources) const {
        view.rateHz = recording.channels[0].sampleRateHz;
        view.seconds = recording.seconds();
        view.machine = fact(recording.machine, sources.of("machine"));
        view.point = fact(recording.point, sources.of("point"));
        view.time = fact(recording.time ? formatUtc(*recording.time) : "", sources.of("time"));
        view.speedRpm = fact(number(recording.speedRpm), sources.of("speed_rpm"));
        view.outline = outlineOf(recording.channels[0].samples, options_.stretches);
    }

    static void channels(FilePreview& view, const Recording& recording, const Sources& sources,
                         const Machine* machine) {
        for (std::size_t c = 0; c < recording.channels.size(); ++c) {
            const Channel& channel = recording.channels[c];
            PreviewChannel shown;
            shown.name = fact(channel.name, sources.ofChannel(c, "name"));
            shown.unit = fact(channel.unit, sources.ofChannel(c, "unit"));
            shown.scale = fact(fmt::format("{}", channel.scale), sources.ofChannel(c, "scale"));
            const FactFrom own = sources.ofChannel(c, "point");
            shown.point = fact(channel.point, own == FactFrom::File ? sources.of("point") : own);
            if (machine) {
                const ChannelRole role = roleOf(*machine, recording, c);
                const FactFrom from = role.channel ? FactFrom::Register : shown.unit.from;
                shown.quantity = fact(role.quantity, from);
                if (role.channel) shown.direction = fact(role.channel->direction, FactFrom::Register);
                if (role.channel && channel.unit.empty())
                    shown.unit = fact(role.channel->unit, FactFrom::Register);
            }
            view.channels.push_back(std::move(shown));
        }
    }

    static void notes(FilePreview& view, const Recording& recording) {
        for (const std::string& warning : recording.warnings) {
            std::string text = warning;
            for (const std::string& start : {view.path + ": ", sidecarPath(view.path) + ": "})
                if (text.starts_with(start)) text = text.substr(start.size());
            if (view.format == "CSV" && view.dialect.empty() && text.find("decimal") != text.npos)
                view.dialect = text;
            else
                view.notes.push_back(std::move(text));
        }
    }

    static void object(FilePreview& view, Objection objection) {
        view.state = objection.parked ? FilePreview::State::Parked : FilePreview::State::Refused;
        view.objection = std::move(objection);
    }

    FleetFile& fleet_;
    const FileSystem& files_;
    RegisterBook book_;
    ClosedPeriods closed_;  // none: nothing is stored
    RuleBook rules_;
    const PreviewOptions& options_;
    Instant now_;
};

bool comesIn(const FilePreview& file) {
    return file.state == FilePreview::State::Ready || file.state == FilePreview::State::Known;
}

// Two files with the same kind can be answered together.
std::string kindOf(const FilePreview& file) {
    std::string kind = fmt::format("{}|{}|{}|{}|{}", int(file.state), file.format, file.rateHz,
                                   file.objection.place, extensionOf(file.path));
    for (const PreviewChannel& channel : file.channels)
        kind += "|" + channel.name.value + "," + channel.unit.value + "," + channel.scale.value;
    for (const std::string& rule : file.rules)
        kind += "|" + rule;
    return kind;
}

std::string folderAbove(const std::string& path) {
    const auto stroke = path.rfind('/');
    return stroke == path.npos ? std::string() : path.substr(0, stroke);
}

std::string commonFolder(const std::string& a, const std::string& b) {
    std::size_t shared = 0;
    for (std::size_t i = 0; i <= std::min(a.size(), b.size()); ++i) {
        const bool endA = i == a.size() || a[i] == '/', endB = i == b.size() || b[i] == '/';
        if (endA && endB) shared = i;
        if (i == a.size() || i == b.size() || a[i] != b[i]) break;
    }
    return a.substr(0, shared);
}

std::string patternFor(const std::vector<FilePreview>& files, const PreviewGroup& group) {
    const std::string first = wholePath(files[group.files[0]].path);
    if (group.files.size() == 1) return patternOf(first);
    std::string folder = folderAbove(first);
    bool deeper = false;
    for (const std::size_t i : group.files) {
        const std::string other = folderAbove(wholePath(files[i].path));
        deeper = deeper || other != folder;
        folder = commonFolder(folder, other);
    }
    return patternOfFolder(folder, first.substr(first.rfind('.') + 1), deeper);
}

std::vector<PreviewGroup> groupsOf(const std::vector<FilePreview>& files) {
    std::map<std::string, std::size_t> places;
    std::vector<PreviewGroup> groups;
    for (std::size_t i = 0; i < files.size(); ++i) {
        const auto [at, fresh] = places.emplace(kindOf(files[i]), groups.size());
        if (fresh) groups.emplace_back();
        groups[at->second].files.push_back(i);
    }
    for (PreviewGroup& group : groups)
        group.pattern = patternFor(files, group);
    std::stable_sort(groups.begin(), groups.end(), [&](const PreviewGroup& a, const PreviewGroup& b) {
        const bool aIn = comesIn(files[a.files[0]]), bIn = comesIn(files[b.files[0]]);
        return aIn != bIn ? bIn : a.files.size() > b.files.size();
    });
    return groups;
}

}  // namespace

const char* wordOf(FactFrom from) {
    static const char* const words[] = {"", "file", "sidecar", "rule", "register"};
    return words[int(from)];
}

const char* wordOf(FilePreview::State state) {
    static const char* const words[] = {"ready", "known", "parked", "refused"};
    return words[int(state)];
}

Result<Preview> preview(FleetFile& fleet, const FileSystem& files, const std::vector<std::string>& paths,
                        const PreviewOptions& options) {
    auto book = RegisterBook::of(fleet);
    if (!book) return fail(book.error());
    auto rules = RuleBook::of(fleet);
    if (!rules) return fail(rules.error());
    const RuleBook known = *rules;
    Viewer viewer(fleet, files, std::move(*book), std::move(*rules), options);
    const Found found = discover(files, paths, options.recursive, fleet.path());
    Preview all;
    all.passedOver = found.passedOver;
    for (const Error& problem : found.problems) {
        FilePreview missing;
        missing.path = problem.file;
        missing.objection = objectionFrom(problem, problem.file);
        all.files.push_back(std::move(missing));
    }
    for (std::size_t i = 0; i < found.files.size() && !options.cancel.cancelled(); ++i) {
        if (options.progress) options.progress(i, found.files.size(), found.files[i].path);
        if (isLooseText(files, found.files[i]) && known.matching(found.files[i].path).empty())
            ++all.passedOver;
        else
            all.files.push_back(viewer.view(found.files[i].path));
    }
    all.cancelled = options.cancel.cancelled();
    all.groups = groupsOf(all.files);
    return all;
}

}  // namespace fettle
