// Which deliveries this user has allowed on this computer: one file of the user's own, a document a fleet
// file, whole as it was allowed.
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>

#include "core/base/file_system.h"
#include "core/fleet/alert_ways.h"

namespace fettle {

namespace {

std::string wholeName(const std::string& path) {
    std::error_code failed;
    const auto whole = std::filesystem::canonical(path, failed);
    return failed ? path : whole.string();
}

// What is not there, or is not ours to believe, allows nothing.
Json readTrust() {
    const std::string path = deliveryTrustFile();
    struct stat facts {};
    if (::stat(path.c_str(), &facts) != 0 || facts.st_uid != ::geteuid() || (facts.st_mode & 022) != 0)
        return Json::object();
    const auto text = RealFileSystem().read(path, std::uint64_t(16) << 20);
    if (!text) return Json::object();
    auto json = parseJson(*text, path);
    return json && json->is_object() ? std::move(*json) : Json::object();
}

}  // namespace

std::string deliveryTrustFile() {
    const char* config = std::getenv("XDG_CONFIG_HOME");
    const char* home = std::getenv("HOME");
    const std::string folder =
        config && *config == '/' ? config : std::string(home ? home : "/") + "/.config";
    return folder + "/fettle/alert_delivery.json";
}

Result<bool> deliveryAllowed(FleetFile& fleet) {
    const auto text = fleet.alerts().setting("delivery");
    if (!text) return fail(text.error());
    const Json trust = readTrust();
    const auto kept = trust.find(wholeName(fleet.path()));
    return kept != trust.end() && kept->is_string() && kept->get_ref<const std::string&>() == *text;
}

Status allowDelivery(FleetFile& fleet) {
    const auto text = fleet.alerts().setting("delivery");
    if (!text) return fail(text.error());
    Json trust = readTrust();
    trust[wholeName(fleet.path())] = *text;
    RealFileSystem files;
    const std::string path = deliveryTrustFile();
    if (auto made = files.makeFolders(std::filesystem::path(path).parent_path().string()); !made) return made;
    if (auto written =
            files.writeSafely(path, trust.dump(2, ' ', false, Json::error_handler_t::replace) + "\n");
        !written)
        return written;
    ::chmod(path.c_str(), 0600);
    return {};
}

}  // namespace fettle
