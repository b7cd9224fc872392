// Why: SQLite takes an empty file for a database, writes beside whatever it is given, and says little of what
// is wrong. So a file is looked at before SQLite may: is it there, is it ours, is it whole, may it be
// written, does it lie where locks and shared memory work. Nothing is changed. Source: the first 100 bytes as
// in the SQLite documentation, "Database File Format", section 1.3. Errors: NotFound, Unreadable, Damaged,
// and Unsupported for a foreign file.
#pragma once

#include <cstdint>
#include <string>

#include "core/base/result.h"

namespace fettle {

struct FileHead {
    std::string realPath;  // links resolved: SQLite keeps its -wal there
    std::uint64_t bytes = 0;
    bool pending = false;  // changes in a -wal beside it that are not yet in the file
    bool inUse = false;    // a program has it open, or was killed while it had
    bool alone() const { return !pending && !inUse; }
};

// `vfs` as in Database::open.
Result<FileHead> readHead(const std::string& path, const std::string& vfs = "");

// Why nothing can be written there, as the end of a sentence; empty: it can.
std::string whyNotWritable(const std::string& realPath);

// "NFS" where a path lies on a drive of that kind; empty: a disk of this computer, or nobody knows.
std::string networkDriveOf(const std::string& path);
// By the system's number of the kind of file system (statfs); empty: not a network drive.
std::string networkDriveName(std::uint64_t kind);

// Is `path` the fleet file, or a file SQLite keeps beside it (-wal, -shm, -journal)? Through links and other
// names too; a name that such a file would get counts as well. Never an error.
bool isPartOfFleet(const std::string& path, const std::string& fleetPath);

// Refuses where a file, or what SQLite would take for a part of it, is at `path` already.
Status checkVacant(const std::string& path);
// Gives a finished file its name, without taking anybody's place, and flushes the folder.
Status moveIntoPlace(const std::string& from, const std::string& to);
// A name beside `path` for a file being made.
std::string unfinishedName(const std::string& path);
void removeUnfinished(const std::string& unfinished);

}  // namespace fettle
