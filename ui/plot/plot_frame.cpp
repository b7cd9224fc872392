#include "ui/plot/plot_frame.h"

#include <qwt_plot.h>
#include <qwt_plot_canvas.h>
#include <qwt_plot_grid.h>
#include <qwt_plot_layout.h>
#include <qwt_plot_renderer.h>
#include <qwt_scale_widget.h>
#include <qwt_text.h>

#include <QAction>
#include <QEvent>
#include <QFileDialog>
#include <QLabel>
#include <QMenu>
#include <QSplitter>
#include <QStackedLayout>
#include <QVBoxLayout>

#include "ui/model/shortcuts.h"
#include "ui/plot/gestures.h"
#include "ui/plot/head_flow.h"

namespace fettle {

namespace {

constexpr int kReadoutChars = 52;

QwtPlotCanvas* plainCanvas(const QString& name) {
    auto* canvas = new QwtPlotCanvas;
    canvas->setObjectName(name);
    canvas->setFrameStyle(QFrame::NoFrame);
    canvas->setBorderRadius(0);
    canvas->setFocusIndicator(QwtPlotCanvas::CanvasFocusIndicator);
    canvas->setCursor(Qt::CrossCursor);
    return canvas;
}

void setUpAxes(QwtPlot& plot) {
    plot.plotLayout()->setCanvasMargin(0);
    plot.plotLayout()->setAlignCanvasToScales(true);
    plot.plotLayout()->setSpacing(2);
    for (const int axis : {QwtPlot::xBottom, QwtPlot::yLeft}) {
        plot.axisWidget(axis)->setMargin(0);
        plot.axisWidget(axis)->setSpacing(2);
        plot.axisScaleDraw(axis)->enableComponent(QwtScaleDraw::Backbone, true);
        plot.axisScaleDraw(axis)->setTickLength(QwtScaleDiv::MinorTick, 3);
        plot.axisScaleDraw(axis)->setTickLength(QwtScaleDiv::MediumTick, 4);
        plot.axisScaleDraw(axis)->setTickLength(QwtScaleDiv::MajorTick, 6);
    }
}

}  // namespace

PlotFrame::PlotFrame(const Theme& theme, const QString& name, const QString& title, QWidget* parent)
    : QWidget(parent), theme_(theme), plot_(new QwtPlot(this)), grid_(new QwtPlotGrid) {
    setObjectName(name);
    setAccessibleName(title);
    QwtText::setTextEngine(QwtText::RichText, nullptr);  // names are shown as they are, never as markup
    plot_->setCanvas(plainCanvas(name + QStringLiteral("Canvas")));
    plot_->canvas()->setAccessibleName(title);
    setUpAxes(*plot_);
    gestures_ = new Gestures(*plot_->canvas());
    grid_->setZ(-10);
    grid_->attach(plot_);
    buildHead();
    title_->setText(title);
    column_ = new QVBoxLayout(this);
    column_->setContentsMargins(0, 0, 0, 0);
    column_->setSpacing(2);
    column_->addLayout(head_);
    across_ = new QSplitter(Qt::Horizontal, this);
    across_->setObjectName(name + QStringLiteral("Across"));
    across_->setChildrenCollapsible(false);
    auto* shown = new QWidget(across_);
    stack_ = new QStackedLayout(shown);
    stack_->addWidget(plot_);
    stack_->addWidget(words_);
    column_->addWidget(across_, 1);
    buildActions();
    connect(&theme_, &Theme::changed, this, [this] {
        takeTheme();
        plot_->replot();
    });
    PlotFrame::takeTheme();
}

// The canvas goes after this: what the pointer does to it then must not reach a plot that is half gone.
PlotFrame::~PlotFrame() {
    delete gestures_;
}

void PlotFrame::buildHead() {
    head_ = new HeadFlow;
    title_ = new QLabel(this);
    title_->setTextInteractionFlags(Qt::NoTextInteraction);
    readout_ = new QLabel(this);
    readout_->setObjectName(objectName() + QStringLiteral("Readout"));
    readout_->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    words_ = new QLabel(this);
    words_->setObjectName(objectName() + QStringLiteral("Words"));
    words_->setAlignment(Qt::AlignCenter);
    words_->setWordWrap(true);
    words_->setMargin(12);
    head_->insertWidget(0, title_);
    head_->insertWidget(1, readout_);
    head_->setTailWidth(kReadoutChars * fontMetrics().averageCharWidth());
}

void PlotFrame::buildActions() {
    const auto add = [this](const char* id, auto done) {
        QAction* action = actionFor(id, this);
        connect(action, &QAction::triggered, this, done);
        addAction(action);
        return action;
    };
    copyAction_ = add("plot.copy", [this] { copyPicture(*this); });
    tableAction_ = add("plot.table", [this] { copyAsTable(TableExtent::AsShown); });
    saveAction_ = add("plot.save", [this] { saveAs(); });
    canvas()->setContextMenuPolicy(Qt::CustomContextMenu);
    connect(canvas(), &QWidget::customContextMenuRequested, this, [this](const QPoint& at) {
        auto* menu = new QMenu(this);
        menu->setObjectName(objectName() + QStringLiteral("Menu"));
        menu->setAttribute(Qt::WA_DeleteOnClose);
        fillMenu(*menu);
        menu->popup(canvas()->mapToGlobal(at));
    });
}

void PlotFrame::fillMenu(QMenu& menu) {
    const bool numbers = hasTable();
    menu.addAction(copyAction_);
    menu.addAction(tableAction_);
    tableAction_->setEnabled(numbers);
    QAction* all = menu.addAction(tr("Copy as table, all data"));
    all->setEnabled(numbers);
    connect(all, &QAction::triggered, this, [this] { copyAsTable(TableExtent::All); });
    menu.addAction(saveAction_);
    connect(&menu, &QMenu::aboutToHide, tableAction_, [this] { tableAction_->setEnabled(true); });
}

void PlotFrame::copyAsTable(TableExtent extent) {
    if (!hasTable()) return setReadout(tr("This plot has no table to copy."));
    const QString text = tableText(extent);
    if (text.isEmpty()) return setReadout(tr("Too many numbers to copy: save them as a table instead."));
    copyTable(text);
}

void PlotFrame::saveAs() {
    const QString all = tr("Table of all data (*.csv)");
    auto* dialog = new QFileDialog(this, tr("Save the plot"));
    dialog->setObjectName(QStringLiteral("savePlot"));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setAcceptMode(QFileDialog::AcceptSave);
    dialog->setNameFilters({tr("Picture (*.png)"), tr("Drawing (*.svg)"), tr("Document (*.pdf)"),
                            tr("Table as shown (*.csv)"), all});
    dialog->setDefaultSuffix(QStringLiteral("png"));
    connect(dialog, &QFileDialog::filterSelected, dialog, [dialog](const QString& filter) {
        dialog->setDefaultSuffix(filter.section(QStringLiteral("*."), 1).section(QLatin1Char(')'), 0, 0));
    });
    connect(dialog, &QFileDialog::fileSelected, this, [this, dialog, all](const QString& path) {
        const bool whole = dialog->selectedNameFilter() == all;
        saveTo(path, whole ? TableExtent::All : TableExtent::AsShown);
    });
    dialog->open();
}

// Tables may be long: they are written beside the window.
void PlotFrame::saveTo(const QString& path, TableExtent extent) {
    const auto saved = [this, path](const Status& status) {
        setReadout(status ? tr("Saved: %1").arg(path) : QString::fromStdString(status.error().sentence()));
    };
    if (!path.endsWith(QStringLiteral(".csv"), Qt::CaseInsensitive))
        return saved(savePlot(*this, path, extent));
    TableWriter writer = tableWriter(extent);
    if (!writer) return setReadout(tr("This plot has no table to save."));
    setReadout(tr("Saving %1 …").arg(path));
    saveTableBeside(*this, path, std::move(writer), saved);
}

QString PlotFrame::tableText(TableExtent) const {
    return {};
}

TableWriter PlotFrame::tableWriter(TableExtent extent) const {
    const QString text = tableText(extent);
    if (text.isEmpty()) return {};
    return [text](QIODevice& file) { return file.write(asCsv(text).toUtf8()) > 0; };
}

QString PlotFrame::caption() const {
    return subject_.isEmpty() ? accessibleName() : tr("%1, %2").arg(accessibleName(), subject_);
}

QString PlotFrame::tableHead(const QString& extent) const {
    return QStringLiteral("# %1\n# %2\n").arg(caption(), extent);
}

void PlotFrame::addControl(QWidget* control) {
    head_->insertWidget(1, control);
}

void PlotFrame::addStrip(QWidget* strip) {
    column_->insertWidget(column_->count() - 1, strip);
}

void PlotFrame::setSide(QWidget* side) {
    across_->addWidget(side);
    across_->setStretchFactor(0, 1);
    across_->setStretchFactor(1, 0);
}

void PlotFrame::setTitle(const QString& title) {
    title_->setText(title);
    title_->setVisible(!title.isEmpty());
}

void PlotFrame::setWords(const QString& words) {
    words_->setText(words);
    stack_->setCurrentWidget(words.isEmpty() ? static_cast<QWidget*>(plot_) : words_);
}

QString PlotFrame::words() const {
    return stack_->currentWidget() == words_ ? words_->text() : QString();
}

QString PlotFrame::readout() const {
    return readout_->text();
}

void PlotFrame::setReadout(const QString& text) {
    readout_->setText(text.isEmpty() ? atRest_ : text);
}

void PlotFrame::setAtRest(const QString& text) {
    const bool resting = readout_->text() == atRest_;
    atRest_ = text;
    if (resting) setReadout({});
}

void PlotFrame::hideGrid() {
    grid_->hide();
}

QWidget* PlotFrame::canvas() const {
    return plot_->canvas();
}

void PlotFrame::renderTo(QPainter& painter, const QRectF& rect) {
    QwtPlotRenderer renderer;
    renderer.setDiscardFlag(QwtPlotRenderer::DiscardBackground);
    renderer.setDiscardFlag(QwtPlotRenderer::DiscardCanvasFrame);
    renderer.setDiscardFlag(QwtPlotRenderer::DiscardTitle);
    if (plot_->width() < 10 || plot_->height() < 10) plot_->resize(600, 300);
    renderer.render(plot_, &painter, rect);
}

QSize PlotFrame::minimumSizeHint() const {
    const int em = fontMetrics().height();
    return {14 * em, 7 * em};
}

void PlotFrame::takeTheme() {
    QPalette palette = theme_.palette();
    plot_->setPalette(palette);
    plot_->setCanvasBackground(colour(Role::Ground));
    words_->setForegroundRole(QPalette::PlaceholderText);
    readout_->setForegroundRole(QPalette::PlaceholderText);
    grid_->setMajorPen(colour(Role::Rule), 1.0, Qt::SolidLine);
    for (const int axis : {QwtPlot::xBottom, QwtPlot::yLeft}) {
        QwtScaleWidget* scale = plot_->axisWidget(axis);
        QPalette ink = palette;
        ink.setColor(QPalette::WindowText, colour(Role::MutedInk));
        ink.setColor(QPalette::Text, colour(Role::Ink));
        scale->setPalette(ink);
        scale->setFont(font());
        QwtText title = scale->title();
        QFont small = font();
        title.setFont(small);
        title.setColor(colour(Role::MutedInk));
        scale->setTitle(title);
    }
}

void PlotFrame::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::ApplicationFontChange) takeTheme();
}

}  // namespace fettle
