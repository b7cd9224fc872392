#include "core/signal/contained_program.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <poll.h>
#include <signal.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <thread>

#include "core/base/child_process.h"
#include "core/signal/recording_limits.h"

namespace fettle {

namespace {

using Clock = std::chrono::steady_clock;

constexpr std::uint64_t kLeastMemory = std::uint64_t(1) << 30, kMostMemory = std::uint64_t(6) << 30;

tl::unexpected<Error> systemSays(const std::string& file, const char* what) {
    return fail(ErrorKind::Unreadable, file, "", fmt::format("{}: {}", what, std::strerror(errno)));
}

Result<Descriptor> inMemory(const std::string& bytes, const std::string& file) {
    const Descriptor memory = memoryFile(bytes);
    if (memory.get() < 0) return systemSays(file, "no memory to hand it over");
    return memory.above();
}

// What it needs to start, and nothing that could make a library load or write something.
std::vector<std::string> environment() {
    std::vector<std::string> set = {"LC_ALL=C", "HDF5_USE_FILE_LOCKING=FALSE",
                                    "HDF5_PLUGIN_PATH=/nonexistent"};
    for (const char* name : {"LD_LIBRARY_PATH", "ASAN_OPTIONS", "UBSAN_OPTIONS", "TSAN_OPTIONS"})
        if (const char* value = std::getenv(name)) set.push_back(std::string(name) + "=" + value);
    return set;
}

// A process that is certainly gone when this is.
class Process {
  public:
    ~Process() {
        if (id_ <= 0) return;
        kill(id_, SIGKILL);
        wait(0);
    }
    int start(const std::string& program, std::vector<std::string> arguments, int bytes, int answer) {
        posix_spawn_file_actions_t actions;
        posix_spawn_file_actions_init(&actions);
        posix_spawn_file_actions_addopen(&actions, 0, "/dev/null", O_RDONLY, 0);
        posix_spawn_file_actions_adddup2(&actions, answer, 1);
        posix_spawn_file_actions_addopen(&actions, 2, "/dev/null", O_WRONLY, 0);
        posix_spawn_file_actions_adddup2(&actions, bytes, kContainedFile);
        posix_spawn_file_actions_addclosefrom_np(&actions, kContainedFile + 1);
        std::vector<std::string> set = environment();
        const int problem = posix_spawn(&id_, program.c_str(), &actions, nullptr,
                                        argumentPointers(arguments).data(), argumentPointers(set).data());
        posix_spawn_file_actions_destroy(&actions);
        if (problem != 0) id_ = 0;
        return problem;
    }
    // Nothing while it still runs.
    std::optional<int> ended() { return wait(WNOHANG); }
    void end() {
        if (id_ > 0) kill(id_, SIGKILL);
        wait(0);
    }

  private:
    std::optional<int> wait(int how) {
        int status = 0;
        pid_t done = 0;
        do
            done = waitpid(id_, &status, how);
        while (done < 0 && errno == EINTR);
        if (done == 0) return std::nullopt;
        id_ = 0;
        return done < 0 ? 0 : status;
    }
    pid_t id_ = 0;
};

// The answer as it arrives; memory grows with what has arrived.
class Answer {
  public:
    Answer(int pipe, Clock::time_point until) : pipe_(pipe), until_(until) {}

    enum class Got { All, Less, TooLate };
    Got take(char* to, std::size_t count) {
        while (count > 0) {
            if (!ready()) return Got::TooLate;
            const ssize_t got = read(pipe_, to, count);
            if (got < 0 && errno == EINTR) continue;
            if (got <= 0) return Got::Less;
            to += got;
            count -= std::size_t(got);
        }
        return Got::All;
    }

