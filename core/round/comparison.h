// Why: two kept rounds side by side, any two: which machines came on the list and which left it, which moved
// up or down, which could not be judged, what was decided on them in each, and why by what was measured. A
// machine on leave in both is counted, not told. Dates in the site's calendar. Thread: pure.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/round/round.h"

namespace fettle {

// The decision that holds on each machine; a withdrawn one is none.
std::map<std::string, const Decision*> decisionsThatHold(const RoundState& state);

// Stayed: listed in both with the same urgency, or unseen in both. Added, removed: of the register, and not
// on the list.
enum class RoundMove { CameOn, Up, Unseen, Down, Left, SeenAgain, Added, Removed, Stayed };
inline constexpr RoundMove kRoundMoves[] = {RoundMove::CameOn, RoundMove::Up,      RoundMove::Unseen,
                                            RoundMove::Down,   RoundMove::Left,    RoundMove::SeenAgain,
                                            RoundMove::Added,  RoundMove::Removed, RoundMove::Stayed};
std::string toText(RoundMove move);  // came_on up unseen down left seen_again added removed stayed

struct MachineMove {
    std::string tag, service, area;
    RoundMove move = RoundMove::Stayed;
    std::string before, after;                // urgencies; empty: not in that round
    std::string findingBefore, findingAfter;  // the strongest, in words; empty: none
    std::string why;                          // one sentence, what was measured
    std::string decidedBefore, decidedAfter;  // "accepted", "disputed: reason"; empty: nothing
};

struct RoundComparison {
    std::string beforeFrom, beforeUntil, afterFrom, afterUntil;
    std::vector<MachineMove> moves;  // in the order of kRoundMoves, then of the later list
    std::size_t quiet = 0;           // on leave in both
    std::string note;                // said where the two were weighed by different versions; else empty

    std::size_t count(RoundMove move) const;
};
RoundComparison compareRounds(const RoundList& before, const RoundState& decidedBefore,
                              const RoundList& after, const RoundState& decidedAfter);

// "accepted", "disputed: the plate says 6316", "put off to 2026-06-01: stop in June".
std::string decisionWords(const Decision& decision);

}  // namespace fettle
