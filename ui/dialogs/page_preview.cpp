#include "ui/dialogs/page_preview.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QScrollArea>
#include <QScrollBar>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "ui/pages/page_parts.h"

namespace fettle {

namespace {

constexpr double kLeastZoom = 0.25, kMostZoom = 4, kZoomStep = 1.25;

QToolButton* zoomButton(const QString& text, const QString& help, const char* name,
                        const QList<QKeySequence>& keys, QWidget* parent) {
    auto* button = new QToolButton(parent);
    button->setObjectName(QString::fromLatin1(name));
    button->setText(text);
    button->setToolTip(help);
    button->setAccessibleName(help);
    button->setAutoRaise(true);
    button->setFocusPolicy(Qt::StrongFocus);
    if (!keys.isEmpty()) button->setShortcut(keys.first());
    return button;
}

}  // namespace

namespace {
std::optional<PaperSize> preferred;
}  // namespace

void preferPaper(std::optional<PaperSize> paper) {
    preferred = paper;
}

PaperSize usualPaper(bool inches) {
    return preferred.value_or(inches ? PaperSize::Letter : PaperSize::A4);
}

PagePreview::PagePreview(const Theme& theme, PaperSize paper, QWidget* parent)
    : QWidget(parent),
      theme_(theme),
      head_(new QHBoxLayout),
      paper_(new QComboBox(this)),
      trouble_(new QLabel(this)),
      page_(new QLabel(this)),
      scroll_(new QScrollArea(this)) {
    build(paper);
    say({});
}

void PagePreview::build(PaperSize paper) {
    trouble_->setObjectName(QStringLiteral("trouble"));
    trouble_->setWordWrap(true);
    page_->setObjectName(QStringLiteral("page"));
    page_->setAccessibleName(tr("The page as it will be printed"));
    page_->setAlignment(Qt::AlignCenter);
    scroll_->setObjectName(QStringLiteral("preview"));
    scroll_->setAccessibleName(tr("Pages as they will be printed"));
    scroll_->setWidget(page_);
    scroll_->setAlignment(Qt::AlignHCenter | Qt::AlignTop);
    scroll_->setBackgroundRole(QPalette::Mid);
    scroll_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
    paper_->setObjectName(QStringLiteral("paper"));
    paper_->setAccessibleName(tr("Paper"));
    paper_->setToolTip(tr("Paper the pages are laid out for"));
    paper_->addItems({tr("A4"), tr("Letter")});
    paper_->setCurrentIndex(paper == PaperSize::Letter ? 1 : 0);
    auto* smaller = zoomButton(QStringLiteral("−"), tr("Smaller"), "smaller", {QKeySequence::ZoomOut}, this);
    auto* larger = zoomButton(QStringLiteral("+"), tr("Larger"), "larger", {QKeySequence::ZoomIn}, this);
    auto* wide = zoomButton(tr("width"), tr("As wide as the window"), "width", {}, this);
    connect(paper_, &QComboBox::currentIndexChanged, this, &PagePreview::paperChanged);
    connect(smaller, &QToolButton::clicked, this, [this] { setZoom(zoom_ / kZoomStep); });
    connect(larger, &QToolButton::clicked, this, [this] { setZoom(zoom_ * kZoomStep); });
    connect(wide, &QToolButton::clicked, this, [this] { setZoom(0); });
    head_->addStretch(0);
    for (QWidget* part : std::initializer_list<QWidget*>{paper_, smaller, larger, wide})
        head_->addWidget(part);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->addLayout(head_);
    all->addWidget(trouble_);
    all->addWidget(scroll_, 1);
}

void PagePreview::show(std::shared_ptr<PrintedPages> pages) {
    pages_ = std::move(pages);
    showPicture();
}

void PagePreview::say(const QString& trouble) {
    note(trouble, Role::Trouble);
}

void PagePreview::wait(const QString& word) {
    note(word, Role::MutedInk);
}

void PagePreview::note(const QString& word, Role ink) {
    setInk(*trouble_, theme_, ink);
    trouble_->setText(word);
    trouble_->setVisible(!word.isEmpty());
}

PaperSize PagePreview::paper() const {
    return paper_->currentIndex() == 1 ? PaperSize::Letter : PaperSize::A4;
}

double PagePreview::widthZoom() const {
    const double inches = paperMm(paper()).width() / 25.4;
    const int frame = scroll_->verticalScrollBar()->sizeHint().width() + 2 * scroll_->frameWidth() + 2;
    return std::max(0.0, double(scroll_->width() - frame)) / (inches * logicalDpiX());
}

void PagePreview::setZoom(double zoom) {
    fitsWidth_ = zoom <= 0;
    zoom_ = std::clamp(fitsWidth_ ? widthZoom() : zoom, kLeastZoom, kMostZoom);
    showPicture();
}

void PagePreview::showPicture() {
    if (!pages_) return;
    if (fitsWidth_) zoom_ = std::clamp(widthZoom(), kLeastZoom, kMostZoom);
    QImage picture = pages_->picture(zoom_ * logicalDpiX() * devicePixelRatioF());
    picture.setDevicePixelRatio(devicePixelRatioF());
    page_->setPixmap(QPixmap::fromImage(std::move(picture)));
    page_->adjustSize();
}

void PagePreview::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (fitsWidth_ && std::abs(widthZoom() - zoom_) > 0.005) showPicture();
}

}  // namespace fettle
