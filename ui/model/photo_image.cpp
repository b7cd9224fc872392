#include "ui/model/photo_image.h"

#include <QBuffer>
#include <QFile>
#include <QFileInfo>
#include <QImageReader>

namespace fettle {

namespace {

tl::unexpected<Error> refused(const std::string& name, std::string rule) {
    return fail(ErrorKind::Invalid, "", "photograph " + name, std::move(rule));
}

}  // namespace

Result<QImage> pictureOf(const std::string& name, const std::string& bytes, const QSize& bound) {
    QByteArray data = QByteArray::fromRawData(bytes.data(), qsizetype(bytes.size()));
    QBuffer buffer(&data);
    buffer.open(QIODevice::ReadOnly);
    QImageReader reader(&buffer);
    reader.setAutoTransform(true);
    const QSize size = reader.size();
    if (!bound.isEmpty() && size.isValid() &&
        (size.width() > bound.width() || size.height() > bound.height())) {
        const bool turned = reader.transformation() & QImageIOHandler::TransformationRotate90;
        reader.setScaledSize(size.scaled(turned ? bound.transposed() : bound, Qt::KeepAspectRatio));
    }
    const QImage image = reader.read();
    if (image.isNull()) return refused(name, "cannot be read as a picture");
    return image;
}

Result<NewPhoto> readPhoto(const QString& path) {
    const std::string name = QFileInfo(path).fileName().toStdString();
    QFile file(path);
    if (quint64(QFileInfo(path).size()) > kMostPhotoBytes)
        return refused(name,
                       "is larger than " + std::to_string(kMostPhotoBytes >> 20) + " MB: make it smaller");
    if (!file.open(QIODevice::ReadOnly))
        return refused(name, "cannot be read: " + file.errorString().toStdString());
    NewPhoto photo{name, file.readAll().toStdString()};
    if (auto good = photoMedia(photo.name, photo.bytes); !good) return fail(good.error());
    if (auto picture = pictureOf(photo.name, photo.bytes, {64, 64}); !picture) return fail(picture.error());
    return photo;
}

Result<NewPhoto> photoOf(const QImage& picture, const QString& name) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    if (picture.isNull() || !picture.save(&buffer, "PNG"))
        return refused(name.toStdString(), "cannot be read as a picture");
    NewPhoto photo{name.toStdString(), bytes.toStdString()};
    if (auto good = photoMedia(photo.name, photo.bytes); !good) return fail(good.error());
    return photo;
}

}  // namespace fettle
