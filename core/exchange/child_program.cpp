#include "core/exchange/child_program.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <poll.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>
#include <csignal>
#include <cstring>

#include "core/base/child_process.h"
#include "core/base/text.h"

extern char** environ;

namespace fettle {

namespace {

using Clock = std::chrono::steady_clock;
constexpr std::size_t kMostIn = std::size_t(1) << 20, kMostOut = std::size_t(64) << 10;
constexpr int kLookMs = 20;

tl::unexpected<Error> notStarted(const std::string& program, int code) {
    const bool missing = code == ENOENT || code == ENOTDIR;
    return fail(missing ? ErrorKind::NotFound : ErrorKind::Unreadable, oneLine(program), "",
                fmt::format("cannot be started: {}", std::strerror(code)));
}

class SpawnSettings {
  public:
    SpawnSettings(int in, int out, bool withErrors) {
        posix_spawn_file_actions_init(&files_);
        posix_spawn_file_actions_adddup2(&files_, in, 0);
        posix_spawn_file_actions_adddup2(&files_, out, 1);
        if (withErrors)
            posix_spawn_file_actions_adddup2(&files_, out, 2);
        else
            posix_spawn_file_actions_addopen(&files_, 2, "/dev/null", O_WRONLY, 0);
        posix_spawn_file_actions_addclosefrom_np(&files_, 3);
        posix_spawnattr_init(&how_);
        sigset_t none, usual;
        sigemptyset(&none);
        sigfillset(&usual);
        posix_spawnattr_setsigmask(&how_, &none);
        posix_spawnattr_setsigdefault(&how_, &usual);
        posix_spawnattr_setpgroup(&how_, 0);
        posix_spawnattr_setflags(&how_,
                                 POSIX_SPAWN_SETPGROUP | POSIX_SPAWN_SETSIGMASK | POSIX_SPAWN_SETSIGDEF);
    }
    ~SpawnSettings() {
        posix_spawn_file_actions_destroy(&files_);
        posix_spawnattr_destroy(&how_);
    }
    SpawnSettings(const SpawnSettings&) = delete;
    SpawnSettings& operator=(const SpawnSettings&) = delete;

    int start(std::vector<std::string> words, pid_t& child) {
        const std::vector<char*> list = argumentPointers(words);
        return posix_spawn(&child, list[0], &files_, &how_, list.data(), environ);
    }

  private:
    posix_spawn_file_actions_t files_;
    posix_spawnattr_t how_;
};

// True while more may come.
bool readSome(int fd, std::string& output) {
    char bytes[4096];
    for (;;) {
        const ssize_t got = ::read(fd, bytes, sizeof bytes);
        if (got == 0) return false;
        if (got < 0) return errno == EAGAIN || errno == EINTR;
        const std::size_t room = kMostOut - std::min(kMostOut, output.size());
        output.append(bytes, std::min(room, std::size_t(got)));
    }
}

int statusFrom(int waited) {
    return WIFEXITED(waited) ? WEXITSTATUS(waited) : 128 + WTERMSIG(waited);
}

ChildEnd watched(pid_t child, int out, std::chrono::milliseconds allowed, const CancelToken& cancel) {
    ChildEnd end;
    const auto until = Clock::now() + allowed;
    int waited = 0;
    bool open = true;
    while (waitpid(child, &waited, WNOHANG) == 0) {
        end.tooLate = Clock::now() >= until;
        end.cancelled = cancel.cancelled();
        if (end.tooLate || end.cancelled) {
            ::kill(-child, SIGKILL);
            waitpid(child, &waited, 0);
            break;
        }
        pollfd look{open ? out : -1, POLLIN, 0};
        ::poll(&look, 1, kLookMs);
        if (open && look.revents) open = readSome(out, end.output);
    }
    if (open) readSome(out, end.output);
    end.status = statusFrom(waited);
    return end;
}

}  // namespace

Status checkChildProgram(const std::vector<std::string>& words) {
    if (words.empty() || words[0].empty() || words[0][0] != '/')
        return fail(ErrorKind::Invalid, "", "command to run",
                    "must be a program named by its whole path (/usr/local/bin/siren), then its arguments");
    for (const std::string& word : words)
        if (word.find('\0') != word.npos || word.size() > 10000)
            return fail(ErrorKind::Invalid, "", "command to run", "has an argument that no program can take");
    return {};
}

Result<ChildEnd> runChild(const ChildProgram& program, const CancelToken& cancel) {
    if (auto good = checkChildProgram(program.words); !good) return fail(good.error());
    if (program.input.size() > kMostIn)
        return fail(ErrorKind::Invalid, "", "command to run", "would be given more than 1 MiB");
    const Descriptor in = memoryFile(program.input);
    int ends[2];
    if (in.get() < 0 || ::pipe2(ends, O_CLOEXEC) != 0) return notStarted(program.words[0], errno);
    const Descriptor out(ends[0]);
    Descriptor into(ends[1]);
    ::fcntl(out.get(), F_SETFL, O_NONBLOCK);
    pid_t child = 0;
    const int code = SpawnSettings(in.get(), into.get(), program.withErrors).start(program.words, child);
    into.reset();
    if (code != 0) return notStarted(program.words[0], code);
    return watched(child, out.get(), program.allowed, cancel);
}

}  // namespace fettle
