#include "tests/house/arrows.h"

#include <algorithm>
#include <map>
#include <vector>

namespace fettle::house {

namespace {

using Names = std::vector<std::string>;

// Which rooms of core a room of core may see, besides itself.
const std::map<std::string, Names> kCoreSees = {
    {"base", {}},
    {"signal", {"base"}},
    {"dsp", {"base", "signal"}},
    {"machine", {"base"}},
    {"diagnosis", {"base", "signal", "dsp", "machine"}},
    {"trend", {"base", "diagnosis"}},
    {"round", {"base", "machine", "diagnosis", "trend"}},
    {"workshop", {"base", "dsp", "machine"}},
    {"exchange", {"base", "signal", "machine", "diagnosis", "trend", "round"}},
    {"store", {"base", "signal", "machine", "diagnosis", "trend", "round"}},
    {"fleet",
     {"base", "signal", "dsp", "machine", "diagnosis", "trend", "round", "workshop", "exchange", "store"}},
    {"intake",
     {"base", "signal", "dsp", "machine", "diagnosis", "trend", "round", "workshop", "exchange", "store",
      "fleet"}},
    {"simulate", {"base", "machine", "signal"}},
};

// The rooms of ui from left to right: each may see those before it, and core.
const Names kUiRooms = {"theme", "work", "model", "plot", "sheet", "panels", "pages", "dialogs", "window"};

// Outside libraries: how their headers' names begin, and the paths of the only files that may include them.
struct Owned {
    std::string header;
    Names places;  // a path's beginning
};
const std::vector<Owned> kOwned = {
    {"fftw3", {"core/dsp/fft.cpp"}},
    {"sndfile.h", {"core/signal/sound_"}},
    {"matio.h", {"app/variables/mat_file.cpp"}},
    {"hdf5", {"app/variables/hdf5_file.cpp"}},
    {"sqlite3", {"core/store/"}},
    {"zstd", {"core/store/"}},
    {"xxhash", {"core/store/"}},
    {"simdjson", {"core/exchange/examination_reading.cpp"}},
    {"curl/", {"core/exchange/mail.cpp"}},
    {"date/", {"core/fleet/site_calendar"}},
    {"nlohmann/", {"core/base/json_"}},
    {"tl/", {"core/base/result.h"}},
    {"CLI/", {"app/"}},
    {"qwt", {"ui/plot/"}},
    {"Qwt", {"ui/plot/"}},
    {"QPrint", {"ui/sheet/"}},
    {"QtPrintSupport", {"ui/sheet/"}},
    {"gtest/", {}},
    {"gmock/", {}},
    {"benchmark/", {}},
};

// <QString>, <QtCore/QString>, <qglobal.h>; not <queue>.
bool isQt(const std::string& header) {
    return header.front() == 'Q' || (header.front() == 'q' && endsWith(header, ".h"));
}

bool contains(const Names& names, const std::string& name) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

// The two names of a room: {"core", "dsp"}; app's parts are one room.
std::pair<std::string, std::string> sideAndName(const std::string& room) {
    const std::size_t slash = room.find('/');
    return {room.substr(0, slash), slash == std::string::npos ? "" : room.substr(slash + 1)};
}

bool uiMaySee(const std::string& from, const std::string& to) {
    const auto fromAt = std::find(kUiRooms.begin(), kUiRooms.end(), from);
    const auto toAt = std::find(kUiRooms.begin(), kUiRooms.end(), to);
    return fromAt != kUiRooms.end() && toAt != kUiRooms.end() && toAt <= fromAt;
}

bool maySee(const std::string& fromRoom, const std::string& toRoom) {
    const auto [fromSide, from] = sideAndName(fromRoom);
    const auto [toSide, to] = sideAndName(toRoom);
    if (fromSide == "core") {
        const auto sees = kCoreSees.find(from);
        if (toSide != "core" || sees == kCoreSees.end()) return false;
        return from == to || contains(sees->second, to);
    }
    if (fromSide == "ui") return toSide == "core" || (toSide == "ui" && uiMaySee(from, to));
    if (fromRoom == "app/cli" && toSide == "ui") return false;
    return fromSide == "app" && (toSide != "app" || from == to);
}

bool startsWithAny(const std::string& path, const Names& beginnings) {
    return std::any_of(beginnings.begin(), beginnings.end(),
                       [&](const std::string& beginning) { return startsWith(path, beginning); });
}

std::optional<std::string> brokenOwner(const std::string& path, const std::string& header) {
    for (const Owned& library : kOwned)
        if (startsWith(header, library.header) && !startsWithAny(path, library.places))
            return "<" + header + "> belongs to " +
                   (library.places.empty() ? "tests/" : library.places.front()) + " alone";
    if (isQt(header) && !startsWithAny(path, {"ui/", "app/desktop/"})) return "<" + header + ">: no Qt here";
    return std::nullopt;
}

bool isSnakeCase(const std::string& name) {
    return name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_") == std::string::npos &&
           !name.empty();
}

}  // namespace

std::optional<std::string> roomOf(const std::string& path) {
    const std::size_t first = path.find('/'), second = path.find('/', first + 1), dot = path.rfind('.');
    if (first == std::string::npos || second == std::string::npos || dot < second || dot == std::string::npos)
        return std::nullopt;
    const std::string side = path.substr(0, first), room = path.substr(first + 1, second - first - 1);
    const std::string name = path.substr(second + 1, dot - second - 1), ending = path.substr(dot);
    if (side != "core" && side != "ui" && side != "app") return std::nullopt;
    if (!isSnakeCase(room) || !isSnakeCase(name) || (ending != ".h" && ending != ".cpp")) return std::nullopt;
    return side + "/" + room;
}

std::optional<std::string> brokenRule(const std::string& path, const Include& include) {
    if (include.target.empty()) return "an include without a name";
    if (auto owner = brokenOwner(path, include.target)) return owner;
    if (!include.quoted) return std::nullopt;
    const auto from = roomOf(path), to = roomOf(include.target);
    if (!from) return "the file is in no room: core/<room>/, ui/<room>/ or app/<room>/, in snake_case";
    if (!to) return "\"" + include.target + "\" is not a path from the project's root to a room's file";
    if (!maySee(*from, *to)) return *from + " may not see " + *to;
    return std::nullopt;
}

}  // namespace fettle::house
