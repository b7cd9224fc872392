#include "app/cli/alert_settings.h"

#include <CLI/CLI.hpp>
#include <algorithm>

#include "core/base/text.h"
#include "core/exchange/command_words.h"

namespace fettle {

namespace {

constexpr const char *kRules = "Rules", *kWays = "Delivery";

template <class Value, class Target>
void setIf(const std::optional<Value>& given, Target& target) {
    if (given) target = *given;
}

Status setQuiet(const std::string& text, AlertWays& ways) {
    if (text == "none") {
        ways.quietFrom = ways.quietTo = 0;
        return {};
    }
    const auto ends = split(text, '-');
    const auto from = ends.size() == 2 ? clockFrom(std::string(trimmed(ends[0]))) : std::nullopt;
    const auto to = ends.size() == 2 ? clockFrom(std::string(trimmed(ends[1]))) : std::nullopt;
    if (!from || !to) return fail(ErrorKind::Invalid, "--quiet", "", "is as in 20:00-06:00, or none");
    ways.quietFrom = *from;
    ways.quietTo = *to;
    return {};
}

Status setPassword(const AlertWayOptions& options, MailWay& mail) {
    if (options.passwordFile) mail.password = {*options.passwordFile, "", {}};
    if (options.passwordEnvironment) mail.password = {"", *options.passwordEnvironment, {}};
    if (!options.passwordCommand) return {};
    auto words = commandWords(*options.passwordCommand, "--mail-password-command");
    if (!words) return fail(words.error());
    mail.password = {"", "", std::move(*words)};
    return {};
}

bool anyOfMail(const AlertWayOptions& o) {
    return o.server || o.security || o.from || o.user || o.passwordFile || o.passwordEnvironment ||
           o.passwordCommand || o.caFile || o.to || o.port || o.perHour || o.timeout;
}

Status setMail(const AlertWayOptions& o, AlertWays& ways) {
    if (o.noMail) ways.mail.reset();
    if (o.noMail || !anyOfMail(o)) return {};
    MailWay mail = ways.mail.value_or(MailWay());
    setIf(o.server, mail.server.host);
    setIf(o.security, mail.server.security);
    if (o.security && !o.port)
        mail.server.port = *o.security == "tls" ? 465 : *o.security == "none" ? 25 : 587;
    setIf(o.port, mail.server.port);
    setIf(o.user, mail.server.user);
    setIf(o.caFile, mail.server.caFile);
    setIf(o.timeout, mail.server.timeoutS);
    setIf(o.from, mail.from);
    setIf(o.to, mail.to);
    setIf(o.perHour, mail.perHour);
    if (auto good = setPassword(o, mail); !good) return good;
    ways.mail = std::move(mail);
    return {};
}

Status setCommand(const AlertWayOptions& o, AlertWays& ways) {
    if (o.noCommand) ways.command.reset();
    if (o.noCommand || !(o.command || o.commandPerHour || o.commandTimeout)) return {};
    CommandWay command = ways.command.value_or(CommandWay());
    if (o.command) {
        auto words = commandWords(*o.command, "--command");
        if (!words) return fail(words.error());
        command.words = std::move(*words);
    }
    setIf(o.commandPerHour, command.perHour);
    setIf(o.commandTimeout, command.timeoutS);
    ways.command = std::move(command);
    return {};
}

}  // namespace

AlertRule AlertRuleOptions::over(const std::vector<AlertRule>& rules) const {
    const auto old =
        std::find_if(rules.begin(), rules.end(), [&](const AlertRule& rule) { return rule.name == *name; });
    AlertRule rule = old == rules.end() ? AlertRule() : *old;
    rule.name = *name;
    setIf(kind, rule.kind);
    if (old == rules.end() && rule.kind == "silence") rule.hits = rule.of = 1;
    setIf(fault, rule.fault);
    setIf(grade, rule.grade);
    setIf(least, rule.least);
    setIf(hours, rule.leastHours);
    setIf(hits, rule.hits);
    setIf(of, rule.of);
    setIf(askSecond, rule.askSecond);
    setIf(machine, rule.machine);
    setIf(area, rule.area);
    setIf(criticality, rule.criticality);
    setIf(deliver, rule.deliver);
    setIf(enabled, rule.enabled);
    return rule;
}

bool AlertWayOptions::any() const {
    return anyOfMail(*this) || command || commandPerHour || commandTimeout || quiet || digestAt || noMail ||
           noCommand;
}

Status AlertWayOptions::applyTo(AlertWays& ways) const {
    if (auto good = setMail(*this, ways); !good) return good;
    if (auto good = setCommand(*this, ways); !good) return good;
    if (quiet)
        if (auto good = setQuiet(*quiet, ways); !good) return good;
    if (!digestAt) return {};
    const auto at = clockFrom(*digestAt);
    if (!at) return fail(ErrorKind::Invalid, "--digest-at", "", "is a time of day as in 07:00");
    ways.digestAt = *at;
    return {};
}

void addRuleOptions(CLI::App& sub, AlertRuleOptions& o) {
    auto* rule =
        sub.add_option("--rule", o.name, "set the rule of this name: the options below, the rest stays");
    auto* remove = sub.add_option("--remove-rule", o.remove, "remove the rule of this name")->excludes(rule);
    const auto with = [rule](CLI::Option* option) { option->needs(rule)->group(kRules); };
    with(sub.add_option("--kind", o.kind, "weight zone stage growth silence")
             ->check(CLI::IsMember({"weight", "zone", "stage", "growth", "silence"})));
    with(sub.add_option("--fault", o.fault, "weight, stage: fault key or its beginning; empty: any"));
    with(sub.add_option("--grade", o.grade, "zone: C or D; stage: early, developed or late"));
    with(sub.add_option("--least", o.least,
                        "weight: decibans; growth: percent in a week; silence: times the interval"));
    with(sub.add_option("--hours", o.hours, "silence: and at least so many hours"));
    with(sub.add_option("--hits", o.hits, "in so many recordings"));
    with(sub.add_option("--of", o.of, "of the newest running ones of a point"));
    with(sub.add_option("--ask-second", o.askSecond,
                        "one asks for another, which makes two enough: true false"));
    with(sub.add_option("--machine", o.machine, "of this machine alone; empty: all"));
    with(sub.add_option("--area", o.area, "of this area alone; empty: all"));
    with(sub.add_option("--criticality", o.criticality, "of A, B or C alone; empty: all"));
    with(sub.add_option("--deliver", o.deliver,
                        "now (in quiet hours too), day (when they end), digest (once a day), list (not sent)")
             ->check(CLI::IsMember({"now", "day", "digest", "list"})));
    with(sub.add_option("--enabled", o.enabled, "true false"));
    rule->group(kRules);
    remove->group(kRules);
}

void addWayOptions(CLI::App& sub, AlertWayOptions& o) {
    const auto in = [](CLI::Option* option) { return option->group(kWays); };
    in(sub.add_option("--mail-server", o.server, "computer that takes mail"));
    in(sub.add_option("--mail-security", o.security,
                      "starttls (587), tls (465), none (25, this computer alone)")
           ->check(CLI::IsMember({"starttls", "tls", "none"})));
    in(sub.add_option("--mail-port", o.port, "its port, where it is another"));
    in(sub.add_option("--mail-user", o.user, "login name; empty: no login"));
    in(sub.add_option("--mail-password-file", o.passwordFile,
                      "file with the password in its first line, readable by its owner alone"));
    in(sub.add_option("--mail-password-environment", o.passwordEnvironment,
                      "environment variable that holds the password"));
    in(sub.add_option("--mail-password-command", o.passwordCommand,
                      "program that prints the password, by its whole path: a line, words with blanks "
                      "between double quotes, or a JSON list"));
    in(sub.add_option("--mail-ca", o.caFile, "certificates of an authority of one's own (PEM)"));
    in(sub.add_option("--mail-from", o.from, "address the mails come from"));
    in(sub.add_option("--mail-to", o.to, "addresses the mails go to, each gets its own"));
    in(sub.add_option("--mail-per-hour", o.perHour,
                      "mails an hour to one address (6); the rest in one digest"));
    in(sub.add_option("--mail-timeout", o.timeout, "seconds a mail may take (60)"));
    in(sub.add_flag("--no-mail", o.noMail, "no mails any more"));
    in(sub.add_option("--command", o.command,
                      "program to run, the alert as JSON on its input, by its whole path: a line, words with "
                      "blanks between double quotes, or a JSON list"));
    in(sub.add_option("--command-per-hour", o.commandPerHour, "runs an hour (60)"));
    in(sub.add_option("--command-timeout", o.commandTimeout, "seconds it may take (30), then it is killed"));
    in(sub.add_flag("--no-command", o.noCommand, "no program any more"));
    in(sub.add_option("--quiet", o.quiet,
                      "hours of the site without mails but of rules that say now: 20:00-06:00"));
    in(sub.add_option("--digest-at", o.digestAt, "when the digest goes: 07:00"));
}

}  // namespace fettle
