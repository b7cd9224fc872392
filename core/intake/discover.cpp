#include "core/intake/discover.h"

#include <algorithm>
#include <filesystem>

#include "core/intake/level_table.h"
#include "core/signal/reader.h"
#include "core/signal/recording_limits.h"
#include "core/signal/sidecar.h"

namespace fettle {

namespace {

bool hasRecordingExtension(const std::string& path) {
    const std::string extension = extensionOf(path);
    for (const ReaderRow& row : readerRegistry())
        if (std::count(row.extensions.begin(), row.extensions.end(), extension)) return true;
    return false;
}

class Walk {
  public:
    Walk(const FileSystem& files, bool recursive, const std::string& fleetFile)
        : files_(files), recursive_(recursive), fleetFile_(fleetFile) {}

    void named(const std::string& path) {
        if (isFleetFile(path)) {
            found_.problems.push_back({ErrorKind::Invalid, path, "", "is the fleet file, not a recording"});
            return;
        }
        switch (files_.kindOf(path)) {
            case PathKind::Folder:
            case PathKind::FolderLink:
                return folder(path);
            case PathKind::Missing:
                found_.problems.push_back({ErrorKind::NotFound, path, "", "no such file or folder"});
                return;
            default:
                found_.files.push_back({path, true});
        }
    }
    Found take() { return std::move(found_); }

  private:
    bool isFleetFile(const std::string& path) const {
        if (fleetFile_.empty()) return false;
        for (const char* beside : {"", "-wal", "-shm", "-journal"})
            if (files_.isSameFile(path, fleetFile_ + beside)) return true;
        return false;
    }

    void folder(const std::string& path) {
        const auto names = files_.list(path);
        if (!names) {
            found_.problems.push_back(names.error());
            return;
        }
        for (const std::string& name : *names)
            met(path.ends_with('/') ? path + name : path + "/" + name);
    }

    void met(const std::string& path) {
        const PathKind kind = files_.kindOf(path);
        if (kind == PathKind::Folder && recursive_) return folder(path);
        found_.foldersLeftOut += kind == PathKind::Folder;
        if (kind == PathKind::File && hasRecordingExtension(path) && !isFleetFile(path))
            found_.files.push_back({path, false});
        else if (kind != PathKind::Folder && kind != PathKind::FolderLink)
            ++found_.passedOver;
    }

    const FileSystem& files_;
    bool recursive_;
    const std::string& fleetFile_;
    Found found_;
};

}  // namespace

Found discover(const FileSystem& files, const std::vector<std::string>& paths, bool recursive,
               const std::string& fleetFile) {
    Walk walk(files, recursive, fleetFile);
    for (const std::string& path : paths)
        walk.named(path);
    return walk.take();
}

bool isLooseText(const FileSystem& files, const FoundFile& file) {
    if (file.named || files.exists(sidecarPath(file.path))) return false;
    const std::vector<ReaderRow>& rows = readerRegistry();
    const auto csv =
        std::find_if(rows.begin(), rows.end(), [](const ReaderRow& r) { return r.name == "CSV"; });
    const std::string extension = extensionOf(file.path);
    if (!std::count(csv->extensions.begin(), csv->extensions.end(), extension)) return false;
    const auto bytes = files.read(file.path, kMostRecordingBytes);
    return bytes && !csv->recognises(*bytes) && !isLevelTable(*bytes);
}

std::string wholePath(const std::string& path) {
    std::error_code problem;
    const auto whole = std::filesystem::absolute(path, problem);
    return problem ? path : whole.lexically_normal().string();
}

}  // namespace fettle
