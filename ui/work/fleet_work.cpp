#include "ui/work/fleet_work.h"

#include <algorithm>
#include <condition_variable>
#include <deque>
#include <map>
#include <mutex>
#include <thread>
#include <utility>
#include <vector>

namespace fettle {

namespace {
constexpr int kReaders = 4;  // a slow request or two must not keep quick ones waiting
}

struct FleetWork::Request {
    QPointer<QObject> receiver;
    bool forNobody = false;  // no receiver was named: always delivered
    std::pair<QObject*, QString> key;
    bool writes = false, overtaken = false;
    CancelToken token;
    Job job;
    std::function<void()> deliver, after;
};

struct FleetWork::Parts {
    std::string path;
    std::unique_ptr<FleetFile> writer;
    std::optional<Error> trouble;

    // Shared with the workers, under `mutex`.
    std::mutex mutex;
    std::condition_variable wake;
    std::deque<RequestPtr> reads, writes;
    bool ending = false;

    // The window's thread alone.
    std::map<std::pair<QObject*, QString>, RequestPtr> newest;
    int waiting = 0;
    quint64 unnamed = 0;

    std::vector<std::thread> threads;

    RequestPtr next(bool writes);
    bool takeBack(const RequestPtr& request);
};

// Waits; nothing when there is nothing more to do.
FleetWork::RequestPtr FleetWork::Parts::next(bool ofWriter) {
    std::unique_lock lock(mutex);
    std::deque<RequestPtr>& queue = ofWriter ? writes : reads;
    wake.wait(lock, [&] { return ending || !queue.empty(); });
    if (queue.empty()) return nullptr;
    RequestPtr request;
    if (ofWriter) {
        request = std::move(queue.front());
        queue.pop_front();
    } else {
        request = std::move(queue.back());
        queue.pop_back();
    }
    return request;
}

// True where no worker had begun with it.
bool FleetWork::Parts::takeBack(const RequestPtr& request) {
    const std::lock_guard lock(mutex);
    const auto at = std::find(reads.begin(), reads.end(), request);
    if (at == reads.end()) return false;
    reads.erase(at);
    return true;
}

FleetWork::FleetWork(const std::string& path, QObject* parent)
    : QObject(parent), parts_(std::make_unique<Parts>()) {
    parts_->path = path;
    auto opened = FleetFile::open(path);
    if (opened)
        parts_->writer = std::move(*opened);
    else
        parts_->trouble = opened.error();
    start();
}

FleetWork::FleetWork(std::unique_ptr<FleetFile> opened, QObject* parent)
    : QObject(parent), parts_(std::make_unique<Parts>()) {
    parts_->path = opened->path();
    parts_->writer = std::move(opened);
    start();
}

void FleetWork::start() {
    Parts* parts = parts_.get();
    const auto serve = [this, parts](bool writes, const Result<FleetFile*>& fleet) {
        while (RequestPtr request = parts->next(writes)) {
            request->job(fleet, request->token);
            QMetaObject::invokeMethod(
                this, [this, request = std::move(request)] { finish(request); }, Qt::QueuedConnection);
        }
    };
    const auto own = [parts]() -> Result<std::unique_ptr<FleetFile>> {
        if (parts->trouble) return fail(*parts->trouble);
        return FleetFile::open(parts->path, OpenMode::ReadOnly);
    };
    parts->threads.emplace_back([parts, serve] {
        serve(true, parts->writer ? Result<FleetFile*>(parts->writer.get())
                                  : Result<FleetFile*>(fail(*parts->trouble)));
    });
    for (int i = 0; i < kReaders; ++i)
        parts->threads.emplace_back([serve, own] {
            const auto file = own();
            serve(false, file ? Result<FleetFile*>(file->get()) : Result<FleetFile*>(fail(file.error())));
        });
}

FleetWork::~FleetWork() {
    {
        const std::lock_guard lock(parts_->mutex);
        parts_->ending = true;
        parts_->reads.clear();
    }
    for (const auto& [key, request] : parts_->newest)
        request->token.cancel();
    parts_->wake.notify_all();
    for (std::thread& thread : parts_->threads)
        thread.join();
}

const std::string& FleetWork::path() const {
    return parts_->path;
}

bool FleetWork::writable() const {
    return parts_->writer && parts_->writer->writable();
}

QString FleetWork::word() const {
    return parts_->writer ? QString::fromStdString(parts_->writer->word()) : QString();
}

const std::optional<Error>& FleetWork::trouble() const {
    return parts_->trouble;
}

int FleetWork::waiting() const {
    return parts_->waiting;
}

void FleetWork::post(QObject* receiver, const QString& key, bool writes, Job job,
                     std::function<void()> deliver, std::function<void()> after) {
    auto request = std::make_shared<Request>();
    request->receiver = receiver;
    request->forNobody = receiver == nullptr;
    request->key = {receiver, key.isEmpty() ? QStringLiteral("#%1").arg(parts_->unnamed++) : key};
    request->writes = writes;
    request->job = std::move(job);
    request->deliver = std::move(deliver);
    request->after = std::move(after);
    int overtaken = 0;
    if (!writes) {
        RequestPtr& newest = parts_->newest[request->key];
        if (newest) {
            newest->token.cancel();
            newest->overtaken = true;
            overtaken = parts_->takeBack(newest) ? 1 : 0;
        }
        newest = request;
    }
    {
        const std::lock_guard lock(parts_->mutex);
        (writes ? parts_->writes : parts_->reads).push_back(request);
    }
    parts_->wake.notify_all();
    leave(overtaken - 1);
}

// On the window's thread. What the answer asks for in turn counts before this request leaves.
void FleetWork::finish(const RequestPtr& request) {
    if (const auto newest = parts_->newest.find(request->key);
        newest != parts_->newest.end() && newest->second == request)
        parts_->newest.erase(newest);
    const bool wanted = !request->overtaken && (request->forNobody || request->receiver);
    if (wanted) request->deliver();
    if (request->after) request->after();
    leave(1);
}

void FleetWork::leave(int requests) {
    if (requests == 0) return;
    parts_->waiting -= requests;
    emit waitingChanged(parts_->waiting);
    if (parts_->waiting == 0) emit idle();
}

}  // namespace fettle
