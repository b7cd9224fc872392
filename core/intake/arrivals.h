// Why: a file that has just appeared may still be on its way. This is the list of those that wait: until the
// file and its sidecar have stood unchanged for `settle` (not where the system said that it was closed or
// moved into place), until the sidecar is there where others of its folder have one, and, where it cannot be
// read yet, until `patience` after its last change. What was taken in or refused is remembered by a mark of
// path, size and time, so that looking through a folder again costs no reading and a file that changed comes
// again. Memory: at most `most` paths wait, what is beyond is found by looking again; a mark is some 40 bytes
// a file that lies there. Thread: one. Clock: the caller's.
#pragma once

#include <chrono>
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <unordered_set>
#include <vector>

namespace fettle {

// Of a file and the sidecar beside it; equal: nothing of them changed.
struct FileStamp {
    std::int64_t bytes = -1, changedNs = 0;  // ns since 1970, as the drive says
    std::int64_t sidecarBytes = -1, sidecarChangedNs = 0;
    bool hasSidecar() const { return sidecarBytes >= 0; }
    bool operator==(const FileStamp&) const = default;
};
// Empty: not there, or no regular file.
std::optional<FileStamp> stampOf(const std::string& path);

struct ArrivalLimits {
    std::chrono::milliseconds settle{2000};
    std::chrono::milliseconds gather{500};  // a file that is whole waits so long for others, and its sidecar
    std::chrono::milliseconds patience{60000};
    std::size_t most = 4096;
};

class Arrivals {
  public:
    using Clock = std::chrono::steady_clock;
    using Time = Clock::time_point;

    explicit Arrivals(const ArrivalLimits& limits) : limits_(limits) {}

    // `whole`: the system said so. False: no room; it will be found by looking again.
    bool note(const std::string& path, bool whole, Time now);
    // Met while looking through a folder; nothing where it was handled as it is. False: no room.
    bool meet(const std::string& path, Time now);

    // Up to `most` that may be taken in now, in order of their names; each must then be given to `handled` or
    // `again`.
    std::vector<std::string> due(Time now, std::size_t most);
    void handled(const std::string& path);
    void again(const std::string& path, Time at);
    // Whether it may still be on its way: a word for those that could not be read.
    bool mayWait(const std::string& path, Time now) const;

    bool empty() const { return waiting_.empty(); }
    std::size_t size() const { return waiting_.size(); }
    std::optional<Time> next() const;  // when one is to be looked at

    // Marks of files that were not met between the two are dropped: they are gone.
    void beginLook();
    void endLook();

  private:
    struct Waiting {
        FileStamp stamp;
        Time changed, next;
        bool whole = false;
        bool lain = false;  // there, and old, at the first look: nothing more is on its way to it
    };
    bool isReady(const std::string& path, Waiting& one, const FileStamp& stamp, Time now);
    bool folderHasSidecars(const std::string& path) const;

    ArrivalLimits limits_;
    std::map<std::string, Waiting> waiting_;
    std::set<std::string> withSidecars_;  // folders
    std::unordered_set<std::uint64_t> handled_, met_;
    bool firstLook_ = true;
};

}  // namespace fettle
