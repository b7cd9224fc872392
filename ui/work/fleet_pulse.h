// Why: another program writes to the fleet file while the window is open (follow, an import by command): what
// is shown must follow, quietly. A thread with a connection of its own asks every two seconds whether others
// have written, which costs a read of one number, and tells at most every ten seconds, so that a long import
// does not keep the pages reading. What this window wrote itself is no news. Thread: made and destroyed on
// the window's; `othersWrote` comes there. Errors: a file that does not open, or cannot be asked, tells
// nothing.
#pragma once

#include <QObject>
#include <chrono>
#include <condition_variable>
#include <mutex>
#include <string>
#include <thread>

namespace fettle {

struct PulseTimes {
    std::chrono::milliseconds ask{2000};     // between two questions
    std::chrono::milliseconds quiet{10000};  // between two words
};

class FleetPulse : public QObject {
    Q_OBJECT
  public:
    explicit FleetPulse(std::string path, QObject* parent = nullptr, const PulseTimes& times = {});
    ~FleetPulse() override;

    void noteOwn();  // what is written up to now is shown already

  signals:
    void othersWrote();

  private:
    void beat();
    bool rest();  // false: it is over

    std::string path_;
    PulseTimes times_;
    std::mutex mutex_;
    std::condition_variable wake_;
    bool ending_ = false, own_ = false;
    std::thread thread_;
};

}  // namespace fettle
