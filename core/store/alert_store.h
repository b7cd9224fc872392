// Why: what is told between two rounds, kept: the rules, the alerts they raised, and what of them still has
// to be sent where. One alert a machine, fault and place stands until it is both acknowledged and ended. What
// is to be sent is written in the transaction that raises the alert, so that a kill loses none: items wait
// until a message is made of them, a message until it is noted as sent. Settings of the delivery are a
// document of core/fleet/alert_ways; the store keeps it as it is. Times UTC. Thread: that of the FleetFile.
// Errors: NotFound for a machine, rule or alert that is not there; Invalid for an alert acknowledged twice.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/base/time.h"

namespace fettle {

class Database;

struct AlertRule {
    std::int64_t id = 0;
    std::string name;
    std::string kind = "weight";  // weight | zone | stage | growth | silence
    std::string fault;            // weight, stage: a key or how keys begin; empty: any
    std::string grade;            // zone: C | D; stage: early | developed | late
    std::optional<double> least;  // weight: decibans; growth: percent in a week; silence: times the interval
    std::optional<double> leastHours;        // silence: and at least so long
    int hits = 3, of = 5;                    // so many of the newest running recordings of a point
    bool askSecond = false;                  // one asks for another recording, which makes two enough
    std::string machine, area, criticality;  // empty: all
    std::string deliver = "day";             // now | day | digest | list
    bool enabled = true;
};

struct Alert {
    std::int64_t id = 0;
    std::string machine, service, area, criticality;  // tag, and what the register says of it
    std::string fault, at;
    std::string rule, kind, deliver;
    Instant since{}, raised{}, seen{};
    double value = 0, told = 0;
    std::string unit, words;
    std::optional<Instant> ended, acknowledged;
    std::string acknowledgedBy, acknowledgedWhy;

    // open | acknowledged | cleared
    const char* state() const { return !acknowledged ? "open" : ended ? "cleared" : "acknowledged"; }
};

struct AlertItem {
    std::int64_t id = 0, alert = 0;
    std::string way, event;  // event: raised | grown
    bool digest = false;
    Instant due{};
};

struct AlertMessage {
    std::int64_t id = 0;
    std::string way, messageId;
    bool digest = false;
    Instant made{}, nextTry{}, heldUntil{};
    int attempts = 0;
    std::string error;
    std::optional<Instant> sent;
};

// What became of an alert on one way.
struct AlertDelivery {
    std::string machine, fault, at;  // of the alert; machine: tag
    Instant raised{};                // that alert
    AlertItem item;
    std::string dropped;  // why it is not told after all
    std::optional<AlertMessage> message;
};

class AlertStore {
  public:
    explicit AlertStore(Database& database) : database_(database) {}

    Result<std::vector<AlertRule>> rules();
    Status putRule(const AlertRule& rule);  // by name: a new one, or in the place of the one of that name
    Status removeRule(const std::string& name);

    // Newest first; without the cleared ones unless asked for. An empty machine: all.
    Result<std::vector<Alert>> alerts(bool clearedToo, const std::string& machine = "");
    Result<Alert> alert(std::int64_t id);
    Result<std::size_t> openCount();
    Result<std::int64_t> add(const Alert& alert);
    Status update(const Alert& alert);  // what changes while it stands, by its id
    Status acknowledge(std::int64_t id, const std::string& by, const std::string& why, Instant now);

    Status addItem(const AlertItem& item);
    Result<std::vector<AlertItem>> waitingItems();  // in no message and not dropped, by due and id
    Result<std::vector<AlertItem>> itemsOf(std::int64_t message);
    Status dropItem(std::int64_t id, const std::string& why);
    // The id; `items` are in it from now on.
    Result<std::int64_t> addMessage(const AlertMessage& message, const std::vector<std::int64_t>& items);
    Result<std::vector<AlertMessage>> unsentMessages();
    // A message that was not sent, with all it tells.
    Status dropMessage(std::int64_t id, const std::string& why);
    Result<std::vector<AlertMessage>> newestMessages(std::size_t most);  // of all ways, newest first
    // Every item there ever was, in the order of their ids, none held longer than `take` needs.
    Status eachDelivery(const std::function<void(const AlertDelivery&)>& take);
    Result<std::size_t> madeSince(const std::string& way, Instant since);
    // True where nobody held it at `now`; then the caller does until `until`.
    Result<bool> hold(std::int64_t message, Instant now, Instant until);
    Status noteSent(std::int64_t message, Instant when);
    Status noteFailed(std::int64_t message, const std::string& error, Instant nextTry);

    Result<std::string> setting(const std::string& key);  // empty: not set
    Status setSetting(const std::string& key, const std::string& value);

    // Machines with recordings that came in after recording `id`, taken at `since` or later; and the newest
    // recording's id. One step along the primary key: costs what is new, not what is there.
    struct NewWork {
        std::vector<std::int64_t> machines;
        std::int64_t newest = 0;
    };
    Result<NewWork> newWork(std::int64_t afterRecording, Instant since);

    // Running recordings of a point within [from, until], newest first, at most so many: what rules read of
    // one without its examination. What lies between is passed over along the key, within these moments.
    // `level`: the largest velocity r.m.s. of its channels and that one's zone.
    struct Heard {
        std::int64_t id = 0;
        Instant time{};
        std::optional<double> levelMmS, nextLimitMmS;
        std::string zone;
    };
    Result<std::vector<Heard>> heard(std::int64_t machine, const std::string& point, Instant from,
                                     Instant until, std::size_t most);
    struct Weighed {
        std::string fault, at;
        double dban = 0;
    };
    Result<std::vector<Weighed>> weighed(std::int64_t machine, Instant time, std::int64_t recording);
    // When each point of a machine was last heard up to `until`.
    struct LastHeard {
        std::string point;
        Instant time{};
    };
    Result<std::vector<LastHeard>> lastHeard(std::int64_t machine, Instant until);

  private:
    Database& database_;
};

}  // namespace fettle
