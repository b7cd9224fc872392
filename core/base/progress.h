// Why: long work says how far it is and stops when asked, without knowing who watches.
// Thread: a CancelToken may be set from any thread; a Progress is called from the thread that works.
#pragma once

#include <atomic>
#include <functional>
#include <memory>
#include <string_view>

namespace fettle {

class CancelToken {
  public:
    void cancel() const { flag_->store(true, std::memory_order_relaxed); }
    bool cancelled() const { return flag_->load(std::memory_order_relaxed); }

  private:
    std::shared_ptr<std::atomic<bool>> flag_ = std::make_shared<std::atomic<bool>>(false);
};

// done of total steps, and what is being worked on.
using Progress = std::function<void(std::size_t done, std::size_t total, std::string_view what)>;

}  // namespace fettle
