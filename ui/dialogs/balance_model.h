// Why: every value of a balancing stays editable and results follow as typed: the job as it stands, what is
// computed from it anew at each change (well under a millisecond), and the remarks that stand at a value.
// All steps of the window read and edit this one. Thread: the window's.
#pragma once

#include <QObject>
#include <QString>
#include <functional>

#include "core/workshop/balance_solve.h"

namespace fettle {

// Planes and sensors from these on that carry the names they were made with get them in the window's
// language.
void nameInLanguage(BalanceJob& job, std::size_t plane = 0, std::size_t sensor = 0);

class BalanceModel : public QObject {
    Q_OBJECT
  public:
    using QObject::QObject;

    const BalanceJob& job() const { return job_; }
    const BalanceAnswer& answer() const { return answer_; }
    bool closed() const { return closed_; }  // kept for good: shown, not edited
    bool changedSinceKept() const { return dirty_; }

    void setJob(BalanceJob job, bool closed);
    void kept() { dirty_ = false; }
    void edit(const std::function<void(BalanceJob&)>& change);  // let be where nothing differs, or closed

    // Remarks at a place of the document, or below it ("/trials/0" for "/trials/0/sensors/1") where asked.
    QString remarksAt(const std::string& place, bool below = false) const;
    bool troubleAt(const std::string& place, bool below = false) const;  // any that is more than missing

  signals:
    void jobReplaced();  // another job: all fields anew
    void changed();      // values or results

  private:
    BalanceJob job_;
    BalanceAnswer answer_;
    bool closed_ = false, dirty_ = false;
};

}  // namespace fettle
