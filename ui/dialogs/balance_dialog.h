// Why: a rotor is balanced in steps, and everything typed in any of them stays open to change: cautions
// first, then rotor and method, runs, masses, the printed record; beside them, always, the rotor with the way
// its angles are counted and the arrows of the runs. Jobs are kept in the fleet file and opened again; a
// closed one does not change and leaves its coefficients to later ones. Opened with open(); deletes itself
// when closed; what was not kept is asked about. Thread: the window's; reading and writing on workers.
// Errors: a sentence above the buttons.
#pragma once

#include <QDialog>
#include <QPointer>

#include "core/fleet/balance_desk.h"
#include "ui/dialogs/balance_model.h"
#include "ui/model/units.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QBoxLayout;
class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;
class QStackedWidget;

namespace fettle {

class BalanceRotorStep;
class BalanceRunsStep;
class PagePreview;
class PolarDrawing;
class RotorDrawing;

class BalanceDialog : public QDialog {
    Q_OBJECT
  public:
    BalanceDialog(FleetWork& work, const Theme& theme, const QString& machine, const Units& units,
                  QWidget* parent);

    BalanceModel& model() { return model_; }
    void goToStep(int step);                    // 0 cautions, 1 rotor, 2 runs, 3 masses, 4 record
    void keep(bool close, bool leave = false);  // leaves once it is kept
    void savePdf(const QString& path);
    void reject() override;

  signals:
    void said(const QString& sentence);

  private:
    void build();
    QWidget* buildHead();
    QWidget* buildCautions();
    QWidget* buildDrawings();
    QWidget* buildButtons();
    void read();
    void take(BalanceDesk desk);
    void fillKept();
    void openKept(int index);
    void startNew();
    void showAll();
    void showDrawings();
    void showRecord();
    void say(const QString& trouble);
    void askClose();
    void print();

    FleetWork& work_;
    const Theme& theme_;
    QString machine_;
    Units units_;
    BalanceModel model_;
    BalanceDesk desk_;
    bool writing_ = false;
    std::int64_t id_ = 0;  // of the kept job; 0: not kept yet
    QListWidget* steps_ = nullptr;
    QStackedWidget* pages_ = nullptr;
    QComboBox* jobs_ = nullptr;
    QLineEdit *name_ = nullptr, *note_ = nullptr;
    QCheckBox* read_ = nullptr;
    BalanceRotorStep* rotor_ = nullptr;
    BalanceRunsStep* runs_ = nullptr;
    PagePreview* preview_ = nullptr;
    std::vector<RotorDrawing*> rotors_;
    std::vector<PolarDrawing*> polars_;
    QWidget* drawings_ = nullptr;
    QLabel *state_ = nullptr, *trouble_ = nullptr;
    QPushButton *keep_ = nullptr, *close_ = nullptr, *save_ = nullptr, *print_ = nullptr, *back_ = nullptr,
                *next_ = nullptr;
};

}  // namespace fettle
