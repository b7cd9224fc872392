#include "ui/sheet/line_table.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "ui/model/numbers.h"
#include "ui/sheet/sheet_page.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

using Kind = ArithmeticRow::Kind;

QString foundText(const LineRow& line) {
    switch (line.state) {
        case LineState::Found:
            return fixedText(line.foundHz, 1);
        case LineState::Absent:
            return tr("absent");
        case LineState::LeftOut:
            break;
    }
    return tr("left out");
}

PrintedRow printedRow(const ArithmeticRow& row, int number) {
    PrintedRow out;
    out.number = number;
    out.kind = row.kind;
    out.name = plainText(row.name);
    out.printed = row.printed;
    out.dban = dbanText(row.printed);
    if (!row.line) return out;
    out.expected = fixedText(row.line->expectedHz, 1);
    out.found = foundText(*row.line);
    if (row.line->state == LineState::Found) out.overFloor = fixedText(row.line->aboveFloorDb, 1);
    return out;
}

// Lines by what they add or take, left out ones last; their indices.
std::vector<std::size_t> byImportance(const std::vector<ArithmeticRow>& rows) {
    std::vector<std::size_t> lines;
    for (std::size_t i = 0; i < rows.size(); ++i)
        if (rows[i].kind == Kind::Line) lines.push_back(i);
    const auto found = [&](std::size_t i) {
        return rows[i].line && rows[i].line->state == LineState::Found ? 1 : 0;
    };
    std::stable_sort(lines.begin(), lines.end(), [&](std::size_t a, std::size_t b) {
        if (std::abs(rows[a].printed) != std::abs(rows[b].printed))
            return std::abs(rows[a].printed) > std::abs(rows[b].printed);
        return found(a) > found(b);
    });
    return lines;
}

}  // namespace

QString dbanText(double dban) {
    const double tenths = std::round(dban * 10);
    return fixedText(tenths == 0 ? 0.0 : tenths / 10, 1);
}

int lineNumber(const std::vector<ArithmeticRow>& rows, const std::string& name) {
    int number = 0;
    for (const ArithmeticRow& row : rows) {
        if (row.kind != Kind::Line) continue;
        ++number;
        if (row.name == name) return number;
    }
    return 0;
}

PrintedTable printedTable(const std::vector<ArithmeticRow>& rows, std::size_t mostLines) {
    const std::vector<std::size_t> order = byImportance(rows);
    std::vector<bool> shown(rows.size(), true);
    PrintedTable table;
    double rest = 0;
    for (std::size_t i = mostLines; order.size() > mostLines + 1 && i < order.size(); ++i) {
        shown[order[i]] = false;
        rest += rows[order[i]].printed;
        ++table.cut;
    }
    int number = 0;
    bool restTold = table.cut == 0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const bool line = rows[i].kind == Kind::Line;
        if (line) ++number;
        if (!line && !restTold) {
            table.rows.push_back({0,
                                  tr("%1 more lines, in the JSON twin").arg(table.cut),
                                  {},
                                  {},
                                  {},
                                  dbanText(rest),
                                  rest,
                                  Kind::Line});
            restTold = true;
        }
        if (!shown[i]) continue;
        table.rows.push_back(printedRow(rows[i], line ? number : 0));
    }
    return table;
}

}  // namespace fettle
