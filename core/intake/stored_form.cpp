#include "core/intake/stored_form.h"

#include "core/exchange/examination_json.h"

namespace fettle {

namespace {

// Where the support is not known two sets of limits apply; the first is the one findings are graded by.
void addZone(const ChannelLevels& levels, TrendRow& row) {
    if (levels.zones.empty()) return;
    row.zone = levels.zones[0].zone;
    row.nextLimitMmS = levels.zones[0].limit;
}

void set(TrendRow& row, Quantity quantity, std::optional<double> value) {
    row.values[std::size_t(quantity)] = value;
}

void addLevels(const ChannelLevels& levels, const ChannelExtras& extras, TrendRow& row) {
    set(row, Quantity::VelocityRms, levels.velocityRmsMmS);
    set(row, Quantity::AccelerationRms, levels.accelerationRmsG);
    set(row, Quantity::Peak, extras.peakG);
    set(row, Quantity::CrestFactor, levels.crestFactor);
    set(row, Quantity::Kurtosis, levels.kurtosis);
    set(row, Quantity::Order1, levels.order1MmS);
    set(row, Quantity::Order2, levels.order2MmS);
    set(row, Quantity::Order3, levels.order3MmS);
    set(row, Quantity::HighBand, extras.highBandG);
    set(row, Quantity::Offset, extras.offset);
}

void addOperation(const Recording& recording, const RecordingFacts& facts, TrendRow& row) {
    set(row, Quantity::SpeedRpm, facts.speed.rpm);
    set(row, Quantity::FrameTempC, recording.frameTempC);
    set(row, Quantity::AmbientTempC, recording.ambientTempC);
    set(row, Quantity::LoadPct, recording.loadPct);
}

TrendRow trendOf(const Recording& recording, const ChannelRole& role, const ExaminedRecording& examined,
                 std::size_t i) {
    const RecordingFacts& facts = examined.examination.recordings[0];
    const ChannelFacts& channel = facts.channels[i];
    TrendRow row;
    row.channel = channel.name;
    row.point = channel.point;
    row.quantity = channel.quantity;
    row.direction = channel.direction;
    row.unit = recording.channels[i].unit;
    if (row.unit.empty() && role.channel) row.unit = role.channel->unit;
    row.time = *recording.time;
    row.running = facts.running;
    addLevels(facts.levels[i], examined.extras[i], row);
    addOperation(recording, facts, row);
    addZone(facts.levels[i], row);
    return row;
}

WaterfallKind kindOf(const std::string& kind) {
    if (kind == "velocity") return WaterfallKind::Velocity;
    return kind == "acceleration" ? WaterfallKind::Acceleration : WaterfallKind::Envelope;
}

StoredSpectrum spectrumOf(const WaterfallLines& lines, const RecordingFacts& facts) {
    const ChannelFacts& channel = facts.channels[lines.channel];
    return {channel.name, channel.point, kindOf(lines.kind), lines.topHz, lines.lines};
}

StoredMeasure measureOf(const FaultMeasure& m, const RecordingFacts& facts) {
    const ChannelFacts& channel = facts.channels[m.channel];
    return {channel.name, channel.point, m.fault, m.at, m.name, m.unit, m.value};
}

// Of a grid, not of an inverter's output; kept with the first channel, as the whole node's.
void addMains(const RecordingFacts& facts, NewRecording& stored) {
    if (!facts.mains || facts.mains->output || facts.channels.empty()) return;
    const ChannelFacts& channel = facts.channels.front();
    stored.measures.push_back(
        {channel.name, channel.point, kSensorFault, channel.point, kMainsMeasure, "Hz", facts.mains->hz});
    stored.measures.push_back({channel.name, channel.point, kSensorFault, channel.point, kMainsHalfWidth,
                               "Hz", facts.mains->plusMinusHz});
}

}  // namespace

NewRecording storedForm(const RecordingPtr& recording, std::int64_t machine, const Machine& description,
                        const ExaminedRecording& examined) {
    const RecordingFacts& facts = examined.examination.recordings[0];
    NewRecording stored;
    stored.machine = machine;
    stored.recording = recording;
    stored.running = facts.running;
    stored.speedRpm = facts.speed.rpm;
    if (facts.speed.rpm) stored.speedPlusMinusRpm = facts.speed.plusMinusRpm;
    stored.engine = examined.examination.engine;
    stored.examinationJson = examinationAsText(examined.examination);
    for (const Hypothesis& h : examined.examination.considered)
        if (h.weightDban) stored.weights.push_back({h.fault, h.at, *h.weightDban});
    for (std::size_t i = 0; i < facts.channels.size(); ++i)
        stored.trends.push_back(trendOf(*recording, roleOf(description, *recording, i), examined, i));
    for (const WaterfallLines& lines : examined.waterfalls)
        stored.spectra.push_back(spectrumOf(lines, facts));
    for (const FaultMeasure& m : facts.measures)
        stored.measures.push_back(measureOf(m, facts));
    addMains(facts, stored);
    return stored;
}

}  // namespace fettle
