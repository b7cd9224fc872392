// Why: two stand-ins for the disk. MemoryFileSystem puts any bytes under any path without touching the disk;
// FailingFileSystem passes calls on to another one and makes those fail that were asked to, so that every
// "disk full" and "no permission" can be tried. Ownership: FailingFileSystem borrows the one under it.
// Thread: one. Errors: the same kinds as the real one's: NotFound, Unreadable, Unwritable, Unsupported.
#pragma once

#include <fmt/format.h>

#include <map>
#include <set>

#include "core/base/file_system.h"

namespace fettle {

// Paths are compared as written: "a/b" and "a//b" are two files. A folder is there once made or once a file
// lies in it.
class MemoryFileSystem final : public FileSystem {
  public:
    void put(const std::string& path, std::string bytes) { files_[path] = std::move(bytes); }
    void remove(const std::string& path) { files_.erase(path); }

    Result<std::string> read(const std::string& path, std::uint64_t most = kMostBytes) const override {
        if (isFolder(path)) return fail(ErrorKind::Unreadable, path, "", "is not a regular file");
        const auto found = files_.find(path);
        if (found == files_.end()) return fail(ErrorKind::NotFound, path, "", "No such file or directory");
        if (found->second.size() > most)
            return fail(ErrorKind::Unsupported, path, "", fmt::format("is larger than {} bytes", most));
        return found->second;
    }

    Status writeSafely(const std::string& path, const std::string& bytes) override {
        if (isFolder(path)) return fail(ErrorKind::Unwritable, path, "", "Is a directory");
        put(path, bytes);
        return {};
    }

    bool exists(const std::string& path) const override { return files_.count(path) > 0 || isFolder(path); }

    Status makeFolders(const std::string& path) override {
        if (files_.count(path)) return fail(ErrorKind::Unwritable, path, "", "Not a directory");
        folders_.insert(path);
        return {};
    }

    Result<std::vector<std::string>> list(const std::string& folder) const override {
        if (!isFolder(folder)) return fail(ErrorKind::Unreadable, folder, "", "No such file or directory");
        std::set<std::string> names;
        for (const auto& [path, bytes] : files_)
            addName(names, folder, path);
        for (const std::string& path : folders_)
            addName(names, folder, path);
        return std::vector<std::string>(names.begin(), names.end());
    }

  private:
    static bool isUnder(const std::string& folder, const std::string& path) {
        return path.size() > folder.size() + 1 && path.compare(0, folder.size(), folder) == 0 &&
               path[folder.size()] == '/';
    }
    static void addName(std::set<std::string>& names, const std::string& folder, const std::string& path) {
        if (!isUnder(folder, path)) return;
        const std::string rest = path.substr(folder.size() + 1);
        names.insert(rest.substr(0, rest.find('/')));
    }
    bool isFolder(const std::string& path) const {
        if (folders_.count(path)) return true;
        for (const auto& [file, bytes] : files_)
            if (isUnder(path, file)) return true;
        return false;
    }

    std::map<std::string, std::string> files_;
    std::set<std::string> folders_;
};

class FailingFileSystem final : public FileSystem {
  public:
    explicit FailingFileSystem(FileSystem& under) : under_(under) {}

    // The next `calls` reads, listings or writes pass, all after them fail. Folders are made by writing.
    void failReadsAfter(int calls) { readsLeft_ = calls; }
    void failWritesAfter(int calls) { writesLeft_ = calls; }
    // This path alone can be neither read nor written.
    void failAt(std::string path) { badPath_ = std::move(path); }

    Result<std::string> read(const std::string& path, std::uint64_t most = kMostBytes) const override {
        if (refused(readsLeft_, path)) return fail(ErrorKind::Unreadable, path, "", "Input/output error");
        return under_.read(path, most);
    }
    Status writeSafely(const std::string& path, const std::string& bytes) override {
        if (refused(writesLeft_, path))
            return fail(ErrorKind::Unwritable, path, "", "No space left on device");
        return under_.writeSafely(path, bytes);
    }
    bool exists(const std::string& path) const override { return under_.exists(path); }
    Status makeFolders(const std::string& path) override {
        if (refused(writesLeft_, path))
            return fail(ErrorKind::Unwritable, path, "", "No space left on device");
        return under_.makeFolders(path);
    }
    Result<std::vector<std::string>> list(const std::string& folder) const override {
        if (refused(readsLeft_, folder)) return fail(ErrorKind::Unreadable, folder, "", "Input/output error");
        return under_.list(folder);
    }

  private:
    static constexpr int kNever = -1;
    bool refused(int& left, const std::string& path) const {
        if (path == badPath_) return true;
        if (left == kNever) return false;
        if (left == 0) return true;
        --left;
        return false;
    }

    FileSystem& under_;
    mutable int readsLeft_ = kNever;
    int writesLeft_ = kNever;
    std::string badPath_;
};

}  // namespace fettle
