// Why: the head of the round page: site and period, what the list promises, how far the round is, what came
// in late or is due again, and the filters. Shows a RoundShown; emits which round or filter is wanted.
// Thread: the window's.
#pragma once

#include <QWidget>
#include <optional>

#include "ui/model/ledger_model.h"
#include "ui/theme/theme.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QCheckBox;

namespace fettle {

class RoundHeading : public QWidget {
    Q_OBJECT
  public:
    RoundHeading(const Theme& theme, QWidget* parent = nullptr);

    void show(const LedgerModel& model);
    void say(const QString& word, bool trouble);  // instead of the promise
    void focusFilter();
    void clearFilter();

  signals:
    void filterChanged(const LedgerFilter& filter);
    void roundWanted(std::optional<std::int64_t> id);

  private:
    void nameParts();
    void arrange();
    void dress();
    void fillRounds(const RoundShown& round);
    void fillAreas(const QStringList& areas);
    LedgerFilter filter() const;

    const Theme& theme_;
    QLabel *title_, *period_, *promise_, *progress_, *notices_;
    QComboBox *rounds_, *area_;
    QLineEdit* text_;
    QCheckBox* undecided_;
    bool trouble_ = false;
};

QString periodText(const RoundShown& round);
QString progressText(const RoundShown& round);
QString noticesText(const RoundShown& round);

}  // namespace fettle
