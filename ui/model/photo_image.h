// Why: photographs become pictures on a worker, never in the window: decoded to the size they are shown in,
// turned as the camera says. A file that calls itself JPEG and is none is refused in one sentence. Thread:
// any.
#pragma once

#include <QImage>
#include <QSize>
#include <QString>
#include <string>

#include "core/fleet/planner_return.h"

namespace fettle {

// Fits into `bound`; an empty bound: full size. Errors: Invalid where it cannot be decoded.
Result<QImage> pictureOf(const std::string& name, const std::string& bytes, const QSize& bound);
// Reads a file, checks that it is a picture that may be kept and decodes. Errors: as photoMedia.
Result<NewPhoto> readPhoto(const QString& path);
// A pasted picture, as PNG.
Result<NewPhoto> photoOf(const QImage& picture, const QString& name);

}  // namespace fettle
