// Why: a value of a trend is compared with others taken at like speed and load, so it is read together with
// these. Running recordings alone. `RunValue::time` is the site's clock (site_calendar.h), so that its day is
// the site's. Thread: as the FleetFile; reads only. Errors: those of the stores.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/store/fleet_file.h"
#include "core/trend/condition.h"

namespace fettle {

// What one channel has recorded while running within a span of time.
class ChannelRuns {
  public:
    static Result<ChannelRuns> read(FleetFile& fleet, const ChannelEntry& channel,
                                    const std::string& timeZone, Instant from, Instant until);

    const ChannelEntry& channel() const { return channel_; }
    Result<std::vector<RunValue>> of(FleetFile& fleet, Quantity quantity) const;
    Result<std::vector<RunValue>> of(FleetFile& fleet, const MeasureSeries& series) const;
    // Of its recordings, by the site's clock.
    struct Moment {
        RunValue run;
        std::int64_t recording = 0;
    };
    std::vector<Moment> moments() const;

  private:
    std::vector<RunValue> with(const std::vector<TrendPoint>& points) const;

    ChannelEntry channel_;
    Instant from_{}, until_{};
    std::map<std::int64_t, RunValue> runs_;  // by recording, without a value
};

// Of vibration, at least one running recording within the span.
Result<std::vector<ChannelRuns>> vibrationRuns(FleetFile& fleet, std::int64_t machine,
                                               const std::string& timeZone, Instant from, Instant until);

}  // namespace fettle
