// Why: waveforms are most of a fleet file, so what packs them is chosen on records, not by belief: each way
// packs and unpacks every channel of the files given, the round trip is held bit for bit, and what is left of
// the bytes and how fast it goes is printed. Raw bytes are those of the file: 2, 3 or 4 a sample. "Whole
// numbers" are those the file holds, or those found behind its floats (core/store/float_steps.h).
#pragma once

#include <string>
#include <vector>

namespace fettle::bench {

// Folders are searched through; each is a column of its own. The exit status.
int codecBench(const std::vector<std::string>& folders);

}  // namespace fettle::bench
