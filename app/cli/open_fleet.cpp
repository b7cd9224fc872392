#include "app/cli/open_fleet.h"

#include "app/cli/load.h"

namespace fettle {

std::unique_ptr<FleetFile> openFleet(const std::string& path, bool toWrite) {
    auto opened = FleetFile::open(path, toWrite ? OpenMode::ReadWrite : OpenMode::ReadOnly);
    if (!opened) {
        tell(opened.error().sentence());
        return nullptr;
    }
    if (toWrite && !(*opened)->word().empty()) tell("note: " + (*opened)->word());
    if (!toWrite || (*opened)->writable()) return std::move(*opened);
    tell(Error{ErrorKind::Unwritable, path, "", "can only be read"}.sentence());
    return nullptr;
}

std::unique_ptr<FleetFile> openFleetOfAnyForm(const std::string& path) {
    auto opened = FleetFile::open(path, OpenMode::ReadAnyForm);
    if (!opened) {
        tell(opened.error().sentence());
        return nullptr;
    }
    if ((*opened)->outcome() == OpenOutcome::OlderFile) tell("note: " + (*opened)->word());
    return std::move(*opened);
}

}  // namespace fettle
