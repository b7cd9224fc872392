#include "core/fleet/side_by_side.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "core/fleet/machine_desk.h"

namespace fettle {

namespace {

constexpr auto kNear = std::chrono::hours(72);
constexpr std::size_t kMostTwins = 8;

const ChannelEntry* byId(const std::vector<ChannelEntry>& channels, std::int64_t id) {
    const auto at =
        std::find_if(channels.begin(), channels.end(), [id](const ChannelEntry& c) { return c.id == id; });
    return at == channels.end() ? nullptr : &*at;
}

std::string placeOfPoint(const Machine& machine, const std::string& point) {
    const Point* found = machine.pointById(point);
    return found ? found->at : "";
}

Beside relationOf(const Machine& machine, const ChannelEntry& here, const ChannelEntry& other) {
    if (other.id == here.id) return Beside::Here;
    if (other.point == here.point) return Beside::OtherDirection;
    const auto mine = machine.placeOf(placeOfPoint(machine, here.point));
    const auto its = machine.placeOf(placeOfPoint(machine, other.point));
    return mine && its && mine->component == its->component ? Beside::OtherEnd : Beside::OtherComponent;
}

// Values of one quantity about the moment.
Result<std::optional<double>> valueOf(FleetFile& fleet, const SideRow& row, Quantity quantity) {
    const auto points = fleet.trends().trend(row.channel.id, quantity, row.time, row.time);
    if (!points) return fail(points.error());
    for (const TrendPoint& point : *points)
        if (point.recording == row.recording) return point.value;
    return std::nullopt;
}

// The running recording nearest to the moment; false: none.
Result<bool> findRecording(FleetFile& fleet, Instant moment, SideRow& row) {
    const auto points =
        fleet.trends().trend(row.channel.id, Quantity::AccelerationRms, moment - kNear, moment + kNear);
    if (!points) return fail(points.error());
    const TrendPoint* nearest = nullptr;
    for (const TrendPoint& point : *points)
        if (isRunning(point.running) &&
            (!nearest || std::chrono::abs(point.time - moment) < std::chrono::abs(nearest->time - moment)))
            nearest = &point;
    if (!nearest) return false;
    row.recording = nearest->recording;
    row.time = nearest->time;
    return true;
}

// The highest of the cell the line stands in and its neighbours.
Status readLine(FleetFile& fleet, const SideQuestion& question, SideRow& row) {
    if (!question.order || !(row.shaftHz > 0)) return {};
    const auto spectra = fleet.trends().spectra(row.channel.id, question.kind, row.time, row.time);
    if (!spectra) return fail(spectra.error());
    for (const SpectrumAt& spectrum : *spectra) {
        const double cell = *question.order * row.shaftHz / spectrum.topHz * double(spectrum.lines.size());
        if (spectrum.recording != row.recording || !(cell < double(spectrum.lines.size()))) continue;
        const auto first = std::size_t(std::max(0.0, cell - 1));
        const auto last = std::min(spectrum.lines.size(), std::size_t(cell) + 2);
        row.line = double(*std::max_element(spectrum.lines.begin() + std::ptrdiff_t(first),
                                            spectrum.lines.begin() + std::ptrdiff_t(last)));
    }
    return {};
}

Status readValues(FleetFile& fleet, const SideQuestion& question, SideRow& row) {
    const auto take = [&](Quantity quantity, std::optional<double>& into) -> Status {
        auto value = valueOf(fleet, row, quantity);
        if (!value) return fail(value.error());
        into = *value;
        return {};
    };
    std::optional<double> rpm;
    for (const auto& [quantity, into] : {std::pair{Quantity::VelocityRms, &row.velocityMmS},
                                         {Quantity::Order1, &row.order1MmS},
                                         {Quantity::HighBand, &row.highBandG},
                                         {Quantity::SpeedRpm, &rpm}})
        if (auto taken = take(quantity, *into); !taken) return taken;
    row.shaftHz = rpm.value_or(0) / 60;
    return readLine(fleet, question, row);
}

// Machines of the same build, in the order of their tags.
Result<std::vector<MachineEntry>> twinsOf(FleetFile& fleet, const std::string& tag, const Machine& machine,
                                          const CancelToken& cancel) {
    const auto all = fleet.machines().all();
    if (!all) return fail(all.error());
    std::vector<MachineEntry> twins;
    for (const MachineEntry& entry : *all) {
        if (cancel.cancelled()) return fail(ErrorKind::Cancelled, "", "", "stopped on request");
        if (entry.tag == tag || !entry.removedOn.empty() || twins.size() >= kMostTwins) continue;
        const auto other = fleet.machines().describedAt(entry.tag);
        if (other && areTwins(machine, **other)) twins.push_back(entry);
    }
    return twins;
}

class Rows {
  public:
    Rows(FleetFile& fleet, const SideQuestion& question) : fleet_(fleet), question_(question) {}

    template <class Relation>
    Status add(const MachineEntry& entry, const Machine& machine, Relation relation) {
        const auto channels = fleet_.trends().channels(entry.id);
        if (!channels) return fail(channels.error());
        for (const ChannelEntry& channel : *channels) {
            if (channel.quantity != "acceleration") continue;
            SideRow row;
            row.beside = relation(channel);
            row.tag = entry.tag;
            row.service = entry.service;
            row.channel = channel;
            row.at = placeOfPoint(machine, channel.point);
            const auto there = findRecording(fleet_, question_.moment, row);
            if (!there) return fail(there.error());
            if (!*there) continue;
            if (auto read = readValues(fleet_, question_, row); !read) return read;
            rows_.push_back(std::move(row));
        }
        return {};
    }
    std::vector<SideRow> sorted() {
        std::stable_sort(rows_.begin(), rows_.end(),
                         [](const SideRow& a, const SideRow& b) { return a.beside < b.beside; });
        return std::move(rows_);
    }

  private:
    FleetFile& fleet_;
    const SideQuestion& question_;
    std::vector<SideRow> rows_;
};

}  // namespace

bool areTwins(const Machine& a, const Machine& b) {
    return a.driver.kind == b.driver.kind && a.driver.powerKw && a.driver.powerKw == b.driver.powerKw &&
           a.driver.poles == b.driver.poles && a.driven.kind == b.driven.kind;
}

Result<std::vector<SideRow>> sideBySide(FleetFile& fleet, const SideQuestion& question,
                                        const CancelToken& cancel) {
    const auto entry = fleet.machines().byTag(question.tag);
    if (!entry) return fail(entry.error());
    const auto machine = fleet.machines().describedAt(question.tag);
    if (!machine) return fail(machine.error());
    const auto channels = fleet.trends().channels(entry->id);
    if (!channels) return fail(channels.error());
    const ChannelEntry* here = byId(*channels, question.channel);
    if (!here)
        return fail(ErrorKind::NotFound, fleet.path(), question.tag, "the machine has no such channel");
    Rows rows(fleet, question);
    auto added = rows.add(*entry, **machine,
                          [&](const ChannelEntry& channel) { return relationOf(**machine, *here, channel); });
    if (!added) return fail(added.error());
    const auto twins = twinsOf(fleet, question.tag, **machine, cancel);
    if (!twins) return fail(twins.error());
    for (const MachineEntry& twin : *twins) {
        const auto other = fleet.machines().describedAt(twin.tag);
        if (!other) continue;
        if (auto done = rows.add(twin, **other, [](const ChannelEntry&) { return Beside::Twin; }); !done)
            return fail(done.error());
    }
    return rows.sorted();
}

}  // namespace fettle
