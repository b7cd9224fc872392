// Why: what a recording must say before it may enter the fleet file, asked before anything is computed. Who
// (a machine of the register), when (UTC, a clock that was set), where (a point of the description that held
// then), what (units that agree with it). What the sender can mend by sending it again is refused; what only
// the engineer can answer, a time or a machine that is not said, is parked: kept in the list, never guessed.
// Places as in the sidecar ("/time"). Source: common practice, no source. Thread: pure.
#pragma once

#include <optional>
#include <string>

#include "core/base/result.h"
#include "core/intake/register_book.h"
#include "core/signal/recording.h"

namespace fettle {

struct Objection {
    bool parked = false;
    std::string place, rule;
    bool unread = false;  // the file or its sidecar could not be read: it may not be whole yet
};

// How far a node's clock may be ahead before its time is not believed.
inline constexpr std::chrono::hours kClockAhead{24};

// What a reader's error means for the file it came from: a time that is none, or of a clock that was not set,
// parks it, and so does a file of variables that does not say which are samples or at what rate; everything
// else refuses it.
Objection objectionFrom(const Error& error, const std::string& path);

// The recording itself, or, where no point is named and the machine has but one, a copy that names it.
RecordingPtr withPoints(const RecordingPtr& recording, const Machine& machine);

struct Admitted {
    const BookedMachine* machine = nullptr;
    std::shared_ptr<const Machine> description;  // that held when it was recorded
};
// Whether a recording's points, channels and units agree with a description.
std::optional<Objection> misfit(const Recording& recording, const Machine& machine);
tl::expected<Admitted, Objection> admit(const Recording& recording, const RegisterBook& book, Instant now);

// What does not keep a recording out but a reader should know: numbers without a scale, channels that the
// description does not name.
std::vector<std::string> notesOn(const Recording& recording, const Machine& machine);

}  // namespace fettle
