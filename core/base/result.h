// Why: every operation that can fail returns its value or an Error, never an exception or a message box.
// An Error names what was read, where in it, and the rule that was broken, so that one sentence tells the
// user what to mend. Errors are plain values: copyable, comparable by kind, safe to move between threads.
#pragma once

#include <string>
#include <tl/expected.hpp>

namespace fettle {

enum class ErrorKind {
    NotFound,     // no such file or name: `examine nosuch.wav`
    Unreadable,   // the system refused to read it: permissions, a directory, a device
    Unwritable,   // the system refused to write it: full disk, read-only folder
    Damaged,      // starts as its format says but breaks off or contradicts itself
    Unsupported,  // a sound file of a kind this program does not take
    Invalid,      // well formed, but a value breaks a stated rule: a sample rate of 0 Hz
    Cancelled     // stopped on request
};

struct Error {
    ErrorKind kind = ErrorKind::Invalid;
    std::string file;   // what was being read or written; may be empty
    std::string place;  // where in it: "byte 44", "line 7, column 2", "/driver/poles"; may be empty
    std::string rule;   // the rule broken, a clause without a full stop

    // "file: place: rule" with the empty parts left out, on one line, control characters shown as '?'.
    std::string sentence() const;
};

template <class T>
using Result = tl::expected<T, Error>;
using Status = Result<void>;

inline tl::unexpected<Error> fail(ErrorKind kind, std::string file, std::string place, std::string rule) {
    return tl::unexpected<Error>(Error{kind, std::move(file), std::move(place), std::move(rule)});
}
inline tl::unexpected<Error> fail(Error error) {
    return tl::unexpected<Error>(std::move(error));
}

}  // namespace fettle
