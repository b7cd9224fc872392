#include "core/store/file_probe.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <sys/vfs.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <optional>

#include "core/store/database.h"
#include "core/store/schema.h"

namespace fettle {

namespace fs = std::filesystem;

namespace {
constexpr std::string_view kMagic("SQLite format 3\0", 16);
constexpr std::size_t kHeadBytes = 100, kAtPageSize = 16, kAtPages = 28, kAtChanges = 24, kAtValidFor = 92,
                      kAtApplication = 68;

class Opened {
  public:
    Opened(const std::string& path, int flags) : fd_(::open(path.c_str(), flags | O_CLOEXEC)) {}
    ~Opened() {
        if (fd_ >= 0) ::close(fd_);
    }
    Opened(const Opened&) = delete;
    Opened& operator=(const Opened&) = delete;
    int get() const { return fd_; }

  private:
    int fd_;
};

std::uint32_t bigEndian(const std::string& bytes, std::size_t at, std::size_t count) {
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < count; ++i)
        value = value << 8 | static_cast<unsigned char>(bytes[at + i]);
    return value;
}

std::string folderOf(const std::string& path) {
    const std::string folder = fs::path(path).parent_path().string();
    return folder.empty() ? "." : folder;
}

// Before anything opens it: a pipe would wait, a device might do anything.
Status checkRegular(const std::string& path) {
    struct stat info {};
    if (::stat(path.c_str(), &info) != 0)
        return fail(errno == ENOENT || errno == ENOTDIR ? ErrorKind::NotFound : ErrorKind::Unreadable, path,
                    "", std::strerror(errno));
    if (!S_ISREG(info.st_mode)) return fail(ErrorKind::Unreadable, path, "", "is not a regular file");
    if (::access(path.c_str(), R_OK) != 0) return fail(ErrorKind::Unreadable, path, "", std::strerror(errno));
    return {};
}

Status checkKind(const std::string& head, const std::string& path) {
    if (head.empty()) return fail(ErrorKind::Damaged, path, "", "is empty; a fleet file never is");
    if (head.substr(0, kMagic.size()) != kMagic.substr(0, head.size()))
        return fail(ErrorKind::Unsupported, path, "byte 0", "is not a fleet file");
    if (head.size() < kHeadBytes)
        return fail(ErrorKind::Damaged, path, fmt::format("byte {}", head.size()),
                    "ends within its head; restore a backup");
    if (bigEndian(head, kAtApplication, 4) != std::uint32_t(kApplicationId))
        return fail(ErrorKind::Unsupported, path, fmt::format("byte {}", kAtApplication),
                    "is an SQLite database of another program, not a fleet file");
    return {};
}

// Only where no -wal holds what is still to be moved into the file.
Status checkWhole(const std::string& head, std::uint64_t size, const std::string& path) {
    const std::uint32_t said = bigEndian(head, kAtPageSize, 2), page = said == 1 ? 65536 : said;
    if (page < 512 || (page & (page - 1)) != 0)
        return fail(ErrorKind::Damaged, path, fmt::format("byte {}", kAtPageSize),
                    fmt::format("states pages of {} bytes; restore a backup", page));
    const std::uint64_t pages = bigEndian(head, kAtPages, 4);
    const bool known = pages > 0 && bigEndian(head, kAtChanges, 4) == bigEndian(head, kAtValidFor, 4);
    if (size % page != 0 || (known && size < pages * page))
        return fail(
            ErrorKind::Damaged, path, fmt::format("byte {}", size),
            fmt::format("ends there, in the middle of {} pages of {} bytes; restore a backup", pages, page));
    return {};
}

std::optional<std::uint64_t> bytesAt(const std::string& path) {
    struct stat info {};
    if (::stat(path.c_str(), &info) != 0) return std::nullopt;
    return std::uint64_t(info.st_size);
}
}  // namespace

