// Why: what a round asks in words: why a machine is disputed or put off and to when, why an unseen one is
// unseen, up to which day a round goes, and whether to close. Each is one small dialog; none touches the
// fleet file. Thread: the window's.
#pragma once

#include <QDate>
#include <QStringList>

#include "core/round/round.h"
#include "ui/dialogs/answer_dialog.h"
#include "ui/model/units.h"

class QComboBox;
class QDateEdit;
class QLineEdit;
class QPlainTextEdit;

namespace fettle {

// Dispute (a reason) or defer (a reason and a date after the round): one answer for all of `machines`.
class DecisionDialog : public AnswerDialog {
    Q_OBJECT
  public:
    // At least one machine.
    DecisionDialog(const Theme& theme, const std::vector<RoundMachine>& machines, DecisionKind kind,
                   const QDate& earliest, const Units& units, QWidget* parent);

  signals:
    void decided(const std::vector<fettle::Decision>& decisions);

  private:
    void check();
    std::vector<Decision> decisions() const;

    std::vector<std::string> machines_;
    DecisionKind kind_;
    QDate earliest_;
    QPlainTextEdit* reason_;
    QDateEdit* date_ = nullptr;
};

// The reason why machines were not seen, confirmed or corrected; one reason for several of them.
class UnseenDialog : public AnswerDialog {
    Q_OBJECT
  public:
    // At least one.
    UnseenDialog(const Theme& theme, const std::vector<RoundMachine>& machines, QWidget* parent);

  signals:
    void answered(const QStringList& machines, const QString& reason);

  private:
    QStringList machines_;
    QComboBox* reason_;
    QLineEdit* words_;
};

// The last day of the round to open.
class StartRoundDialog : public AnswerDialog {
    Q_OBJECT
  public:
    StartRoundDialog(const Theme& theme, const QString& suggestedDay, QWidget* parent);

  signals:
    void dayChosen(const QString& isoDay);

  private:
    QDateEdit* day_;
};

// Says what is missing; asks for the word to close where nothing is.
class CloseRoundDialog : public AnswerDialog {
    Q_OBJECT
  public:
    CloseRoundDialog(const Theme& theme, const RoundProgress& progress, QWidget* parent);

  signals:
    void closeConfirmed();
};

}  // namespace fettle
