// Why: workers ask for the machine of every recording; the register is read and parsed once, as it stood when
// the work began, and then shared. Which description holds: core/store/register_store.h. Thread: made on one,
// then read by any. Errors: those of the register; a description that cannot be parsed says so when it is
// asked for.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "core/store/fleet_file.h"

namespace fettle {

struct BookedMachine {
    MachineEntry entry;
    struct Description {
        std::string from;                        // first day; empty: from the beginning
        std::shared_ptr<const Machine> machine;  // null: `problem`
        Error problem;
    };
    std::vector<Description> descriptions;  // by `from`
    std::string timeZone = "UTC";           // of the site

    Result<std::string> dayOf(Instant time) const;  // in the site's calendar
    // NotFound where the recording is older than the first description, else what is wrong with the one that
    // holds.
    Result<std::shared_ptr<const Machine>> describedAt(Instant time) const;
};

class RegisterBook {
  public:
    static Result<RegisterBook> of(FleetFile& fleet);
    const BookedMachine* find(const std::string& tag) const;  // null: not in the register
    std::vector<const BookedMachine*> all() const;            // by tag

  private:
    std::map<std::string, BookedMachine> machines_;
};

}  // namespace fettle
