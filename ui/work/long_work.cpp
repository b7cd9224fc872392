#include "ui/work/long_work.h"

#include <chrono>

#include "core/base/caught.h"

namespace fettle {

namespace {
constexpr std::chrono::milliseconds kBetweenWords{100};
}

LongWork::~LongWork() {
    token_.cancel();
    if (thread_.joinable()) thread_.join();
}

void LongWork::run(std::function<void(const Result<FleetFile*>&)> job, std::function<void()> deliver) {
    if (thread_.joinable()) thread_.join();
    running_ = true;
    const auto end = [this, deliver = std::move(deliver)] {
        running_ = false;
        deliver();
        emit finished();
    };
    thread_ = std::thread([this, job = std::move(job), end] {
        {
            Result<std::unique_ptr<FleetFile>> file = fail(ErrorKind::Unreadable, path_, "", "");
            if (const std::string thrown = caught([&] { file = FleetFile::open(path_); }); !thrown.empty())
                file = fail(ErrorKind::Unreadable, path_, "", thrown);
            job(file ? Result<FleetFile*>(file->get()) : Result<FleetFile*>(fail(file.error())));
        }
        QMetaObject::invokeMethod(this, end, Qt::QueuedConnection);
    });
}

Progress LongWork::progress() {
    auto last = std::make_shared<std::chrono::steady_clock::time_point>();
    return [this, last](std::size_t done, std::size_t total, std::string_view what) {
        const auto now = std::chrono::steady_clock::now();
        if (done < total && now - *last < kBetweenWords) return;
        *last = now;
        emit progressed(done, total, QString::fromUtf8(what.data(), qsizetype(what.size())));
    };
}

}  // namespace fettle
