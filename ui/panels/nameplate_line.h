// Why: what the machine is, in one line of text and signs from driver to driven: nameplate, bearings (open
// ring), measuring points (triangle), coupling, gears and belts. Bearings and points can be picked by mouse
// and keyboard. The parts are data that a test can read. Thread: the window's.
#pragma once

#include <QLabel>
#include <memory>
#include <vector>

#include "core/machine/machine.h"
#include "ui/theme/theme.h"

namespace fettle {

struct NameplatePart {
    enum Kind { Text, Bearing, Point } kind = Text;
    QString text;
    QString key;  // of a bearing its place ("driver DE"), of a point its id
};

std::vector<NameplatePart> nameplateParts(const Machine& machine);

class NameplateLine : public QLabel {
    Q_OBJECT
  public:
    NameplateLine(const Theme& theme, QWidget* parent);

    void setMachine(std::shared_ptr<const Machine> machine);
    void setChosen(const QString& bearing, const QString& point);
    const std::vector<NameplatePart>& parts() const { return parts_; }

  signals:
    void bearingPicked(const QString& at);
    void pointPicked(const QString& id);

  private:
    void write();

    const Theme& theme_;
    std::shared_ptr<const Machine> machine_;
    std::vector<NameplatePart> parts_;
    QString bearing_, point_;
};

}  // namespace fettle
