// Why: what takes minutes (import, opening a round, a backup) has a thread and a connection of its own, so
// that decisions made meanwhile are written at once, and it says how far it is and stops when asked. One job
// at a time. Signals come on the window's thread, progress at most ten times a second. Errors: the Result of
// the job, for the receiver of `done`; nothing that is thrown leaves it.
#pragma once

#include <QElapsedTimer>
#include <QObject>
#include <thread>

#include "ui/work/fleet_work.h"

namespace fettle {

class LongWork : public QObject {
    Q_OBJECT
  public:
    explicit LongWork(std::string path, QObject* parent = nullptr)
        : QObject(parent), path_(std::move(path)) {}
    ~LongWork() override;  // cancels and waits

    // False, and nothing is done, while another job runs.
    template <class T>
    bool start(std::function<Result<T>(FleetFile&, const Progress&, const CancelToken&)> job,
               std::function<void(Result<T>)> done) {
        if (running_) return false;
        token_ = CancelToken();
        auto result = std::make_shared<std::optional<Result<T>>>();
        run(
            [this, job, result, token = token_](const Result<FleetFile*>& fleet) {
                result->emplace(FleetWork::answered<T>(
                    fleet, [&](FleetFile& file) -> Result<T> { return job(file, progress(), token); }));
            },
            [done, result] { done(std::move(**result)); });
        return true;
    }
    void cancel() { token_.cancel(); }
    bool running() const { return running_; }

  signals:
    void progressed(qulonglong done, qulonglong total, const QString& what);
    void finished();  // after the answer was given

  private:
    void run(std::function<void(const Result<FleetFile*>&)> job, std::function<void()> deliver);
    Progress progress();

    std::string path_;
    std::thread thread_;
    CancelToken token_;
    bool running_ = false;
};

}  // namespace fettle
