// Why: a loose or rubbing shaft draws half orders (textbook knowledge; from memory), and four of them in a
// row pass for a carrier with its shaft sidebands: order 5.5 between 3.5 and 7.5 was the inner race of an
// eight-ball bearing at a shift of 2.9 % in a tenth of the simulated loose machines. They are ordinary lines
// of the shaft: neutral where a view shows one, but in records so short that they would take a tenth of all
// positions and, as measured on open records of 1 and 2 s, many true verdicts with them.
// Thread: pure.
#pragma once

#include <string>

#include "core/diagnosis/weigh.h"

namespace fettle {

void neutralHalfOrders(const Rates& rates, ChannelEvidence& evidence, const WeighingSettings& settings);

// For the checksum of the settings.
std::string halfOrdersText();

}  // namespace fettle
