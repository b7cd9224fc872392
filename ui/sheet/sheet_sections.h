// Why: the parts of the findings sheet, each set under the other into a column of a page. How large, how many
// and how long is decided once for a whole page (Fit), so that a crowded sheet stays even. Units of Fit: pt,
// mm, counts. Thread: the window's.
#pragma once

#include "core/fleet/sheet_content.h"
#include "ui/sheet/sheet_page.h"

namespace fettle {

struct Fit {
    double pt = 9;
    double leastFigureMm = 42;
    std::size_t steps = 12, parts = 8, blanks = 8, cautions = 8, fields = 16;
    int lines = 0;            // of a paragraph; 0: as many as it takes
    std::size_t whyFits = 1;  // how far down the reasons may be shortened
    double boxMm = 10;
    bool afterUnderWhy = false;  // what to measure after the job stands under the reasons
};

// How much of the reasons: rows of the table, blind spots and other lists, lines of a paragraph (0: all).
struct WhyFit {
    std::size_t rows = 16, few = 8;
    int lines = 0;
};

// Where things are set one under the other.
class Column {
  public:
    Column(SheetPage& page, const Fit& fit, double left, double width, double top)
        : page_(page), fit_(fit), left_(left), width_(width), y_(top), lines_(fit.lines) {}

    SheetPage& page() { return page_; }
    const Fit& fit() const { return fit_; }
    double left() const { return left_; }
    double width() const { return width_; }
    double y() const { return y_; }
    void gap(double mm) { y_ += mm * kMm; }
    void moveTo(double y) { y_ = y; }
    void limitLines(int lines) { lines_ = lines; }

    void heading(const QString& text);
    void paragraph(const QString& text, const QString& lead = {});
    void muted(const QString& text, int mostLines = 2);
    void marked(const QString& mark, const QString& text, double indentMm);  // "1.", "-" before a paragraph
    void more(std::size_t count);  // "3 more, in the JSON twin"; nothing for 0
    void rule(double widthMm = 0.15, Role ink = Role::Ink, bool dashed = false);
    TextStyle body() const;
    TextStyle small() const;

  private:
    SheetPage& page_;
    const Fit& fit_;
    double left_, width_, y_;
    int lines_;
};

void setHead(Column& column, const SheetContent& sheet);
void setWork(Column& column, const SheetContent& sheet);
void setAfter(Column& column, const SheetContent& sheet);
void setWhy(Column& column, const SheetContent& sheet, const WhyFit& fit);
void setCautions(Column& column, const SheetContent& sheet);
void setReturn(Column& column, const SheetContent& sheet);
void setFooter(SheetPage& page, const SheetContent& sheet);
// Captions and the places of the two figures, `heightMm` high without captions.
void setFigures(Column& column, const SheetContent& sheet, bool spectrum, double heightMm);

}  // namespace fettle
