#include "ui/model/site_time.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QLocale>
#include <cstdlib>

namespace fettle {

namespace {

QString marked(Instant time, const QTimeZone& zone, const QString& format) {
    const QDateTime there = siteTime(time, zone);
    return QStringLiteral("%1 %2").arg(QLocale().toString(there, format), zoneMark(there));
}

}  // namespace

QTimeZone siteZone(const std::string& name) {
    if (name.empty()) return QTimeZone::utc();  // Qt would take this computer's
    const QTimeZone zone(QByteArray::fromStdString(name));
    return zone.isValid() ? zone : QTimeZone::utc();
}

QDateTime siteTime(Instant time, const QTimeZone& zone) {
    return QDateTime::fromMSecsSinceEpoch(time.time_since_epoch().count(),
                                          zone.isValid() ? zone : QTimeZone::utc());
}

QString zoneMark(const QDateTime& time) {
    const int minutes = time.offsetFromUtc() / 60;
    if (minutes == 0) return QStringLiteral("UTC");
    QString mark =
        QStringLiteral("UTC%1%2").arg(minutes < 0 ? QChar(0x2212) : QChar(u'+')).arg(std::abs(minutes) / 60);
    if (minutes % 60 != 0) mark += QStringLiteral(":%1").arg(std::abs(minutes) % 60, 2, 10, QChar(u'0'));
    return mark;
}

QString momentFormat() {
    return QCoreApplication::translate("SiteTime", "d MMMM yyyy HH:mm");
}

QString momentText(Instant time, const QTimeZone& zone) {
    return marked(time, zone, momentFormat());
}

QString shortMomentText(Instant time, const QTimeZone& zone) {
    return marked(time, zone, QStringLiteral("yyyy-MM-dd HH:mm"));
}

}  // namespace fettle
