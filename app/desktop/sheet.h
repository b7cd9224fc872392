// Why: the findings sheet as a file without a window: what `fettle-cli sheet` runs. Ends with the program's
// exit status: 0 written, 3 could not, with a sentence on stderr.
#pragma once

#include "app/desktop/options.h"

namespace fettle {

int makeSheet(const DesktopOptions& options);

}  // namespace fettle
