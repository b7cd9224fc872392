#include "ui/pages/recording_requests.h"

#include <algorithm>
#include <cmath>
#include <span>

#include "core/base/units.h"
#include "core/diagnosis/family.h"
#include "core/diagnosis/settings.h"
#include "core/dsp/orbit.h"
#include "core/fleet/machine_desk.h"
#include "core/fleet/sound_spectra.h"
#include "core/machine/forcing.h"
#include "ui/model/numbers.h"
#include "ui/model/words.h"
#include "ui/plot/readout.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr double kOrbitCornerHz = 5;  // of the unfiltered one, where the shaft is not slower than twice that
constexpr int kOrbitTurns = 5;
constexpr double kLeastBand = 1e-9;

using BandPtr = std::shared_ptr<SpectrumBandData>;

BandPtr bandOf(const SoundBand& sound, const QString& unit) {
    if (sound.band.spectra == 0) return nullptr;
    auto data = std::make_shared<SpectrumBandData>();
    data->name = tr("sound: %1 spectra, %2 to %3, median and 10 to 90 %, %4 Hz a cell")
                     .arg(sound.band.spectra)
                     .arg(dateText(sound.from), dateText(sound.to))
                     .arg(sound.band.topHz / double(sound.band.middle.size()), 0, 'f', 2);
    data->unit = unit;
    data->topHz = sound.band.topHz;
    data->low = sound.band.low;
    data->middle = sound.band.middle;
    data->high = sound.band.high;
    return data;
}

template <class Change>
void changeAll(SpectrumBandData& band, Change change) {
    const double cell = band.topHz / double(band.middle.size());
    for (std::vector<float>* values : {&band.low, &band.middle, &band.high})
        for (std::size_t i = 0; i < values->size(); ++i)
            (*values)[i] = float(change(double((*values)[i]), (double(i) + 0.5) * cell));
}

const Channel* channelNamed(const Recording& recording, const std::string& name) {
    for (const Channel& channel : recording.channels)
        if (channel.name == name) return &channel;
    return nullptr;
}

// Two radial directions of acceleration at a point that the recording has.
std::vector<const PointChannel*> radialOf(const Point& point, const Recording& recording) {
    std::vector<const PointChannel*> found;
    for (const char* direction : {"horizontal", "vertical", "radial"})
        for (const PointChannel& channel : point.channels)
            if (channel.quantity == "acceleration" && channel.direction == direction &&
                channelNamed(recording, channel.name) && found.size() < 2)
                found.push_back(&channel);
    return found;
}

// The first sample at a once-per-turn mark: where the tachometer's signal first rises through its middle.
std::optional<std::size_t> firstMark(const Point& point, const Recording& recording) {
    for (const PointChannel& channel : point.channels) {
        const Channel* tacho = channel.quantity == "tacho" ? channelNamed(recording, channel.name) : nullptr;
        if (!tacho || tacho->samples.empty()) continue;
        const auto [low, high] = std::minmax_element(tacho->samples.begin(), tacho->samples.end());
        const double middle = (*low + *high) / 2;
        for (std::size_t i = 1; i < tacho->samples.size() && *high > *low; ++i)
            if (tacho->samples[i - 1] < middle && tacho->samples[i] >= middle) return i;
    }
    return std::nullopt;
}

std::vector<int> ordersOf(OrbitOf of) {
    switch (of) {
        case OrbitOf::First:
            return {1};
        case OrbitOf::Second:
            return {2};
        case OrbitOf::FirstAndSecond:
            return {1, 2};
        case OrbitOf::FirstToFifth:
            return {1, 2, 3, 4, 5};
        case OrbitOf::Unfiltered:
            break;
    }
    return {};
}

std::vector<double> inG(const Channel& channel) {
    std::vector<double> g = channel.samples;
    if (channel.unit == "m/s2" || channel.unit == "m/s²")
        for (double& value : g)
            value /= kStandardGravity;
    return g;
}

QString ellipseWords(int order, const Ellipse& ellipse) {
    return tr("%1x: %2 by %3 µm peak, longer axis at %4 degrees")
        .arg(order)
        .arg(significant(ellipse.majorUm), significant(ellipse.minorUm))
        .arg(fixedText(ellipse.angleDeg, 0));
}

