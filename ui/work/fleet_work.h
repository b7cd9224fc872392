// Why: everything that reads or writes the fleet file or computes runs here, off the window's thread. A
// request is a function of a FleetFile (one connection a worker thread, opened once); its result comes back
// on the window's thread as a value. A request carries a key: a newer one of the same receiver and key
// cancels the older, whose answer is then never delivered: not every request is answered. Of the reading
// requests the newest is served first. Writing requests run one at a time, in order, and are never dropped.
// Ownership: results are values or shared pointers to immutable data. Lifetime: an answer for a receiver that
// is gone is dropped. Errors: the Result of the request, for the receiver to show; where the fleet file does
// not open, every request is answered with that error.
#pragma once

#include <QObject>
#include <QPointer>
#include <exception>
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
    // `path` of a fleet file that opens (opened here, on the caller's thread; `trouble` tells where it did
    // not); four reading threads and one that writes.
    explicit FleetWork(const std::string& path, QObject* parent = nullptr);
    // The same with a fleet file that is already open; it becomes the writer's connection.
    explicit FleetWork(std::unique_ptr<FleetFile> opened, QObject* parent = nullptr);
    ~FleetWork() override;  // cancels what reads, finishes what writes, waits

    const std::string& path() const;
    bool writable() const;
    QString word() const;  // how the file was opened, for the status line; empty: as usual
    const std::optional<Error>& trouble() const;

    // Reading: `job` on a worker, `done` here. The token is set when the request was overtaken.
    template <class T>
    void ask(QObject* receiver, const QString& key,
             std::function<Result<T>(FleetFile&, const CancelToken&)> job,
             std::function<void(Result<T>)> done) {
        auto result = std::make_shared<std::optional<Result<T>>>();
        post(
            receiver, key, false,
            [job, result](const Result<FleetFile*>& fleet, const CancelToken& token) {
                result->emplace(
                    answered<T>(fleet, [&](FleetFile& file) -> Result<T> { return job(file, token); }));
            },
            [done, result] { done(std::move(**result)); });
    }
    // Writing: in order, never dropped; `changedFleet` follows a success.
    template <class T>
    void write(QObject* receiver, std::function<Result<T>(FleetFile&)> job,
               std::function<void(Result<T>)> done) {
        auto result = std::make_shared<std::optional<Result<T>>>();
        post(
            receiver, {}, true,
            [job, result](const Result<FleetFile*>& fleet, const CancelToken&) {
                result->emplace(answered<T>(fleet, job));
            },
            [done, result] { done(std::move(**result)); },
            [this, result] {
                if ((*result)->has_value()) emit changedFleet();
            });
    }
    // Something else wrote to the fleet file (an import with its own connection).
    void noteChange() { emit changedFleet(); }

    // Requests not yet answered, for --capture and tests: 0 means the picture is complete.
    int waiting() const;

    // The answer of a job, or the reason why there is none; nothing that is thrown leaves it.
    template <class T>
    static Result<T> answered(const Result<FleetFile*>& fleet,
                              const std::function<Result<T>(FleetFile&)>& job) {
        if (!fleet) return fail(fleet.error());
        try {
            return job(**fleet);
        } catch (const std::exception& problem) {
            return fail(ErrorKind::Unreadable, (*fleet)->path(), "", problem.what());
        }
    }

  signals:
    void changedFleet();
    void waitingChanged(int waiting);
    void idle();  // the last waiting request was answered

  private:
    using Job = std::function<void(const Result<FleetFile*>&, const CancelToken&)>;
    void post(QObject* receiver, const QString& key, bool writes, Job job, std::function<void()> deliver,
              std::function<void()> after = {});

    struct Request;
    using RequestPtr = std::shared_ptr<Request>;
    struct Parts;
    void start();
    void finish(const RequestPtr& request);
    void leave(int requests);
    std::unique_ptr<Parts> parts_;
};

}  // namespace fettle
