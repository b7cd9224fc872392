// Why: what was done to a machine stands beside its trends: greased, repaired, cleaned, a node moved, a
// remark. A dated event of one machine; intake and baselines read some kinds of them. Thread: the window's.
#pragma once

#include <QStringList>

#include "core/store/log_store.h"
#include "ui/dialogs/answer_dialog.h"

class QComboBox;
class QDateTimeEdit;
class QPlainTextEdit;

namespace fettle {

class EventDialog : public AnswerDialog {
    Q_OBJECT
  public:
    // `places` in the `at` grammar of the machine; `time`: preset moment, UTC.
    EventDialog(const Theme& theme, const QString& machine, const QStringList& places, Instant time,
                QWidget* parent);
    void setPlaces(const QStringList& places);
    void setEvent(const Event& event);  // what was typed before and refused

  signals:
    void given(const fettle::Event& event);

  private:
    void check();
    Event event() const;

    QString machine_;
    QComboBox *kind_, *at_;
    QDateTimeEdit* time_;
    QPlainTextEdit* text_;
};

}  // namespace fettle
