// Why: a machine has hundreds of quantities that can be followed (levels, measures of faults, weights); the
// few that are looked at are found by text and ticked, at most four at once. A button that says what is
// chosen; pressed, it opens a field to find by and a list to tick in: Return in the field takes the first one
// found alone, Space ticks one more. Plain data in, keys out. Thread: the window's.
#pragma once

#include <QPushButton>
#include <QStringList>
#include <vector>

class QLabel;
class QLineEdit;
class QListWidget;
class QListWidgetItem;

namespace fettle {

struct PickedQuantity {
    QString key, text, group;  // "level:velocity_rms_mm_s", "velocity r.m.s.", "levels of the channel"
};

class QuantityPicker : public QPushButton {
    Q_OBJECT
  public:
    static constexpr int kMost = 4;
    explicit QuantityPicker(QWidget* parent);

    // What there is; of what was chosen stays chosen what is among it, at least the first one.
    void setQuantities(std::vector<PickedQuantity> quantities);
    const QStringList& chosen() const { return chosen_; }
    void choose(const QStringList& keys);  // unknown ones are left out; emits where it is another choice
    QSize sizeHint() const override;

  signals:
    void chosenChanged();

  private:
    void ask();
    void fill(QListWidget& list, const QString& find) const;
    void tick(QListWidget& list) const;
    void toggle(const QString& key, bool on);
    void say();
    const PickedQuantity* known(const QString& key) const;

    std::vector<PickedQuantity> quantities_;
    QStringList chosen_, wanted_;  // wanted: kept while a machine does not have it
};

}  // namespace fettle
