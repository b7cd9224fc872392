// Why: a greasing is a test that costs nothing: the band above 1 kHz of a bearing that was dry falls and
// stays quiet for weeks; of a damaged one it falls and is back within days, for grease cushions but does not
// mend; of a sound one it stays. Fell: the median of the three days after by 3 dB or more below that of the
// two weeks before. Back: two days running within 1.5 dB of what it was, within two weeks. Louder: 3 dB or
// more above, then and later (too much grease, or dirt with it). Common practice, no source. Day medians at
// like speed and load; days since 1970-01-01. Thread: pure.
#pragma once

#include <optional>
#include <span>
#include <string>

#include "core/trend/daily.h"

namespace fettle {

enum class GreaseCourse { NotKnown, WasDry, BackWithinDays, NoChange, Louder };
std::string toText(GreaseCourse course);  // not_known was_dry back_within_days no_change louder

struct GreaseWitness {
    GreaseCourse course = GreaseCourse::NotKnown;
    std::optional<double> before, after,
        later;                  // medians: 14 days before, 1 to 3 days after, 4 to 28 days after
    std::optional<int> backOn;  // day
    std::string words;  // "the band above 1 kHz fell by 8.1 dB and was back after 6 days: a damaged bearing"
};

// `days`: of the high band, oldest first, with no other work on the machine between. The day of the greasing
// itself may hold both and is left out.
GreaseWitness greaseWitness(std::span<const DayValue> days, int greasedOn);

}  // namespace fettle
