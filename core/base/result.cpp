#include "core/base/result.h"

#include "core/base/text.h"

namespace fettle {

std::string Error::sentence() const {
    std::string all;
    for (const std::string* part : {&file, &place, &rule}) {
        if (part->empty()) continue;
        if (!all.empty()) all += ": ";
        all += *part;
    }
    return oneLine(all);
}

}  // namespace fettle
