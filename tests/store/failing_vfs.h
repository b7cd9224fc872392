// Why: full disks, drives without locks and folders nobody may write cannot be had on demand; SQLite's way to
// the disk can be. A FailingVfs passes everything on to the real one until told to fail. Thread: one; it must
// outlive the databases opened through it.
#pragma once

#include <sqlite3.h>

#include <string>

namespace fettle {

class FailingVfs {
  public:
    FailingVfs();
    ~FailingVfs();
    FailingVfs(const FailingVfs&) = delete;
    FailingVfs& operator=(const FailingVfs&) = delete;
    const std::string& name() const { return name_; }

    // After so many more writes and flushes the disk is full; never where negative.
    int writesLeft = -1;
    bool once = false;  // only that one call fails, then there is room again
    int writes = 0;     // seen so far
    bool locksFail = false, sharedMemoryFails = false, readsFail = false;
    bool readOnly = false;  // writing is asked for and not granted

    // For the calls below.
    bool refuseWrite();
    sqlite3_vfs* real() { return real_; }

  private:
    std::string name_;
    sqlite3_vfs* real_;
    sqlite3_vfs vfs_{};
};

}  // namespace fettle
