#include "core/machine/resource.h"

#include <cstdlib>
#include <mutex>

#include "core/base/file_system.h"

namespace fettle {

namespace {

// The file that overrides the built-in table; empty where none does.
std::string overriding(const std::string& name) {
    const char* folder = std::getenv("FETTLE_RESOURCES");
    if (!folder || !*folder) return "";
    const std::string path = std::string(folder) + "/" + name;
    return RealFileSystem().exists(path) ? path : "";
}

}  // namespace

Result<Json> loadResource(const std::string& name) {
    if (const std::string path = overriding(name); !path.empty()) {
        const auto text = RealFileSystem().read(path);
        return text ? parseJson(*text, path) : fail(text.error());
    }
    const auto found = builtInResources().find(name);
    if (found == builtInResources().end()) return fail(ErrorKind::NotFound, name, "", "no such table");
    return parseJson(found->second, name);
}

Result<std::shared_ptr<const Json>> sharedResource(const std::string& name) {
    static std::mutex guard;
    static std::map<std::string, std::shared_ptr<const Json>> parsed;
    const bool builtIn = overriding(name).empty();
    const std::lock_guard hold(guard);
    if (const auto known = parsed.find(name); builtIn && known != parsed.end()) return known->second;
    auto table = loadResource(name);
    if (!table) return fail(table.error());
    auto shared = std::make_shared<const Json>(std::move(*table));
    if (builtIn) parsed[name] = shared;
    return shared;
}

}  // namespace fettle
