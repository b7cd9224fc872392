// fettle-variables: reads MAT and HDF5 files for the other programs, apart from them, with limits of memory,
// time and files (core/signal/contained_program.h). Not for people: MEMORY list|read mat|hdf5 [PLACE] over
// the bytes of descriptor 3. `try WHAT` does what a hostile file might make a library do; the tests ask for
// it.
#include <sys/prctl.h>
#include <sys/resource.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <cstring>
#include <exception>
#include <new>

#include "app/variables/variables.h"
#include "core/base/text.h"
#include "core/signal/contained_program.h"

#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)  // GCC
#define FETTLE_SANITIZED
#elif defined(__has_feature)  // clang
#if __has_feature(address_sanitizer) || __has_feature(thread_sanitizer)
#define FETTLE_SANITIZED
#endif
#endif

#ifdef FETTLE_SANITIZED
// It reserves far more than it uses, so that no limit of memory can hold it: it has one of its own.
extern "C" const char* __asan_default_options() {
    return "allocator_may_return_null=1:max_allocation_size_mb=1024";
}
#endif

namespace fettle {

namespace {

constexpr rlim_t kMostSeconds = 60;

void limit(int resource, rlim_t most) {
    const rlimit both{most, most};
    if (setrlimit(resource, &both) != 0) _exit(5);
}

void limitAll(const char* memory) {
    prctl(PR_SET_PDEATHSIG, SIGKILL);
    prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0);
    limit(RLIMIT_CORE, 0);
    limit(RLIMIT_FSIZE, 0);
    limit(RLIMIT_CPU, kMostSeconds);
#ifndef FETTLE_SANITIZED
    limit(RLIMIT_AS, rlim_t(parseInteger(memory).value_or(0)));
#else
    (void)memory;
#endif
}

void writeAll(const void* from, std::size_t count) {
    const char* at = static_cast<const char*>(from);
    while (count > 0) {
        const ssize_t wrote = write(1, at, count);
        if (wrote < 0 && errno == EINTR) continue;
        if (wrote <= 0) _exit(6);
        at += wrote;
        count -= std::size_t(wrote);
    }
}

void writeAnswer(const std::string& text, std::uint64_t stated, const std::vector<double>& numbers) {
    const std::uint64_t length = text.size();
    writeAll(kAnswerSign, 8);
    writeAll(&length, 8);
    writeAll(&stated, 8);
    writeAll(text.data(), text.size());
    writeAll(numbers.data(), numbers.size() * sizeof(double));
    writeAll(kAnswerEnd, 8);
}

void eatMemory() {
    std::vector<std::vector<char>> all;
    for (;;)
        all.emplace_back(std::size_t(1) << 24, 'x');
}

[[noreturn]] void hang() {
    for (;;)
        pause();
}

void flood() {
    const std::string nonsense(std::size_t(1) << 16, 'n');
    for (;;)
        writeAll(nonsense.data(), nonsense.size());
}

// What a library might do on a hostile file.
int tryOut(const std::string& what) {
    if (what == "crash") std::abort();
    if (what == "hang") hang();
    if (what == "memory") eatMemory();
    if (what == "flood") flood();
    if (what == "silence") return 0;
    if (what == "lie") writeAnswer("{}", 1000, {1, 2, 3});
    if (what == "count") writeAnswer("{}", std::uint64_t(1) << 60, {});
    if (what == "no json") writeAnswer("{\"a\":", 0, {});
    if (what == "answer, then hang") writeAnswer("{}", 0, {}), hang();
    if (what == "answer, then crash") writeAnswer("{}", 0, {}), std::abort();
    if (what == "numbers") writeAnswer("{}", 3, {1, 2, 3});
    return 0;
}

int run(int count, char** words) {
    if (count < 4) return 2;
    limitAll(words[1]);
    const std::string task = words[2], format = words[3];
    if (task == "try") return tryOut(format);
    const auto place = std::size_t(count > 4 ? parseInteger(words[4]).value_or(0) : 0);
    if (task == "list" && format == "mat") listMat();
    if (task == "list" && format == "hdf5") listHdf5();
    if (task == "read" && format == "mat") readMatVariable(place);
    if (task == "read" && format == "hdf5") readHdf5Variable(place);
    return 0;
}

}  // namespace

void answer(const Json& json, const std::vector<double>& numbers) {
    writeAnswer(json.dump(-1, ' ', false, Json::error_handler_t::replace), numbers.size(), numbers);
}

void refuse(const std::string& why) {
    answer({{"refused", why}});
}

std::string fileBytes() {
    std::string bytes(std::size_t(std::max<off_t>(lseek(kContainedFile, 0, SEEK_END), 0)), '\0');
    for (std::size_t at = 0; at < bytes.size();) {
        const ssize_t got = pread(kContainedFile, bytes.data() + at, bytes.size() - at, off_t(at));
        if (got < 0 && errno == EINTR) continue;
        if (got <= 0) _exit(7);
        at += std::size_t(got);
    }
    return bytes;
}

void openNoMore() {
    limit(RLIMIT_NOFILE, 0);
}

std::string asciiText(const char* letters, std::size_t count) {
    std::string text;
    for (std::size_t i = 0; i < count && letters[i] != '\0'; ++i)
        text += letters[i] >= ' ' && letters[i] <= '~' ? letters[i] : '?';
    return text;
}

}  // namespace fettle

int main(int count, char** words) {
    try {
        // At once: no file may be opened any more, not even by what looks for leaks at a usual end.
        _exit(fettle::run(count, words));
    } catch (const std::exception&) {
        return 4;
    }
}
