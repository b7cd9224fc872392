#include "ui/plot/plot_frame.h"

#include <qwt_plot.h>
#include <qwt_plot_canvas.h>
#include <qwt_plot_grid.h>
#include <qwt_plot_layout.h>
#include <qwt_plot_renderer.h>
#include <qwt_scale_widget.h>
#include <qwt_text.h>

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QStackedLayout>
#include <QVBoxLayout>

#include "ui/plot/gestures.h"

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
    plot_->setCanvas(plainCanvas(name + QStringLiteral("Canvas")));
    plot_->canvas()->setAccessibleName(title);
    setUpAxes(*plot_);
    gestures_ = new Gestures(*plot_->canvas());
    grid_->setZ(-10);
    grid_->attach(plot_);
    buildHead();
    title_->setText(title);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    column->addLayout(head_);
    column->addWidget(readoutBelow_);
    stack_ = new QStackedLayout;
    stack_->addWidget(plot_);
    stack_->addWidget(words_);
    column->addLayout(stack_, 1);
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
    head_ = new QHBoxLayout;
    head_->setSpacing(8);
    title_ = new QLabel(this);
    title_->setTextInteractionFlags(Qt::NoTextInteraction);
    readout_ = new QLabel(this);
    readout_->setObjectName(objectName() + QStringLiteral("Readout"));
    readout_->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    readout_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    readoutBelow_ = new QLabel(this);
    readoutBelow_->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    readoutBelow_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    words_ = new QLabel(this);
    words_->setObjectName(objectName() + QStringLiteral("Words"));
    words_->setAlignment(Qt::AlignCenter);
    words_->setWordWrap(true);
    words_->setMargin(12);
    head_->addWidget(title_);
    head_->addWidget(readout_, 1);
    head_->addStretch();
}

void PlotFrame::addControl(QWidget* control) {
    head_->insertWidget(1, control);
    placeReadout();
}

void PlotFrame::setTitle(const QString& title) {
    title_->setText(title);
    title_->setVisible(!title.isEmpty());
    placeReadout();
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
    const QString& said = text.isEmpty() ? atRest_ : text;
    readout_->setText(said);
    readoutBelow_->setText(said);
}

void PlotFrame::setAtRest(const QString& text) {
    const bool resting = readout_->text() == atRest_;
    atRest_ = text;
    if (resting) setReadout({});
}

void PlotFrame::placeReadout() {
    int controls = 0;
    for (int i = 0; i + 2 < head_->count(); ++i)  // all but readout and stretch
        controls += head_->itemAt(i)->sizeHint().width() + head_->spacing();
    const bool beside = width() - controls >= kReadoutChars * fontMetrics().averageCharWidth();
    readout_->setVisible(beside);
    readoutBelow_->setVisible(!beside);
}

void PlotFrame::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    placeReadout();
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
    readoutBelow_->setForegroundRole(QPalette::PlaceholderText);
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
