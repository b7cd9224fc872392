// Why: a kept round never changes, so a recording that comes for a week whose list is kept already, its round
// open or closed, is marked late and opens a line in the next round. Read once, when an import begins. Days
// are those of the site's calendar. Thread: made on one, then read by any. Errors: those of the stores and of
// the site's time zone.
#pragma once

#include <vector>

#include "core/store/fleet_file.h"

namespace fettle {

class ClosedPeriods {
  public:
    static Result<ClosedPeriods> of(FleetFile& fleet);
    bool covers(Instant time) const;

  private:
    struct Span {
        Instant from, end;  // [from, end)
    };
    std::vector<Span> spans_;
};

}  // namespace fettle
