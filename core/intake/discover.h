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
    std::size_t passedOver = 0;      // files met whose extension is no recording's
    std::size_t foldersLeftOut = 0;  // met and not walked
};

// `fleetFile` and what stands beside it are open elsewhere: opening and closing them here would end its
// locks. Named they are a problem, met they are passed over.
Found discover(const FileSystem& files, const std::vector<std::string>& paths, bool recursive,
               const std::string& fleetFile = "");

// A text file met in a folder may be anything: it is a recording where it begins as one or has a sidecar (or
// a rule, which the caller knows), and a table of levels where its head says so. Reads the file.
bool isLooseText(const FileSystem& files, const FoundFile& file);

// Absolute and without "..": the same file may be named from another folder later.
std::string wholePath(const std::string& path);

}  // namespace fettle
