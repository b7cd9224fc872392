// Why: a fleet file is opened or made off the window's thread: a file on a slow disk, a migration or a lock
// held by another program must not freeze the window. Parses into new objects and hands them over whole; the
// old fleet stays until the new one is there. Thread: the window's; `then` is called there, and never after
// the door is gone.
#pragma once

#include <QObject>
#include <functional>
#include <memory>
#include <string>

#include "core/store/fleet_file.h"

namespace fettle {

class FleetDoor : public QObject {
    Q_OBJECT
  public:
    using Opened = Result<std::unique_ptr<FleetFile>>;
    using QObject::QObject;

    void open(const std::string& path, std::function<void(Opened)> then);
    void create(const std::string& path, const SiteSettings& site, std::function<void(Opened)> then);
    bool busy() const { return busy_ > 0; }

  private:
    void run(std::function<Opened()> job, std::function<void(Opened)> then);
    int busy_ = 0;
};

}  // namespace fettle
