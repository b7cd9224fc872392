// Why: recordings come in while the window stays free: progress, what was taken, and every refusal with file,
// place and rule. Runs on a connection of its own; closing the dialog lets it go on, cancelling keeps what is
// already taken. One dialog a fleet. Thread: the window's.
#pragma once

#include <QDialog>
#include <QStringList>
#include <memory>

#include "core/intake/import.h"
#include "ui/model/refusal_model.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"
#include "ui/work/long_work.h"

class QCheckBox;
class QLabel;
class QProgressBar;
class QPushButton;
class QTableView;

namespace fettle {

class ImportDialog : public QDialog {
    Q_OBJECT
  public:
    ImportDialog(FleetWork& work, const Theme& theme, QWidget* parent);

    // Files and folders; waits its turn where an import runs.
    void take(const QStringList& paths);
    bool running() const { return long_->running(); }

  signals:
    void runningChanged(bool running);
    void taken(qulonglong stored);                               // after each import
    void lookWanted(const QStringList& paths, bool subfolders);  // what are these taken for?

  protected:
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

  private:
    void build(const Theme& theme);
    void chooseFiles();
    void chooseFolder();
    void chosen(const QStringList& paths);
    QStringList refusedPaths() const;
    void startNext();
    void showProgress(qulonglong done, qulonglong total, const QString& what);
    void showReport(const Result<ImportReport>& report);

    FleetWork& work_;
    const Theme& theme_;
    RefusalModel refusals_;
    QStringList waiting_;
    QLabel *word_, *counts_, *refusedHead_;
    QCheckBox *subfolders_, *look_;
    QProgressBar* bar_;
    QPushButton *files_, *folder_, *stop_, *again_, *why_;
    QTableView* table_;
    std::unique_ptr<LongWork> long_;  // last: stops before what it reports to is gone
};

// Local files and folders of a drag.
QStringList droppedPaths(const class QMimeData& data);

}  // namespace fettle
