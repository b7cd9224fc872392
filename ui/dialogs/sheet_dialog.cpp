#include "ui/dialogs/sheet_dialog.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QSignalBlocker>
#include <QStandardPaths>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "core/fleet/sheet_set.h"
#include "core/store/day.h"
#include "core/store/file_probe.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"
#include "ui/sheet/sheet_file.h"
#include "ui/sheet/sheet_print.h"

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

// "2. misalignment, driver: plan"; its own from what it says of itself.
QString findingText(const SheetContent& sheet, std::size_t number) {
    const QString mark = QString::number(number) + QStringLiteral(". ");
    if (number == sheet.number)
        return mark + shown(sheet.faultName) +
               (sheet.atWords.empty() ? QString() : QStringLiteral(", ") + shown(sheet.atWords)) +
               QStringLiteral(": ") + urgencyWord(sheet.urgency);
    for (const std::string& other : sheet.otherFindings)
        if (shown(other).startsWith(mark)) return shown(other);
    return mark.trimmed();
}

}  // namespace

SheetDialog::SheetDialog(FleetWork& work, const Theme& theme, const QString& machine, QWidget* parent)
    : QDialog(parent), work_(work), machine_(machine) {
    setObjectName(QStringLiteral("sheetDialog"));
    setWindowTitle(tr("Findings sheet of %1").arg(machine));
    setAttribute(Qt::WA_DeleteOnClose);
    build(theme);
    read(0);
}

void SheetDialog::build(const Theme& theme) {
    trouble_ = new QLabel(tr("The sheet is made…"), this);
    trouble_->setObjectName(QStringLiteral("trouble"));
    trouble_->setWordWrap(true);
    setInk(*trouble_, theme.colour(Role::Trouble));
    page_ = new QLabel(this);
    page_->setObjectName(QStringLiteral("page"));
    page_->setAccessibleName(tr("The page as it will be printed"));
    page_->setAlignment(Qt::AlignCenter);
    scroll_ = new QScrollArea(this);
    scroll_->setObjectName(QStringLiteral("preview"));
    scroll_->setWidget(page_);
    scroll_->setAlignment(Qt::AlignHCenter | Qt::AlignTop);
    scroll_->setBackgroundRole(QPalette::Mid);
    scroll_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    save_ = buttons->addButton(tr("&Save as PDF…"), QDialogButtonBox::ActionRole);
    save_->setObjectName(QStringLiteral("save"));
    save_->setShortcut(QKeySequence::Save);
    print_ = buttons->addButton(tr("&Print…"), QDialogButtonBox::ActionRole);
    print_->setObjectName(QStringLiteral("print"));
    print_->setShortcut(QKeySequence::Print);
    connect(save_, &QPushButton::clicked, this, &SheetDialog::askWhere);
    connect(print_, &QPushButton::clicked, this, &SheetDialog::print);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* all = new QVBoxLayout(this);
    all->addWidget(buildHead());
    all->addWidget(trouble_);
    all->addWidget(scroll_, 1);
    all->addWidget(buttons);
    const int em = fontMetrics().height();
    resize(52 * em, 48 * em);
    show(QString());
}

QWidget* SheetDialog::buildHead() {
    auto* head = new QWidget(this);
    findings_ = new QComboBox(head);
    findings_->setObjectName(QStringLiteral("finding"));
    findings_->setAccessibleName(tr("Finding"));
    findings_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    paper_ = new QComboBox(head);
    paper_->setObjectName(QStringLiteral("paper"));
    paper_->setAccessibleName(tr("Paper"));
    paper_->addItems({tr("A4"), tr("Letter")});
    auto* smaller = zoomButton(QStringLiteral("−"), tr("Smaller"), "smaller", {QKeySequence::ZoomOut}, head);
    auto* larger = zoomButton(QStringLiteral("+"), tr("Larger"), "larger", {QKeySequence::ZoomIn}, head);
    auto* wide = zoomButton(tr("width"), tr("As wide as the window"), "width", {}, head);
    connect(findings_, &QComboBox::activated, this, [this](int index) { read(std::size_t(index) + 1); });
    connect(paper_, &QComboBox::currentIndexChanged, this, &SheetDialog::layOut);
    connect(smaller, &QToolButton::clicked, this, [this] { setZoom(zoom_ / kZoomStep); });
    connect(larger, &QToolButton::clicked, this, [this] { setZoom(zoom_ * kZoomStep); });
    connect(wide, &QToolButton::clicked, this, [this] { setZoom(0); });
    auto* row = new QHBoxLayout(head);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(findings_, 1);
    for (QWidget* part : std::initializer_list<QWidget*>{paper_, smaller, larger, wide})
        row->addWidget(part);
    return head;
}

