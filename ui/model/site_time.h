// Why: the week's job runs by the site's clock, and what is kept is UTC: moments are shown by the site's
// clock with how far that is from UTC beside them, so that nobody has to guess which is meant. The zone is
// the fleet file's, an IANA name; one that this computer's Qt does not know is shown as UTC. Thread: any.
#pragma once

#include <QString>
#include <QTimeZone>
#include <string>

#include "core/base/time.h"

namespace fettle {

QTimeZone siteZone(const std::string& name);
QDateTime siteTime(Instant time, const QTimeZone& zone);
QString zoneMark(const QDateTime& time);                       // "UTC", "UTC+1", "UTC\u22123:30"
QString momentFormat();                                        // of fields, without the zone
QString momentText(Instant time, const QTimeZone& zone);       // "10 May 2026 07:20 UTC+1"
QString shortMomentText(Instant time, const QTimeZone& zone);  // "2026-05-10 07:20 UTC+1"

}  // namespace fettle
