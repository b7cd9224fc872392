// Why: many sheets at once: one after another is read on a worker, drawn in the window's thread (plots are
// widgets) and put into one PDF or a folder of them; between two the window lives, and it stops when asked.
// A machine without a finding is told and passed over; what is written stays. Thread: the window's.
#pragma once

#include <QObject>
#include <QStringList>
#include <memory>
#include <optional>
#include <set>

#include "core/round/round.h"
#include "ui/model/units.h"
#include "ui/sheet/sheet_painter.h"
#include "ui/work/fleet_work.h"

namespace fettle {

struct SheetsOrder {
    std::shared_ptr<const RoundList> list;
    std::optional<std::int64_t> round;  // the kept one it is
    QStringList machines;
    QString path;                      // of the one PDF, or of the folder (made where it is not there)
    bool folder = false, csv = false;  // csv: a row for each sheet beside them
    PaperSize paper = PaperSize::A4;
    Units units;
};

class SheetsRun : public QObject {
    Q_OBJECT
  public:
    SheetsRun(FleetWork& work, QObject* parent) : QObject(parent), work_(work) {}

    void start(SheetsOrder order);
    void stop();  // after the sheet that is being made; one PDF is then not written
    bool running() const { return running_; }

  signals:
    void progressed(int done, int of);
    // `trouble`: sentences about what was passed over or went wrong; empty: all are there.
    void finished(int made, const QString& trouble);

  private:
    void next();
    void take(const QString& machine, Result<SheetData> sheet);
    void put(const SheetData& sheet);
    void close();
    void end(const QString& trouble);

    FleetWork& work_;
    SheetsOrder order_;
    std::unique_ptr<PdfBook> book_;
    std::set<std::string> used_;  // names of files
    std::string csv_;
    QStringList troubles_;
    int at_ = 0, made_ = 0;
    bool running_ = false, stopped_ = false;
};

}  // namespace fettle
