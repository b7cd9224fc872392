// Why: what was done to a machine stands beside its trends: greased (grams and type), repaired, cleaned, a
// node moved, a remark, with photographs. A dated event of one machine; intake and baselines read some kinds
// of them. What was said wrongly is not rewritten: a correction is a new note about it. Thread: the window's.
#pragma once

#include <QStringList>
#include <QTimeZone>
#include <optional>
#include <vector>

#include "core/fleet/planner_return.h"
#include "ui/dialogs/answer_dialog.h"
#include "ui/work/fleet_work.h"

class QComboBox;
class QDateTimeEdit;
class QDoubleSpinBox;
class QLineEdit;
class QPlainTextEdit;

namespace fettle {

class PhotoStrip;

class EventDialog : public AnswerDialog {
    Q_OBJECT
  public:
    // `time`: preset moment, shown and typed by the clock of `zone`.
    EventDialog(FleetWork& work, const Theme& theme, const QString& machine, Instant time,
                const QTimeZone& zone, QWidget* parent);
    void setPlaces(const QStringList& places);
    // What was typed before and refused.
    void setEvent(const Event& event, std::vector<NewPhoto> photos = {});
    void setCorrected(const Event& of);  // a note about that one

  signals:
    void given(const fettle::Event& event, const std::vector<fettle::NewPhoto>& photos);

  private:
    void addFields();
    void check();
    QString kind() const;
    std::string words() const;
    void setTime(Instant time);
    Event event() const;

    QString machine_;
    QTimeZone zone_;
    std::optional<Event> corrected_;
    QComboBox *kind_, *at_;
    QDateTimeEdit* time_;
    QDoubleSpinBox* grams_;
    QLineEdit* grease_;
    QPlainTextEdit* text_;
    PhotoStrip* photos_;
};

}  // namespace fettle
