#include "core/fleet/alert_post.h"

#include <fmt/format.h>

#include <algorithm>
#include <condition_variable>
#include <map>
#include <mutex>
#include <set>
#include <thread>

#include "core/base/text.h"
#include "core/exchange/mail_message.h"
#include "core/fleet/alert_text.h"
#include "core/fleet/alerts.h"
#include "core/store/day.h"

namespace fettle {

namespace {

using std::chrono::minutes;
using std::chrono::seconds;

constexpr seconds kHeldBeyond{60};  // after the longest time that sending may take
constexpr seconds kLookEvery{30};
constexpr const char* kStopped = "stopped on request";

class Sending {
  public:
    Sending(FleetFile& fleet, const CancelToken& cancel, const DeliveryDoors& doors)
        : fleet_(fleet), cancel_(cancel), doors_(doors) {}

    Status begin();
    const AlertWays& ways() const { return ways_; }
    // Takes the next message of a way that may be sent now, and holds it.
    Result<std::optional<AlertMessage>> next(const std::string& way, Instant now);
    Result<MailOutcome> send(const AlertMessage& message, Instant now);
    MailOutcome sendLetter(const std::string& way, const std::string& messageId, const AlertLetter& letter,
                           const Json& json, Instant now);
    std::size_t waiting(const std::string& way, Instant now);
    Status dropOthers();
    const SiteSettings& site() const { return site_; }

  private:
    Status form(const std::string& way, Instant now, std::optional<AlertMessage>& formed);
    Result<std::vector<AlertItem>> dueItems(const std::string& way, Instant now);
    MailOutcome mail(const std::string& to, const std::string& messageId, const AlertLetter& letter,
                     Instant now);
    MailOutcome run(const Json& json);
    seconds longest(const std::string& way) const;

