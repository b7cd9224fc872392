#include <algorithm>

#include "ui/sheet/sheet_sections.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr double kPartTickMm = 2.6, kPartGapMm = 2, kNameMm = 52, kQuantityMm = 12, kStoresMm = 17.5;
constexpr int kMostNameLines = 12;
constexpr const char* kUsualNote = "confirm on the plate before ordering";

// Name, what to confirm, quantity, then a box for each question to the stores; left edges and widths.
struct PartGrid {
    double name, nameWidth, confirm, confirmWidth, quantity, quantityWidth;
    std::vector<double> stores;
    double storesWidth;

    PartGrid(const Column& column, std::size_t count) {
        const double gap = kPartGapMm * kMm, right = column.left() + column.width();
        const double most = count ? 0.4 * column.width() / double(count) : 0;
        storesWidth = std::min(kStoresMm * kMm, most);
        for (std::size_t i = 0; i < count; ++i)
            stores.push_back(right - double(count - i) * (storesWidth + gap) + gap);
        quantityWidth = kQuantityMm * kMm;
        quantity = (count ? stores.front() : right + gap) - gap - quantityWidth;
        name = column.left();
        nameWidth = kNameMm * kMm;
        confirm = name + nameWidth + gap;
        confirmWidth = quantity - gap - confirm;
    }
};

void setPartHead(Column& column, const SheetContent& sheet, const PartGrid& grid) {
    const TextStyle style{.pt = kLeastPt, .ink = Role::MutedInk, .mostLines = 1};
    SheetPage& page = column.page();
    const double y = column.y();
    place(page, tr("part"), {grid.name, y}, grid.nameWidth, style);
    place(page, engineWords(kUsualNote), {grid.confirm, y}, grid.confirmWidth, style);
    place(page, tr("quantity"), {grid.quantity, y}, grid.quantityWidth, style);
    for (std::size_t i = 0; i < grid.stores.size(); ++i)
        place(page, engineWords(sheet.partBoxes[i]), {grid.stores[i], y}, grid.storesWidth, style);
    column.moveTo(y + lineHeight(kLeastPt));
    column.gap(0.4);
}

// "bearing 6316, motor DE", and under it a note of its own.
double setName(Column& column, const SheetPart& part, const PartGrid& grid) {
    const double indent = 4.5 * kMm, tick = kPartTickMm * kMm, line = lineHeight(column.fit().pt);
    column.page().boxes.push_back({QRectF(grid.name, column.y() + (line - tick) / 2, tick, tick)});
    TextStyle style = column.body();
    style.mostLines = kMostNameLines;
    style.lead = engineWords(part.what);
    if (!part.designation.empty()) style.lead += QLatin1Char(' ') + plainText(part.designation);
    const QString rest = part.place.empty() ? QString() : QStringLiteral(", ") + plainText(part.place);
    Column cell(column.page(), column.fit(), grid.name + indent, grid.nameWidth - indent, column.y());
    cell.moveTo(cell.y() + place(column.page(), rest, {cell.left(), cell.y()}, cell.width(), style));
    if (part.note != kUsualNote) cell.muted(engineWords(part.note));
    return cell.y();
}

double setConfirm(Column& column, const SheetPart& part, const PartGrid& grid) {
    std::vector<QString> labels;
    if (part.designation.empty() && part.blanks.empty()) labels.push_back(tr("designation"));
    for (const std::string& blank : part.blanks)
        labels.push_back(engineWords(blank));
    Column cell(column.page(), column.fit(), grid.confirm, grid.confirmWidth, column.y());
    setBlanks(cell, labels, 0);
    return cell.y();
}

double setStores(Column& column, const SheetPart& part, const PartGrid& grid) {
    const double height = lineHeight(kLeastPt) + 1.4 * kMm, y = column.y();
    SheetPage& page = column.page();
    if (part.quantity)
        place(page, QString::number(*part.quantity), {grid.quantity, y + 0.3 * kMm}, grid.quantityWidth,
              column.body());
    else
        page.boxes.push_back({QRectF(grid.quantity, y, grid.quantityWidth, height)});
    for (const double left : grid.stores)
        page.boxes.push_back({QRectF(left, y, grid.storesWidth, height)});
    return y + height + 0.8 * kMm;
}

void setPart(Column& column, const SheetContent& sheet, std::size_t i) {
    PartGrid grid(column, sheet.partBoxes.size());
    if (i == 0) {
        column.heading(tr("Parts: %1").arg(plainText(sheet.leadTime)));
        setPartHead(column, sheet, grid);
    }
    const SheetPart& part = sheet.parts[i];
    if (part.blanks.empty() && !part.designation.empty())
        grid.nameWidth += kPartGapMm * kMm + grid.confirmWidth;
    column.moveTo(std::max(
        {setName(column, part, grid), setConfirm(column, part, grid), setStores(column, part, grid)}));
}

}  // namespace

Blocks partBlocks(const SheetContent& sheet) {
    Blocks blocks;
    for (std::size_t i = 0; i < sheet.parts.size(); ++i)
        blocks.push_back([&sheet, i](Column& column) { setPart(column, sheet, i); });
    return blocks;
}

}  // namespace fettle
