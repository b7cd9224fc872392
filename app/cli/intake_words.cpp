#include "app/cli/intake_words.h"

#include <cstdio>

#include "app/cli/load.h"
#include "core/base/text.h"

namespace fettle {

void tellRefused(const Refusal& refusal) {
    tell(refusal.kind + ": " +
         Error{ErrorKind::Invalid, refusal.path, refusal.place, refusal.rule}.sentence());
}

void tellTaken(const std::vector<std::string>& paths) {
    for (const std::string& path : paths)
        if (path == oneLine(path, path.size())) print(path + "\n");
    std::fflush(stdout);
}

}  // namespace fettle
