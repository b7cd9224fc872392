#include "core/fleet/alerts.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "core/base/text.h"
#include "core/fleet/alert_ways.h"
#include "core/fleet/asks.h"
#include "core/fleet/who.h"
#include "core/store/day.h"

namespace fettle {

namespace {

constexpr std::chrono::minutes kSilenceEvery{10};
constexpr std::int64_t kMarkEvery = 500;  // recordings of a backlog between two notes of how far it is

// What was found of one machine, before anything is written.
struct LookedAt {
    HeardMachine machine;
    AlertsNow now;
    bool silenceOnly = false;
};

std::int64_t numberIn(const std::string& text) {
    return parseInteger(text).value_or(0);
}

class Raising {
  public:
    Raising(FleetFile& fleet, const AlertRun& run)
        : fleet_(fleet),
          all_(run.which == AlertRun::Which::All),
          now_(run.now == Instant{} ? nowUtc() : run.now),
          cancel_(run.cancel) {}

    Result<AlertsRaised> raise() {
        if (!fleet_.writable()) return fail(ErrorKind::Unwritable, fleet_.path(), "", fleet_.word());
        if (auto good = find(); !good) return fail(good.error());
        if (!silence_ && fresh_.empty()) return noteBacklog().map([this] { return done_; });
        if (auto good = look(); !good) return fail(good.error());
        if (cancel_.cancelled()) return AlertsRaised{};
        if (auto good = fleet_.together([this] { return write(); }); !good) return fail(good.error());
        if (auto good = askForSeconds(); !good) return fail(good.error());
        return done_;
    }

  private:
    Status find();
    Status noteBacklog();
    Status look();
    Status lookAt(const MachineEntry& machine, bool silenceOnly);
    Status write();
    Status step(AlertStep& step);
    Status tell(const Alert& alert, const char* event);
    Status askForSeconds();

