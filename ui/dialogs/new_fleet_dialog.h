// Why: a new fleet file needs a place, the site's name and its time zone: rounds run by that zone's calendar.
// Thread: the window's.
#pragma once

#include "core/store/fleet_file.h"
#include "ui/dialogs/answer_dialog.h"

class QComboBox;
class QLineEdit;

namespace fettle {

class NewFleetDialog : public AnswerDialog {
    Q_OBJECT
  public:
    NewFleetDialog(const Theme& theme, const QString& folder, QWidget* parent);

  signals:
    void wanted(const QString& path, const fettle::SiteSettings& site);

  private:
    void check();
    void browse();
    QString path() const;

    QString folder_;
    QLineEdit *site_, *path_;
    QComboBox* zone_;
    bool pathTyped_ = false;
};

}  // namespace fettle
