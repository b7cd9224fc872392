#include "ui/plot/spectrum_cursor.h"

#include <algorithm>
#include <cmath>

namespace fettle {

namespace {
constexpr std::size_t kSkirt = 3;    // lines of a Hann window's main lobe and one more
constexpr double kFloorHz = 10;      // to either side
constexpr std::size_t kFewest = 12;  // lines to either side at least
}  // namespace

std::vector<CursorPlace> cursorPlaces(const SpectrumCursor& cursor, double carrierHz, double shaftHz) {
    std::vector<CursorPlace> places = {{carrierHz, {}}};
    const double apart = cursor.spacingHz > 0 ? cursor.spacingHz : shaftHz;
    if (cursor.kind == CursorKind::Two && cursor.second) {
        places[0].name = QStringLiteral("A");
        places.push_back({*cursor.second, QStringLiteral("B")});
    }
    if (cursor.kind == CursorKind::Harmonics)
        for (int h = 2; h <= cursor.harmonics; ++h)
            places.push_back({h * carrierHz, QString::number(h)});
    if (cursor.kind == CursorKind::Sidebands && apart > 0)
        for (int k = 1; k <= cursor.pairs; ++k)
            for (const int side : {-1, 1})
                if (carrierHz + side * k * apart > 0)
                    places.push_back({carrierHz + side * k * apart,
                                      (side < 0 ? QChar(0x2212) : QChar('+')) + QString::number(k)});
    return places;
}

double floorAbout(const SpectrumData& data, std::size_t line) {
    const std::size_t reach = std::max(kFewest, std::size_t(kFloorHz / data.dfHz)) + kSkirt;
    std::vector<float> about;
    const std::size_t first = line > reach ? line - reach : 0;
    for (std::size_t i = first; i <= std::min(line + reach, data.values.size() - 1); ++i)
        if (i + kSkirt < line || i > line + kSkirt) about.push_back(data.values[i]);
    if (about.empty()) return 0;
    const auto middle = about.begin() + std::ptrdiff_t(about.size() / 2);
    std::nth_element(about.begin(), middle, about.end());
    return double(*middle);
}

std::vector<CursorRow> cursorRows(const std::vector<CursorPlace>& places, const SpectrumData& data,
                                  const SpectrumReading& reading) {
    std::vector<CursorRow> rows;
    if (data.values.size() < 2 || !(data.dfHz > 0)) return rows;
    for (const CursorPlace& place : places) {
        const auto nearest = std::llround(place.hz / data.dfHz);
        if (nearest < 0 || std::size_t(nearest) >= data.values.size()) continue;
        const auto first = std::size_t(std::max(0LL, nearest - 1));
        const auto last = std::min(data.values.size(), std::size_t(nearest) + 2);
        const auto top = std::size_t(std::max_element(data.values.begin() + std::ptrdiff_t(first),
                                                      data.values.begin() + std::ptrdiff_t(last)) -
                                     data.values.begin());
        CursorRow row;
        row.name = place.name;
        row.hz = data.dfHz * double(top);
        if (data.shaftHz > 0) row.order = row.hz / data.shaftHz;
        row.value = reading.shown(double(data.values[top]));
        row.overFloorDb = data.decibels ? double(data.values[top])
                                        : reading.ratioDb(row.value, reading.shown(floorAbout(data, top)));
        rows.push_back(row);
    }
    return rows;
}

}  // namespace fettle
