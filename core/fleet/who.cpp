#include "core/fleet/who.h"

#include <cstdlib>

#include "core/base/text.h"

namespace fettle {

std::string orLoginName(const std::string& name) {
    if (!trimmed(name).empty()) return name;
    for (const char* variable : {"USER", "LOGNAME", "USERNAME"})
        if (const char* value = std::getenv(variable); value && *value) return value;
    return "unnamed";
}

}  // namespace fettle
