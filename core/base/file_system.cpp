#include "core/base/file_system.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>

#include "core/base/text.h"

namespace fettle {

namespace {
std::string systemWord() {
    return std::strerror(errno);
}

// Owns a descriptor for the length of one read or write.
class OpenFile {
  public:
    explicit OpenFile(int fd) : fd_(fd) {}
    ~OpenFile() {
        if (fd_ >= 0) ::close(fd_);
    }
    OpenFile(const OpenFile&) = delete;
    OpenFile& operator=(const OpenFile&) = delete;
    int get() const { return fd_; }

  private:
    int fd_;
};

bool writeAll(int fd, const std::string& bytes) {
    std::size_t at = 0;
    while (at < bytes.size()) {
        const ssize_t n = ::write(fd, bytes.data() + at, bytes.size() - at);
        if (n < 0 && errno == EINTR) continue;
        if (n <= 0) return false;
        at += static_cast<std::size_t>(n);
    }
    return ::fsync(fd) == 0;
}
}  // namespace

Result<std::string> RealFileSystem::read(const std::string& path, std::uint64_t most) const {
    const OpenFile file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
    if (file.get() < 0)
        return fail(errno == ENOENT ? ErrorKind::NotFound : ErrorKind::Unreadable, path, "", systemWord());
    struct stat info {};
    if (::fstat(file.get(), &info) != 0) return fail(ErrorKind::Unreadable, path, "", systemWord());
    if (!S_ISREG(info.st_mode)) return fail(ErrorKind::Unreadable, path, "", "is not a regular file");
    if (static_cast<std::uint64_t>(info.st_size) > most)
        return fail(ErrorKind::Unsupported, path, "", fmt::format("is larger than {} bytes", most));
    std::string bytes(static_cast<std::size_t>(info.st_size), '\0');
    std::size_t at = 0;
    while (at < bytes.size()) {
        const ssize_t n = ::read(file.get(), bytes.data() + at, bytes.size() - at);
        if (n < 0 && errno == EINTR) continue;
        if (n < 0) return fail(ErrorKind::Unreadable, path, fmt::format("byte {}", at), systemWord());
        if (n == 0) break;
        at += static_cast<std::size_t>(n);
    }
    bytes.resize(at);
    return bytes;
}

Result<std::string> writablePlace(const std::string& path) {
    std::string place = path;
    struct stat link {};
    if (::lstat(path.c_str(), &link) == 0 && S_ISLNK(link.st_mode)) {
        std::error_code problem;
        const std::filesystem::path from(path);
        place = std::filesystem::exists(from, problem)
                    ? std::filesystem::canonical(from, problem).string()
                    : (from.parent_path() / std::filesystem::read_symlink(from, problem)).string();
        if (problem) return fail(ErrorKind::Unwritable, path, "", problem.message());
    }
    struct stat there {};
    if (::stat(place.c_str(), &there) != 0) return place;
    if (!S_ISREG(there.st_mode)) return fail(ErrorKind::Unwritable, path, "", "is not a regular file");
    const bool anyMay =
        there.st_mode & (S_IWUSR | S_IWGRP | S_IWOTH);  // the administrator may write everywhere
    if (!anyMay || ::access(place.c_str(), W_OK) != 0)
        return fail(ErrorKind::Unwritable, path, "", "is there already and read-only");
    return place;
}

Status RealFileSystem::writeSafely(const std::string& name, const std::string& bytes) {
    const auto place = writablePlace(name);
    if (!place) return fail(place.error());
    const std::string& path = *place;
    const std::string temporary = fmt::format("{}.{}.part", path, ::getpid());
    {
        const OpenFile file(::open(temporary.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644));
        if (file.get() < 0) return fail(ErrorKind::Unwritable, path, "", systemWord());
        if (!writeAll(file.get(), bytes)) {
            const std::string word = systemWord();
            ::unlink(temporary.c_str());
            return fail(ErrorKind::Unwritable, path, "", word);
        }
    }
    if (std::rename(temporary.c_str(), path.c_str()) != 0) {
        const std::string word = systemWord();
        ::unlink(temporary.c_str());
        return fail(ErrorKind::Unwritable, path, "", word);
    }
    return {};
}

bool RealFileSystem::exists(const std::string& path) const {
    return ::access(path.c_str(), F_OK) == 0;
}

PathKind RealFileSystem::kindOf(const std::string& path) const {
    struct stat target {};
    struct stat link {};
    if (::stat(path.c_str(), &target) != 0) return PathKind::Missing;
    if (S_ISREG(target.st_mode)) return PathKind::File;
    if (!S_ISDIR(target.st_mode)) return PathKind::Other;
    const bool linked = ::lstat(path.c_str(), &link) == 0 && S_ISLNK(link.st_mode);
    return linked ? PathKind::FolderLink : PathKind::Folder;
}

bool RealFileSystem::isSameFile(const std::string& a, const std::string& b) const {
    struct stat one {};
    struct stat other {};
    return ::stat(a.c_str(), &one) == 0 && ::stat(b.c_str(), &other) == 0 && one.st_dev == other.st_dev &&
           one.st_ino == other.st_ino;
}

Status RealFileSystem::makeFolders(const std::string& path) {
    std::error_code problem;
    std::filesystem::create_directories(path, problem);
    if (problem) return fail(ErrorKind::Unwritable, path, "", problem.message());
    return {};
}

Result<std::vector<std::string>> RealFileSystem::list(const std::string& folder) const {
    std::error_code problem;
    std::vector<std::string> names;
    for (std::filesystem::directory_iterator it(folder, problem), end; !problem && it != end;
         it.increment(problem))
        names.push_back(it->path().filename().string());
    if (problem) return fail(ErrorKind::Unreadable, folder, "", problem.message());
    std::sort(names.begin(), names.end());
    return names;
}

std::string withExtension(const std::string& path, std::string_view extension) {
    const std::size_t name = path.find_last_of('/') + 1;  // 0 where there is no slash
    const std::size_t dot = path.find_last_of('.');
    const bool has = dot != std::string::npos && dot > name;
    return path.substr(0, has ? dot : path.size()) + std::string(extension);
}

std::string extensionOf(const std::string& path) {
    const std::string stem = withExtension(path, "");
    return stem.size() == path.size() ? "" : lowerAscii(std::string_view(path).substr(stem.size() + 1));
}

std::string fileNameOf(const std::string& path) {
    return path.substr(path.find_last_of('/') + 1);
}

}  // namespace fettle
