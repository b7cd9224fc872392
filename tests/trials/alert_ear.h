// Why: what alerts say of made recordings is asked of the very thing that ships: a fleet file, its rules as
// they come, `raiseAlerts` after every recording as intake calls it. Each alert is acknowledged at once, so
// that it may be raised anew when it comes back: what is counted is what somebody would be told. Thread: each
// ear its own. Errors: end the program with a word.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/fleet/alerts.h"
#include "tests/trials/made_weeks.h"

namespace fettle::trials {

class AlertEar {
  public:
    // `perWeek`: recordings of a node, as the description is made to say; `path`: of a fleet file that is
    // made, and removed at the end.
    AlertEar(const WeekMaker& maker, int perWeek, std::string path);
    ~AlertEar();
    AlertEar(const AlertEar&) = delete;
    AlertEar& operator=(const AlertEar&) = delete;

    // Into the file, the rules not asked.
    void store(NewRecording row);
    // A minute after the recording; what is raised by it.
    std::vector<Alert> hear(const RecordingPtr& recording);
    // The rules asked though nothing came in.
    std::vector<Alert> look(Instant now);
    std::size_t grown() const { return grown_; }

  private:
    std::string path_;
    Machine machine_;
    std::unique_ptr<FleetFile> fleet_;
    std::int64_t id_ = 0, last_ = 0;
    std::size_t grown_ = 0;
};

}  // namespace fettle::trials
