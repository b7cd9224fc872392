#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>

#include "core/diagnosis/examine.h"
#include "core/dsp/integrate.h"
#include "core/round/change_groups.h"
#include "core/signal/reader.h"
#include "tests/trials/trials.h"

namespace fettle::trials {

namespace {

namespace fs = std::filesystem;

constexpr double kFindingDban = 20;
constexpr int kRunIn = 3, kWindow = 7;

struct Life {
    std::vector<double> hours;                           // since the first record
    std::vector<std::vector<double>> highBand, overall;  // of each channel
    std::vector<std::string> channels;
    std::size_t named = 0;  // records in which a bearing's lines were found
    std::string blind;      // what an examination says it cannot see
};

std::vector<std::string> wavesIn(const fs::path& folder) {
    std::vector<std::string> paths;
    for (const auto& entry : fs::directory_iterator(folder))
        if (entry.path().extension() == ".wav") paths.push_back(entry.path().string());
    std::sort(paths.begin(), paths.end());
    return paths;
}

void addLevels(const Recording& recording, Life& life) {
    for (std::size_t c = 0; c < recording.channels.size(); ++c) {
        const Channel& channel = recording.channels[c];
        if (life.channels.size() <= c) {
            life.channels.push_back(channel.name);
            life.highBand.emplace_back();
            life.overall.emplace_back();
        }
        const Spectrum spectrum = accelerationSpectrum(channel.samples, channel.sampleRateHz);
        life.highBand[c].push_back(bandRms(spectrum, kHighBandHz, spectrum.topHz()));
        life.overall[c].push_back(bandRms(spectrum, 10, spectrum.topHz()));
    }
}

void addExamination(const Machine& machine, const RecordingPtr& recording, Life& life) {
    const auto examined = examine(machine, {recording});
    if (!examined) return;
    life.named += std::any_of(examined->findings.begin(), examined->findings.end(), [](const Hypothesis& h) {
        return h.fault.starts_with("bearing_") && h.weightDban;
    });
    for (const BlindSpot& spot : examined->blind)
        if (life.blind.empty() && (spot.fault.empty() || spot.fault.starts_with("bearing")))
            life.blind = spot.why;
}

Result<Life> lifeOf(const fs::path& folder) {
    const RealFileSystem files;
    const auto text = files.read((folder / "machine.json").string());
    if (!text) return fail(text.error());
    const auto machine = parseMachine(*text, "machine.json");
    if (!machine) return fail(machine.error());
    Life life;
    std::optional<Instant> first;
    for (const std::string& path : wavesIn(folder)) {
        const auto recording = readRecording(files, path);
        if (!recording || !(*recording)->time) continue;
        if (!first) first = (*recording)->time;
        life.hours.push_back(double((*(*recording)->time - *first).count()) / 3.6e6);
        addLevels(**recording, life);
        addExamination(machine->machine, *recording, life);
    }
    return life;
}

// The shipped rule with a record in place of a day: the last seven against the first ones.
std::vector<FollowedChange> changesAt(const Life& life, std::size_t end, int baselineRecords) {
    std::vector<FollowedChange> changes;
    const auto add = [&](const std::vector<double>& values, Followed quantity, const char* name,
                         const std::string& channel) {
        std::vector<DayValue> days;
        for (std::size_t i = 0; i < end; ++i)
            days.push_back({int(i), values[i], 1});
        BaselineOptions options;
        options.mostDays = baselineRecords;
        const BaselineSearch search = baselineOf(days, 0, int(end) - kWindow, Scale::Decibels, options);
        if (!search.baseline) return;
        FollowedChange one;
        one.quantity = quantity;
        one.name = name;
        one.at = "driver DE";
        one.point = "DE";
        one.channel = channel;
        one.week.change = weighChange(*search.baseline, std::span(days).last(kWindow));
        one.week.matters = one.week.change && matters(*one.week.change, {});
        changes.push_back(std::move(one));
    };
    for (std::size_t c = 0; c < life.channels.size(); ++c)
        add(life.highBand[c], Followed::HighBand, "high band", life.channels[c]);
    for (std::size_t c = 0; c < life.channels.size(); ++c)
        add(life.overall[c], Followed::Velocity, "acceleration", life.channels[c]);
    return changes;
}

std::string alertAt(const Life& life, std::size_t end, int baselineRecords) {
    const auto changes = changesAt(life, end, baselineRecords);
    for (const ChangeGroup& group : changeGroups(changes))
        if (isListed(group, kFindingDban) && group.rises())
            return fmt::format("{}, {:.0f} decibans, {:+.1f} dB", group.first().name, group.weightDban,
                               group.strongest->week.change->step);
    return "";
}

void tell(const std::string& name, const Life& life, int baselineRecords) {
    std::string first;
    double firstAt = 0, lastOff = 0;
    int alerts = 0, early = 0;
    bool on = false;
    const double whole = life.hours.back();
    for (std::size_t end = std::size_t(kWindow); end <= life.hours.size(); ++end) {
        const std::string alert = alertAt(life, end, baselineRecords);
        const double share = life.hours[end - 1] / whole;
        if (!alert.empty() && !on) {
            ++alerts;
            early += share < 0.5;
            if (first.empty()) first = alert, firstAt = share;
        }
        if (alert.empty()) lastOff = share;
        on = !alert.empty();
    }
    fmt::print("{}: {} records over {:.2f} h, baseline of {} after {} of run-in\n", name, life.hours.size(),
               whole, baselineRecords, kRunIn);
    if (first.empty())
        fmt::print("  no alert\n");
    else
        fmt::print("  first alert at {:.1f} % of life ({}); for good from {:.1f} %; times it came on: {}\n",
                   100 * firstAt, first, 100 * lastOff, alerts);
    fmt::print("  alerts in the first half: {}\n", early);
    fmt::print("  records in which an examination named a bearing's lines: {}; it says: {}\n", life.named,
               life.blind);
}

}  // namespace

int runToFailure(const Arguments& arguments) {
    const char* open = std::getenv("FETTLE_OPEN_RECORDS");
    const bool given = !arguments.empty() && arguments[0].rfind("--", 0) != 0;
    if (!given && !open) {
        fmt::print(stderr,
                   "run-to-failure FOLDER: one folder a bearing, with machine.json and records; or "
                   "FETTLE_OPEN_RECORDS names a folder with femto in it\n");
        return 2;
    }
    const std::string folder = given ? arguments[0] : (fs::path(open) / "femto").string();
    const int records = int(numberAfter(arguments, "--baseline", 42));
    std::vector<fs::path> folders;
    std::error_code none;
    for (const auto& entry : fs::directory_iterator(folder, none))
        if (entry.is_directory()) folders.push_back(entry.path());
    if (folders.empty()) {
        fmt::print(stderr, "{}: no folder with records in it\n", folder);
        return 3;
    }
    std::sort(folders.begin(), folders.end());
    fmt::print(
        "The rule of change with a record in place of a day: seven records against the first ones, 20 "
        "decibans "
        "and\n6 dB. The records' own kind of fault is not known; their ends were called at 20 g.\n\n");
    for (const fs::path& bearing : folders) {
        const auto life = lifeOf(bearing);
        if (!life || life->hours.empty()) {
            fmt::print(stderr, "{}: {}\n", bearing.string(), life ? "no records" : life.error().sentence());
            return 3;
        }
        tell(bearing.filename().string(), *life, records);
    }
    return 0;
}

}  // namespace fettle::trials
