// Why: where alerts are sent: the mail server, where its password lies (never the password), addresses, a
// program to run, quiet hours and the digest. A test message goes out off the window's thread with a
// connection of its own. Saving allows this user on this computer to send. Thread: the window's.
#pragma once

#include <QWidget>

#include "core/fleet/alert_ways.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"
#include "ui/work/long_work.h"

class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QPushButton;
class QSpinBox;
class QTimeEdit;

namespace fettle {

class AlertDeliveryForm : public QWidget {
    Q_OBJECT
  public:
    AlertDeliveryForm(FleetWork& work, const Theme& theme, QWidget* parent);

    Result<AlertWays> ways() const;  // as typed
    void setWays(const AlertWays& ways);
    void save();
    void sendTest();

  private:
    void build(const Theme& theme);
    void buildMail(QFormLayout& form);
    void buildRest(QFormLayout& form);
    void read();
    void fieldChanged();
    Result<SecretPlace> place() const;
    Status setMail(AlertWays& ways) const;
    void setPlace(const SecretPlace& place);

    FleetWork& work_;
    LongWork sending_;
    QLabel *word_, *state_;
    QLineEdit *server_, *user_, *place_, *ca_, *from_, *to_, *program_;
    QComboBox *security_, *placeKind_;
    QSpinBox *port_, *perHour_, *seconds_;
    QPlainTextEdit* arguments_;
    QTimeEdit *quietFrom_, *quietTo_, *digest_;
    QPushButton *save_, *test_;
    std::string read_;  // as the fleet file had it last
    bool filling_ = false;
    AlertWays stored_;  // as kept, with what has no field
};

}  // namespace fettle
