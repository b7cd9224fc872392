// Why: the steps of a balancing ask for many numbers, each with its unit, its range and its reason of refusal
// beside it. A number typed with the locale's decimal mark or a point is taken; what is none, or out of
// range, is not, and the field says so. Empty is a value: not known. Thread: the window's.
#pragma once

#include <QWidget>
#include <optional>

#include "ui/theme/theme.h"

class QLabel;
class QLineEdit;

namespace fettle {

struct NumberRange {
    double least = 0, most = 0;
};

class BalanceField : public QWidget {
    Q_OBJECT
  public:
    // `name`: object name of the line edit. `unit` may be empty.
    BalanceField(const Theme& theme, const QString& name, const QString& title, const QString& unit,
                 NumberRange range, QWidget* parent = nullptr);

    void setValue(std::optional<double> value);  // not while it holds the same number
    std::optional<double> value() const;         // what was taken last
    void setUnit(const QString& unit);
    void setReadOnly(bool readOnly);
    void setLetters(int letters);  // its width
    // Why it is wanting or doubtful; shown unless the text itself is refused.
    void setNote(const QString& words, bool trouble);
    QLineEdit* edit() { return edit_; }

  signals:
    void edited(std::optional<double> value);

  private:
    void read();
    void showNote();
    QString text(double value) const;

    const Theme& theme_;
    NumberRange range_;
    QLineEdit* edit_;
    QLabel *unit_, *note_;
    std::optional<double> value_;
    QString refusal_, words_;
    bool trouble_ = false;
};

}  // namespace fettle
