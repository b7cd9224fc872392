// Why: what the machine is: one line of text with tag, service and nameplate, and below it the train drawn as
// symbols (train_line.h), in which bearings and measuring points can be picked by mouse and keyboard. The
// whole is also told as text for screen readers, from parts that a test can read. Thread: the window's.
#pragma once

#include <QWidget>
#include <memory>
#include <vector>

#include "core/machine/machine.h"
#include "ui/theme/theme.h"

class QLabel;

namespace fettle {

class TrainLine;

struct NameplatePart {
    enum Kind { Text, Bearing, Point } kind = Text;
    QString text;
    QString key;  // of a bearing its place ("driver DE"), of a point its id
};

std::vector<NameplatePart> nameplateParts(const Machine& machine);

class NameplateLine : public QWidget {
    Q_OBJECT
  public:
    NameplateLine(const Theme& theme, QWidget* parent);

    void setMachine(std::shared_ptr<const Machine> machine);
    void setChosen(const QString& bearing, const QString& point);
    const std::vector<NameplatePart>& parts() const { return parts_; }

  signals:
    void bearingPicked(const QString& at);
    void pointPicked(const QString& id);
    void componentPicked(const QString& name);

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    void write();

    QLabel* words_;
    TrainLine* train_;
    const Theme& theme_;
    std::shared_ptr<const Machine> machine_;
    std::vector<NameplatePart> parts_;
};

}  // namespace fettle
