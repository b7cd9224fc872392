// Why: whoever stands at the rotor, and whoever balances it next year, holds one page: rotor, convention and
// drawing, runs, masses to fit and where, what is left against the grade, cautions, signatures. Black on
// white, A4 or Letter. A value and its pages. Thread: the window's (fonts). Errors: none; what is not known
// yet is left out.
#pragma once

#include "ui/plot/balance_pictures.h"
#include "ui/sheet/printed_pages.h"

namespace fettle {

struct BalanceRecord {
    BalanceJob job;
    BalanceAnswer answer;
    QString date;  // of making, in words
};

class BalanceRecordPages : public PrintedPages {
  public:
    BalanceRecordPages(const BalanceRecord& record, PaperSize size);

  protected:
    void paintFigures(QPainter& painter, const SheetPage& page) override;

  private:
    std::vector<RotorPicture> rotors_;
    std::vector<PolarPicture> polars_;
    Theme paper_{ThemeChoice::Paper};
};

PdfTitle titleOf(const BalanceRecord& record);

}  // namespace fettle
