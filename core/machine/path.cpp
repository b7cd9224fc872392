#include "core/machine/path.h"

#include <algorithm>
#include <array>
#include <set>

namespace fettle {

namespace {

struct PathRow {
    const char *name, *words;
    double wCut;
};
// In the order of Path. `hears` names the first five but the last but one.
constexpr std::array<PathRow, 6> kPaths = {{{"own place", "", 1.0},
                                            {"same housing", "", 1.0},
                                            {"same base", "through the common base only", 0.5},
                                            {"through coupling", "through the coupling only", 0.3},
                                            {"through couplings", "through more than one coupling only", 0.1},
                                            {"through belt", "through the belt only", 0.1}}};

const PathRow& rowOf(Path path) {
    return kPaths[std::size_t(path)];
}

std::optional<Path> pathNamed(const std::string& name) {
    for (std::size_t i = 0; i < kPaths.size(); ++i)
        if (name == kPaths[i].name) return Path(i);
    return std::nullopt;
}

struct Housing {
    std::string name;
    std::set<std::size_t> shafts;

    bool touches(const std::set<std::size_t>& others) const {
        return std::any_of(others.begin(), others.end(),
                           [&](std::size_t shaft) { return shafts.count(shaft) > 0; });
    }
};

std::set<std::size_t> shaftsOf(const Machine& machine, const std::string& from, const std::string& to) {
    return {machine.shaftById(from).value_or(0), machine.shaftById(to).value_or(0)};
}

// A shaft of neither driver nor driven machine lies inside a gearbox.
std::set<std::size_t> insideShafts(const Machine& machine, const std::set<std::size_t>& shafts) {
    std::set<std::size_t> inside;
    for (const std::size_t shaft : shafts)
        if (machine.shafts[shaft].of.empty() && shaft != 0) inside.insert(shaft);
    return inside;
}

void addBearingShafts(const Machine& machine, Housing& housing) {
    for (const BearingPlace& bearing : machine.bearings)
        if (bearing.component == housing.name) housing.shafts.insert(bearing.shaft);
}

// The first housing from `first` on that touches these shafts takes the gear in.
bool takesGear(std::vector<Housing>& all, std::size_t first, const std::set<std::size_t>& touched,
               const std::set<std::size_t>& shafts) {
    for (std::size_t h = first; h < all.size(); ++h)
        if (all[h].touches(touched)) {
            all[h].shafts.insert(shafts.begin(), shafts.end());
            return true;
        }
    return false;
}

// A gear sits in the box with a bearing on one of its shafts, or with the gear before it on a shaft inside;
// else it is a housing of its own.
void addGears(const Machine& machine, std::size_t firstBox, std::vector<Housing>& all) {
    std::vector<const Gear*> open;
    for (const Gear& gear : machine.gears) {
        const auto shafts = shaftsOf(machine, gear.from, gear.to);
        if (!takesGear(all, firstBox, shafts, shafts)) open.push_back(&gear);
    }
    for (const Gear* gear : open) {
        const auto shafts = shaftsOf(machine, gear->from, gear->to);
        if (!takesGear(all, firstBox, insideShafts(machine, shafts), shafts))
            all.push_back({gear->id, shafts});
    }
}

std::vector<Housing> housingsOf(const Machine& machine) {
    std::vector<Housing> all{{"driver", {0}}};
    if (machine.driven.known) all.push_back({"driven", {machine.shaftOfDriven().value_or(0)}});
    const std::size_t firstBox = all.size();
    for (const Box& box : machine.boxes)
        all.push_back({box.id, {box.shaft}});
    for (Housing& housing : all)
        addBearingShafts(machine, housing);
    addGears(machine, firstBox, all);
    return all;
}

// Where a place is: its housing by name, or all those on its shafts.
std::vector<std::size_t> housingsAt(const Machine& machine, const std::vector<Housing>& all,
                                    const std::string& at) {
    std::vector<std::size_t> found;
    const auto place = machine.placeOf(at);
    if (!place) return found;
    std::set<std::size_t> shafts{place->shaft};
    for (const Gear& gear : machine.gears)
        if (gear.id == place->component) shafts = shaftsOf(machine, gear.from, gear.to);
    bool belt = false;
    for (const Belt& b : machine.belts)
        if (b.id == place->component) {
            shafts = shaftsOf(machine, b.from, b.to);
            belt = true;
        }
    for (std::size_t i = 0; i < all.size(); ++i)
        if (all[i].name == place->component) return {i};
    for (std::size_t i = 0; i < all.size(); ++i) {
        const bool holds = std::all_of(shafts.begin(), shafts.end(),
                                       [&](std::size_t s) { return all[i].shafts.count(s) > 0; });
        if (belt ? all[i].touches(shafts) : holds) found.push_back(i);
    }
    return found;
}

// How many housings away, over shafts that two of them share; nothing: a belt, or what nobody described, lies
// between.
std::optional<int> couplingsBetween(const std::vector<Housing>& all, std::vector<std::size_t> from,
                                    const std::vector<std::size_t>& to) {
    std::set<std::size_t> reached(from.begin(), from.end());
    for (int steps = 0; !from.empty(); ++steps) {
        for (const std::size_t i : from)
            if (std::count(to.begin(), to.end(), i)) return steps;
        std::vector<std::size_t> next;
        for (std::size_t i = 0; i < all.size(); ++i) {
            const bool joined = std::any_of(from.begin(), from.end(),
                                            [&](std::size_t f) { return all[i].touches(all[f].shafts); });
            if (joined && reached.insert(i).second) next.push_back(i);
        }
        from = std::move(next);
    }
    return std::nullopt;
}

std::optional<Path> saidPath(const Machine& machine, const Point& point, const std::string& at) {
    const auto place = machine.placeOf(at);
    for (const std::string& named : {at, place ? place->component : at})  // "driven" is all of it
        for (const Hears& hears : point.hears)
            if (hears.at == named) return pathNamed(hears.path);
    return std::nullopt;
}

Path pathByTrain(const Machine& machine, const Point& point, const std::string& at) {
    const std::vector<Housing> all = housingsOf(machine);
    const auto steps =
        couplingsBetween(all, housingsAt(machine, all, point.at), housingsAt(machine, all, at));
    if (!steps) return machine.belts.empty() ? Path::ThroughCouplings : Path::ThroughBelt;
    return *steps == 0 ? Path::SameHousing : *steps == 1 ? Path::ThroughCoupling : Path::ThroughCouplings;
}

}  // namespace

std::string nameOf(Path path) {
    return rowOf(path).name;
}

std::string wordsOf(Path path) {
    return rowOf(path).words;
}

std::string keptName(Path path) {
    return wCutOf(path) < 1 ? nameOf(path) : "";
}

double keptCut(const std::string& name) {
    const auto path = pathNamed(name);
    return path ? wCutOf(*path) : 1;
}

std::string pathWords(const std::string& name) {
    const auto path = pathNamed(name);
    return path ? wordsOf(*path) : "";
}

double wCutOf(Path path) {
    return rowOf(path).wCut;
}

Path pathBetween(const Machine& machine, const Point& point, const std::string& at) {
    if (const auto said = saidPath(machine, point, at)) return *said;
    return point.at == at ? Path::OwnPlace : pathByTrain(machine, point, at);
}

std::optional<Path> heardPath(const Machine& machine, const Point& point, const std::string& at) {
    if (saidPath(machine, point, at) || point.at == at) return pathBetween(machine, point, at);
    if (!point.hears.empty()) return std::nullopt;
    const Path path = pathByTrain(machine, point, at);
    if (path == Path::ThroughBelt) return std::nullopt;
    return path;
}

Path nearestPath(const Machine& machine, const std::string& at) {
    Path nearest = Path::ThroughBelt;
    for (const Point& point : machine.points)
        nearest = std::min(nearest, pathBetween(machine, point, at));
    return nearest;
}

std::string housingOf(const Machine& machine, const std::string& at) {
    const std::vector<Housing> all = housingsOf(machine);
    const auto found = housingsAt(machine, all, at);
    return found.empty() ? at : all[found.front()].name;
}

std::vector<std::string> placesIn(const std::string& at) {
    const std::string word = " or ";
    std::size_t choice = at.find(word);
    const std::string first = at.substr(0, choice);
    const std::string stem = first.substr(0, first.rfind(' ') + 1);
    std::vector<std::string> places{first};
    while (choice != std::string::npos) {
        const std::size_t from = choice + word.size();
        choice = at.find(word, from);
        places.push_back(stem + at.substr(from, choice - from));
    }
    return places;
}

bool placesMeet(const std::string& a, const std::string& b) {
    const auto places = placesIn(a), others = placesIn(b);
    return std::any_of(places.begin(), places.end(), [&](const std::string& place) {
        return std::find(others.begin(), others.end(), place) != others.end();
    });
}

std::string eitherOf(const std::string& a, const std::string& b) {
    const std::string first = placesIn(a).front(), stem = first.substr(0, first.rfind(' ') + 1);
    return a + " or " + (b.starts_with(stem) ? b.substr(stem.size()) : b);
}

}  // namespace fettle
