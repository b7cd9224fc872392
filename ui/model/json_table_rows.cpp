#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "ui/model/json_table_model.h"
#include "ui/model/numbers.h"
#include "ui/model/words.h"

namespace fettle {

namespace {

std::string textOf(const Json& object, const std::string& key) {
    const auto found = object.is_object() ? object.find(key) : object.end();
    return found != object.end() && found->is_string() ? found->get<std::string>() : std::string();
}

std::size_t sizeOf(const MachineDocument& document, const std::string& pointer) {
    const Json* list = document.find(pointer);
    return list && list->is_array() ? list->size() : 0;
}

std::string elementOf(const std::string& pointer, std::size_t index) {
    return pointer + "/" + std::to_string(index);
}

// "M-DE" taken: "M-DE 2", ...; "S1": "S2".
std::string freeId(const std::set<std::string>& taken, const std::string& wish) {
    if (!taken.count(wish)) return wish;
    const bool numbered = !wish.empty() && wish.back() >= '0' && wish.back() <= '9';
    const std::string stem = numbered ? wish.substr(0, wish.size() - 1) : wish + " ";
    for (int i = 2;; ++i)
        if (const std::string id = stem + std::to_string(i); !taken.count(id)) return id;
}

class ArrayRows : public TableRows {
  public:
    ArrayRows(std::string pointer, Json fresh) : pointer_(std::move(pointer)), fresh_(std::move(fresh)) {}

    std::vector<TableRow> rows(const MachineDocument& document) const override {
        std::vector<TableRow> rows;
        for (std::size_t i = 0; i < sizeOf(document, pointer_); ++i)
            rows.push_back({elementOf(pointer_, i), {}, {}});
        return rows;
    }

    void add(MachineDocument& document, const TableRow*) const override {
        std::set<std::string> taken;
        const std::size_t size = sizeOf(document, pointer_);
        for (std::size_t i = 0; i < size; ++i)
            taken.insert(textOf(*document.find(elementOf(pointer_, i)), "id"));
        Json row = fresh_;
        if (row.contains("id")) row["id"] = freeId(taken, textOf(row, "id"));
        document.put(elementOf(pointer_, size), row);
    }

  private:
    std::string pointer_;
    Json fresh_;
};

class ShaftRows : public ArrayRows {
  public:
    ShaftRows() : ArrayRows("/shafts", {{"id", "S1"}}) {}

    QString special(const MachineDocument& document, const TableRow& row, const std::string&) const override {
        const auto& machine = document.machine();
        const Json* shaft = document.find(row.pointer);
        if (!machine || !shaft || !machine->nominalRpm()) return {};
        const auto index = machine->shaftById(textOf(*shaft, "id"));
        if (!index) return {};
        return QStringLiteral("%1").arg(fixedText(machine->shafts[*index].ratio * *machine->nominalRpm(), 1));
    }
};

class PointRows : public TableRows {
  public:
    PointRows(std::string list, Json fresh) : list_(std::move(list)), fresh_(std::move(fresh)) {}

    std::vector<TableRow> rows(const MachineDocument& document) const override {
        std::vector<TableRow> rows;
        for (std::size_t p = 0; p < sizeOf(document, "/points"); ++p) {
            const std::string point = elementOf("/points", p), list = under(point, list_);
            const std::string id = textOf(*document.find(point), "id");
            for (std::size_t i = 0; i < sizeOf(document, list); ++i)
                rows.push_back({elementOf(list, i), id, {}});
        }
        return rows;
    }

    void add(MachineDocument& document, const TableRow* beside) const override {
        const std::size_t points = sizeOf(document, "/points");
        if (points == 0) return;
        std::string point = elementOf("/points", points - 1);
        if (beside)
            point = beside->pointer.substr(0, beside->pointer.find('/', std::string("/points/").size()));
        const std::string list = under(point, list_);
        std::set<std::string> taken;
        for (std::size_t i = 0; i < sizeOf(document, list); ++i)
            taken.insert(textOf(*document.find(elementOf(list, i)), "name"));
        Json row = fresh_;
        for (const char* name : {"z", "y", "x"})
            if (row.contains("name") && !taken.count(name)) row["name"] = name;
        document.put(elementOf(list, sizeOf(document, list)), row);
    }

    QString special(const MachineDocument&, const TableRow& row, const std::string&) const override {
        return shown(row.owner);
    }

    bool setSpecial(MachineDocument& document, const TableRow& row, const std::string&,
                    const QString& text) const override {
        for (std::size_t p = 0; p < sizeOf(document, "/points"); ++p) {
            const std::string point = elementOf("/points", p);
            if (textOf(*document.find(point), "id") != kept(text) || kept(text) == row.owner) continue;
            const Json moved = *document.find(row.pointer);
            document.inOneStep({}, [&] {
                document.remove(row.pointer);
                const std::string list = under(point, list_);
                document.put(elementOf(list, sizeOf(document, list)), moved);
            });
            return true;
        }
        return false;
    }

