// Free pages of the fleet file, given back to the disk.
#include <fmt/format.h>
#include <sqlite3.h>

#include <filesystem>
#include <mutex>

#include "core/store/database.h"
#include "core/store/retention_store.h"

namespace fettle {

namespace {

constexpr std::int64_t kPagesAtOnce = 256;  // 4 MB: other writers get in between
constexpr int kIncremental = 2;             // PRAGMA auto_vacuum

// SQLite writes the new file to a temporary one first, which must lie where there is room for it: beside the
// file. Nothing else in the program uses such files (temp_store=MEMORY).
class TemporaryBeside {
  public:
    explicit TemporaryBeside(const std::string& path) : held_(mutex_), before_(sqlite3_temp_directory) {
        const std::string folder = std::filesystem::absolute(path).parent_path().string();
        sqlite3_temp_directory = sqlite3_mprintf("%s", folder.c_str());
    }
    ~TemporaryBeside() {
        sqlite3_free(sqlite3_temp_directory);
        sqlite3_temp_directory = before_;
    }
    TemporaryBeside(const TemporaryBeside&) = delete;
    TemporaryBeside& operator=(const TemporaryBeside&) = delete;

  private:
    static inline std::mutex mutex_;
    std::lock_guard<std::mutex> held_;
    char* before_;
};

Status checkRoom(const std::string& path, std::uint64_t needed) {
    std::error_code trouble;
    const auto room = std::filesystem::space(std::filesystem::absolute(path).parent_path(), trouble);
    if (trouble || room.available >= needed) return {};
    return fail(
        ErrorKind::Unwritable, path, "",
        fmt::format("compacting needs {} MB of free disk beside it for a while, there are {} MB; nothing "
                    "was changed",
                    needed / 1000000 + 1, room.available / 1000000));
}

// What stands in the -wal goes into the file, which is cut to its new length. Where a reader still holds an
// older state this comes later by itself.
void settle(Database& database) {
    (void)database.script("PRAGMA wal_checkpoint(TRUNCATE)");
}
}  // namespace

Result<FileSpace> RetentionStore::space() {
    const auto pages = database_.one<std::int64_t>("PRAGMA page_count");
    const auto size = database_.one<std::int64_t>("PRAGMA page_size");
    const auto free = database_.one<std::int64_t>("PRAGMA freelist_count");
    const auto mode = database_.one<std::int64_t>("PRAGMA auto_vacuum");
    for (const auto* one : {&pages, &size, &free, &mode})
        if (!*one) return fail(one->error());
    const auto bytes = std::uint64_t(size->value_or(0));
    return FileSpace{std::uint64_t(pages->value_or(0)) * bytes, std::uint64_t(free->value_or(0)) * bytes,
                     mode->value_or(0) == kIncremental};
}

Status RetentionStore::giveBack(const Progress& progress, const CancelToken& cancel) {
    const auto first = space();
    if (!first) return fail(first.error());
    if (!first->givesBack || first->freeBytes == 0) return {};
    std::uint64_t left = first->freeBytes;
    while (left > 0 && !cancel.cancelled()) {
        if (progress)
            progress(std::size_t(first->freeBytes - left), std::size_t(first->freeBytes), "free space");
        if (auto good = database_.script(fmt::format("PRAGMA incremental_vacuum({})", kPagesAtOnce)); !good)
            return good;
        const auto now = space();
        if (!now) return fail(now.error());
        if (now->freeBytes >= left) break;  // others took as much as was given back
        left = now->freeBytes;
    }
    settle(database_);
    return {};
}

Status RetentionStore::compact(const CancelToken& cancel) {
    const auto before = space();
    if (!before) return fail(before.error());
    if (cancel.cancelled()) return fail(database_.errorOf(SQLITE_INTERRUPT, ""));
    if (auto good = checkRoom(database_.path(), 2 * (before->bytes - before->freeBytes)); !good) return good;
    const TemporaryBeside temporary(database_.path());
    database_.watch(&cancel);
    auto done = database_.script("PRAGMA temp_store=FILE; PRAGMA auto_vacuum=INCREMENTAL; VACUUM;");
    database_.watch(nullptr);
    const auto restored = database_.script("PRAGMA temp_store=MEMORY");
    settle(database_);
    return done ? restored : done;
}

}  // namespace fettle
