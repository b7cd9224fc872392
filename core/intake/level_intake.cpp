#include "core/intake/level_intake.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "core/base/text.h"
#include "core/intake/level_table.h"
#include "core/machine/severity_limits.h"

namespace fettle {

namespace {

constexpr std::size_t kBatch = 2000;  // rows in one transaction
constexpr std::size_t kMostRules = 50, kLinesTold = 5;
constexpr double kSameValue = 1e-9;  // relative: printed and read again

// The word for what a series of the instrument's own measures, and its unit.
std::pair<const char*, const char*> kindOf(Quantity quantity) {
    switch (quantity) {
        case Quantity::VelocityRms:
        case Quantity::Order1:
        case Quantity::Order2:
        case Quantity::Order3:
            return {"velocity", "mm/s"};
        case Quantity::AccelerationRms:
        case Quantity::Peak:
        case Quantity::HighBand:
        case Quantity::CrestFactor:
        case Quantity::Kurtosis:
            return {"acceleration", "g"};
        case Quantity::FrameTempC:
        case Quantity::AmbientTempC:
            return {"temperature", "°C"};
        default:
            return {"", ""};
    }
}

// Lines by the rule they break.
class Objections {
  public:
    void add(std::size_t line, const std::string& rule) {
        ++count_;
        if (!lines_.count(rule) && lines_.size() >= kMostRules) {
            more_.push_back(line);
            return;
        }
        lines_[rule].push_back(line);
    }
    std::size_t count() const { return count_; }
    std::vector<Objection> all() const {
        std::vector<Objection> list;
        for (const auto& [rule, lines] : lines_)
            list.push_back({false, placeOf(lines), rule});
        if (!more_.empty()) list.push_back({false, placeOf(more_), "other rules are broken"});
        return list;
    }

  private:
    static std::string placeOf(const std::vector<std::size_t>& lines) {
        std::vector<std::string> told;
        for (std::size_t i = 0; i < std::min(lines.size(), kLinesTold); ++i)
            told.push_back(std::to_string(lines[i]));
        const std::string place = (lines.size() == 1 ? "line " : "lines ") + joined(told, ", ");
        return lines.size() > kLinesTold ? fmt::format("{} and {} more", place, lines.size() - kLinesTold)
                                         : place;
    }
    std::map<std::string, std::vector<std::size_t>> lines_;
    std::vector<std::size_t> more_;
    std::size_t count_ = 0;
};

// A row with what the register knows of it.
struct Placed {
    LevelRow row;
    const BookedMachine* machine = nullptr;
    std::shared_ptr<const Machine> description;
};

class Intake {
  public:
    Intake(FleetFile& fleet, const std::string& file, const LevelsWanted& wanted)
        : fleet_(fleet), file_(file), wanted_(wanted) {}

    Result<LevelsTaken> take(const std::string& text) {
        auto table = LevelTable::of(text, file_);
        if (!table) return fail(table.error());
        while (auto row = table->next()) {
            if (!*row) {
                objections_.add(table->line(), row->error());
                continue;
            }
            if (std::string rule = place(std::move(**row)); !rule.empty())
                objections_.add(table->line(), rule);
            if (rows_ >= kBatch)
                if (auto good = store(); !good) return fail(good.error());
        }
        if (auto good = store(); !good) return fail(good.error());
        taken_.objections = objections_.all();
        taken_.rowsObjected = objections_.count();
        if (assumedRunning_)
            taken_.warnings.push_back(
                "nothing says whether the machines ran: levels are taken for those of running ones");
        return std::move(taken_);
    }

  private:
    // One series: machine, point, channel, quantity, unit, direction; and the moment.
    using Key =
        std::tuple<std::int64_t, Instant, std::string, std::string, std::string, std::string, std::string>;

    std::string place(LevelRow row);
    std::string placeAt(Placed& placed);
    void group(const Placed& placed);
    void add(const Placed& placed, Quantity quantity, double value);
    static void grade(const Machine& machine, TrendRow& trend);
    Status store();
    Status withoutKnown(const Key& key, TrendRow& trend);
    Result<std::optional<std::int64_t>> channelOf(const Key& key);
    NewRecording recordingOf(const Key& key, const TrendRow& trend) const;

