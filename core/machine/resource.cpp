#include "core/machine/resource.h"

#include <cstdlib>

#include "core/base/file_system.h"

namespace fettle {

Result<Json> loadResource(const std::string& name) {
    if (const char* folder = std::getenv("FETTLE_RESOURCES"); folder && *folder) {
        const RealFileSystem files;
        const std::string path = std::string(folder) + "/" + name;
        if (files.exists(path)) {
            const auto text = files.read(path);
            return text ? parseJson(*text, path) : fail(text.error());
        }
    }
    const auto found = builtInResources().find(name);
    if (found == builtInResources().end()) return fail(ErrorKind::NotFound, name, "", "no such table");
    return parseJson(found->second, name);
}

}  // namespace fettle
