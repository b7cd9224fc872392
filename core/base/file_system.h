// Why: everything that reads or writes a file goes through this seam, so that tests can put any bytes
// anywhere and make any call fail. Three kinds: the real one, one in memory, and one that fails on demand
// (the last two in file_system_fake.h). Thread: the real one may be used from any thread; the fakes from one.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/base/result.h"

namespace fettle {

// What stands at a path. A link to a file is a file; a link to a folder is told apart, so that a walk through
// folders can end.
enum class PathKind { Missing, File, Folder, FolderLink, Other };

class FileSystem {
  public:
    virtual ~FileSystem() = default;
    // All bytes of a regular file. Refuses directories and devices, and files of more than `most` bytes.
    virtual Result<std::string> read(const std::string& path, std::uint64_t most = kMostBytes) const = 0;
    // Writes to a temporary beside `path` (writablePlace), flushes it to disk, then renames: after a kill the
    // old file or the new one is there, whole.
    virtual Status writeSafely(const std::string& path, const std::string& bytes) = 0;
    virtual bool exists(const std::string& path) const = 0;
    virtual PathKind kindOf(const std::string& path) const {
        if (list(path)) return PathKind::Folder;
        return exists(path) ? PathKind::File : PathKind::Missing;
    }
    // Whether two paths lead to one file, by links as well; nothing is opened.
    virtual bool isSameFile(const std::string& a, const std::string& b) const { return a == b; }
    virtual Status makeFolders(const std::string& path) = 0;
    // Names in a folder, sorted, not its subfolders' contents.
    virtual Result<std::vector<std::string>> list(const std::string& folder) const = 0;

    static constexpr std::uint64_t kMostBytes = std::uint64_t(4) << 30;
};

class RealFileSystem final : public FileSystem {
  public:
    Result<std::string> read(const std::string& path, std::uint64_t most = kMostBytes) const override;
    Status writeSafely(const std::string& path, const std::string& bytes) override;
    bool exists(const std::string& path) const override;
    PathKind kindOf(const std::string& path) const override;
    bool isSameFile(const std::string& a, const std::string& b) const override;
    Status makeFolders(const std::string& path) override;
    Result<std::vector<std::string>> list(const std::string& folder) const override;
};

// Where a file of this name is put: the end of a link, so that the link stays. Unwritable: what stands there
// is no regular file (a device, a pipe, a folder: renaming would replace it) or may not be written.
Result<std::string> writablePlace(const std::string& path);

// The path with its last extension replaced: "a/b.c.wav", ".json" -> "a/b.c.json". Links are not resolved.
std::string withExtension(const std::string& path, std::string_view extension);
// The last extension in lower case without its dot; "" where there is none.
std::string extensionOf(const std::string& path);
std::string fileNameOf(const std::string& path);

}  // namespace fettle
