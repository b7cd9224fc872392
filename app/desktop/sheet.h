// Why: findings sheets and the round's report as files without a window: what `fettle-cli sheet` and `round
// --report` run. Ends with the program's
// exit status: 0 written, 3 could not, with a sentence on stderr.
#pragma once

#include "app/desktop/options.h"

namespace fettle {

int makeSheet(const DesktopOptions& options);
int makeReport(const DesktopOptions& options);

}  // namespace fettle
