#include "core/intake/arrivals.h"

#include <fmt/format.h>
#include <sys/stat.h>

#include <algorithm>
#include <functional>

#include "core/signal/sidecar.h"

namespace fettle {

namespace {

constexpr std::chrono::milliseconds kLookAgain{1000};  // for a sidecar that is not there yet

std::int64_t nsOf(const timespec& time) {
    return std::int64_t(time.tv_sec) * 1000000000 + time.tv_nsec;
}

std::uint64_t markOf(const std::string& path, const FileStamp& stamp) {
    return std::hash<std::string>{}(fmt::format("{}\n{} {} {} {}", path, stamp.bytes, stamp.changedNs,
                                                stamp.sidecarBytes, stamp.sidecarChangedNs));
}

std::string folderOf(const std::string& path) {
    return path.substr(0, path.find_last_of('/') + 1);
}

// By the clock of the computer; a drive whose clock is another's may be ahead.
bool isOlderThan(const FileStamp& stamp, std::chrono::milliseconds age) {
    using namespace std::chrono;
    const auto changed =
        sys_time<nanoseconds>(nanoseconds(std::max(stamp.changedNs, stamp.sidecarChangedNs)));
    return system_clock::now() - changed >= age;
}

}  // namespace

std::optional<FileStamp> stampOf(const std::string& path) {
    struct stat info {};
    if (::stat(path.c_str(), &info) != 0 || !S_ISREG(info.st_mode)) return std::nullopt;
    FileStamp stamp{info.st_size, nsOf(info.st_mtim)};
    if (::stat(sidecarPath(path).c_str(), &info) == 0 && S_ISREG(info.st_mode)) {
        stamp.sidecarBytes = info.st_size;
        stamp.sidecarChangedNs = nsOf(info.st_mtim);
    }
    return stamp;
}

bool Arrivals::note(const std::string& path, bool whole, Time now) {
    const auto stamp = stampOf(path);
    if (!stamp) return true;
    if (stamp->hasSidecar()) withSidecars_.insert(folderOf(path));
    const auto known = waiting_.find(path);
    if (known == waiting_.end() && waiting_.size() >= limits_.most) return false;
    Waiting& one = waiting_[path];
    const bool changed = known == waiting_.end() || one.stamp != *stamp;
    if (changed || whole) one.changed = now;
    if (changed || whole) one.lain = false;
    one.stamp = *stamp;
    one.whole = whole || (one.whole && !changed);
    one.next = now + (one.whole ? std::min(limits_.gather, limits_.settle) : std::chrono::milliseconds(0));
    return true;
}

bool Arrivals::meet(const std::string& path, Time now) {
    const auto stamp = stampOf(path);
    if (!stamp) return true;
    if (stamp->hasSidecar()) withSidecars_.insert(folderOf(path));
    const std::uint64_t mark = markOf(path, *stamp);
    if (handled_.count(mark)) {
        met_.insert(mark);
        return true;
    }
    if (waiting_.count(path)) return true;
    if (!note(path, false, now)) return false;
    waiting_[path].lain = firstLook_ && isOlderThan(*stamp, limits_.patience);
    return true;
}

bool Arrivals::folderHasSidecars(const std::string& path) const {
    return withSidecars_.count(folderOf(path)) > 0;
}

bool Arrivals::isReady(const std::string& path, Waiting& one, const FileStamp& stamp, Time now) {
    if (stamp != one.stamp) {
        one.stamp = stamp;
        one.changed = now;
        one.whole = one.lain = false;
    }
    if (!one.whole && now - one.changed < limits_.settle && !isOlderThan(stamp, limits_.settle)) {
        one.next = one.changed + limits_.settle;
        return false;
    }
    if (!stamp.hasSidecar() && folderHasSidecars(path) && mayWait(path, now)) {
        one.next = now + kLookAgain;
        return false;
    }
    return true;
}

std::vector<std::string> Arrivals::due(Time now, std::size_t most) {
    std::vector<std::string> paths;
    for (auto at = waiting_.begin(); at != waiting_.end() && paths.size() < most;) {
        auto& [path, one] = *at;
        if (one.next > now) {
            ++at;
            continue;
        }
        const auto stamp = stampOf(path);
        if (stamp && isReady(path, one, *stamp, now)) paths.push_back(path);
        at = stamp ? std::next(at) : waiting_.erase(at);
    }
    return paths;
}

void Arrivals::handled(const std::string& path) {
    const auto at = waiting_.find(path);
    if (at == waiting_.end()) return;
    handled_.insert(markOf(path, at->second.stamp));
    waiting_.erase(at);
}

void Arrivals::again(const std::string& path, Time at) {
    const auto one = waiting_.find(path);
    if (one != waiting_.end()) one->second.next = at;
}

bool Arrivals::mayWait(const std::string& path, Time now) const {
    const auto at = waiting_.find(path);
    if (at == waiting_.end()) return false;
    return !at->second.lain && now - at->second.changed < limits_.patience;
}

std::optional<Arrivals::Time> Arrivals::next() const {
    std::optional<Time> first;
    for (const auto& [path, one] : waiting_)
        if (!first || one.next < *first) first = one.next;
    return first;
}

void Arrivals::beginLook() {
    met_.clear();
}

void Arrivals::endLook() {
    handled_.swap(met_);
    met_.clear();
    firstLook_ = false;
}

}  // namespace fettle
