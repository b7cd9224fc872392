// Why: what has to be known before the first run: method, rotor, grade, how angles are counted, planes with
// their radii and places, sensors. Everything is optional that the arithmetic can do without, and the field
// says what is lost. Thread: the window's.
#pragma once

#include <QScrollArea>
#include <vector>

#include "core/fleet/balance_desk.h"
#include "ui/dialogs/balance_model.h"
#include "ui/theme/theme.h"

class QComboBox;
class QFormLayout;
class QGroupBox;
class QLabel;
class QLineEdit;

namespace fettle {

class BalanceField;

class BalanceRotorStep : public QScrollArea {
    Q_OBJECT
  public:
    BalanceRotorStep(BalanceModel& model, const Theme& theme, QWidget* parent);
    // Channels to be tied to sensors, coefficients of earlier jobs, the other component's proposal.
    void setDesk(const BalanceDesk& desk);

  private:
    struct PlaneFields {
        QGroupBox* box = nullptr;
        QLineEdit *name = nullptr, *taken = nullptr, *existing = nullptr;
        QLabel *takenNote = nullptr, *existingNote = nullptr, *advice = nullptr;
        BalanceField *radius = nullptr, *fromCentre = nullptr, *count = nullptr, *first = nullptr;
        BalanceField *most = nullptr, *step = nullptr;
    };
    struct SensorFields {
        QGroupBox* box = nullptr;
        QLineEdit* name = nullptr;
        QComboBox* channel = nullptr;
        BalanceField* degrees = nullptr;
    };
    QComboBox* choice(QFormLayout* form, const QString& title, const char* name,
                      const std::vector<QString>& texts, const QString& help,
                      std::function<void(BalanceJob&, int)> chosen);
    QLineEdit* line(QFormLayout* form, const QString& title, const QString& name, const QString& help,
                    std::function<void(BalanceJob&, const std::string&)> typed);
    BalanceField* number(QFormLayout* form, const QString& title, const QString& name, const QString& unit,
                         double least, double most,
                         std::function<void(BalanceJob&, std::optional<double>)> typed);
    void buildMethod(QFormLayout* form);
    void buildRotor(QFormLayout* form);
    PlaneFields buildPlane(std::size_t p);
    void buildPlaces(QFormLayout* form, std::size_t p, PlaneFields& fields);
    SensorFields buildSensor(std::size_t s);
    void showValues();
    void showPlane(std::size_t p);
    void showSensor(std::size_t s);
    void showNotes();
    void chooseComponent(int index);
    void chooseSaved(int index);
    void fillSaved();

    BalanceModel& model_;
    const Theme& theme_;
    BalanceDesk desk_;
    QWidget* page_;
    QComboBox *method_, *component_, *places_, *phase_, *left_, *turns_, *grade_, *unit_, *saved_;
    QLineEdit* seen_;
    QLabel *savedNote_, *permissible_;
    BalanceField *mass_, *speed_;
    std::vector<PlaneFields> planes_;
    std::vector<SensorFields> sensors_;
};

}  // namespace fettle
