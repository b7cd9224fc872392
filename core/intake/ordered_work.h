// Why: many workers, one taker: results come out in the order of their index, however long each took, and
// wait within a bound of number and bytes, so that a folder of any size fits into memory. Ownership: joins
// its threads when it goes. Thread: made, taken from and destroyed on one thread; the work runs on others and
// must not throw.
#pragma once

#include <atomic>
#include <chrono>
#include <condition_variable>
#include <functional>
#include <map>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

#include "core/base/progress.h"

namespace fettle {

struct WaitingLimits {
    std::size_t count = 32;
    std::size_t bytes = std::size_t(256) << 20;
};

template <class Done>  // has `std::size_t bytes`, what it holds
class OrderedWork {
  public:
    using Work = std::function<Done(std::size_t index)>;

    // `makeWork` is called once on each thread, for what a worker needs of its own.
    OrderedWork(std::size_t count, int threads, std::function<Work()> makeWork, WaitingLimits limits = {})
        : count_(count), limits_(limits) {
        for (int t = 0; t < threads; ++t)
            threads_.emplace_back([this, makeWork] { run(makeWork()); });
    }
    ~OrderedWork() {
        {
            const std::lock_guard hold(mutex_);
            stopped_ = true;
        }
        changed_.notify_all();
    }
    OrderedWork(const OrderedWork&) = delete;
    OrderedWork& operator=(const OrderedWork&) = delete;

    // The next result in order; nothing after the last, and none once cancelled.
    std::optional<Done> take(const CancelToken& cancel) {
        std::unique_lock lock(mutex_);
        while (!cancel.cancelled() && taken_ < count_) {
            const auto ready = waiting_.find(taken_);
            if (ready == waiting_.end()) {
                changed_.wait_for(lock, std::chrono::milliseconds(100));
                continue;
            }
            Done done = std::move(ready->second);
            waiting_.erase(ready);
            waitingBytes_ -= done.bytes;
            ++taken_;
            changed_.notify_all();
            return done;
        }
        return std::nullopt;
    }

  private:
    void run(const Work& work) {
        for (std::size_t i = next_++; i < count_; i = next_++) {
            if (isStopped()) return;
            put(i, work(i));
        }
    }
    bool isStopped() {
        const std::lock_guard hold(mutex_);
        return stopped_;
    }
    // The one that is asked for next never waits.
    bool hasRoom(std::size_t index, std::size_t bytes) const {
        return index == taken_ || (index < taken_ + limits_.count && waitingBytes_ + bytes <= limits_.bytes);
    }
    void put(std::size_t index, Done done) {
        std::unique_lock lock(mutex_);
        changed_.wait(lock, [&] { return stopped_ || hasRoom(index, done.bytes); });
        if (stopped_) return;
        waitingBytes_ += done.bytes;
        waiting_.emplace(index, std::move(done));
        changed_.notify_all();
    }

    const std::size_t count_;
    const WaitingLimits limits_;
    std::atomic<std::size_t> next_{0};
    std::mutex mutex_;
    std::condition_variable changed_;
    std::map<std::size_t, Done> waiting_;
    std::size_t waitingBytes_ = 0, taken_ = 0;
    bool stopped_ = false;
    std::vector<std::jthread> threads_;  // last: joined before the rest goes
};

}  // namespace fettle
