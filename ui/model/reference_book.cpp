#include "ui/model/reference_book.h"

#include <QCryptographicHash>
#include <QFileInfo>
#include <QUrl>

namespace fettle {

namespace {

// A path in a key would be taken for groups of keys.
QString plain(const QString& text) {
    return QString::fromLatin1(QUrl::toPercentEncoding(text));
}

}  // namespace

ReferenceBook::ReferenceBook(QSettings* settings, const QString& fleetPath) : settings_(settings) {
    const QFileInfo file(fleetPath);
    const QString path = file.exists() ? file.canonicalFilePath() : file.absoluteFilePath();
    fleet_ = QString::fromLatin1(
        QCryptographicHash::hash(path.toUtf8(), QCryptographicHash::Sha1).toHex().left(16));
}

QString ReferenceBook::key(const QString& machine, const QString& point) const {
    return QStringLiteral("references/%1/%2/%3").arg(fleet_, plain(machine), plain(point));
}

std::optional<KeptReference> ReferenceBook::of(const QString& machine, const QString& point) const {
    const QString at = key(machine, point);
    if (!settings_) {
        const auto found = unkept_.find(at);
        return found == unkept_.end() ? std::nullopt : std::optional(found->second);
    }
    const QStringList kept = settings_->value(at).toStringList();
    if (kept.size() != 2) return std::nullopt;
    bool number = false, moment = false;
    KeptReference reference{kept[0].toLongLong(&number),
                            Instant(std::chrono::milliseconds(kept[1].toLongLong(&moment)))};
    if (!number || !moment || reference.recording <= 0) return std::nullopt;
    return reference;
}

void ReferenceBook::keep(const QString& machine, const QString& point, const KeptReference& reference) {
    const QString at = key(machine, point);
    if (!settings_) {
        unkept_[at] = reference;
        return;
    }
    const auto ms = std::chrono::duration_cast<std::chrono::milliseconds>(reference.time.time_since_epoch());
    settings_->setValue(
        at, QStringList{QString::number(reference.recording), QString::number(qlonglong(ms.count()))});
}

void ReferenceBook::remove(const QString& machine, const QString& point) {
    const QString at = key(machine, point);
    unkept_.erase(at);
    if (settings_) settings_->remove(at);
}

}  // namespace fettle
