// Why: the sheets of a round in one go: which machines, one PDF or a folder of them, and how far it is. What
// asks for work is chosen to begin with; disputed and put-off entries are not. All of it by keyboard. Opened
// with open(); deletes itself when closed. Thread: the window's.
#pragma once

#include <QDialog>

#include "ui/dialogs/sheets_run.h"
#include "ui/model/round_shown.h"
#include "ui/theme/theme.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QListWidget;
class QProgressBar;
class QPushButton;

namespace fettle {

class SheetsDialog : public QDialog {
    Q_OBJECT
  public:
    SheetsDialog(FleetWork& work, const Theme& theme, const RoundShown& round, const Units& units,
                 QWidget* parent);

    QStringList chosen() const;

  signals:
    void made(int sheets, const QString& path);

  private:
    void build();
    QWidget* buildWhere();
    void fill(const RoundShown& round);
    void check();
    void askPath();
    void suggestPath();
    void make();
    void ended(int made, const QString& trouble);
    void choose(bool all);

    SheetsRun* run_;
    std::shared_ptr<const RoundList> list_;
    std::optional<std::int64_t> round_;
    Units units_;
    QListWidget* machines_;
    QComboBox *how_, *paper_;
    QLineEdit* path_;
    QCheckBox* csv_;
    QProgressBar* progress_;
    QLabel* word_;
    QPushButton *make_ = nullptr, *stop_ = nullptr;
};

}  // namespace fettle
