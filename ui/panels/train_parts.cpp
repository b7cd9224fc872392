#include "ui/panels/train_parts.h"

#include <QCoreApplication>
#include <algorithm>
#include <set>

#include "ui/model/words.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

class Walker {
    Q_DECLARE_TR_FUNCTIONS(fettle::Walker)

  public:
    explicit Walker(const Machine& machine) : machine_(machine) {}

    std::vector<TrainSlot> walk() {
        shaft(0);
        for (std::size_t i = 1; i < machine_.shafts.size(); ++i)
            shaft(i);
        if (machine_.driven.known || has("driven")) driven();
        for (const BearingPlace& place : machine_.bearings)
            component(place.component, TrainSymbol::Box, shown(place.component), {});
        givePoints();
        return std::move(row_);
    }

  private:
    // The driver, boxes on the shaft, then what leads on from it.
    void shaft(std::size_t index) {
        if (index >= machine_.shafts.size() || !shafts_.insert(index).second) return;
        if (index == 0) driver();
        for (const Box& box : machine_.boxes)
            if (box.shaft == index)
                component(box.id, TrainSymbol::Box, shown(box.id), tr("Box or stand %1").arg(shown(box.id)));
        if (machine_.shaftOfDriven() == index) driven();
        const std::string& id = machine_.shafts[index].id;
        for (const Gear& gear : machine_.gears)
            if (gear.from == id || gear.to == id) lead(gear, gearTip(gear), TrainSymbol::Gear, index);
        for (const Belt& belt : machine_.belts)
            if (belt.from == id || belt.to == id) lead(belt, beltTip(belt), TrainSymbol::Belt, index);
    }

    template <class Link>
    void lead(const Link& link, const QString& tip, TrainSymbol symbol, std::size_t from) {
        component(link.id, symbol, shown(link.id), tip);
        for (const std::string& end : {link.from, link.to})
            if (const auto next = machine_.shaftById(end); next && *next != from) shaft(*next);
    }

    void driver() {
        const Driver& plate = machine_.driver;
        QString caption = tr("motor");
        if (plate.powerKw) caption = tr("%1 kW").arg(numberText(*plate.powerKw));
        component("driver", TrainSymbol::Motor, caption, tr("Driver: motor"));
        if (machine_.coupling.empty() || machine_.coupling == "none") return;
        row_.push_back({TrainSymbol::Coupling,
                        QStringLiteral("coupling"),
                        {},
                        tr("Coupling: %1").arg(shown(machine_.coupling)),
                        {}});
    }

    void driven() {
        const std::string& kind = machine_.driven.kind;
        const TrainSymbol symbol = kind == "fan" || kind == "blower" ? TrainSymbol::Fan
                                   : kind == "pump"                  ? TrainSymbol::Pump
                                                                     : TrainSymbol::Driven;
        const QString name = kind.empty() ? tr("driven") : shown(kind);
        component("driven", symbol, name, tr("Driven machine: %1").arg(name));
    }

    static QString gearTip(const Gear& gear) {
        if (gear.teeth[0] <= 0) return tr("Gear %1").arg(shown(gear.id));
        return tr("Gear %1, %2 and %3 teeth")
            .arg(shown(gear.id), QString::number(gear.teeth[0]), QString::number(gear.teeth[1]));
    }
    static QString beltTip(const Belt& belt) {
        if (belt.pulleyMm[0] <= 0) return tr("Belt %1").arg(shown(belt.id));
        return tr("Belt %1, pulleys of %2 and %3 mm")
            .arg(shown(belt.id), numberText(belt.pulleyMm[0]), numberText(belt.pulleyMm[1]));
    }

    bool has(const std::string& component) const {
        return std::any_of(machine_.bearings.begin(), machine_.bearings.end(),
                           [&](const BearingPlace& place) { return place.component == component; });
    }

    // A component between its bearings; a motor's drive end points to the right, all others' to the left.
    void component(const std::string& name, TrainSymbol symbol, const QString& caption, const QString& tip) {
        if (!components_.insert(name).second) return;
        std::vector<const BearingPlace*> before, after;
        for (const BearingPlace& place : machine_.bearings) {
            if (place.component != name) continue;
            const bool driveEnd = place.at == name + " DE";
            const bool left = name == "driver" ? !driveEnd : driveEnd;
            (left ? before : after).push_back(&place);
        }
        for (const BearingPlace* place : before)
            bearing(*place);
        row_.push_back({symbol, shown(name), caption, tip.isEmpty() ? shown(name) : tip, {}});
        for (const BearingPlace* place : after)
            bearing(*place);
    }

    void bearing(const BearingPlace& place) {
        const Bearing& bearing = place.bearing;
        const QString name = shown(bearing.designation.empty() ? bearing.type : bearing.designation);
        row_.push_back({TrainSymbol::Bearing,
                        shown(place.at),
                        name,
                        name.isEmpty() ? tr("Bearing at %1, not described").arg(shown(place.at))
                                       : tr("Bearing at %1: %2").arg(shown(place.at), name),
                        {}});
    }

    // On the bearing where it is at one, else on its component, else on the driver.
    void givePoints() {
        for (const Point& point : machine_.points) {
            const TrainPoint mark{shown(point.id),
                                  tr("Measuring point %1 at %2").arg(shown(point.id), shown(point.at))};
            const auto place = machine_.placeOf(point.at);
            TrainSlot* slot = find(shown(point.at));
            if (!slot && place) slot = find(shown(place->component));
            if (!slot && !row_.empty()) slot = &row_.front();
            if (slot) slot->points.push_back(mark);
        }
    }
    TrainSlot* find(const QString& key) {
        const auto at =
            std::find_if(row_.begin(), row_.end(), [&](const TrainSlot& slot) { return slot.key == key; });
        return at == row_.end() ? nullptr : &*at;
    }

    const Machine& machine_;
    std::vector<TrainSlot> row_;
    std::set<std::size_t> shafts_;
    std::set<std::string> components_;
};

}  // namespace

std::vector<TrainSlot> trainSlots(const Machine& machine) {
    return Walker(machine).walk();
}

}  // namespace fettle