// From sample `first` on: where the path begins.
std::shared_ptr<OrbitData> orbitFrom(const Channel& across, const Channel& upright,
                                     const OrbitRequest& request, std::size_t first) {
    const std::vector<double> allX = inG(across), allY = inG(upright);
    const auto x = std::span(allX).subspan(first), y = std::span(allY).subspan(first);
    const std::vector<int> orders = ordersOf(request.of);
    auto data = std::make_shared<OrbitData>();
    OrbitPath path;
    if (orders.empty()) {
        const double corner = std::min(kOrbitCornerHz, request.shaftHz / 2);
        path = orbitUnfiltered(x, y, across.sampleRateHz, request.shaftHz, corner, kOrbitTurns);
        data->what = tr("Unfiltered above %1 Hz, %2 turns from the middle of the recording.")
                         .arg(fixedText(corner, 1))
                         .arg(kOrbitTurns);
    } else {
        path = orbitOfOrders(x, y, across.sampleRateHz, request.shaftHz, orders);
        QStringList words;
        for (const int order : orders) {
            const double hz = order * request.shaftHz;
            words << ellipseWords(order, ellipseOf(displacementAt(x, across.sampleRateHz, hz),
                                                   displacementAt(y, upright.sampleRateHz, hz)));
        }
        data->what = words.join(QLatin1Char('\n'));
    }
    data->x = std::move(path.first);
    data->y = std::move(path.second);
    return data;
}

QString turningWords(const Channel& across, const Channel& upright, const OrbitRequest& request,
                     const QString& acrossName, const QString& uprightName) {
    const int order = request.of == OrbitOf::Second ? 2 : 1;
    const double hz = order * request.shaftHz;
    const Ellipse ellipse = ellipseOf(displacementAt(inG(across), across.sampleRateHz, hz),
                                      displacementAt(inG(upright), upright.sampleRateHz, hz));
    if (ellipse.turns > 0) return tr("The path runs from %1 towards %2.").arg(acrossName, uprightName);
    if (ellipse.turns < 0) return tr("The path runs from %1 towards %2.").arg(uprightName, acrossName);
    return tr("The path is nearly a line and runs to and fro.");
}

}  // namespace

Result<RecordingPlots> plotsLike(FleetFile& fleet, std::int64_t recording, const std::string& channel,
                                 const std::string& view, std::optional<Instant> time) {
    if (time) {
        const auto entry = fleet.recordings().entry(recording);
        if (!entry) return fail(entry.error());
        if (entry->time != *time)
            return fail(ErrorKind::NotFound, fleet.path(), "recording " + std::to_string(recording),
                        "is not the one that was kept as reference");
    }
    auto plots = recordingPlots(fleet, recording, channel, view);
    if (plots || view.empty() || plots.error().kind != ErrorKind::NotFound) return plots;
    return recordingPlots(fleet, recording, channel, "");
}

Result<SoundBands> soundBands(FleetFile& fleet, const std::string& tag, const Machine& machine,
                              const ChannelEntry& channel, double shaftHz) {
    SoundBands bands;
    const auto read = [&](WaterfallKind kind, const QString& unit) -> Result<BandPtr> {
        const auto sound = soundBand(fleet, tag, machine, channel, kind, shaftHz);
        if (!sound) return fail(sound.error());
        if (!sound->why.empty()) bands.why = shown(sound->why);
        return bandOf(*sound, unit);
    };
    const auto velocity = read(WaterfallKind::Velocity, QStringLiteral("mm/s r.m.s."));
    if (!velocity) return fail(velocity.error());
    const auto acceleration = read(WaterfallKind::Acceleration, QStringLiteral("g r.m.s."));
    if (!acceleration) return fail(acceleration.error());
    const auto envelope = read(WaterfallKind::Envelope, QStringLiteral("dB over floor"));
    if (!envelope) return fail(envelope.error());
    bands.velocity = *velocity;
    bands.acceleration = *acceleration;
    if (*velocity) {
        auto moved = std::make_shared<SpectrumBandData>(**velocity);
        moved->unit = QStringLiteral("µm r.m.s.");
        changeAll(*moved, [](double mmS, double hz) { return displacementUm(mmS, Hertz(hz)); });
        bands.displacement = moved;
    }
    if (*envelope) {
        changeAll(**envelope,
                  [](double ratio, double) { return 20 * std::log10(std::max(ratio, kLeastBand)); });
        bands.envelope = *envelope;
    }
    return bands;
}

