// Why: what was done to a machine stands beside its trends: greased, repaired, cleaned, a node moved, a
// remark. A dated event of one machine; intake and baselines read some kinds of them. Thread: the window's.
#pragma once

#include <QStringList>
#include <QTimeZone>

#include "core/store/log_store.h"
#include "ui/dialogs/answer_dialog.h"

class QComboBox;
class QDateTimeEdit;
class QPlainTextEdit;

namespace fettle {

class EventDialog : public AnswerDialog {
    Q_OBJECT
  public:
    // `time`: preset moment, shown and typed by the clock of `zone`.
    EventDialog(const Theme& theme, const QString& machine, Instant time, const QTimeZone& zone,
                QWidget* parent);
    void setPlaces(const QStringList& places);
    void setEvent(const Event& event);  // what was typed before and refused

  signals:
    void given(const fettle::Event& event);

  private:
    void check();
    void setTime(Instant time);
    Event event() const;

    QString machine_;
    QTimeZone zone_;
    QComboBox *kind_, *at_;
    QDateTimeEdit* time_;
    QPlainTextEdit* text_;
};

}  // namespace fettle
