// Why: `alerts` sets rules and delivery by options; each given one changes that value and leaves the others
// as they are, so that an address can be changed without typing the server again.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/fleet/alert_ways.h"
#include "core/store/alert_store.h"

namespace CLI {
class App;
}

namespace fettle {

struct AlertRuleOptions {
    std::optional<std::string> name, remove, kind, fault, grade, machine, area, criticality, deliver;
    std::optional<double> least, hours;
    std::optional<int> hits, of;
    std::optional<bool> askSecond, enabled;

    // The rule of that name with what was given; a new one starts as 3 of 5 recordings at 30 decibans.
    AlertRule over(const std::vector<AlertRule>& rules) const;
};

struct AlertWayOptions {
    std::optional<std::string> server, security, from, user, passwordFile, passwordEnvironment,
        passwordCommand, caFile, command, quiet, digestAt;
    std::optional<std::vector<std::string>> to;
    std::optional<int> port, perHour, timeout, commandPerHour, commandTimeout;
    bool noMail = false, noCommand = false;

    bool any() const;
    // Whether a way is given whole or taken away: what cannot be read may then go.
    bool setsAnew() const { return noMail || noCommand || command || (server && from && to); }
    // Invalid where a list or a time of day is none.
    Status applyTo(AlertWays& ways) const;
};

void addRuleOptions(CLI::App& sub, AlertRuleOptions& options);
void addWayOptions(CLI::App& sub, AlertWayOptions& options);

}  // namespace fettle