Result<OrbitAnswer> orbitOf(FleetFile& fleet, const Machine& machine, const OrbitRequest& request) {
    const Point* point = machine.pointById(request.point);
    if (!point) return OrbitAnswer{nullptr, tr("The point of this channel is not in the register.")};
    const auto kept = fleet.recordings().recording(request.recording);
    if (!kept) return fail(kept.error());
    const Recording& recording = **kept;
    const auto radial = radialOf(*point, recording);
    if (radial.size() < 2)
        return OrbitAnswer{nullptr, tr("No orbit: it needs two radial directions of acceleration at %1, and "
                                       "this recording has %2.")
                                        .arg(shown(request.point))
                                        .arg(radial.size())};
    if (recording.simultaneous != Simultaneous::Yes)
        return OrbitAnswer{nullptr,
                           tr("No orbit: the directions were not, or not known to be, recorded at the "
                              "same moment, so there is no phase between them.")};
    if (!(request.shaftHz > 0))
        return OrbitAnswer{nullptr, tr("No orbit: the shaft's speed in this recording is not known.")};
    const Channel &across = *channelNamed(recording, radial[0]->name),
                  &upright = *channelNamed(recording, radial[1]->name);
    if (across.sampleRateHz != upright.sampleRateHz || across.samples.size() != upright.samples.size())
        return OrbitAnswer{nullptr,
                           tr("No orbit: the two directions have different sample rates or lengths.")};
    const auto mark = firstMark(*point, recording);
    const std::size_t first = mark && *mark < across.samples.size() / 2 ? *mark : 0;
    auto data = orbitFrom(across, upright, request, first);
    data->mark = first > 0 && request.of != OrbitOf::Unfiltered;
    data->across = tr("%1 (%2)").arg(shown(across.name), shown(radial[0]->direction));
    data->upright = tr("%1 (%2)").arg(shown(upright.name), shown(radial[1]->direction));
    if (data->mark) data->turning = turningWords(across, upright, request, data->across, data->upright);
    return OrbitAnswer{data, {}};
}

std::vector<DefectBand> defectRanges(const BearingVariant& variant, double bearingShaftHz, double speedShare,
                                     double topHz) {
    const WeighingSettings settings;
    std::vector<DefectBand> ranges;
    for (const BearingElement element : kBearingElements)
        for (const FamilyLine& line : bearingFamily(element, variant).lines) {
            if (!line.carrier || line.order * bearingShaftHz > topHz) continue;
            const auto half = [&](double shift) {
                return (std::abs(line.slope) * shift + line.order * speedShare) * bearingShaftHz;
            };
            const double middle = line.order * bearingShaftHz;
            const double likely = half(2 * settings.shiftSpread), far = half(settings.shiftReach);
            DefectBand range{shown(line.name),
                             {},
                             middle - far,
                             middle + far,
                             middle - likely,
                             middle + likely,
                             int(element) + 10 * line.harmonic};
            range.note = tr("%1 Hz, likely %2 to %3 Hz, at the farthest %4 to %5 Hz")
                             .arg(fixedText(middle, 2))
                             .arg(fixedText(range.likelyFromHz, 2))
                             .arg(fixedText(range.likelyUntilHz, 2))
                             .arg(fixedText(range.fromHz, 2))
                             .arg(fixedText(range.untilHz, 2));
            ranges.push_back(std::move(range));
        }
    return ranges;
}

std::vector<NamedSpacing> spacingsOf(const Machine& machine, double shaftHz, double mainsHz) {
    std::vector<NamedSpacing> spacings;
    if (mainsHz > 0) spacings.push_back({tr("twice the mains"), 2 * mainsHz});
    if (!(shaftHz > 0)) return spacings;
    spacings.insert(spacings.begin(), {tr("shaft"), shaftHz});
    const int poles = machine.driver.poles.value_or(0);
    const double slipHz = poles > 0 ? 2 * mainsHz / poles - shaftHz : 0;
    if (mainsHz > 0 && slipHz > 0 && machine.driver.kind == DriverKind::Induction)
        spacings.push_back({tr("pole pass"), poles * slipHz});
    for (const Gear& gear : machine.gears) {
        const auto from = machine.shaftById(gear.from), to = machine.shaftById(gear.to);
        if (!from || !to) continue;
        const double slower = std::min(machine.shafts[*from].ratio, machine.shafts[*to].ratio);
        spacings.push_back({tr("slower shaft of %1").arg(shown(gear.id)), slower * shaftHz});
    }
    for (const BearingPlace& place : machine.bearings)
        if (!place.bearing.variants.empty())
            spacings.push_back(
                {tr("cage of %1").arg(shown(place.at)),
                 place.bearing.variants.front().orders.ftf * shaftHz * machine.shafts[place.shaft].ratio});
    return spacings;
}

}  // namespace fettle
