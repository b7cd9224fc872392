// Why: what a recording that is asked for has to bring, so that one that arrives can be held against it:
// length, band, tachometer. Kept as JSON in `request.what` ({"seconds": 32, "top_hz": 1000}) with what became
// of it. Units: seconds, Hz. The number of lines follows: an instrument has 400, 800 ... of them, and a
// record of T seconds parts 1 / T Hz. Thread: pure.
#pragma once

#include <string>

#include "core/base/json_object.h"
#include "core/base/result.h"

namespace fettle {

struct AskSpec {
    double seconds = 0;       // at least; 0: any length
    double topHz = 0;         // readable to; 0: any band
    bool tachometer = false;  // with one mark a turn
    std::string outcome;      // of one that is over: "" (a recording answered it) | answered | dropped
    std::string note;         // said when it was answered or dropped by hand
    bool operator==(const AskSpec&) const = default;
};

// Lines of an instrument's spectrum that is as long and as wide; 0 where either is open.
int linesOf(const AskSpec& spec);

std::string toText(const AskSpec& spec);
// Invalid for a text that is none of ours.
Result<AskSpec> askSpecFrom(const std::string& text, const std::string& file);
// Seconds, Hz and no more than a person or a node can give; Invalid names the value.
Status checkAskSpec(const AskSpec& spec);
// "32 s or more, to 1000 Hz, 32000 lines, with a tachometer"; "a running recording".
std::string wordsOf(const AskSpec& spec);

}  // namespace fettle
