#include "ui/model/selection.h"

namespace fettle {

// Everything is already cleared when the first signal is sent.
void Selection::setMachine(const QString& tag) {
    if (tag == machine_) return;
    const bool recording = recording_ || time_, fault = !fault_.isEmpty() || !at_.isEmpty();
    const bool channel = !channel_.isEmpty(), cursor = cursorHz_.has_value();
    machine_ = tag;
    recording_.reset();
    time_.reset();
    cursorHz_.reset();
    fault_.clear();
    at_.clear();
    channel_.clear();
    emit machineChanged();
    if (recording) emit recordingChanged();
    if (fault) emit faultChanged();
    if (channel) emit channelChanged();
    if (cursor) emit cursorChanged();
}

void Selection::setRecording(std::optional<std::int64_t> id, std::optional<Instant> time) {
    if (id == recording_ && time == time_) return;
    recording_ = id;
    time_ = time;
    emit recordingChanged();
}

void Selection::setFault(const QString& fault, const QString& at) {
    if (fault == fault_ && at == at_) return;
    fault_ = fault;
    at_ = at;
    emit faultChanged();
}

void Selection::setChannel(const QString& channel) {
    if (channel == channel_) return;
    channel_ = channel;
    emit channelChanged();
}

void Selection::setCursorHz(std::optional<double> hz) {
    if (hz == cursorHz_) return;
    cursorHz_ = hz;
    emit cursorChanged();
}

void Selection::setSpan(TimeSpan span) {
    if (span == span_) return;
    span_ = span;
    emit spanChanged();
}

void Selection::setUnits(Units units) {
    if (units == units_) return;
    units_ = units;
    emit unitsChanged();
}

}  // namespace fettle