void SheetDialog::read(std::size_t finding) {
    work_.ask<SheetData>(
        this, QStringLiteral("sheet"),
        [tag = kept(machine_), finding](FleetFile& fleet, const CancelToken&) -> Result<SheetData> {
            const auto today = todayOf(fleet, nowUtc());
            if (!today) return fail(today.error());
            return readSheet(fleet, {tag, finding, {}, *today});
        },
        [this](Result<SheetData> sheet) { take(std::move(sheet)); });
}

void SheetDialog::take(Result<SheetData> sheet) {
    if (!sheet) return show(sentence(sheet.error()));
    sheet_ = std::make_shared<const SheetData>(std::move(*sheet));
    fillFindings();
    show(QString());
    layOut();
}

void SheetDialog::fillFindings() {
    const QSignalBlocker quiet(findings_);
    findings_->clear();
    for (std::size_t i = 1; i <= std::max<std::size_t>(sheet_->content.ofFindings, 1); ++i)
        findings_->addItem(findingText(sheet_->content, i));
    findings_->setCurrentIndex(int(sheet_->content.number) - 1);
    findings_->setEnabled(findings_->count() > 1);
}

void SheetDialog::show(const QString& trouble) {
    trouble_->setText(trouble);
    trouble_->setVisible(!trouble.isEmpty());
    save_->setEnabled(sheet_ != nullptr);
    print_->setEnabled(sheet_ != nullptr);
}

PaperSize SheetDialog::paper() const {
    return paper_->currentIndex() == 1 ? PaperSize::Letter : PaperSize::A4;
}

void SheetDialog::layOut() {
    if (!sheet_) return;
    painter_ = std::make_unique<SheetPainter>(*sheet_, paper());
    showPicture();
}

double SheetDialog::widthZoom() const {
    const double inches = paperMm(paper()).width() / 25.4;
    const int frame = scroll_->verticalScrollBar()->sizeHint().width() + 2 * scroll_->frameWidth() + 2;
    return std::max(0.0, double(scroll_->width() - frame)) / (inches * logicalDpiX());
}

void SheetDialog::setZoom(double zoom) {
    fitsWidth_ = zoom <= 0;
    zoom_ = std::clamp(fitsWidth_ ? widthZoom() : zoom, kLeastZoom, kMostZoom);
    showPicture();
}

void SheetDialog::showPicture() {
    if (!painter_) return;
    if (fitsWidth_) zoom_ = std::clamp(widthZoom(), kLeastZoom, kMostZoom);
    QImage picture = painter_->picture(zoom_ * logicalDpiX() * devicePixelRatioF());
    picture.setDevicePixelRatio(devicePixelRatioF());
    page_->setPixmap(QPixmap::fromImage(std::move(picture)));
    page_->adjustSize();
}

void SheetDialog::resizeEvent(QResizeEvent* event) {
    QDialog::resizeEvent(event);
    if (fitsWidth_ && std::abs(widthZoom() - zoom_) > 0.005) showPicture();
}

void SheetDialog::askWhere() {
    auto* ask = new QFileDialog(this, tr("Save the findings sheet"));
    ask->setAttribute(Qt::WA_DeleteOnClose);
    ask->setAcceptMode(QFileDialog::AcceptSave);
    ask->setNameFilter(tr("PDF (*.pdf)"));
    ask->setDefaultSuffix(QStringLiteral("pdf"));
    ask->setDirectory(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
    std::set<std::string> none;
    ask->selectFile(shown(sheetFileName(sheet_->content.tag, ".pdf", none)));
    connect(ask, &QFileDialog::fileSelected, this, &SheetDialog::savePdf);
    ask->open();
}

// Drawn here, written by a worker: a slow disk does not hold up the window.
void SheetDialog::savePdf(const QString& path) {
    if (!sheet_) return;
    if (isPartOfFleet(path.toStdString(), work_.path()))
        return show(tr("%1 is the fleet file or a part of it and is left as it is.").arg(path));
    auto pdf = sheetPdf(*sheet_, paper());
    if (!pdf) return show(sentence(pdf.error()));
    work_.ask<void>(
        this, QStringLiteral("save ") + path,
        [bytes = pdf->toStdString(), to = path.toStdString()](FleetFile&, const CancelToken&) {
            return RealFileSystem().writeSafely(to, bytes);
        },
        [this, path](Status written) {
            show(written ? QString() : sentence(written.error()));
            if (written) emit saved(path);
        });
}

void SheetDialog::print() {
    askAndPrint(this, sheet_, paper(),
                [this](Status printed) { show(printed ? QString() : sentence(printed.error())); });
}

}  // namespace fettle
