// Why: a number that need not be given: a field that is empty says so, and shows in grey what holds then,
// instead of a number that nobody typed. The least value of its range stands for "not given". Units: its
// suffix, shown beside a number alone. Thread: the window's.
#pragma once

#include <QDoubleSpinBox>
#include <optional>

namespace fettle {

class GivenNumber : public QDoubleSpinBox {
    Q_OBJECT
  public:
    explicit GivenNumber(QWidget* parent = nullptr);

    std::optional<double> given() const;
    void setGiven(std::optional<double> value);
    // `otherwise`: what holds where nothing is given.
    void setWords(const QString& unit, const QString& otherwise);

    QString textFromValue(double value) const override;
    double valueFromText(const QString& text) const override;
    QValidator::State validate(QString& text, int& at) const override;

  private:
    bool isEmpty(QString text) const;
    void showUnit();

    QString unit_;
};

}  // namespace fettle
