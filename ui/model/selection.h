// Why: the page shown is a function of (fleet file, machine, time, fault), and all parts of a page share one
// selection: choosing a line in the panel moves the cursor in every plot, choosing a moment in the trend
// moves the waterfall and loads that recording. Parts read it and set it, they never talk to each other.
// Setting what is already set emits nothing. Thread: the window's.
#pragma once

#include <QObject>
#include <QString>
#include <cstdint>
#include <optional>

#include "core/base/time.h"
#include "ui/model/units.h"

namespace fettle {

struct TimeSpan {
    Instant from{}, until{};
    bool operator==(const TimeSpan&) const = default;
};

class Selection : public QObject {
    Q_OBJECT
  public:
    using QObject::QObject;

    QString machine() const { return machine_; }  // tag; empty: none
    std::optional<std::int64_t> recording() const { return recording_; }
    std::optional<Instant> time() const { return time_; }         // of the chosen recording or moment
    QString fault() const { return fault_; }                      // fault key
    QString at() const { return at_; }                            // place of the fault
    QString channel() const { return channel_; }                  // "M-DE x"
    std::optional<double> cursorHz() const { return cursorHz_; }  // in the selected recording's spectra
    TimeSpan span() const { return span_; }                       // shown by waterfall and trend
    Units units() const { return units_; }                        // in which people read

    void setMachine(const QString& tag);  // clears all that hung on the old machine
    void setRecording(std::optional<std::int64_t> id, std::optional<Instant> time);
    void setFault(const QString& fault, const QString& at);
    void setChannel(const QString& channel);
    void setCursorHz(std::optional<double> hz);
    void setSpan(TimeSpan span);
    void setUnits(Units units);

  signals:
    void machineChanged();
    void recordingChanged();
    void faultChanged();
    void channelChanged();
    void cursorChanged();
    void spanChanged();
    void unitsChanged();

  private:
    QString machine_, fault_, at_, channel_;
    std::optional<std::int64_t> recording_;
    std::optional<Instant> time_;
    std::optional<double> cursorHz_;
    TimeSpan span_{};
    Units units_;
};

}  // namespace fettle
