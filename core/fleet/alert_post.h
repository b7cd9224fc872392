// Why: what alerts raised is sent: each on its own as long as the hour's number of messages to that address
// is not used up, the rest together in one digest. A message is written down with its Message-ID before it is
// sent and noted as sent after the server has taken it. Killed in between it is sent once more, with the same
// Message-ID: at most that one mail is doubled, none is lost. One message to an address is under way at a
// time; one that fails is kept, tried again after 1, 2, 5, 10, 20, 30 and then every 60 minutes (a lasting
// refusal after 30, 60, 120, 240), and what comes meanwhile waits for the digest after it. Two programs may
// send at once: who sends holds the message for as long as it may take. Thread: deliverAlerts as the
// FleetFile, slow (it waits for servers); AlertPost has a thread and a connection of its own. Errors: what
// fails to be sent is in the result, not an error; errors are those of the store, and Invalid where this user
// has not allowed the delivery on this computer.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/exchange/child_program.h"
#include "core/fleet/alert_ways.h"

namespace fettle {

// The two doors to the outside; tests put others there.
struct DeliveryDoors {
    std::function<MailOutcome(const MailServer&, const std::string& from, const std::string& to,
                              const std::string& text, const CancelToken&)>
        mail = sendMail;
    std::function<Result<ChildEnd>(const ChildProgram&, const CancelToken&)> run = runChild;
};

struct DeliveryFailure {
    std::string way, why;
};

struct Delivered {
    std::size_t sent = 0;     // messages
    std::size_t waiting = 0;  // alerts that are due and wait for the hour, or for a failed message
    std::vector<DeliveryFailure> failures;
};

// All that is due at `now` (empty: the system's clock).
Result<Delivered> deliverAlerts(FleetFile& fleet, Instant now = {}, const CancelToken& cancel = {},
                                const DeliveryDoors& doors = {});

// How many alerts wait to be told on a way that is set up, due or not yet.
Result<std::size_t> alertsToSend(FleetFile& fleet);

// A message that says it is a test, on every way, at once and beside the hour's number. Empty: all went.
Result<std::vector<DeliveryFailure>> sendTest(FleetFile& fleet, const CancelToken& cancel = {},
                                              const DeliveryDoors& doors = {});

// Which of the items that are due (gravest first) go together, by index: as many of the first alone as `room`
// messages allow, the rest in the last one.
std::vector<std::vector<std::size_t>> lettersOf(const std::vector<AlertItem>& due, std::size_t room);
std::chrono::minutes backOff(int attempts, bool lasting);

// Watches silence and sends, in the background, for as long as it lives.
class AlertPost {
  public:
    struct News {
        std::size_t raised = 0, sent = 0;
        std::string trouble;  // a sentence; empty: none
    };
    // `news` is called from the thread of the post, after each look that did something or failed.
    explicit AlertPost(std::string fleetPath, std::function<void(const News&)> news = {});
    ~AlertPost();  // gives up what is under way: it is sent next time
    AlertPost(const AlertPost&) = delete;
    AlertPost& operator=(const AlertPost&) = delete;
    void wake();  // something was raised

  private:
    struct Parts;
    std::unique_ptr<Parts> parts_;
};

}  // namespace fettle
