#include "ui/panels/photo_strip.h"

#include <QApplication>
#include <QClipboard>
#include <QDropEvent>
#include <QFileDialog>
#include <QKeyEvent>
#include <QLabel>
#include <QListWidget>
#include <QMimeData>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/model/photo_image.h"
#include "ui/model/words.h"

namespace fettle {

namespace {

constexpr int kThumbnailEms = 4;

QStringList filesOf(const QMimeData& data) {
    QStringList files;
    for (const QUrl& url : data.urls())
        if (url.isLocalFile()) files << url.toLocalFile();
    return files;
}

}  // namespace

PhotoStrip::PhotoStrip(FleetWork& work, const Theme& theme, bool takes, QWidget* parent)
    : QWidget(parent),
      work_(work),
      takes_(takes),
      list_(new QListWidget(this)),
      words_(new QLabel(this)),
      trouble_(new QLabel(this)) {
    setObjectName(QStringLiteral("photoStrip"));
    setAccessibleName(tr("Photographs"));
    setAcceptDrops(takes_);
    build(theme);
}

void PhotoStrip::build(const Theme& theme) {
    list_->setObjectName(QStringLiteral("photos"));
    list_->setAccessibleName(tr("Photographs"));
    list_->setViewMode(QListView::IconMode);
    list_->setFlow(QListView::LeftToRight);
    list_->setWrapping(false);
    list_->setMovement(QListView::Static);
    list_->setFrameStyle(QFrame::NoFrame);
    list_->setUniformItemSizes(true);
    list_->setTextElideMode(Qt::ElideMiddle);
    list_->setToolTip(takes_ ? tr("Enter shows a photograph large, Del takes it out")
                             : tr("Enter shows a photograph large"));
    words_->setObjectName(QStringLiteral("photoWords"));
    words_->setText(tr("JPEG or PNG, at most %1 MB each").arg(kMostPhotoBytes >> 20));
    words_->setVisible(takes_);
    trouble_->setObjectName(QStringLiteral("photoTrouble"));
    trouble_->setWordWrap(true);
    const auto dress = [this, &theme] {
        QPalette palette = trouble_->palette();
        palette.setColor(QPalette::WindowText, theme.colour(Role::Trouble));
        trouble_->setPalette(palette);
    };
    connect(&theme, &Theme::changed, trouble_, dress);
    dress();
    trouble_->hide();
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->addWidget(list_);
    if (takes_) {
        choose_ = new QPushButton(tr("Photo&graphs…"), this);
        choose_->setObjectName(QStringLiteral("choosePhotos"));
        choose_->setAutoDefault(false);
        choose_->setToolTip(
            tr("Choose photographs, or drop them here, or paste one with Ctrl+V; they are kept as given"));
        connect(choose_, &QPushButton::clicked, this, &PhotoStrip::choose);
        all->addWidget(choose_, 0, Qt::AlignLeft);
        all->addWidget(words_);
    }
    all->addWidget(trouble_);
    connect(list_, &QListWidget::itemActivated, this, [this](QListWidgetItem* item) {
        if (!item->data(Qt::UserRole).isNull()) emit keptWanted(item->data(Qt::UserRole).toLongLong());
    });
    fit();
}

void PhotoStrip::fit() {
    const int em = fontMetrics().height();
    list_->setIconSize({kThumbnailEms * em * 4 / 3, kThumbnailEms * em});
    list_->setGridSize({kThumbnailEms * em * 4 / 3 + em, (kThumbnailEms + 2) * em});
    list_->setFixedHeight((kThumbnailEms + 3) * em);
    list_->setVisible(list_->count() > 0);
    setVisible(takes_ || list_->count() > 0);
}

QString PhotoStrip::trouble() const {
    return trouble_->text();
}

void PhotoStrip::say(const QString& trouble) {
    trouble_->setText(trouble);
    trouble_->setVisible(!trouble.isEmpty());
}

void PhotoStrip::setKept(const std::vector<Photo>& photos) {
    kept_ = photos;
    list_->clear();
    for (const Photo& photo : kept_) {
        auto* item = new QListWidgetItem(shown(photo.name), list_);
        item->setData(Qt::UserRole, qlonglong(photo.id));
        item->setToolTip(shown(photo.name));
        askPicture(list_->count() - 1, [photo, size = list_->iconSize()](FleetFile& fleet) -> Result<QImage> {
            const auto bytes = fleet.photos().bytes(photo.id);
            if (!bytes) return fail(bytes.error());
            return pictureOf(photo.name, *bytes, size);
        });
    }
    fit();
}

void PhotoStrip::setNew(std::vector<NewPhoto> photos) {
    new_ = std::move(photos);
    showNew();
}

void PhotoStrip::showNew() {
    list_->clear();
    for (const NewPhoto& photo : new_) {
        auto* item = new QListWidgetItem(shown(photo.name), list_);
        item->setToolTip(shown(photo.name));
        askPicture(list_->count() - 1, [photo, size = list_->iconSize()](FleetFile&) {
            return pictureOf(photo.name, photo.bytes, size);
        });
    }
    fit();
    emit changed();
}

void PhotoStrip::askPicture(int row, std::function<Result<QImage>(FleetFile&)> read) {
    QListWidgetItem* item = list_->item(row);
    const QString name = item->text();
    work_.ask<QImage>(
        this, QStringLiteral("photo %1").arg(row),
        [read = std::move(read)](FleetFile& fleet, const CancelToken&) { return read(fleet); },
        [this, row, name](Result<QImage> picture) {
            QListWidgetItem* there = list_->item(row);
            if (!there || there->text() != name) return;
            if (picture)
                there->setIcon(QIcon(QPixmap::fromImage(*picture)));
            else
                there->setToolTip(sentence(picture.error()));
        });
}

void PhotoStrip::take(const QStringList& paths) {
    say({});
    for (const QString& path : paths)
        work_.ask<NewPhoto>(
            this, QStringLiteral("take ") + path,
            [path](FleetFile&, const CancelToken&) { return readPhoto(path); },
            [this](Result<NewPhoto> photo) {
                if (photo)
                    add(std::move(*photo));
                else
                    say(sentence(photo.error()));
            });
}

void PhotoStrip::take(const QImage& picture) {
    say({});
    work_.ask<NewPhoto>(
        this, QStringLiteral("pasted"),
        [picture](FleetFile&, const CancelToken&) { return photoOf(picture, tr("pasted.png")); },
        [this](Result<NewPhoto> photo) {
            if (photo)
                add(std::move(*photo));
            else
                say(sentence(photo.error()));
        });
}

void PhotoStrip::add(NewPhoto photo) {
    for (const NewPhoto& there : new_)
        if (there.bytes == photo.bytes) return;
    new_.push_back(std::move(photo));
    showNew();
}

void PhotoStrip::removeCurrent() {
    const int row = list_->currentRow();
    if (!takes_ || row < 0 || row >= int(new_.size())) return;
    new_.erase(new_.begin() + row);
    showNew();
}

void PhotoStrip::choose() {
    auto* ask = new QFileDialog(this, tr("Photographs"), QString(),
                                tr("Pictures (*.jpg *.jpeg *.png *.JPG *.JPEG *.PNG)"));
    ask->setObjectName(QStringLiteral("choosePhotosDialog"));
    ask->setAttribute(Qt::WA_DeleteOnClose);
    ask->setFileMode(QFileDialog::ExistingFiles);
    connect(ask, &QFileDialog::filesSelected, this, qOverload<const QStringList&>(&PhotoStrip::take));
    ask->open();
}

void PhotoStrip::paste() {
    const QMimeData* copied = QApplication::clipboard()->mimeData();
    if (!copied) return;
    if (const QStringList files = filesOf(*copied); !files.isEmpty()) return take(files);
    if (copied->hasImage()) return take(qvariant_cast<QImage>(copied->imageData()));
    say(tr("There is no picture to paste."));
}

void PhotoStrip::keyPressEvent(QKeyEvent* event) {
    if (takes_ && event->matches(QKeySequence::Paste)) return paste();
    if (takes_ && event->key() == Qt::Key_Delete) return removeCurrent();
    QWidget::keyPressEvent(event);
}

void PhotoStrip::dragEnterEvent(QDragEnterEvent* event) {
    if (event->mimeData()->hasImage() || !filesOf(*event->mimeData()).isEmpty())
        event->acceptProposedAction();
}

void PhotoStrip::dropEvent(QDropEvent* event) {
    event->acceptProposedAction();
    if (const QStringList files = filesOf(*event->mimeData()); !files.isEmpty()) return take(files);
    take(qvariant_cast<QImage>(event->mimeData()->imageData()));
}

}  // namespace fettle
