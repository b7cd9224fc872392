// Why: what comes out of a fleet file may be larger than memory: it is written piece by piece beside its
// place and gets its name when it is whole, so that there is the old file or the new one. Thread: one.
// Errors: Unwritable with the system's word; after a failure nothing more is written and nothing stays.
#pragma once

#include <cstdio>
#include <memory>
#include <string>

#include "core/base/result.h"

namespace fettle {

class OutFile {
  public:
    explicit OutFile(std::string path);
    ~OutFile();  // what was not finished goes
    OutFile(const OutFile&) = delete;
    OutFile& operator=(const OutFile&) = delete;

    void add(const std::string& text);
    Status finish();

  private:
    void failed();

    std::string path_, unfinished_;
    std::unique_ptr<std::FILE, int (*)(std::FILE*)> file_;
    Status status_;
};

}  // namespace fettle
