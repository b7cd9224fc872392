// Why: what a job asks in words: which findings it is for and by when, what happened to it next, what a
// revision changes. Each is one small dialog, filled in beforehand; none touches the fleet file. Thread: the
// window's.
#pragma once

#include "core/fleet/job_desk.h"
#include "ui/dialogs/answer_dialog.h"

class QComboBox;
class QDateEdit;
class QLineEdit;
class QListWidget;
class QPlainTextEdit;

namespace fettle {

class OptionalDate;

// The fields that a draft, a step and a revision share.
class JobFields : public QObject {
    Q_OBJECT
  public:
    explicit JobFields(QWidget* parent);
    void show(const Job& job);
    // Only what differs from `before`.
    void read(const Job& before, JobMove& move) const;
    void show(const JobMove& move);  // what it changes; the rest stays

    QLineEdit* workOrder;
    OptionalDate *orderPartsBy, *runUntil, *plannedStop;
    QPlainTextEdit* text;
};

// A job for chosen findings of the week: dates and urgency follow from them and can be changed.
class JobDraftDialog : public AnswerDialog {
    Q_OBJECT
  public:
    JobDraftDialog(const Theme& theme, const JobDraft& draft, QWidget* parent);

    std::vector<std::size_t> numbers() const;  // of the findings chosen, from 1
    // As it was left by an answer that could not be kept.
    void setAnswer(const std::vector<std::size_t>& numbers, const JobMove& move);

  signals:
    void drafted(const fettle::Job& job, const fettle::JobMove& move);

  private:
    void check();
    void chooseAgain();

    JobDraft draft_;
    QListWidget* findings_;
    JobFields* fields_;
    Job job_;
};

// The next step of a job, or its revision.
class JobMoveDialog : public AnswerDialog {
    Q_OBJECT
  public:
    enum class What { Step, Revision };
    JobMoveDialog(const Theme& theme, const Job& job, What what, QWidget* parent);

  signals:
    void moved(const fettle::JobMove& move);

  private:
    void addStep();
    void check();
    bool isDone() const;
    JobMove move() const;

    Job job_;
    What what_;
    QComboBox *state_ = nullptr, *kind_ = nullptr;
    QDateEdit* on_ = nullptr;
    JobFields* fields_;
};

}  // namespace fettle
