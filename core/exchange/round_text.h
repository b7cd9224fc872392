// Why: the weekly list as a text a person enjoys reading: what needs somebody first, each with its sentence
// and the last 26 weeks as a small picture; then what could not be judged, then the rest by name. UTF-8,
// lines of at most 110 columns; no user text can break a line. Urgency is a disc that fills, with its word.
#pragma once

#include <string>

#include "core/round/round.h"

namespace fettle {

std::string asText(const RoundList& list);

}  // namespace fettle
