// Why: what is longer than a page runs on: blocks are set one under the other and never cut, tables carry
// their column heads over to the next page, and every page ends in its number. For the round's report and
// comparisons. Units of a page: see sheet_page.h. Thread: the window's (fonts).
#pragma once

#include <QCoreApplication>
#include <optional>
#include <vector>

#include "ui/sheet/sheet_sections.h"

namespace fettle {

struct FlowCell {
    QString text;
    QString lead = {};  // in bold before it
    std::optional<Urgency> disc = {};
    bool muted = false;
    std::vector<FlowCell> more = {};  // paragraphs under it
};
struct FlowColumn {
    QString head;
    double share = 1;  // of the width
};
struct FlowTable {
    QString heading;
    std::vector<FlowColumn> columns;
    std::vector<std::vector<FlowCell>> rows;
    QString note = {};  // under the heading; may be empty
};

// One row as it stands at the column's place; moves the column under it.
void setFlowRow(Column& column, const std::vector<FlowColumn>& columns, const std::vector<FlowCell>& cells);
void setFlowHead(Column& column, const std::vector<FlowColumn>& columns);

class PageFlow {
    Q_DECLARE_TR_FUNCTIONS(fettle::PageFlow)

  public:
    // `later`: the head of every page but the first.
    PageFlow(PaperSize size, Block first, Block later);

    double room() const;  // left on this page, in its units
    double heightOf(const Block& block) const;
    void newPage();
    void add(const Block& block);
    void add(const FlowTable& table);  // nothing where it has no rows
    // `footer` stands left of "2 of 5" on every page.
    std::vector<SheetPage> finish(const QString& footer);

  private:
    void begin(const Block& head);
    void set(const Block& block);

    PaperSize size_;
    Block later_;
    Fit fit_;
    std::vector<SheetPage> pages_;
    double y_ = 0;
};

}  // namespace fettle