    FleetFile& fleet_;
    const std::string& file_;
    const LevelsWanted& wanted_;
    LevelsTaken taken_;
    Objections objections_;
    std::map<Key, TrendRow> batch_;
    std::map<Key, std::size_t> lines_;
    std::map<std::int64_t, std::string> tags_;
    std::map<std::int64_t, std::vector<ChannelEntry>> channels_;  // as the fleet file has them
    std::size_t rows_ = 0;
    bool assumedRunning_ = false;
};

std::string Intake::place(LevelRow row) {
    Placed placed{std::move(row), nullptr, nullptr};
    placed.machine = wanted_.book.find(placed.row.machine);
    if (!placed.machine)
        return fmt::format("machine \"{}\" is not in the register", oneLine(placed.row.machine, 80));
    if (placed.row.time > wanted_.now + kClockAhead)
        return fmt::format("time {} is in the future", formatUtc(placed.row.time));
    auto description = placed.machine->describedAt(placed.row.time);
    if (!description) return description.error().sentence();
    placed.description = std::move(*description);
    if (std::string rule = placeAt(placed); !rule.empty()) return rule;
    if (placed.row.running.empty()) {
        placed.row.running = "running";
        assumedRunning_ = true;
    }
    tags_[placed.machine->entry.id] = placed.row.machine;
    ++rows_;
    group(placed);
    return {};
}

std::string Intake::placeAt(Placed& placed) {
    static constexpr const char* states[] = {"",        "stopped",  "energised_not_turning",
                                             "running", "unsteady", "unknown"};
    if (std::none_of(std::begin(states), std::end(states),
                     [&](const char* s) { return placed.row.running == s; }))
        return fmt::format("running \"{}\" is no state of a machine", oneLine(placed.row.running, 40));
    const Machine& machine = *placed.description;
    if (placed.row.point.empty() && machine.points.size() == 1) placed.row.point = machine.points[0].id;
    if (machine.pointById(placed.row.point)) return {};
    return fmt::format("point \"{}\" is not in the description of {}", oneLine(placed.row.point, 80),
                       oneLine(machine.tag, 80));
}

void Intake::group(const Placed& placed) {
    for (std::size_t q = 0; q < kQuantities; ++q) {
        if (!placed.row.values[q]) continue;
        add(placed, Quantity(q), *placed.row.values[q]);
    }
}

void Intake::add(const Placed& placed, Quantity quantity, double value) {
    const LevelRow& row = placed.row;
    const auto [kind, unit] = kindOf(quantity);
    const std::string ownName = !row.direction.empty() ? row.direction
                                : *kind                ? std::string(kind)
                                                       : std::string("levels");
    const bool own = row.channel.empty();
    const Key key{placed.machine->entry.id,
                  row.time,
                  row.point,
                  own ? ownName : row.channel,
                  own ? std::string(kind) : row.channelQuantity,
                  own ? std::string(unit) : row.channelUnit,
                  row.direction};
    const auto [at, fresh] = batch_.try_emplace(key);
    TrendRow& trend = at->second;
    if (fresh) {
        std::tie(std::ignore, trend.time, trend.point, trend.channel, trend.quantity, trend.unit,
                 trend.direction) = key;
        trend.running = row.running;
        lines_[key] = row.line;
    }
    auto& there = trend.values[std::size_t(quantity)];
    if (there && *there != value)
        objections_.add(
            row.line, fmt::format("{} stands twice for one moment, with another value", columnOf(quantity)));
    else
        there = value;
    if (quantity == Quantity::VelocityRms) grade(*placed.description, trend);
}

// The first of two sets where the support is not known, as for recordings.
void Intake::grade(const Machine& machine, TrendRow& trend) {
    const Point* point = machine.pointById(trend.point);
    const auto limits = limitsFor(machine, *point);
    if (!limits || limits->sets.empty()) return;
    const Zone zone = zoneOf(*trend.values[std::size_t(Quantity::VelocityRms)], limits->sets[0]);
    trend.zone = toText(zone);
    if (zone != Zone::D) trend.nextLimitMmS = limits->sets[0].velocity[std::size_t(zone)];
}

Result<std::optional<std::int64_t>> Intake::channelOf(const Key& key) {
    const auto& [machine, time, point, name, quantity, unit, direction] = key;
    if (!channels_.count(machine)) {
        auto all = fleet_.trends().channels(machine);
        if (!all) return fail(all.error());
        channels_[machine] = std::move(*all);
    }
    for (const ChannelEntry& c : channels_[machine])
        if (c.point == point && c.name == name && c.quantity == quantity && c.unit == unit &&
            c.direction == direction)
            return std::optional(c.id);
    return std::optional<std::int64_t>();
}

// Takes out what the fleet file has for that moment already.
Status Intake::withoutKnown(const Key& key, TrendRow& trend) {
    const auto channel = channelOf(key);
    if (!channel) return fail(channel.error());
    if (!*channel) return {};
    const auto known = fleet_.trends().values(**channel, trend.time, trend.time);
    if (!known) return fail(known.error());
    for (std::size_t q = 0; q < kQuantities; ++q)
        for (const TrendValues& there : *known) {
            if (!trend.values[q] || !there.values[q]) continue;
            const bool same =
                std::abs(*trend.values[q] - *there.values[q]) <= kSameValue * std::abs(*there.values[q]);
            if (same)
                ++taken_.already;
            else
                objections_.add(lines_[key],
                                fmt::format("{} is another value than the one kept for that moment",
                                            columnOf(Quantity(q))));
            trend.values[q].reset();
        }
    return {};
}

NewRecording Intake::recordingOf(const Key& key, const TrendRow& trend) const {
    auto recording = std::make_shared<Recording>();
    const std::int64_t machine = std::get<0>(key);
    recording->file = file_;
    recording->machine = tags_.at(machine);
    recording->point = trend.point;
    recording->time = trend.time;
    Channel channel;
    channel.name = trend.channel;
    channel.point = trend.point;
    channel.unit = trend.unit;
    recording->channels.push_back(channel);
    NewRecording made;
    made.machine = machine;
    std::string what = "levels";
    for (std::size_t q = 0; q < kQuantities; ++q)
        if (trend.values[q]) what += std::string(" ") + columnOf(Quantity(q));
    made.key =
        recordingKey(what + " " + trend.quantity + " " + trend.unit + " " + trend.direction, *recording);
    made.recording = std::move(recording);
    made.format = kLevelsFormat;
    made.levelsOnly = true;
    made.running = trend.running;
    made.speedRpm = trend.values[std::size_t(Quantity::SpeedRpm)];
    made.trends.push_back(trend);
    made.late = wanted_.closed.covers(trend.time);
    return made;
}

Status Intake::store() {
    std::vector<NewRecording> fresh;
    std::size_t levels = 0;
    for (auto& [key, trend] : batch_) {
        if (auto good = withoutKnown(key, trend); !good) return good;
        const auto count = std::count_if(std::begin(trend.values), std::end(trend.values),
                                         [](const auto& v) { return v.has_value(); });
        if (count == 0) continue;
        fresh.push_back(recordingOf(key, trend));
        levels += std::size_t(count);
    }
    batch_.clear();
    lines_.clear();
    rows_ = 0;
    if (!fresh.empty() && wanted_.store) {
        const auto put = fleet_.recordings().putAll(fresh);
        if (!put) return fail(put.error());
        channels_.clear();
    }
    for (const NewRecording& one : fresh)
        taken_.late += one.late;
    taken_.levels += levels;
    return {};
}

}  // namespace

Result<LevelsTaken> takeLevels(FleetFile& fleet, const std::string& text, const std::string& file,
                               const LevelsWanted& wanted) {
    return Intake(fleet, file, wanted).take(text);
}

}  // namespace fettle