    FleetFile& fleet_;
    const CancelToken& cancel_;
    const DeliveryDoors& doors_;
    AlertWays ways_;
    SiteSettings site_;
};

Status Sending::begin() {
    if (!fleet_.writable()) return fail(ErrorKind::Unwritable, fleet_.path(), "", fleet_.word());
    auto ways = alertWays(fleet_);
    if (!ways) return fail(ways.error());
    auto site = fleet_.site();
    if (!site) return fail(site.error());
    ways_ = std::move(*ways);
    site_ = std::move(*site);
    if (!ways_.any()) return {};
    const auto allowed = deliveryAllowed(fleet_);
    if (!allowed) return fail(allowed.error());
    if (*allowed) return {};
    return fail(
        ErrorKind::Invalid, fleet_.path(), "alert delivery",
        "was set by another user or on another computer, and nothing is sent or run until it is allowed "
        "here: fettle-cli alerts FLEET --allow-delivery, or Save in the alerts' settings");
}

seconds Sending::longest(const std::string& way) const {
    const int allowed = way == "command" ? (ways_.command ? ways_.command->timeoutS : 0)
                                         : (ways_.mail ? ways_.mail->server.timeoutS : 0);
    return seconds(allowed) + kHeldBeyond;
}

// Gravest first. What was acknowledged meanwhile needs no telling.
Result<std::vector<AlertItem>> Sending::dueItems(const std::string& way, Instant now) {
    const auto all = fleet_.alerts().waitingItems();
    if (!all) return fail(all.error());
    std::vector<std::pair<Alert, AlertItem>> due;
    for (const AlertItem& item : *all) {
        if (item.way != way || item.due > now) continue;
        const auto alert = fleet_.alerts().alert(item.alert);
        if (!alert) return fail(alert.error());
        if (!alert->acknowledged)
            due.emplace_back(*alert, item);
        else if (auto dropped = fleet_.alerts().dropItem(item.id, "acknowledged before it was sent");
                 !dropped)
            return fail(dropped.error());
    }
    std::stable_sort(due.begin(), due.end(),
                     [](const auto& a, const auto& b) { return isGraver(a.first, b.first); });
    std::vector<AlertItem> items;
    for (auto& [alert, item] : due)
        items.push_back(std::move(item));
    return items;
}

Status Sending::form(const std::string& way, Instant now, std::optional<AlertMessage>& formed) {
    const auto due = dueItems(way, now);
    if (!due) return fail(due.error());
    const auto made = fleet_.alerts().madeSince(way, now - std::chrono::hours(1));
    if (!made) return fail(made.error());
    const std::size_t perHour = std::size_t(ways_.perHourOf(way));
    const auto letters = lettersOf(*due, perHour - std::min(perHour, *made));
    if (letters.empty()) return {};
    std::vector<std::int64_t> items;
    for (const std::size_t i : letters.front())
        items.push_back((*due)[i].id);
    AlertMessage message;
    message.way = way;
    message.digest = items.size() > 1;
    message.messageId = ways_.mail ? makeMessageId(ways_.mail->from) : "";
    message.made = message.nextTry = message.heldUntil = now;
    const auto id = fleet_.alerts().addMessage(message, items);
    if (!id) return fail(id.error());
    message.id = *id;
    formed = std::move(message);
    return {};
}

Result<std::optional<AlertMessage>> Sending::next(const std::string& way, Instant now) {
    std::optional<AlertMessage> taken;
    const auto done = fleet_.together([&]() -> Status {
        const auto unsent = fleet_.alerts().unsentMessages();
        if (!unsent) return fail(unsent.error());
        const auto own = std::find_if(unsent->begin(), unsent->end(),
                                      [&](const AlertMessage& message) { return message.way == way; });
        if (own == unsent->end()) {
            if (auto formed = form(way, now, taken); !formed) return formed;
        } else if (own->nextTry <= now)
            taken = *own;
        if (!taken) return {};
        const auto held = fleet_.alerts().hold(taken->id, now, now + longest(way));
        if (!held) return fail(held.error());
        ++taken->attempts;
        if (!*held) taken.reset();
        return {};
    });
    if (!done) return fail(done.error());
    return taken;
}

Result<MailOutcome> Sending::send(const AlertMessage& message, Instant now) {
    const auto items = fleet_.alerts().itemsOf(message.id);
    if (!items) return fail(items.error());
    std::vector<ToldAlert> told;
    for (const AlertItem& item : *items) {
        auto alert = fleet_.alerts().alert(item.alert);
        if (!alert) return fail(alert.error());
        told.push_back({std::move(*alert), item.event});
    }
    std::stable_sort(told.begin(), told.end(),
                     [](const ToldAlert& a, const ToldAlert& b) { return isGraver(a.alert, b.alert); });
    return sendLetter(message.way, message.messageId, letterOf(told, site_.site, site_.timeZone),
                      letterJson(told, message.digest ? "digest" : "alert", site_.site), now);
}

MailOutcome Sending::sendLetter(const std::string& way, const std::string& messageId,
                                const AlertLetter& letter, const Json& json, Instant now) {
    if (way == "command") return run(json);
    return mail(way.substr(way.find(' ') + 1), messageId, letter, now);
}

MailOutcome Sending::mail(const std::string& to, const std::string& messageId, const AlertLetter& letter,
                          Instant now) {
    const MailWay& way = *ways_.mail;
    MailServer server = way.server;
    if (!way.password.empty()) {
        auto password = readSecret(way.password, cancel_);
        if (cancel_.cancelled()) return {false, false, kStopped};
        if (!password) return {false, true, password.error().sentence()};
        server.password = std::move(*password);
    }
    MailMessage message;
    message.from = way.from;
    message.to = to;
    message.fromName = site_.site;
    message.subject = letter.subject;
    message.body = letter.body;
    message.messageId = messageId;
    message.date = now;
    return doors_.mail(server, way.from, to, textOf(message), cancel_);
}

MailOutcome Sending::run(const Json& json) {
    ChildProgram program;
    program.words = ways_.command->words;
    program.input = json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
    program.allowed = seconds(ways_.command->timeoutS);
    const auto end = doors_.run(program, cancel_);
    const std::string name = oneLine(program.words[0], 200);
    if (!end) return {false, true, end.error().sentence()};
    if (end->good()) return {true, false, {}};
    if (end->cancelled) return {false, false, fmt::format("{}: {}", name, kStopped)};
    if (end->tooLate)
        return {false, false, fmt::format("{}: was stopped after {} s", name, ways_.command->timeoutS)};
    const std::string said = oneLine(trimmed(end->output), 200);
    return {false, false,
            fmt::format("{}: ended with status {}{}", name, end->status, said.empty() ? "" : ": " + said)};
}

std::size_t Sending::waiting(const std::string& way, Instant now) {
    const auto all = fleet_.alerts().waitingItems();
    if (!all) return 0;
    return std::size_t(std::count_if(
        all->begin(), all->end(), [&](const AlertItem& item) { return item.way == way && item.due <= now; }));
}

constexpr const char* kNotThere = "nothing is sent there any more";

// Of ways that are no longer set.
Status Sending::dropOthers() {
    const auto names = ways_.names();
    const auto all = fleet_.alerts().waitingItems();
    if (!all) return fail(all.error());
    for (const AlertItem& item : *all)
        if (std::find(names.begin(), names.end(), item.way) == names.end())
            if (auto dropped = fleet_.alerts().dropItem(item.id, kNotThere); !dropped) return dropped;
    const auto unsent = fleet_.alerts().unsentMessages();
    if (!unsent) return fail(unsent.error());
    for (const AlertMessage& message : *unsent)
        if (std::find(names.begin(), names.end(), message.way) == names.end())
            if (auto dropped = fleet_.alerts().dropMessage(message.id, kNotThere); !dropped) return dropped;
    return {};
}

// Until nothing more may go there now.
// `when` empty: the clock, asked for each message, for a server may take long over the one before.
Status sendAll(FleetFile& fleet, Sending& sending, const std::string& way, Instant when,
               const CancelToken& cancel, Delivered& done) {
    while (!cancel.cancelled()) {
        const Instant now = when == Instant{} ? nowUtc() : when;
        const auto message = sending.next(way, now);
        if (!message) return fail(message.error());
        if (!*message) return {};
        const auto outcome = sending.send(**message, now);
        if (!outcome) return fail(outcome.error());
        if (!outcome->accepted) {
            done.failures.push_back({way, outcome->why});
            return fleet.alerts().noteFailed(
                (*message)->id, outcome->why,
                cancel.cancelled() ? now : now + backOff((*message)->attempts, outcome->lasting));
        }
        if (auto noted = fleet.alerts().noteSent((*message)->id, now); !noted) return noted;
        ++done.sent;
    }
    return {};
}

}  // namespace

std::vector<std::vector<std::size_t>> lettersOf(const std::vector<AlertItem>& due, std::size_t room) {
    std::vector<std::vector<std::size_t>> letters;
    std::vector<std::size_t> together;
    if (due.empty() || room == 0) return letters;
    const bool digest =
        std::any_of(due.begin(), due.end(), [](const AlertItem& item) { return item.digest; });
    const auto alone = std::size_t(
        std::count_if(due.begin(), due.end(), [](const AlertItem& item) { return !item.digest; }));
    const std::size_t most = alone + digest <= room ? alone : room - 1;
    for (std::size_t i = 0; i < due.size(); ++i) {
        if (!due[i].digest && letters.size() < most)
            letters.push_back({i});
        else
            together.push_back(i);
    }
    if (!together.empty()) letters.push_back(std::move(together));
    return letters;
}

minutes backOff(int attempts, bool lasting) {
    static constexpr int kPassing[] = {1, 2, 5, 10, 20, 30, 60}, kLasting[] = {30, 60, 120, 240};
    const auto step = [attempts](const auto& steps) {
        return minutes(steps[std::clamp(attempts - 1, 0, int(std::size(steps)) - 1)]);
    };
    return lasting ? step(kLasting) : step(kPassing);
}

Result<Delivered> deliverAlerts(FleetFile& fleet, Instant when, const CancelToken& cancel,
                                const DeliveryDoors& doors) {
    const Instant now = when == Instant{} ? nowUtc() : when;
    Sending sending(fleet, cancel, doors);
    Delivered done;
    if (auto begun = sending.begin(); !begun) return fail(begun.error());
    if (auto dropped = sending.dropOthers(); !dropped) return fail(dropped.error());
    for (const std::string& way : sending.ways().names()) {
        if (auto sent = sendAll(fleet, sending, way, when, cancel, done); !sent) return fail(sent.error());
        done.waiting += sending.waiting(way, now);
    }
    return done;
}

Result<std::size_t> alertsToSend(FleetFile& fleet) {
    const auto ways = alertWays(fleet);
    if (!ways) return fail(ways.error());
    auto items = fleet.alerts().waitingItems();
    if (!items) return fail(items.error());
    const auto unsent = fleet.alerts().unsentMessages();
    if (!unsent) return fail(unsent.error());
    for (const AlertMessage& message : *unsent) {
        const auto told = fleet.alerts().itemsOf(message.id);
        if (!told) return fail(told.error());
        items->insert(items->end(), told->begin(), told->end());
    }
    const std::vector<std::string> names = ways->names();
    std::set<std::int64_t> alerts;
    for (const AlertItem& item : *items)
        if (std::find(names.begin(), names.end(), item.way) != names.end()) alerts.insert(item.alert);
    return alerts.size();
}

Result<std::vector<DeliveryFailure>> sendTest(FleetFile& fleet, const CancelToken& cancel,
                                              const DeliveryDoors& doors) {
    Sending sending(fleet, cancel, doors);
    if (auto begun = sending.begin(); !begun) return fail(begun.error());
    if (!sending.ways().any())
        return fail(ErrorKind::Invalid, fleet.path(), "alert delivery",
                    "is not set: neither an address nor a program");
    std::vector<DeliveryFailure> failures;
    const SiteSettings& site = sending.site();
    for (const std::string& way : sending.ways().names()) {
        if (cancel.cancelled()) break;
        const std::string id = sending.ways().mail ? makeMessageId(sending.ways().mail->from) : "";
        const MailOutcome outcome =
            sending.sendLetter(way, id, testLetter(site.site, site.timeZone, nowUtc()),
                               letterJson({}, "test", site.site), nowUtc());
        if (!outcome.accepted) failures.push_back({way, outcome.why});
    }
    return failures;
}

struct AlertPost::Parts {
    std::string path;
    std::function<void(const News&)> news;
    CancelToken cancel;
    std::mutex mutex;
    std::condition_variable changed;
    bool woken = true;
    std::unique_ptr<FleetFile> fleet;
    std::thread thread;

