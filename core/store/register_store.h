// Why: the register: machines with their descriptions through time. A description holds from a date until the
// next one starts; an examination uses the one that was true when the recording was made, so that a bearing
// changed in May does not rewrite April. Descriptions are kept as the JSON they came as
// (machine.schema.json); tag, asset, service, area and criticality of the newest stand in columns of their
// own. Dates are days
// "2026-05-04" of the site's calendar; the empty date is "always". Errors: Invalid with the parser's place,
// NotFound for tags.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/base/time.h"
#include "core/machine/machine.h"

namespace fettle {

class Database;

struct MachineEntry {
    std::int64_t id = 0;
    std::string tag, asset, service, site, area, criticality;
    bool standby = false;
    bool byHand = false;  // put on the list by hand until taken off
    std::string byHandWhy;
    std::string removedOn;  // empty: in service
    std::string removedWhy;
};

struct DescriptionEntry {
    std::string from;        // valid from this day; empty: from the beginning
    std::string json;        // as given
    std::string note;        // why it changed
    std::string recordedAt;  // UTC, when it was entered
};

enum class PutMachine { Added, Changed, Unchanged };

class RegisterStore {
  public:
    explicit RegisterStore(Database& database) : database_(database) {}

    // Parses, checks, stores. `from` empty on the first description of a machine; on a later one it is the
    // day from which it holds, and an empty one replaces the newest description (a correction; the replaced
    // one stays in the file, marked). A removed machine is back in service. Unchanged: the description that
    // holds on that day says the same, in whatever order of keys.
    Result<PutMachine> put(const std::string& json, const std::string& file, const std::string& from = "",
                           const std::string& note = "");
    // An entry of a history that was written out: an empty `from` is the beginning. What is there already is
    // left as it is; so is a machine that was removed since.
    Result<PutMachine> putHistory(const std::string& json, const std::string& file, const std::string& from,
                                  const std::string& note = "");
    Status remove(const std::string& tag, const std::string& on, const std::string& why);
    Status setByHand(const std::string& tag, bool on, const std::string& why);

    Result<std::vector<MachineEntry>> all();  // in service and removed, by tag
    Result<MachineEntry> byTag(const std::string& tag);
    Result<std::vector<DescriptionEntry>> history(const std::string& tag);
    // The description that holds on a day (the newest where it is empty), parsed. NotFound where the first
    // one begins later.
    Result<std::shared_ptr<const Machine>> describedOn(const std::string& tag, const std::string& day);
    Result<std::shared_ptr<const Machine>> describedAt(const std::string& tag) {
        return describedOn(tag, "");
    }

  private:
    struct Given {
        const std::string &json, &file, &from, &note;
        bool history = false;
    };
    Result<PutMachine> put(const Given& given);
    Result<PutMachine> add(const Machine& machine, const Given& given);
    Result<PutMachine> change(std::int64_t machine, const Given& given);

    Database& database_;
};

}  // namespace fettle
