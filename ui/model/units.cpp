#include "ui/model/units.h"

namespace fettle {

namespace {
struct Row {
    bool Units::*wanted;
    const char *stored, *shown;
    double factor, offset;
};
constexpr double kMmPerInch = 25.4;
const Row kRows[] = {
    {&Units::inches, "mm/s", "in/s", 1 / kMmPerInch, 0}, {&Units::inches, "µm", "mil", 1 / kMmPerInch, 0},
    {&Units::inches, "um", "mil", 1 / kMmPerInch, 0},    {&Units::perMinute, "Hz", "r/min", 60, 0},
    {&Units::fahrenheit, "°C", "°F", 1.8, 32},           {&Units::fahrenheit, "K", "°F", 1.8, 0},
};
}  // namespace

ShownUnit shownUnit(const QString& stored, const Units& units) {
    for (const Row& row : kRows) {
        const QString name = QString::fromUtf8(row.stored);
        const bool same = stored == name || stored.startsWith(name + QChar(' '));
        if (units.*row.wanted && same)
            return {row.factor, row.offset, QString::fromUtf8(row.shown) + stored.mid(name.size())};
    }
    return {1, 0, stored};
}

}  // namespace fettle
