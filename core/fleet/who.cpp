#include "core/fleet/who.h"

#include <cstdlib>
#include <mutex>

#include "core/base/text.h"

namespace fettle {

namespace {

struct Signature {
    std::mutex mutex;
    std::string name;
};

Signature& signature() {
    static Signature one;
    return one;
}

}  // namespace

void signWith(const std::string& name) {
    const std::lock_guard lock(signature().mutex);
    signature().name = trimmed(name);
}

std::string orLoginName(const std::string& name) {
    if (!trimmed(name).empty()) return name;
    {
        const std::lock_guard lock(signature().mutex);
        if (!signature().name.empty()) return signature().name;
    }
    for (const char* variable : {"USER", "LOGNAME", "USERNAME"})
        if (const char* value = std::getenv(variable); value && *value) return value;
    return "unnamed";
}

}  // namespace fettle
