// Why: an alert may run a program of the user's own (a siren, a text message, another system's door), and a
// password may come from one. No shell stands between: program and arguments are a list, so that no tag or
// name can become a command. The child has its own process group; after the time allowed, or when cancelled,
// the whole group is killed. It inherits the environment and no open file but the three given. Limits: 1 MiB
// in, 64 KiB out (the rest is read and thrown away). Thread: any; blocks for as long as the program runs.
// Errors: Invalid for an empty list or a program not named by its whole path; NotFound, Unreadable where it
// cannot be started.
#pragma once

#include <chrono>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/base/result.h"

namespace fettle {

struct ChildProgram {
    std::vector<std::string> words;  // program by its whole path, then its arguments
    std::string input;               // what it reads
    std::chrono::milliseconds allowed{30000};
    bool withErrors = true;  // its standard error beside its output; else thrown away
};

struct ChildEnd {
    int status = -1;  // exit status; 128 + signal where one ended it
    bool tooLate = false, cancelled = false;
    std::string output;
    bool good() const { return status == 0 && !tooLate && !cancelled; }
};

Status checkChildProgram(const std::vector<std::string>& words);
Result<ChildEnd> runChild(const ChildProgram& program, const CancelToken& cancel = {});

}  // namespace fettle