    QStringList choices(const MachineDocument& document, const std::string& name) const override {
        QStringList ids;
        if (name != "@point") return ids;
        for (std::size_t p = 0; p < sizeOf(document, "/points"); ++p)
            ids << shown(textOf(*document.find(elementOf("/points", p)), "id"));
        return ids;
    }

  private:
    std::string list_;
    Json fresh_;
};

class BearingRows : public TableRows {
  public:
    std::vector<TableRow> rows(const MachineDocument& document) const override {
        std::vector<TableRow> rows;
        for (const auto& [component, pointer] : components(document)) {
            const Json* bearings = document.find(pointer);
            if (!bearings || !bearings->is_object()) continue;
            for (const auto& item : bearings->items())
                rows.push_back({under(pointer, item.key()), component, item.key()});
        }
        return rows;
    }

    void add(MachineDocument& document, const TableRow* beside) const override {
        std::string component = beside ? beside->owner : "driver";
        std::string position = freePosition(document, component);
        if (!beside || (position != "DE" && position != "NDE"))
            for (const auto& [name, pointer] : components(document))
                if (const std::string free = freePosition(document, name); free == "DE" || free == "NDE") {
                    component = name;
                    position = free;
                    break;
                }
        document.put(under(pointerOf(document, component), position), {{"type", "deep_groove"}});
    }

    QString special(const MachineDocument& document, const TableRow& row,
                    const std::string& name) const override {
        if (name == "@component") return shown(row.owner);
        if (name == "@position") return shown(row.key);
        return known(document, row.owner + " " + row.key);
    }

    bool setSpecial(MachineDocument& document, const TableRow& row, const std::string& name,
                    const QString& text) const override {
        const std::string component = name == "@component" ? kept(text) : row.owner;
        const std::string position = name == "@position" ? kept(text) : row.key;
        const std::string owner = pointerOf(document, component);
        if (owner.empty() || position.empty()) return false;
        const std::string target = under(owner, position);
        if (target == row.pointer || document.find(target)) return false;
        const Json moved = *document.find(row.pointer);
        document.inOneStep({}, [&] {
            document.remove(row.pointer);
            document.put(target, moved);
        });
        return true;
    }

    QStringList choices(const MachineDocument& document, const std::string& name) const override {
        QStringList names;
        if (name == "@position") return {QStringLiteral("DE"), QStringLiteral("NDE")};
        if (name == "@component")
            for (const auto& [component, pointer] : components(document))
                names << shown(component);
        return names;
    }

  private:
    using Components = std::vector<std::pair<std::string, std::string>>;  // id, pointer of its bearings

    static Components components(const MachineDocument& document) {
        Components all{{"driver", "/driver/bearings"}};
        for (std::size_t i = 0; i < sizeOf(document, "/intermediate"); ++i) {
            const std::string box = elementOf("/intermediate", i);
            all.emplace_back(textOf(*document.find(box), "id"), under(box, "bearings"));
        }
        all.emplace_back("driven", "/driven/bearings");
        return all;
    }

    static std::string pointerOf(const MachineDocument& document, const std::string& component) {
        for (const auto& [name, pointer] : components(document))
            if (name == component) return pointer;
        return {};
    }

    static std::string freePosition(const MachineDocument& document, const std::string& component) {
        const std::string pointer = pointerOf(document, component);
        for (const char* position : {"DE", "NDE"})
            if (!document.find(under(pointer, position))) return position;
        for (int i = 3;; ++i)
            if (!document.find(under(pointer, std::to_string(i)))) return std::to_string(i);
    }

    // What diagnosis will look for: from the last sound state of the document.
    static QString known(const MachineDocument& document, const std::string& at) {
        if (!document.machine()) return {};
        for (const BearingPlace& place : document.machine()->bearings) {
            if (place.at != at) continue;
            const auto& variants = place.bearing.variants;
            if (variants.empty()) return shown(place.bearing.whyNone);
            const BearingOrders& o = variants.front().orders;
            const std::string orders =
                fmt::format("BPFO {:.3f}  BPFI {:.3f}  BSF {:.3f}  FTF {:.3f}", o.bpfo, o.bpfi, o.bsf, o.ftf);
            return shown(variants.size() == 1
                             ? orders
                             : fmt::format("{} and {} more builds", orders, variants.size() - 1));
        }
        return {};
    }
};

}  // namespace

QString TableRows::special(const MachineDocument&, const TableRow&, const std::string&) const {
    return {};
}

bool TableRows::setSpecial(MachineDocument&, const TableRow&, const std::string&, const QString&) const {
    return false;
}

QStringList TableRows::choices(const MachineDocument&, const std::string&) const {
    return {};
}

std::unique_ptr<TableRows> arrayRows(const std::string& pointer, Json fresh) {
    return std::make_unique<ArrayRows>(pointer, std::move(fresh));
}

std::unique_ptr<TableRows> pointRows(const std::string& list, Json fresh) {
    return std::make_unique<PointRows>(list, std::move(fresh));
}

std::unique_ptr<TableRows> bearingRows() {
    return std::make_unique<BearingRows>();
}

std::unique_ptr<TableRows> shaftRows() {
    return std::make_unique<ShaftRows>();
}

}  // namespace fettle
