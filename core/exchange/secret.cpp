#include "core/exchange/secret.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <cstring>

#include "core/base/text.h"
#include "core/exchange/child_program.h"

namespace fettle {

namespace {

constexpr std::size_t kMostBytes = 4096;

Result<std::string> firstLineOf(std::string text, const SecretPlace& place) {
    text.resize(std::min(text.size(), text.find('\n')));
    if (!text.empty() && text.back() == '\r') text.pop_back();
    const bool control =
        std::any_of(text.begin(), text.end(), [](unsigned char c) { return c < 0x20 || c == 0x7f; });
    if (text.empty() || control)
        return fail(ErrorKind::Invalid, "", "password from " + wordsOf(place),
                    text.empty() ? "is empty" : "has a control character in it");
    return text;
}

// What the system says of the file once it is open, so that nothing is changed in between.
Status checkOwnersAlone(int fd, const std::string& path) {
    struct stat facts {};
    if (::fstat(fd, &facts) != 0 || !S_ISREG(facts.st_mode))
        return fail(ErrorKind::Unreadable, path, "", "is no plain file; the password is not read from it");
    if (facts.st_uid != ::geteuid())
        return fail(ErrorKind::Unreadable, path, "",
                    "belongs to another user; the password is read from a file of the user who sends");
    if ((facts.st_mode & 077) != 0)
        return fail(
            ErrorKind::Unreadable, path, "",
            fmt::format("can be read or changed by others (mode {:03o}); the password is not read from "
                        "it: chmod 600",
                        unsigned(facts.st_mode & 0777)));
    return {};
}

Result<std::string> fromFile(const SecretPlace& place) {
    const int fd = ::open(place.file.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);
    if (fd < 0)
        return fail(errno == ENOENT ? ErrorKind::NotFound : ErrorKind::Unreadable, oneLine(place.file), "",
                    fmt::format("cannot be read for the password: {}", std::strerror(errno)));
    std::string text(kMostBytes, '\0');
    auto checked = checkOwnersAlone(fd, oneLine(place.file));
    const ssize_t got = checked ? ::read(fd, text.data(), text.size()) : 0;
    ::close(fd);
    if (!checked) return fail(checked.error());
    text.resize(got > 0 ? std::size_t(got) : 0);
    return firstLineOf(std::move(text), place);
}

Result<std::string> fromCommand(const SecretPlace& place, const CancelToken& cancel) {
    ChildProgram program;
    program.words = place.command;
    program.withErrors = false;
    auto end = runChild(program, cancel);
    if (!end) return fail(end.error());
    if (end->cancelled)
        return fail(ErrorKind::Unreadable, oneLine(place.command[0]), "", "was stopped on request");
    if (!end->good())
        return fail(ErrorKind::Unreadable, oneLine(place.command[0]), "",
                    end->tooLate
                        ? "did not print the password within 30 s"
                        : fmt::format("ended with status {} instead of printing the password", end->status));
    return firstLineOf(std::move(end->output), place);
}

bool isVariable(const std::string& name) {
    return std::all_of(name.begin(), name.end(), [](unsigned char c) {
        return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_';
    });
}

}  // namespace

Json toJson(const SecretPlace& place) {
    if (!place.file.empty()) return {{"file", place.file}};
    if (!place.environment.empty()) return {{"environment", place.environment}};
    if (!place.command.empty()) return {{"command", place.command}};
    return {};
}

SecretPlace secretPlaceFrom(JsonObject& object) {
    return {object.text("file"), object.text("environment"), object.texts("command")};
}

std::string wordsOf(const SecretPlace& place) {
    if (!place.file.empty()) return "file " + oneLine(place.file);
    if (!place.environment.empty()) return "environment variable " + oneLine(place.environment);
    if (!place.command.empty()) return "output of " + oneLine(place.command[0]);
    return "nowhere";
}

Status checkSecretPlace(const SecretPlace& place) {
    const int places = !place.file.empty() + !place.environment.empty() + !place.command.empty();
    if (places > 1)
        return fail(ErrorKind::Invalid, "", "password",
                    "comes from one place: a file, an environment variable or a program");
    if (!place.file.empty() && place.file[0] != '/')
        return fail(ErrorKind::Invalid, "", "password",
                    "is read from a file named by its whole path, not " + oneLine(place.file));
    if (!isVariable(place.environment))
        return fail(ErrorKind::Invalid, "", "password",
                    oneLine(place.environment) + " is no name of an environment variable");
    return place.command.empty() ? Status{} : checkChildProgram(place.command);
}

Result<std::string> readSecret(const SecretPlace& place, const CancelToken& cancel) {
    if (auto good = checkSecretPlace(place); !good) return fail(good.error());
    if (!place.file.empty()) return fromFile(place);
    if (!place.command.empty()) return fromCommand(place, cancel);
    const char* value = place.environment.empty() ? nullptr : std::getenv(place.environment.c_str());
    if (!value) return fail(ErrorKind::NotFound, "", "password from " + wordsOf(place), "is not there");
    return firstLineOf(value, place);
}

}  // namespace fettle
