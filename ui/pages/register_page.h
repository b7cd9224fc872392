// Why: taking a machine into the register with all that a verdict needs, without touching JSON: nameplate,
// train, bearings, points and channels, checked while one types; what this sensor cannot see there; and how
// the description changed through time. Writes through the fleet's writer. Thread: the window's.
#pragma once

#include <QWidget>
#include <map>
#include <vector>

#include "core/diagnosis/examination.h"
#include "core/workshop/bearing_finder.h"
#include "ui/model/machine_document.h"
#include "ui/model/register_file.h"
#include "ui/model/selection.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QAction;
class QBoxLayout;
class QLabel;
class QStackedWidget;
class QStandardItemModel;
class QTabWidget;
class QTableView;

namespace fettle {

class RegisterForm;
class RegisterSaveBar;
class RegisterTable;
class RegisterTree;
class TrainLine;

class RegisterPage : public QWidget {
    Q_OBJECT
  public:
    RegisterPage(FleetWork& work, Selection& selection, const Theme& theme, QWidget* parent = nullptr);

    MachineDocument& document() { return document_; }
    void openMachine(const QString& tag);
    void startMachine();
    void copyMachine();
    void save();
    void removeMachine(const QString& why);
    void importFile(const QString& path);
    void exportTo(const QString& path);
    // A bearing that was found, into the row that is chosen among the bearings (else a new one): with its
    // inner build, or by its designation alone.
    bool takesBearings() const;  // a form is open and may be edited
    void putBearing(const KnownBearing& bearing, bool withBuild);
    const std::vector<MachineEntry>& machines() const { return register_.machines; }
    void setAlike(const QStringList& tags, const std::string& pointer, const Json& value,
                  const std::string& from, const std::string& note);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void showEvent(QShowEvent* event) override;

  signals:
    void machineWanted(const QString& tag);
    void troubled(const QString& sentence);
    void said(const QString& sentence);
    void machinesRead();
    void machineShown();  // a description was read and is shown
    void saved(const QString& tag);
    void bearingWanted();  // the finder
    void alikeWanted();    // one value for several machines

  private:
    struct Blind {
        std::vector<BlindSpot> spots;
        std::string word;  // why there is no table
    };
    struct Register {
        std::vector<MachineEntry> machines;
        SiteSettings site;
    };
    void build();
    void buildTabs();
    QWidget* leftSide();
    QWidget* rightSide();
    QWidget* tab(const std::vector<QWidget*>& parts);
    QTableView* listTable(QStandardItemModel*& model, const QStringList& heads, const char* name);
    void readRegister();
    static Result<Blind> readBlind(FleetFile& fleet, const std::string& tag);
    void take(const QString& tag, Result<std::vector<DescriptionEntry>> descriptions);
    void askBlind();
    void makeRoom();
    void showHistory(int row);
    void showDescriptions();
    void showBlind(const Blind& blind);
    void setReadOnly(bool readOnly);
    void refresh();
    void leaveFor(std::function<void()> next);  // asks where something is not saved
    void askRemove();
    void askImport();
    void askExport();
    void goToTrouble(const QString& place);
    void undo() { document_.undo(); }
    void redo() { document_.redo(); }
    void buildHead(QBoxLayout& lines);
    QWidget* historySide();
    void showChanges();
    void showTrain();
    void tellTaken(const Result<RegisterTaken>& taken);
    void chooseIn(int tab, const char* table, const std::string& place);
    QAction* add(const char* id, void (RegisterPage::*slot)());

    FleetWork& work_;
    Selection& selection_;
    const Theme& theme_;
    MachineDocument document_;
    Register register_;
    std::vector<DescriptionEntry> descriptions_;
    QString tag_;  // of the register; empty: a new machine
    bool readOnly_ = false, blindWaits_ = false;
    RegisterTree* tree_ = nullptr;
    RegisterForm *machine_ = nullptr, *driver_ = nullptr;
    std::vector<RegisterTable*> tables_;
    std::map<int, std::vector<RegisterTable*>> tablesOfTab_;
    RegisterSaveBar* bar_ = nullptr;
    QTabWidget* tabs_ = nullptr;
    TrainLine* train_ = nullptr;
    QTableView* historyView_ = nullptr;
    QBoxLayout* sides_ = nullptr;
    QStackedWidget* right_ = nullptr;
    QLabel *title_ = nullptr, *counts_ = nullptr, *older_ = nullptr, *blindWord_ = nullptr;
    QStandardItemModel *blind_ = nullptr, *history_ = nullptr, *changes_ = nullptr;
    std::map<std::string, QAction*> actions_;
};

}  // namespace fettle
