#include "core/intake/folder_watch.h"

#include <fmt/format.h>
#include <poll.h>
#include <sys/inotify.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>

namespace fettle {

namespace {

constexpr std::uint32_t kAsked =
    IN_CLOSE_WRITE | IN_MOVED_TO | IN_MOVED_FROM | IN_CREATE | IN_DELETE_SELF | IN_MOVE_SELF | IN_ONLYDIR;
constexpr std::size_t kBuffer = std::size_t(64) << 10;
constexpr int kMostReads = 16;  // at a time: what is left is heard by the next call

std::string pathIn(const std::string& folder, const std::string& name) {
    return folder.ends_with('/') ? folder + name : folder + "/" + name;
}

// A file that is being written gets its word when it is closed; a link gets none but this.
bool isLink(const std::string& path) {
    struct stat info {};
    if (::lstat(path.c_str(), &info) != 0) return false;
    return S_ISLNK(info.st_mode) || (S_ISREG(info.st_mode) && info.st_nlink > 1);
}

}  // namespace

Result<std::unique_ptr<FolderWatch>> FolderWatch::open(const std::string& folder, bool recursive) {
    const int descriptor = ::inotify_init1(IN_NONBLOCK | IN_CLOEXEC);
    if (descriptor < 0) return fail(ErrorKind::Unreadable, folder, "", std::strerror(errno));
    std::unique_ptr<FolderWatch> watch(new FolderWatch(descriptor, recursive));
    if (auto added = watch->add(folder); !added) return fail(added.error());
    for (const auto& [number, path] : watch->folders_)
        if (path == folder) watch->root_ = number;
    return watch;
}

FolderWatch::~FolderWatch() {
    ::close(descriptor_);
}

// The watch comes before the look into it, so that a folder made in between is heard of or seen.
Status FolderWatch::add(const std::string& folder) {
    const int number = ::inotify_add_watch(descriptor_, folder.c_str(), kAsked);
    if (number < 0)
        return fail(ErrorKind::Unreadable, folder, "",
                    errno == ENOSPC ? "the system watches no more folders" : std::strerror(errno));
    folders_[number] = folder;
    if (!recursive_) return {};
    std::error_code problem;
    for (std::filesystem::directory_iterator it(folder, problem), end; !problem && it != end;
         it.increment(problem)) {
        std::error_code unknown;
        if (it->is_symlink(unknown) || !it->is_directory(unknown)) continue;
        if (auto added = add(pathIn(folder, it->path().filename().string())); !added) {
            struct stat info {};
            if (::stat(it->path().c_str(), &info) == 0) return added;
        }
    }
    return {};
}

// One that went again at once is no matter; one that cannot be watched is looked for with all the rest.
void FolderWatch::addLater(const std::string& folder, WatchNews& news) {
    if (add(folder))
        news.folders.push_back(folder);
    else
        news.lost = true;
}

void FolderWatch::forget(const std::string& folder) {
    for (auto at = folders_.begin(); at != folders_.end();) {
        const bool within = at->second == folder || at->second.starts_with(folder + "/");
        if (within) ::inotify_rm_watch(descriptor_, at->first);
        at = within ? folders_.erase(at) : std::next(at);
    }
}

void FolderWatch::hearOfFolder(std::uint32_t what, const std::string& path, WatchNews& news) {
    if (!recursive_) return;
    if (what & IN_MOVED_FROM) forget(path);
    if (what & (IN_CREATE | IN_MOVED_TO)) addLater(path, news);
}

void FolderWatch::hearOfFile(std::uint32_t what, const std::string& path, WatchNews& news) {
    if (what & (IN_CLOSE_WRITE | IN_MOVED_TO)) news.whole.push_back(path);
    if ((what & IN_CREATE) && isLink(path)) news.met.push_back(path);
}

void FolderWatch::hear(int number, std::uint32_t what, const std::string& name, WatchNews& news) {
    if (what & IN_Q_OVERFLOW) news.lost = true;
    const auto at = folders_.find(number);
    if (at == folders_.end()) return;
    if (number == root_ && (what & (IN_DELETE_SELF | IN_MOVE_SELF | IN_UNMOUNT))) news.gone = true;
    if (what & IN_IGNORED) {
        folders_.erase(at);
        return;
    }
    if (name.empty()) return;
    const std::string path = pathIn(at->second, name);
    if (what & IN_ISDIR)
        hearOfFolder(what, path, news);
    else
        hearOfFile(what, path, news);
}

WatchNews FolderWatch::wait(std::chrono::milliseconds most) {
    WatchNews news;
    pollfd asked{descriptor_, POLLIN, 0};
    if (::poll(&asked, 1, int(most.count())) <= 0) return news;
    std::string buffer(kBuffer, '\0');
    for (int i = 0; i < kMostReads; ++i) {
        const ssize_t bytes = ::read(descriptor_, buffer.data(), buffer.size());
        if (bytes <= 0) break;
        for (std::size_t at = 0; at + sizeof(inotify_event) <= std::size_t(bytes);) {
            inotify_event event{};
            std::memcpy(&event, buffer.data() + at, sizeof event);
            const char* name = buffer.data() + at + sizeof event;
            hear(event.wd, event.mask, std::string(name, ::strnlen(name, event.len)), news);
            at += sizeof event + event.len;
        }
    }
    return news;
}

}  // namespace fettle
