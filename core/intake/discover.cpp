#include "core/intake/discover.h"

#include <algorithm>

#include "core/signal/reader.h"

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
    Walk(const FileSystem& files, bool recursive) : files_(files), recursive_(recursive) {}

    void named(const std::string& path) {
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
        if (kind == PathKind::File && hasRecordingExtension(path))
            found_.files.push_back({path, false});
        else if (kind != PathKind::Folder && kind != PathKind::FolderLink)
            ++found_.passedOver;
    }

    const FileSystem& files_;
    bool recursive_;
    Found found_;
};

}  // namespace

Found discover(const FileSystem& files, const std::vector<std::string>& paths, bool recursive) {
    Walk walk(files, recursive);
    for (const std::string& path : paths)
        walk.named(path);
    return walk.take();
}

}  // namespace fettle
