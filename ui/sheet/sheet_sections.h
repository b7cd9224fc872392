// Why: the parts of the findings sheet, each set under the other into a column of a page. A part is a list of
// blocks, so that it can run on over the next page: a block stands on one page, its heading with it. How
// large all is set is decided once for a whole page (Fit). Units of Fit: pt, mm, counts. Thread: the
// window's.
#pragma once

#include <functional>

#include "core/fleet/sheet_content.h"
#include "ui/sheet/sheet_page.h"

namespace fettle {

struct Fit {
    double pt = kBodyPt;
    double boxMm = 9;       // of the boxes to write in
    std::size_t rows = 40;  // of the table of lines
};

// Where things are set one under the other.
class Column {
  public:
    Column(SheetPage& page, const Fit& fit, double left, double width, double top)
        : page_(page), fit_(fit), left_(left), width_(width), y_(top) {}

    SheetPage& page() { return page_; }
    const Fit& fit() const { return fit_; }
    double left() const { return left_; }
    double width() const { return width_; }
    double y() const { return y_; }
    void gap(double mm) { y_ += mm * kMm; }
    void moveTo(double y) { y_ = y; }

    void heading(const QString& text);
    void paragraph(const QString& text, const QString& lead = {});
    void muted(const QString& text);
    void marked(const QString& mark, const QString& text, double indentMm);  // "1.", "-" before a paragraph
    void rule(double widthMm = 0.15, Role ink = Role::Ink, bool dashed = false);
    TextStyle body() const;
    TextStyle small() const;

  private:
    SheetPage& page_;
    const Fit& fit_;
    double left_, width_, y_;
};

// Keep a reference to the sheet they were made from.
using Block = std::function<void(Column&)>;
using Blocks = std::vector<Block>;
void setAll(Column& column, const Blocks& blocks);

void setHead(Column& column, const SheetContent& sheet);
void setLaterHead(Column& column, const SheetContent& sheet);  // of every page but the first
Blocks workBlocks(const SheetContent& sheet);
Blocks needBlocks(const SheetContent& sheet);
Blocks partBlocks(const SheetContent& sheet);
Blocks whyBlocks(const SheetContent& sheet);
Blocks lineBlocks(const SheetContent& sheet, std::size_t mostRows);
Blocks blindBlocks(const SheetContent& sheet, std::size_t most);
Blocks cautionBlocks(const SheetContent& sheet);
Blocks returnBlocks(const SheetContent& sheet);
void setCautions(Column& column, const SheetContent& sheet);  // in two columns
void setFooter(SheetPage& page, const SheetContent& sheet);
// Label and empty box in a row, then the next; a new row where the width is used up.
void setBlanks(Column& column, const std::vector<QString>& labels, double indentMm);
// Captions and the places of the two figures, each `heightMm` high without its caption; side by side, or one
// over the other.
void setFigures(Column& column, const SheetContent& sheet, bool spectrum, double heightMm, bool stacked);

}  // namespace fettle
