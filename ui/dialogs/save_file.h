// Why: whatever a dialog saves goes the same way: asked where, never over the fleet file or a part of it,
// written whole or not at all by a worker, so that a slow disk does not hold up the window. Thread: the
// window's.
#pragma once

#include <QString>
#include <functional>
#include <string>

#include "ui/work/fleet_work.h"

class QWidget;

namespace fettle {

struct SaveQuestion {
    QString title, filter, suffix;  // "PDF (*.pdf)", "pdf"
    std::string name;               // suggested, without its ending
};
void askWhereToSave(QWidget* parent, const SaveQuestion& question, std::function<void(QString path)> chosen);

// `done` gets a sentence about what went wrong; empty: it is written.
void saveFile(FleetWork& work, QObject* receiver, const QString& path, std::string bytes,
              std::function<void(QString trouble)> done);

}  // namespace fettle
