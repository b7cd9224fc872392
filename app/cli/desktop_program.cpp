#include "app/cli/desktop_program.h"

#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstring>
#include <filesystem>

#include "core/base/child_process.h"
#include "core/base/file_system.h"

extern char** environ;

namespace fettle {

namespace {

namespace fs = std::filesystem;

std::string beside() {
    std::error_code problem;
    const fs::path self = fs::read_symlink("/proc/self/exe", problem);
    return problem ? "" : (self.parent_path() / "fettle").string();
}

// This program's surroundings, but for how Qt draws.
std::vector<std::string> surroundings() {
    std::vector<std::string> all;
    for (char** one = environ; *one; ++one)
        if (std::strncmp(*one, "QT_QPA_PLATFORM=", 16) != 0) all.push_back(*one);
    all.push_back("QT_QPA_PLATFORM=offscreen");
    return all;
}

}  // namespace

Status runDesktop(const std::vector<std::string>& arguments) {
    const std::string program = beside();
    if (program.empty() || !RealFileSystem().exists(program))
        return fail(ErrorKind::NotFound, program.empty() ? "fettle" : program, "",
                    "the desktop program is not built here, and it draws the sheet: build with "
                    "FETTLE_DESKTOP=ON, or use --json or --csv");
    std::vector<std::string> words{program}, around = surroundings();
    words.insert(words.end(), arguments.begin(), arguments.end());
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_adddup2(&actions, STDERR_FILENO, STDOUT_FILENO);
    pid_t child = 0;
    const int started = posix_spawn(&child, program.c_str(), &actions, nullptr,
                                    argumentPointers(words).data(), argumentPointers(around).data());
    posix_spawn_file_actions_destroy(&actions);
    int ended = 0;
    if (started == 0)
        while (waitpid(child, &ended, 0) < 0 && errno == EINTR) {
        }
    if (started == 0 && WIFEXITED(ended) && WEXITSTATUS(ended) == 0) return {};
    return fail(ErrorKind::Unwritable, program, "",
                started            ? std::string("could not be started: ") + std::strerror(started)
                : WIFEXITED(ended) ? "ended with status " + std::to_string(WEXITSTATUS(ended)) + ", see above"
                                   : std::string("was ended by a signal"));
}

}  // namespace fettle
