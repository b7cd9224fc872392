#include "ui/dialogs/photo_viewer.h"

#include <QDialogButtonBox>
#include <QFileDialog>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <set>

#include "core/base/file_name.h"
#include "core/base/file_system.h"
#include "core/store/file_probe.h"
#include "ui/model/photo_image.h"
#include "ui/model/words.h"

namespace fettle {

PhotoViewer::PhotoViewer(FleetWork& work, const QString& machine, std::int64_t photo, QWidget* parent)
    : QDialog(parent), work_(work) {
    setObjectName(QStringLiteral("photoViewer"));
    setWindowTitle(tr("Photographs of %1").arg(machine));
    setAttribute(Qt::WA_DeleteOnClose);
    build();
    work_.ask<std::vector<Photo>>(
        this, QStringLiteral("photos"),
        [tag = kept(machine)](FleetFile& fleet, const CancelToken&) { return fleet.photos().ofMachine(tag); },
        [this, photo](Result<std::vector<Photo>> photos) {
            if (!photos) return name_->setText(sentence(photos.error()));
            take(std::move(*photos), photo);
        });
}

void PhotoViewer::build() {
    page_ = new QLabel(this);
    page_->setObjectName(QStringLiteral("picture"));
    page_->setAccessibleName(tr("The photograph"));
    page_->setAlignment(Qt::AlignCenter);
    page_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Ignored);
    name_ = new QLabel(this);
    name_->setObjectName(QStringLiteral("photoName"));
    name_->setWordWrap(true);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    before_ = buttons->addButton(tr("&Before"), QDialogButtonBox::ActionRole);
    next_ = buttons->addButton(tr("&Next"), QDialogButtonBox::ActionRole);
    save_ = buttons->addButton(tr("&Save as given…"), QDialogButtonBox::ActionRole);
    before_->setObjectName(QStringLiteral("photoBefore"));
    next_->setObjectName(QStringLiteral("photoNext"));
    save_->setObjectName(QStringLiteral("photoSave"));
    connect(before_, &QPushButton::clicked, this, [this] { go(-1); });
    connect(next_, &QPushButton::clicked, this, [this] { go(1); });
    connect(save_, &QPushButton::clicked, this, &PhotoViewer::askWhere);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* all = new QVBoxLayout(this);
    all->addWidget(page_, 1);
    all->addWidget(name_);
    all->addWidget(buttons);
    const int em = fontMetrics().height();
    resize(50 * em, 38 * em);
    go(0);
}

void PhotoViewer::take(std::vector<Photo> photos, std::int64_t first) {
    photos_ = std::move(photos);
    for (std::size_t i = 0; i < photos_.size(); ++i)
        if (photos_[i].id == first) at_ = int(i);
    go(0);
}

void PhotoViewer::go(int step) {
    const int last = int(photos_.size()) - 1;
    if (at_ >= 0) at_ = std::clamp(at_ + step, 0, last);
    before_->setEnabled(at_ > 0);
    next_->setEnabled(at_ >= 0 && at_ < last);
    save_->setEnabled(at_ >= 0);
    if (at_ >= 0) read();
}

void PhotoViewer::read() {
    const Photo photo = photos_[std::size_t(at_)];
    name_->setText(
        tr("%1, %2 of %3").arg(shown(photo.name), QString::number(at_ + 1), QString::number(photos_.size())));
    work_.ask<QImage>(
        this, QStringLiteral("picture"),
        [photo](FleetFile& fleet, const CancelToken&) -> Result<QImage> {
            const auto bytes = fleet.photos().bytes(photo.id);
            if (!bytes) return fail(bytes.error());
            return pictureOf(photo.name, *bytes, {3840, 2400});
        },
        [this](Result<QImage> picture) {
            picture_ = picture ? std::move(*picture) : QImage();
            if (!picture) name_->setText(sentence(picture.error()));
            show();
        });
}

void PhotoViewer::show() {
    if (picture_.isNull()) return page_->clear();
    const double sharp = devicePixelRatioF();
    const QSize room = page_->size() * sharp;
    QPixmap scaled = QPixmap::fromImage(picture_);
    if (picture_.width() > room.width() || picture_.height() > room.height())
        scaled = scaled.scaled(room, Qt::KeepAspectRatio, Qt::SmoothTransformation);
    scaled.setDevicePixelRatio(sharp);
    page_->setPixmap(scaled);
}

void PhotoViewer::resizeEvent(QResizeEvent* event) {
    QDialog::resizeEvent(event);
    show();
}

void PhotoViewer::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Left || event->key() == Qt::Key_PageUp) return go(-1);
    if (event->key() == Qt::Key_Right || event->key() == Qt::Key_PageDown) return go(1);
    QDialog::keyPressEvent(event);
}

void PhotoViewer::askWhere() {
    if (at_ < 0) return;
    auto* ask = new QFileDialog(this, tr("Save the photograph"));
    ask->setObjectName(QStringLiteral("savePhotoDialog"));
    ask->setAttribute(Qt::WA_DeleteOnClose);
    ask->setAcceptMode(QFileDialog::AcceptSave);
    std::set<std::string> none;
    ask->selectFile(shown(fileNameFrom(photos_[std::size_t(at_)].name, none)));
    connect(ask, &QFileDialog::fileSelected, this, &PhotoViewer::saveAs);
    ask->open();
}

void PhotoViewer::saveAs(const QString& path) {
    if (at_ < 0) return;
    if (isPartOfFleet(path.toStdString(), work_.path()))
        return name_->setText(tr("%1 is the fleet file or a part of it and is left as it is.").arg(path));
    work_.ask<void>(
        this, QStringLiteral("save"),
        [id = photos_[std::size_t(at_)].id, to = path.toStdString()](FleetFile& fleet,
                                                                     const CancelToken&) -> Status {
            const auto bytes = fleet.photos().bytes(id);
            if (!bytes) return fail(bytes.error());
            return RealFileSystem().writeSafely(to, *bytes);
        },
        [this, path](Status written) {
            name_->setText(written ? tr("Saved as %1").arg(path) : sentence(written.error()));
        });
}

}  // namespace fettle
