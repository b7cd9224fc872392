// Why: a plant change touches many machines alike: another area, criticality, supply. One field is chosen,
// its value typed once, machines ticked; each machine keeps the description that held before. Thread: the
// window's.
#pragma once

#include <QDialog>

#include "core/store/register_store.h"
#include "ui/model/machine_document.h"
#include "ui/theme/theme.h"

class QCheckBox;
class QComboBox;
class QDateEdit;
class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;

namespace fettle {

class AlikeDialog : public QDialog {
    Q_OBJECT
  public:
    AlikeDialog(const std::vector<MachineEntry>& machines, QWidget* parent);

  signals:
    // A null value takes the key away.
    void wanted(const QStringList& tags, const std::string& pointer, const Json& value,
                const std::string& from, const std::string& note);

  private:
    void build();
    void filter(const QString& text);
    void showWords();
    void tell();
    void give();
    QStringList ticked() const;

    std::vector<FieldSpec> fields_;
    QComboBox *field_, *value_;
    QLineEdit *filter_, *note_;
    QListWidget* list_;
    QCheckBox* fromDay_;
    QDateEdit* day_;
    QLabel* word_;
    QPushButton* set_;
};

}  // namespace fettle
