#include "ui/work/fleet_door.h"

#include <QFutureWatcher>
#include <QtConcurrentRun>

namespace fettle {

void FleetDoor::open(const std::string& path, std::function<void(Opened)> then) {
    run([path] { return FleetFile::open(path); }, std::move(then));
}

void FleetDoor::create(const std::string& path, const SiteSettings& site, std::function<void(Opened)> then) {
    run([path, site] { return FleetFile::create(path, site); }, std::move(then));
}

void FleetDoor::run(std::function<Opened()> job, std::function<void(Opened)> then) {
    ++busy_;
    auto* watcher = new QFutureWatcher<std::shared_ptr<Opened>>(this);
    connect(watcher, &QFutureWatcherBase::finished, this, [this, watcher, then = std::move(then)] {
        --busy_;
        watcher->deleteLater();
        then(std::move(*watcher->result()));
    });
    watcher->setFuture(QtConcurrent::run([job = std::move(job)] { return std::make_shared<Opened>(job()); }));
}

}  // namespace fettle
