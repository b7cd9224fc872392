// Why: the page an engineer opens first on Monday: what needs something, in order, and what is still to be
// decided before the round may be closed. Reads the round on a worker and shows it; decisions are shown at
// once and written behind; where writing fails the page says so and reads again. What needs words or a date
// is asked elsewhere (signals), then handed to `decide` and `answerUnseen`. Thread: the window's.
#pragma once

#include <QAction>
#include <QLabel>
#include <QWidget>
#include <map>
#include <optional>

#include "ui/model/ledger_model.h"
#include "ui/model/selection.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QPushButton;
class QStackedWidget;

namespace fettle {

class RoundHeading;
class RoundFilters;
class RoundLedger;

class RoundPage : public QWidget {
    Q_OBJECT
  public:
    RoundPage(FleetWork& work, Selection& selection, const Theme& theme, QWidget* parent = nullptr);

    void showRound(std::optional<std::int64_t> id);  // empty: the open one, else the last, else a draft
    const RoundShown& round() const { return model_.round(); }
    const LedgerModel& model() const { return model_; }
    bool loading() const { return loading_; }
    QString currentTag() const { return QString::fromStdString(current()); }  // empty: no machine's line

    // Of the open round; name and time are set here. Several are written together.
    void decide(std::vector<Decision> decisions);
    void answerUnseen(const QStringList& machines, const QString& reason);
    void acceptLeave();
    void look(const QString& tag);  // to the machine page; counts as opened where it is of the sample
    void goToNextUndecided();
    void undo();                    // takes the last step of decisions back: what held before holds again
    void goTo(const QString& tag);  // in the ledger, whatever the filter; else to its page

  signals:
    void machineWanted(const QString& tag);
    void reasonWanted(const QStringList& tags, fettle::DecisionKind kind);  // dispute, defer; one for all
    void unseenReasonWanted(const QStringList& tags);
    void startWanted();  // open a round
    void closeWanted();
    void importWanted();
    void registerWanted();
    void said(const QString& sentence);
    void troubled(const QString& sentence);
    void roundShown();  // a round was read and is shown

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    QAction* add(const char* id, void (RoundPage::*slot)());
    void build();
    QWidget* foot();
    void read();
    void take(Result<RoundShown> round);
    void sayEmpty();
    void written(const Status& status);
    void setState(RoundState state);
    void refreshActions();
    std::string current() const;
    const RoundMachine* currentMachine() const;
    std::vector<const RoundMachine*> chosenMachines() const;  // selected ones, else the current
    std::optional<std::int64_t> openRoundId() const;

    void lookAtCurrent();
    void acceptCurrent();
    void disputeCurrent();
    void deferCurrent();
    void askReasonFor(DecisionKind kind);
    void answerCurrent();
    void foldCurrent();
    void find();
    void visitBefore();
    void stepOrder();
    void turnOrder();
    void stepGrouping();
    void showOlder();
    void showNewer();
    void keepLast(const std::vector<Decision>& decisions);
    void put(std::vector<Decision> decisions);
    void setOrder(LedgerModel::Order order, bool backwards);
    void setGrouping(LedgerModel::Grouping grouping);
    void connectParts();
    void buildEmpty();

    FleetWork& work_;
    Selection& selection_;
    const Theme& theme_;
    LedgerModel model_;
    RoundHeading* heading_ = nullptr;
    RoundLedger* ledger_ = nullptr;
    QStackedWidget* middle_ = nullptr;
    QWidget* nothing_ = nullptr;
    QLabel *empty_ = nullptr, *detail_ = nullptr;
    QWidget* foot_ = nullptr;
    QPushButton *start_ = nullptr, *close_ = nullptr, *emptyImport_ = nullptr, *emptyRegister_ = nullptr;
    std::map<std::string, QAction*> actions_;
    std::optional<std::int64_t> wanted_;
    // What held before each step of decisions of this round; an empty one is undecided.
    struct Held {
        std::string machine;
        std::optional<Decision> before;
    };
    std::vector<std::vector<Held>> steps_;
    std::int64_t stepsOf_ = 0;
    bool loading_ = false;
};

}  // namespace fettle
