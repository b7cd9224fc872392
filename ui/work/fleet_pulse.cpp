#include "ui/work/fleet_pulse.h"

#include "core/base/caught.h"
#include "core/store/fleet_file.h"

namespace fettle {

FleetPulse::FleetPulse(std::string path, QObject* parent, const PulseTimes& times)
    : QObject(parent), path_(std::move(path)), times_(times) {
    thread_ = std::thread([this] { caught([this] { beat(); }); });
}

FleetPulse::~FleetPulse() {
    {
        const std::lock_guard hold(mutex_);
        ending_ = true;
    }
    wake_.notify_all();
    thread_.join();
}

void FleetPulse::noteOwn() {
    {
        const std::lock_guard hold(mutex_);
        own_ = true;
    }
    wake_.notify_all();
}

bool FleetPulse::rest() {
    std::unique_lock lock(mutex_);
    wake_.wait_for(lock, times_.ask, [this] { return ending_ || own_; });
    return !ending_;
}

void FleetPulse::beat() {
    using Clock = std::chrono::steady_clock;
    FleetTuning tuning;
    tuning.quickCheckBytes = 0;
    const auto fleet = FleetFile::open(path_, OpenMode::ReadOnly, tuning);
    if (!fleet) return;
    std::int64_t known = (*fleet)->changesByOthers().value_or(0);
    Clock::time_point next = Clock::now();
    while (rest()) {
        const auto now = (*fleet)->changesByOthers();
        const bool own = [this] {
            const std::lock_guard hold(mutex_);
            return std::exchange(own_, false);
        }();
        if (!now) continue;
        if (own) known = *now;
        if (*now == known || Clock::now() < next) continue;
        known = *now;
        next = Clock::now() + times_.quiet;
        QMetaObject::invokeMethod(
            this, [this] { emit othersWrote(); }, Qt::QueuedConnection);
    }
}

}  // namespace fettle
