// Why: all that belongs to one open fleet: the work off the window's thread, the selection, the three pages
// and the dialogs that ask and write. Made whole when a fleet has been opened, thrown away when another is.
// Builds and connects; knows nothing of menus. Thread: the window's. Errors: `troubled` with a sentence.
#pragma once

#include <QPointer>
#include <QStackedWidget>
#include <memory>
#include <optional>

#include "ui/dialogs/import_dialog.h"
#include "ui/model/selection.h"
#include "ui/theme/theme.h"
#include "ui/window/page_place.h"
#include "ui/work/fleet_work.h"
#include "ui/work/long_work.h"

class QSettings;

namespace fettle {

class AlertPost;
class LogActions;
class MachinePage;
class RegisterPage;
class RoundPage;

class Workplace : public QStackedWidget {
    Q_OBJECT
  public:
    Workplace(std::unique_ptr<FleetFile> fleet, const Theme& theme, QWidget* parent = nullptr);
    ~Workplace() override;

    FleetWork& work() { return *work_; }
    Selection& selection() { return *selection_; }
    LogActions& log() { return *log_; }
    RoundPage& roundPage() { return *round_; }
    void keepIn(QSettings* settings);  // what outlives the window; null: nothing does

    void go(const PagePlace& place);
    PagePlace place() const;
    bool settled() const;  // nothing is being read or computed
    QString pageName() const;

    void showDialog(const QString& name);
    void importPaths(const QStringList& paths);  // empty: the dialog alone
    void startRound();
    void closeRound();
    void noteEvent(const QString& machine);
    void showSheet(const QString& machine);  // the findings sheet, as it will be printed
    void showTrials(const QString& machine);
    void showResonance(const QString& machine);
    void showBalance(const QString& machine);
    void showAlerts();  // between rounds
    void showReport();  // of the round shown
    void compareRounds();
    void showSheets();            // all of the round's in one go
    void showMachineHere();       // the machine page, of the round's line where the round is shown
    QString machineHere() const;  // of the page that is shown; empty: none is chosen
    void backUp(const QString& path);

  signals:
    void placeChanged();
    void said(const QString& sentence);      // for the status line
    void troubled(const QString& sentence);  // for a message
    void alertsCounted(int open);
    void longWorkChanged(const QString& word);  // what takes minutes; empty: nothing

  private:
    void build();
    void connectRound();
    void connectMachine();
    void connectRegister();
    void watchAlerts();
    void postAlerts(bool wanted);
    void findBearing();
    void setAlike();
    void lookAtFiles(const QStringList& paths, bool subfolders);
    void showRules();
    void showRetention();
    void showRefusals();
    void lookAtRefused();
    void showPage(const QString& name);
    void whenRead(std::function<void()> then);  // the round
    void askReason(const QStringList& tags, DecisionKind kind);
    void askUnseen(const QStringList& tags);
    void openRoundUpTo(const QString& day);
    void writeClose();
    void checkMachine(const QString& tag);
    std::vector<RoundMachine> machinesOfRound(const QStringList& tags) const;

    const Theme& theme_;
    std::unique_ptr<FleetWork> work_;
    std::unique_ptr<Selection> selection_;
    std::unique_ptr<LongWork> long_;
    std::unique_ptr<AlertPost> post_;  // sends alerts where that is set
    LogActions* log_ = nullptr;
    RoundPage* round_ = nullptr;
    MachinePage* machine_ = nullptr;
    RegisterPage* register_ = nullptr;
    QPointer<ImportDialog> import_;
};

}  // namespace fettle
