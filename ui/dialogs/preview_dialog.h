// Why: before recordings come in, what each was taken for is shown, with where every fact came from; what is
// wrong or missing is typed once and kept as a rule for all files like it. Nothing is stored but rules until
// "Take in" is pressed. Hundreds of files stand together by kind. Reads on a connection of its own, so that
// the window stays free. Thread: the window's.
#pragma once

#include <QDialog>
#include <memory>

#include "ui/dialogs/preview_models.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"
#include "ui/work/long_work.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QProgressBar;
class QPushButton;
class QTableView;

namespace fettle {

class OutlineView;

class PreviewDialog : public QDialog {
    Q_OBJECT
  public:
    PreviewDialog(FleetWork& work, const Theme& theme, QStringList paths, bool subfolders, QWidget* parent);

    bool reading() const { return long_->running(); }

  signals:
    void takeWanted(const QStringList& paths, bool subfolders);

  private:
    void build();
    QWidget* groupSide();
    QWidget* factSide();
    void read();
    void show(const Result<Preview>& preview);
    void showGroup();
    void showPattern();
    void countMatches();
    void keepRule();
    void tellState();

    FleetWork& work_;
    const Theme& theme_;
    QStringList paths_;
    bool subfolders_;
    PreviewPtr preview_;
    PreviewGroupModel groups_;
    PreviewFactModel facts_;
    QLabel *word_, *detail_, *matches_;
    QProgressBar* bar_;
    QTableView *groupTable_, *factTable_;
    QComboBox* reach_;
    QLineEdit* pattern_;
    QPushButton *stop_, *keep_, *rules_, *take_;
    OutlineView* outline_;
    std::unique_ptr<LongWork> long_;  // last: stops before what it reports to is gone
};

}  // namespace fettle
