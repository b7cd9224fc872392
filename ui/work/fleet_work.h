// Why: everything that reads or writes the fleet file or computes runs here, off the window's thread. A
// request is a function of a FleetFile (one connection a worker thread, opened once); its result comes back
// on the window's thread as a value. A request carries a key: a newer one of the same key cancels the older,
// whose answer is then never delivered: not every request is answered. Writing requests run one at a time, in
// order, and are never dropped. Ownership: results are values or shared pointers to immutable data. Lifetime:
// an answer for a receiver that is gone is dropped. Errors: the Result of the request, for the receiver to
// show.
#pragma once

#include <QObject>
#include <QPointer>
#include <functional>
#include <memory>
#include <optional>
#include <string>

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/store/fleet_file.h"

namespace fettle {

class FleetWork : public QObject {
    Q_OBJECT
  public:
    // `path` of a fleet file that opens; two reading threads and one that writes.
    explicit FleetWork(std::string path, QObject* parent = nullptr);
    ~FleetWork() override;  // cancels, waits

    const std::string& path() const;
    bool writable() const;
    QString word() const;  // how the file was opened, for the status line; empty: as usual

    // Reading: `job` on a worker, `done` here. The token is set when the request was overtaken.
    template <class T>
    void ask(QObject* receiver, const QString& key,
             std::function<Result<T>(FleetFile&, const CancelToken&)> job,
             std::function<void(Result<T>)> done) {
        auto result = std::make_shared<std::optional<Result<T>>>();
        post(
            receiver, key, false,
            [job, result](FleetFile& f, const CancelToken& c) { result->emplace(job(f, c)); },
            [done, result] { done(std::move(**result)); });
    }
    // Writing: in order, never dropped; `changedFleet` follows a success.
    template <class T>
    void write(QObject* receiver, std::function<Result<T>(FleetFile&)> job,
               std::function<void(Result<T>)> done) {
        auto result = std::make_shared<std::optional<Result<T>>>();
        post(
            receiver, {}, true, [job, result](FleetFile& f, const CancelToken&) { result->emplace(job(f)); },
            [this, done, result] {
                const bool good = result->value().has_value();
                done(std::move(**result));
                if (good) emit changedFleet();
            });
    }

    int waiting()
        const;  // requests not yet answered, for --capture and tests: 0 means the picture is complete

  signals:
    void changedFleet();
    void idle();  // the last waiting request was answered

  private:
    using Job = std::function<void(FleetFile&, const CancelToken&)>;
    void post(QObject* receiver, const QString& key, bool writes, Job job, std::function<void()> deliver);

    struct Parts;
    std::unique_ptr<Parts> parts_;
};

}  // namespace fettle