  private:
    bool ready() {
        for (;;) {
            const auto left =
                std::chrono::duration_cast<std::chrono::milliseconds>(until_ - Clock::now()).count();
            if (left <= 0) return false;
            pollfd one{pipe_, POLLIN, 0};
            const int told = poll(&one, 1, int(std::min<long long>(left, 1000)));
            if (told > 0) return true;
            if (told < 0 && errno != EINTR) return false;
        }
    }
    int pipe_;
    Clock::time_point until_;
};

constexpr const char* kTooLong = "the reader of such files was stopped: it took too long";
constexpr const char* kNonsense = "the reader of such files answered nonsense";
constexpr std::size_t kPiece = std::size_t(1) << 16;  // numbers taken at once

std::string takeNumbers(Answer& answer, std::uint64_t count, std::vector<double>& numbers) {
    std::vector<double> piece(std::size_t(std::min<std::uint64_t>(count, kPiece)));
    while (numbers.size() < count) {
        const std::size_t wanted = std::min<std::size_t>(piece.size(), std::size_t(count) - numbers.size());
        const auto got = answer.take(reinterpret_cast<char*>(piece.data()), wanted * sizeof(double));
        if (got != Answer::Got::All) return got == Answer::Got::TooLate ? kTooLong : "";
        numbers.insert(numbers.end(), piece.begin(), piece.begin() + std::ptrdiff_t(wanted));
    }
    return {};
}

struct Taken {
    ContainedAnswer answer;
    bool whole = false;
    std::string problem;  // told at once: too long or nonsense; else how the process ended tells
};

bool isSign(const char* bytes, const char* sign) {
    return std::memcmp(bytes, sign, 8) == 0;
}

void takeAnswer(Answer& answer, const ContainedLimits& limits, Taken& taken) {
    char head[24];
    if (answer.take(head, sizeof head) != Answer::Got::All) return;
    std::uint64_t length = 0, count = 0;
    std::memcpy(&length, head + 8, 8);
    std::memcpy(&count, head + 16, 8);
    if (!isSign(head, kAnswerSign) || length > limits.answerBytes || count > kMostSamples) {
        taken.problem = kNonsense;
        return;
    }
    std::string text(std::size_t(length), ' ');
    if (answer.take(text.data(), text.size()) != Answer::Got::All) return;
    auto json = parseJson(text, "");
    if (!json || !json->is_object()) {
        taken.problem = kNonsense;
        return;
    }
    taken.answer.json = std::move(*json);
    taken.problem = takeNumbers(answer, count, taken.answer.numbers);
    char end[8];
    if (taken.answer.numbers.size() == count && answer.take(end, 8) == Answer::Got::All)
        taken.whole = isSign(end, kAnswerEnd);
}

std::string fateOf(int status) {
    if (WIFSIGNALED(status)) {
        const int by = WTERMSIG(status);
        if (by == SIGXCPU) return kTooLong;
        return fmt::format("the reader of such files crashed on it (signal {})", by);
    }
    return "the reader of such files gave up on it: damaged, or it needs more memory than it may have";
}

// How it ended, within the time that is left.
std::optional<int> endOf(Process& process, Clock::time_point until) {
    for (;;) {
        if (const auto status = process.ended()) return status;
        if (Clock::now() >= until) break;
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
    process.end();
    return std::nullopt;
}

Result<ContainedAnswer> settle(Taken taken, Process& process, Clock::time_point until,
                               const std::string& file) {
    if (!taken.problem.empty()) {
        process.end();
        return fail(ErrorKind::Damaged, file, "byte 0", taken.problem);
    }
    const auto status = endOf(process, until);
    if (!status) return fail(ErrorKind::Damaged, file, "byte 0", kTooLong);
    if (!WIFEXITED(*status) || WEXITSTATUS(*status) != 0 || !taken.whole)
        return fail(ErrorKind::Damaged, file, "byte 0", fateOf(*status));
    const Json& refused = taken.answer.json["refused"];
    if (refused.is_string()) return fail(ErrorKind::Unsupported, file, "byte 0", refused.get<std::string>());
    return std::move(taken.answer);
}

std::uint64_t memoryFor(const std::string& bytes, const ContainedLimits& limits) {
    if (limits.memoryBytes > 0) return limits.memoryBytes;
    return std::min(kMostMemory, kLeastMemory + 4 * std::uint64_t(bytes.size()));
}

}  // namespace

std::string containedProgram() {
    std::error_code problem;
    const auto own = std::filesystem::read_symlink("/proc/self/exe", problem);
    if (problem) return {};
    const auto folder = own.parent_path();
    for (const auto& path : {folder / "fettle-variables", folder / "../libexec/fettle/fettle-variables"})
        if (access(path.c_str(), X_OK) == 0) return path.string();
    return {};
}

Result<ContainedAnswer> runContained(const std::string& bytes, const std::vector<std::string>& arguments,
                                     const std::string& file, const ContainedLimits& limits,
                                     const std::string& program) {
    const std::string path = program.empty() ? containedProgram() : program;
    if (path.empty() || access(path.c_str(), X_OK) != 0)
        return fail(ErrorKind::Unsupported, file, "byte 0",
                    "the program that reads such files, fettle-variables, is not beside this one");
    auto memory = inMemory(bytes, file);
    if (!memory) return fail(memory.error());
    int ends[2];
    if (pipe2(ends, O_CLOEXEC) != 0) return systemSays(file, "no pipe to the reader of such files");
    Descriptor from(ends[0]), to(Descriptor(ends[1]).above());
    std::vector<std::string> all{path, std::to_string(memoryFor(bytes, limits))};
    all.insert(all.end(), arguments.begin(), arguments.end());
    Process process;
    if (const int problem = process.start(path, std::move(all), memory->get(), to.get()))
        return fail(ErrorKind::Unsupported, file, "byte 0",
                    fmt::format("the reader of such files cannot be started: {}", std::strerror(problem)));
    to.reset();
    const auto until = Clock::now() + limits.time;
    Answer answer(from.get(), until);
    Taken taken;
    takeAnswer(answer, limits, taken);
    if (!taken.whole && taken.problem.empty() && Clock::now() >= until) taken.problem = kTooLong;
    from.reset();
    return settle(std::move(taken), process, until, file);
}

}  // namespace fettle
