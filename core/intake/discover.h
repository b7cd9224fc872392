// Why: what an import was pointed at becomes a list of files in an order that is the same every time: names
// sorted within a folder, subfolders where their names fall. Links to folders are followed when named, not
// when met, so that a walk ends. By extension only; nothing is opened. Errors: a path that is not there or a
// folder that cannot be listed is a problem beside the files found.
#pragma once

#include <string>
#include <vector>

#include "core/base/file_system.h"

namespace fettle {

struct FoundFile {
    std::string path;
    bool named = false;  // by the user; else met in a folder
};

struct Found {
    std::vector<FoundFile> files;
    std::vector<Error> problems;
    std::size_t passedOver = 0;  // files met whose extension is no recording's
};

Found discover(const FileSystem& files, const std::vector<std::string>& paths, bool recursive);

}  // namespace fettle
