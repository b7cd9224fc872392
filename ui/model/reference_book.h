// Why: the recording a machine's spectra are held against is chosen once and wanted again next week: kept
// with the user's settings (what one compares with is a habit of looking, and a fleet file may be open for
// reading only), one a fleet file, machine and point. Time stands beside the number, so that a recording of
// another file at the same place is not taken for it. Without settings it lasts as long as the object.
// Thread: the window's.
#pragma once

#include <QPointer>
#include <QSettings>
#include <QString>
#include <map>
#include <optional>

#include "core/base/time.h"

namespace fettle {

struct KeptReference {
    std::int64_t recording = 0;
    Instant time{};
    bool operator==(const KeptReference&) const = default;
};

class ReferenceBook {
  public:
    ReferenceBook() = default;
    ReferenceBook(QSettings* settings, const QString& fleetPath);

    std::optional<KeptReference> of(const QString& machine, const QString& point) const;
    void keep(const QString& machine, const QString& point, const KeptReference& reference);
    void remove(const QString& machine, const QString& point);

  private:
    QString key(const QString& machine, const QString& point) const;

    QPointer<QSettings> settings_;
    QString fleet_;
    std::map<QString, KeptReference> unkept_;  // where there are no settings
};

}  // namespace fettle
