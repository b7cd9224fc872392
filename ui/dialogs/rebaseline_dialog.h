// Why: after an alteration that is meant to stay (another speed, a new base, a new sensor) the old baseline
// misleads. A new one is begun with a reason, and what that does is said before it is done. Thread: the
// window's.
#pragma once

#include <QTimeZone>

#include "core/store/log_store.h"
#include "ui/dialogs/answer_dialog.h"

class QDateTimeEdit;
class QPlainTextEdit;

namespace fettle {

class RebaselineDialog : public AnswerDialog {
    Q_OBJECT
  public:
    RebaselineDialog(const Theme& theme, const QString& machine, Instant time, const QTimeZone& zone,
                     QWidget* parent);

  signals:
    void given(const fettle::Event& event);

  private:
    void check();

    QString machine_;
    QTimeZone zone_;
    QDateTimeEdit* time_;
    QPlainTextEdit* reason_;
};

}  // namespace fettle
