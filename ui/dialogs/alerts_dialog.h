// Why: what turned bad between two rounds: the list, acknowledged and opened from the keyboard; beside it the
// rules that raise alerts and where alerts are sent. Opened with open(); deletes itself when closed. Thread:
// the window's; rules are asked and mails sent off it, and closing stops both. Errors: a sentence above the
// list.
#pragma once

#include <QDialog>
#include <QTabWidget>

#include "ui/model/alert_model.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"
#include "ui/work/long_work.h"

class QCheckBox;
class QLabel;
class QLineEdit;
class QPushButton;
class QTableView;

namespace fettle {

class AlertsDialog : public QDialog {
    Q_OBJECT
  public:
    AlertsDialog(FleetWork& work, const Theme& theme, QWidget* parent);

    void acknowledge();  // the chosen one, with what is typed
    void checkNow();     // asks every rule of every machine

  signals:
    void machineWanted(const QString& tag, const QString& at, const QString& fault);

  private:
    QWidget* buildList(const Theme& theme);
    QWidget* buildFoot();
    QPushButton* button(const QString& text, const char* name, const QString& help);
    void read();
    void choose(std::int64_t id);
    void showCurrent();
    void openMachine();
    const Alert* current() const;

    FleetWork& work_;
    LongWork checking_;
    AlertModel alerts_;
    QTabWidget* tabs_;
    QLabel *word_, *detail_;
    QCheckBox* clearedToo_;
    QLineEdit* why_;
    QTableView* table_;
    QPushButton *acknowledge_ = nullptr, *open_ = nullptr, *check_ = nullptr;
};

}  // namespace fettle
