// Why: all that is asked for over the fleet, of the nodes and on the walk with the hand instrument, in the
// order of the walk: answered or dropped by hand, printed as a leaf to walk with, written as CSV or JSON.
// What a recording answers is answered by itself when it comes in. Opened with open(); deletes itself when
// closed. Thread: the window's. Errors: a sentence under the list.
#pragma once

#include <QDialog>

#include "ui/model/ask_model.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QCheckBox;
class QLabel;
class QLineEdit;
class QPushButton;
class QTableView;

namespace fettle {

class AsksDialog : public QDialog {
    Q_OBJECT
  public:
    AsksDialog(FleetWork& work, const Theme& theme, const Units& units, QWidget* parent);

    void save(const QString& path, std::string bytes);

  signals:
    void saved(const QString& path);

  private:
    void build(const Theme& theme);
    QPushButton* button(const QString& text, const char* name, const QString& help);
    void buildFoot();
    void read();
    void fitColumns();
    void showCurrent();
    void close(const std::string& outcome);
    void askAndSave(const QString& filter, const QString& suffix, std::string bytes);
    void print();
    std::string jsonText() const;

    FleetWork& work_;
    Units units_;
    AskModel asks_;
    std::string site_;
    QLabel *word_, *detail_;
    QCheckBox* answeredToo_;
    QLineEdit* note_;
    QTableView* table_;
    QPushButton *answered_, *dropped_, *print_, *csv_, *json_;
};

}  // namespace fettle