    void run() {
        while (!cancel.cancelled()) {
            {
                std::unique_lock lock(mutex);
                changed.wait_for(lock, kLookEvery, [this] { return woken || cancel.cancelled(); });
                woken = false;
            }
            if (!cancel.cancelled()) tell(look());
        }
    }
    void tell(const News& done) {
        if (news && (done.raised > 0 || done.sent > 0 || !done.trouble.empty())) news(done);
    }
    News look() {
        if (!fleet) {
            FleetTuning tuning;
            tuning.quickCheckBytes = 0;  // done by who opened it first
            auto opened = FleetFile::open(path, OpenMode::ReadWrite, tuning);
            if (!opened) return {0, 0, opened.error().sentence()};
            fleet = std::move(*opened);
        }
        const auto raised = raiseAlerts(*fleet, {AlertRun::Which::New, {}, cancel});
        if (!raised) return {0, 0, raised.error().sentence()};
        const auto sent = deliverAlerts(*fleet, {}, cancel);
        if (!sent) return {raised->raised + raised->grown, 0, sent.error().sentence()};
        return {raised->raised + raised->grown, sent->sent,
                sent->failures.empty() ? "" : sent->failures[0].way + ": " + sent->failures[0].why};
    }
};

AlertPost::AlertPost(std::string fleetPath, std::function<void(const News&)> news)
    : parts_(std::make_unique<Parts>()) {
    parts_->path = std::move(fleetPath);
    parts_->news = std::move(news);
    parts_->thread = std::thread([parts = parts_.get()] { parts->run(); });
}

AlertPost::~AlertPost() {
    parts_->cancel.cancel();
    wake();
    parts_->thread.join();
}

void AlertPost::wake() {
    const std::lock_guard lock(parts_->mutex);
    parts_->woken = true;
    parts_->changed.notify_all();
}

}  // namespace fettle
