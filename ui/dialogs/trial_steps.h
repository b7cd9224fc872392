// Why: the two questions of a running trial: when was the change made, and is the trial over. Thread: the
// window's.
#pragma once

#include <QTimeZone>

#include "core/base/time.h"
#include "ui/dialogs/answer_dialog.h"

class QDateTimeEdit;
class QPlainTextEdit;

namespace fettle {

class TrialChangeDialog : public AnswerDialog {
    Q_OBJECT
  public:
    // Moments are shown and typed by the clock of `zone`.
    TrialChangeDialog(const Theme& theme, Instant from, Instant until, const QTimeZone& zone,
                      QWidget* parent);

  signals:
    void told(fettle::Instant from, fettle::Instant until);

  private:
    void check();

    QTimeZone zone_;
    QDateTimeEdit *from_, *until_;
};

class TrialCloseDialog : public AnswerDialog {
    Q_OBJECT
  public:
    TrialCloseDialog(const Theme& theme, const QString& verdict, Instant until, const QTimeZone& zone,
                     QWidget* parent);

  signals:
    void told(fettle::Instant until, const QString& remarks);

  private:
    QTimeZone zone_;
    QDateTimeEdit* until_;
    QPlainTextEdit* remarks_;
};

}  // namespace fettle
