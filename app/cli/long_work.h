// Why: commands that run for minutes say how far they are, at most once a second on a terminal and every ten
// seconds into a log, and stop cleanly when asked to by Ctrl-C or by the system. Thread: the one that works;
// one at a time in a program.
#pragma once

#include "core/base/progress.h"

namespace fettle {

// "120 of 2000: path" on stderr.
Progress progressOnStderr();
// Cancelled by SIGINT and SIGTERM; a second one ends the program at once.
CancelToken cancelledBySignals();

}  // namespace fettle