Result<FileHead> readHead(const std::string& path, const std::string& vfs) {
    if (auto good = checkRegular(path); !good) return fail(good.error());
    FileHead head;
    std::error_code problem;
    head.realPath = fs::canonical(path, problem).string();
    if (problem) return fail(ErrorKind::Unreadable, path, "", problem.message());
    const auto beginning = Database::beginningOf(head.realPath, kHeadBytes, vfs);
    if (!beginning) return fail(beginning.error());
    if (auto good = checkKind(beginning->bytes, path); !good) return fail(good.error());
    head.bytes = beginning->size;
    head.pending = bytesAt(head.realPath + "-wal").value_or(0) > 0;
    head.inUse = bytesAt(head.realPath + "-shm").has_value();
    if (!head.pending)
        if (auto good = checkWhole(beginning->bytes, head.bytes, path); !good) return fail(good.error());
    return head;
}

std::string whyNotWritable(const std::string& realPath) {
    if (::access(realPath.c_str(), W_OK) != 0)
        return errno == EROFS ? "the drive is read-only" : "the file may not be written";
    if (::access(folderOf(realPath).c_str(), W_OK | X_OK) != 0) return "its folder may not be written";
    return "";
}

std::string networkDriveName(std::uint64_t kind) {
    struct Row {
        std::uint64_t kind;
        const char* name;
    };
    // linux/magic.h and the file systems' own headers
    static constexpr std::array<Row, 9> rows = {{{0x6969, "NFS"},
                                                 {0x517b, "SMB"},
                                                 {0xff534d42, "CIFS"},
                                                 {0xfe534d42, "SMB2"},
                                                 {0x01021997, "9P"},
                                                 {0x5346414f, "AFS"},
                                                 {0x00c36400, "Ceph"},
                                                 {0x0bd00bd0, "Lustre"},
                                                 {0x564c, "NCP"}}};
    for (const Row& row : rows)
        if (row.kind == kind) return row.name;
    return "";
}

std::string networkDriveOf(const std::string& path) {
    struct statfs info {};
    const std::string folder = folderOf(path);
    if (::statfs(folder.c_str(), &info) != 0) return "";
    return networkDriveName(std::uint32_t(info.f_type));
}

bool isPartOfFleet(const std::string& path, const std::string& fleetPath) {
    std::error_code unknown;
    const std::string fleet = fs::weakly_canonical(fs::absolute(fleetPath, unknown), unknown).string();
    const fs::path asked = fs::weakly_canonical(fs::absolute(path, unknown), unknown);
    struct stat one {
    }, other{};
    const bool there = ::stat(path.c_str(), &one) == 0;
    for (const char* ending : {"", "-wal", "-shm", "-journal"}) {
        const std::string part = (fleet.empty() ? fleetPath : fleet) + ending;
        if (asked == fs::path(part)) return true;
        if (there && ::stat(part.c_str(), &other) == 0 && one.st_dev == other.st_dev &&
            one.st_ino == other.st_ino)
            return true;
    }
    return false;
}

Status checkVacant(const std::string& path) {
    for (const char* ending : {"", "-wal", "-shm", "-journal"}) {
        const std::string name = path + ending;
        struct stat info {};
        if (::lstat(name.c_str(), &info) == 0)
            return fail(ErrorKind::Invalid, name, "", "is there already and is left as it is");
    }
    return {};
}

Status moveIntoPlace(const std::string& from, const std::string& to) {
    // link refuses a taken name; where a drive knows no links, look and rename.
    if (::link(from.c_str(), to.c_str()) == 0) {
        ::unlink(from.c_str());
    } else if (errno == EEXIST) {
        return checkVacant(to);
    } else {
        if (auto good = checkVacant(to); !good) return good;
        if (std::rename(from.c_str(), to.c_str()) != 0)
            return fail(ErrorKind::Unwritable, to, "", std::strerror(errno));
    }
    const Opened folder(folderOf(to), O_RDONLY | O_DIRECTORY);
    if (folder.get() >= 0) ::fsync(folder.get());
    return {};
}

std::string unfinishedName(const std::string& path) {
    return fmt::format("{}.{}.part", path, ::getpid());
}

void removeUnfinished(const std::string& unfinished) {
    for (const char* ending : {"", "-wal", "-shm", "-journal"})
        ::unlink((unfinished + ending).c_str());
}

}  // namespace fettle