    FleetFile& fleet_;
    bool all_, silence_ = false;
    Instant now_;
    const CancelToken cancel_;
    std::int64_t lookedTo_ = 0, newest_ = 0;
    std::vector<std::int64_t> fresh_;
    std::vector<AlertRule> rules_, silenceRules_;
    std::vector<LookedAt> looked_;
    std::set<std::string> removed_;  // tags no longer in service
    AlertWays ways_;
    std::string timeZone_;
    AlertsRaised done_;
};

Status Raising::find() {
    const auto mark = fleet_.alerts().setting("looked_to"), silence = fleet_.alerts().setting("silence");
    if (!mark) return fail(mark.error());
    if (!silence) return fail(silence.error());
    lookedTo_ = numberIn(*mark);
    const Instant last{std::chrono::milliseconds(numberIn(*silence))};
    silence_ = all_ || last > now_ || now_ - last >= kSilenceEvery;
    const auto work = fleet_.alerts().newWork(lookedTo_, now_ - kAlertWindow);
    if (!work) return fail(work.error());
    newest_ = work->newest;
    fresh_ = work->machines;
    return {};
}

Status Raising::noteBacklog() {
    if (newest_ - lookedTo_ < kMarkEvery) return {};
    return fleet_.alerts().setSetting("looked_to", std::to_string(newest_));
}

Status Raising::look() {
    auto rules = fleet_.alerts().rules();
    if (!rules) return fail(rules.error());
    rules_ = std::move(*rules);
    std::copy_if(rules_.begin(), rules_.end(), std::back_inserter(silenceRules_),
                 [](const AlertRule& rule) { return rule.kind == "silence"; });
    const auto machines = fleet_.machines().all();
    if (!machines) return fail(machines.error());
    for (const MachineEntry& machine : *machines) {
        if (cancel_.cancelled()) break;
        if (!machine.removedOn.empty()) {
            removed_.insert(machine.tag);
            continue;
        }
        const bool fresh = all_ || std::find(fresh_.begin(), fresh_.end(), machine.id) != fresh_.end();
        if (!fresh && !silence_) continue;
        if (auto good = lookAt(machine, !fresh); !good) return good;
    }
    done_.machines = looked_.size();
    return {};
}

// A machine whose description does not hold yet has nothing to say.
Status Raising::lookAt(const MachineEntry& machine, bool silenceOnly) {
    auto heard =
        silenceOnly ? heardPoints(fleet_, machine, now_) : heardMachine(fleet_, machine, rules_, now_);
    if (!heard) return heard.error().kind == ErrorKind::NotFound ? Status{} : fail(heard.error());
    LookedAt looked;
    looked.now = alertsNow(silenceOnly ? silenceRules_ : rules_, *heard, now_, true);
    looked.machine = std::move(*heard);
    looked.silenceOnly = silenceOnly;
    looked_.push_back(std::move(looked));
    return {};
}

Status Raising::write() {
    auto ways = alertWays(fleet_);
    const auto site = fleet_.site();
    if (!site) return fail(site.error());
    if (ways) ways_ = std::move(*ways);  // settings that cannot be read: the list alone
    timeZone_ = site->timeZone;
    const auto standing = fleet_.alerts().alerts(false);
    if (!standing) return fail(standing.error());
    std::map<std::string, std::vector<Alert>> byMachine;
    for (const Alert& alert : *standing)
        byMachine[alert.machine].push_back(alert);
    for (Alert alert : *standing)
        if (removed_.count(alert.machine) && !alert.ended) {
            alert.ended = now_;
            if (auto good = fleet_.alerts().update(alert); !good) return good;
        }
    for (const LookedAt& looked : looked_) {
        std::vector<Alert> own = byMachine[looked.machine.tag];
        if (looked.silenceOnly)
            std::erase_if(own, [](const Alert& alert) { return alert.kind != "silence"; });
        for (AlertStep& one : alertSteps(looked.now, own, looked.machine, now_, true))
            if (auto good = step(one); !good) return good;
    }
    if (silence_)
        if (auto good =
                fleet_.alerts().setSetting("silence", std::to_string(now_.time_since_epoch().count()));
            !good)
            return good;
    return fleet_.alerts().setSetting("looked_to", std::to_string(newest_));
}

Status Raising::step(AlertStep& step) {
    Alert& alert = step.alert;
    switch (step.kind) {
        case AlertStep::Kind::Raise: {
            const auto id = fleet_.alerts().add(alert);
            if (!id) return fail(id.error());
            alert.id = *id;
            ++done_.raised;
            return tell(alert, "raised");
        }
        case AlertStep::Kind::Grow:
            ++done_.grown;
            if (auto good = fleet_.alerts().update(alert); !good) return good;
            return tell(alert, "grown");
        case AlertStep::Kind::End:
            ++done_.ended;
            break;
        case AlertStep::Kind::Keep:
            break;
    }
    return fleet_.alerts().update(alert);
}

Status Raising::tell(const Alert& alert, const char* event) {
    if (alert.deliver == "list") return {};
    const auto due = dueTime(alert.deliver, ways_, timeZone_, now_);
    if (!due) return fail(due.error());
    for (const std::string& way : ways_.names())
        if (auto good = fleet_.alerts().addItem({0, alert.id, way, event, alert.deliver == "digest", *due});
            !good)
            return good;
    return {};
}

Status Raising::askForSeconds() {
    for (const LookedAt& looked : looked_)
        for (const AlertAsk& wanted : looked.now.asks) {
            Ask ask;
            ask.request.machine = looked.machine.tag;
            ask.request.point = wanted.point;
            ask.request.why = wanted.why;
            ask.request.askedBy = "alert rule";
            const auto put = putAsk(fleet_, ask);
            if (!put) return fail(put.error());
            ++done_.asked;
        }
    return {};
}

}  // namespace

Result<AlertsRaised> raiseAlerts(FleetFile& fleet, const AlertRun& run) {
    return Raising(fleet, run).raise();
}

Status acknowledgeAlert(FleetFile& fleet, std::int64_t id, const std::string& by, const std::string& why,
                        Instant now) {
    if (trimmed(why).empty())
        return fail(ErrorKind::Invalid, fleet.path(), fmt::format("alert {}", id),
                    "is acknowledged with a reason: what was seen or done");
    return fleet.alerts().acknowledge(id, orLoginName(by), std::string(trimmed(why)), now);
}

}  // namespace fettle
