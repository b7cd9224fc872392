// Why: what intake refused stays on a list until somebody has answered it, so that a file that never came in
// is not forgotten. Thread: the window's.
#pragma once

#include <QDialog>

#include "ui/model/refusal_model.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QCheckBox;
class QLabel;
class QPushButton;
class QTableView;

namespace fettle {

class RefusalsDialog : public QDialog {
    Q_OBJECT
  public:
    RefusalsDialog(FleetWork& work, const Theme& theme, QWidget* parent);

  signals:
    void lookWanted(const QStringList& paths);  // what were these taken for?

  private:
    void read();
    void look();
    void answerCurrent();
    void tellWhole(int row);

    FleetWork& work_;
    RefusalModel refusals_;
    QLabel *word_, *detail_;
    QCheckBox* answeredToo_;
    QTableView* table_;
    QPushButton *answer_, *look_;
};

}  // namespace fettle
