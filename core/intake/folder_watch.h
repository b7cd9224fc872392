// Why: files are taken in as they arrive, and the system tells of them: written and closed, moved into
// place, linked; folders made later are watched as well. What the system could not keep is said to be lost,
// and then all is looked through. Source: inotify(7). A network drive tells nothing of what other computers
// write: there, and where the system watches no more folders, the caller looks for itself. Ownership: owns
// its descriptor. Thread: one. Errors: Unreadable with the system's word.
#pragma once

#include <chrono>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "core/base/result.h"

namespace fettle {

struct WatchNews {
    std::vector<std::string> whole;    // files closed after writing, or moved into place
    std::vector<std::string> met;      // files that got a further name
    std::vector<std::string> folders;  // made or moved in: what lies in them may have been missed
    bool lost = false;                 // more happened than the system kept
    bool gone = false;                 // the folder itself
};

class FolderWatch {
  public:
    static Result<std::unique_ptr<FolderWatch>> open(const std::string& folder, bool recursive);
    ~FolderWatch();
    FolderWatch(const FolderWatch&) = delete;
    FolderWatch& operator=(const FolderWatch&) = delete;

    // Waits at most so long for something to happen; returns early where a signal came.
    WatchNews wait(std::chrono::milliseconds most);

  private:
    FolderWatch(int descriptor, bool recursive) : descriptor_(descriptor), recursive_(recursive) {}
    Status add(const std::string& folder);
    void addLater(const std::string& folder, WatchNews& news);
    void forget(const std::string& folder);
    void hear(int watch, std::uint32_t what, const std::string& name, WatchNews& news);
    void hearOfFolder(std::uint32_t what, const std::string& path, WatchNews& news);
    void hearOfFile(std::uint32_t what, const std::string& path, WatchNews& news);

    int descriptor_;
    bool recursive_;
    int root_ = -1;
    std::map<int, std::string> folders_;  // by the system's number of the watch
};

}  // namespace fettle
