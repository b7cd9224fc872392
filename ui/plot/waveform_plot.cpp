#include "ui/plot/waveform_plot.h"

#include <qwt_plot.h>
#include <qwt_scale_map.h>
#include <qwt_text.h>

#include <QLabel>
#include <QShortcut>
#include <QToolButton>
#include <algorithm>
#include <cmath>

#include "core/dsp/statistics.h"
#include "ui/model/numbers.h"
#include "ui/plot/cursor_item.h"
#include "ui/plot/gestures.h"
#include "ui/plot/line_item.h"
#include "ui/plot/period_ticks.h"
#include "ui/plot/plot_tool.h"
#include "ui/plot/readout.h"

namespace fettle {

namespace {

constexpr int kRestMs = 40;  // after the last movement the visible part is reckoned

QToolButton* toggle(const QString& text, const QString& name, const QString& help, QWidget* parent) {
    QToolButton* button = plotTool(text, name, help, parent);
    button->setCheckable(true);
    return button;
}

}  // namespace

WaveformPlot::WaveformPlot(const Theme& theme, QWidget* parent)
    : PlotFrame(theme, QStringLiteral("waveform"), tr("Waveform"), parent),
      curve_(new LineItem),
      cursors_(new CursorItem),
      turns_(new PeriodTicks(true)),
      impacts_(new PeriodTicks(false)) {
    curve_->attach(&plot());
    curve_->setWidth(1);
    cursors_->attach(&plot());
    turns_->attach(&plot());
    impacts_->attach(&plot());
    QwtText title = plot().axisTitle(QwtPlot::xBottom);
    title.setText(tr("s"));
    plot().setAxisTitle(QwtPlot::xBottom, title);
    rest_.setSingleShot(true);
    rest_.setInterval(kRestMs);
    connect(&rest_, &QTimer::timeout, this, &WaveformPlot::showFigures);
    addControls();
    connectGestures();
    WaveformPlot::takeTheme();
}

void WaveformPlot::addControls() {
    turnsButton_ = toggle(tr("turns"), QStringLiteral("waveformTurns"),
                          tr("Ticks once a turn of the shaft, counted from the first mark"), this);
    impactsButton_ =
        toggle(tr("impacts"), QStringLiteral("waveformImpacts"),
               tr("Ticks once an impact of the chosen fault, counted from the first mark"), this);
    turnsButton_->setChecked(true);
    impactsButton_->setChecked(true);
    for (QToolButton* button : {turnsButton_, impactsButton_})
        connect(button, &QToolButton::toggled, this, &WaveformPlot::showTicks);
    zoomButton_ =
        toggle(tr("zoom to marks"), QStringLiteral("waveformZoom"),
               tr("Shows what lies between the two marks (Z); Shift and click sets the second"), this);
    zoomButton_->setCheckable(false);
    connect(zoomButton_, &QToolButton::clicked, this, &WaveformPlot::zoomToMarks);
    auto* key = new QShortcut(QKeySequence(Qt::Key_Z), this);
    key->setContext(Qt::WidgetWithChildrenShortcut);
    connect(key, &QShortcut::activated, this, &WaveformPlot::zoomToMarks);
    addControl(zoomButton_);
    addControl(impactsButton_);
    addControl(turnsButton_);
    figures_ = new QLabel(this);
    figures_->setWordWrap(true);
    figures_->setObjectName(QStringLiteral("waveformFigures"));
    figures_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    figures_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    addStrip(figures_);
}

void WaveformPlot::connectGestures() {
    const auto time = [this](double x) { return plot().canvasMap(QwtPlot::xBottom).invTransform(x); };
    connect(&gestures(), &Gestures::zoomed, this, [=, this](double factor, const QPointF& at, bool) {
        across_.zoom(factor, time(at.x()));
        showAcross();
    });
    connect(&gestures(), &Gestures::panned, this, [=, this](const QPointF& by) {
        across_.pan(time(0) - time(by.x()));
        showAcross();
    });
    connect(&gestures(), &Gestures::framed, this, [=, this](const QRect& part) {
        across_.show(time(part.left()), time(part.right()));
        showAcross();
    });
    connect(&gestures(), &Gestures::showAll, this, [this] {
        across_.showAll();
        showAcross();
    });
    connect(&gestures(), &Gestures::hovered, this, &WaveformPlot::hover);
    connect(&gestures(), &Gestures::clicked, this, &WaveformPlot::choose);
    connect(&gestures(), &Gestures::left, this, &WaveformPlot::showCursors);
    connect(&gestures(), &Gestures::stepped, this, [this](int steps, bool far) {
        across_.pan(steps * across_.width() * (far ? 0.5 : 0.1));
        showAcross();
    });
}

void WaveformPlot::setData(std::shared_ptr<const WaveformData> data) {
    data_ = std::move(data);
    first_.reset();
    second_.reset();
    if (data_ && !data_->samples.empty() && data_->sampleRateHz > 0)
        across_.setBounds(0, double(data_->samples.size()) / data_->sampleRateHz, 8 / data_->sampleRateHz);
    rebuild();
}

void WaveformPlot::setUnits(Units units) {
    units_ = units;
    rebuild();
}

void WaveformPlot::rebuild() {
    SeriesPtr series;
    const ShownUnit unit = shownUnit(data_ ? data_->unit : QString(), units_);
    if (data_ && !data_->samples.empty() && data_->sampleRateHz > 0) {
        auto made = std::make_shared<Series>();
        made->dx = 1 / data_->sampleRateHz;
        made->y = data_->samples;
        if (unit.factor != 1)
            for (float& value : made->y)
                value = float(unit.shown(double(value)));
        const auto [low, high] = std::minmax_element(made->y.begin(), made->y.end());
        const double room = std::max(0.12 * double(*high - *low), 1e-9);
        plot().setAxisScale(QwtPlot::yLeft, double(*low) - room, double(*high) + room);
        series = made;
    }
    curve_->setSeries(series);
    QwtText title = plot().axisTitle(QwtPlot::yLeft);
    title.setText(unit.unit);
    plot().setAxisTitle(QwtPlot::yLeft, title);
    plot().setAxisMaxMajor(QwtPlot::yLeft, 5);
    turnsButton_->setEnabled(data_ && data_->shaftHz > 0);
    showTicks();
    showAcross();
    showCursors();
}

void WaveformPlot::showAcross() {
    plot().setAxisScale(QwtPlot::xBottom, across_.from, across_.until);
    plot().replot();
    rest_.start();
}

void WaveformPlot::setImpact(const WaveformPeriod& impact) {
    impact_ = impact;
    showTicks();
}

void WaveformPlot::showTicks() {
    const double origin = first_.value_or(0), shaftHz = data_ ? data_->shaftHz : 0;
    turns_->setPeriod(shaftHz > 0 && turnsButton_->isChecked() ? 1 / shaftHz : 0, origin, tr("turns"));
    const bool impacts = impact_.seconds > 0 && impactsButton_->isChecked();
    impacts_->setPeriod(impacts ? impact_.seconds : 0, origin, impact_.name);
    impactsButton_->setEnabled(impact_.seconds > 0);
    plot().replot();
}

std::pair<std::size_t, std::size_t> WaveformPlot::visible() const {
    if (!data_ || data_->samples.empty() || !(data_->sampleRateHz > 0)) return {0, 0};
    const auto count = data_->samples.size();
    const auto first = std::min(count, std::size_t(std::ceil(across_.from * data_->sampleRateHz - 1e-6)));
    const auto last = std::min(count, std::size_t(across_.until * data_->sampleRateHz + 1e-6) + 1);
    return {first, std::max(first, last)};
}

QString WaveformPlot::figures() const {
    const auto [first, last] = visible();
    if (first == last) return {};
    const std::vector<double> part(data_->samples.begin() + std::ptrdiff_t(first),
                                   data_->samples.begin() + std::ptrdiff_t(last));
    const ShownUnit unit = shownUnit(data_->unit, units_);
    const double mid = mean(part), spread = standardDeviation(part);
    double most = 0;
    for (const double value : part)
        most = std::max(most, std::abs(value - mid));
    return tr("Visible %1 to %2 s, mean taken out: r.m.s. %3, peak %4, crest factor %5, kurtosis %6")
        .arg(fixedText(double(first) / data_->sampleRateHz, 3))
        .arg(fixedText(double(last - 1) / data_->sampleRateHz, 3))
        .arg(valueText(spread * unit.factor, unit.unit), valueText(most * unit.factor, unit.unit),
             significant(spread > 0 ? most / spread : 0), significant(kurtosis(part)));
}

void WaveformPlot::showFigures() {
    figures_->setText(figures());
    figures_->setToolTip(figures_->text());
}

void WaveformPlot::zoomToMarks() {
    if (!first_ || !second_ || *first_ == *second_)
        return setReadout(tr("Set two marks first: click, then Shift and click."));
    across_.show(std::min(*first_, *second_), std::max(*first_, *second_));
    showAcross();
}

QString WaveformPlot::sayAt(double seconds) const {
    const auto i = std::clamp<long long>(std::llround(seconds * data_->sampleRateHz), 0,
                                         (long long)(data_->samples.size()) - 1);
    const ShownUnit unit = shownUnit(data_->unit, units_);
    return tr("%1 s, %2")
        .arg(fixedText(double(i) / data_->sampleRateHz, 5))
        .arg(valueText(unit.shown(double(data_->samples[std::size_t(i)])), unit.unit));
}

void WaveformPlot::showCursors() {
    std::vector<CursorLine> lines;
    if (first_) lines.push_back({*first_, {}, true, Qt::SolidLine});
    if (second_) lines.push_back({*second_, {}, true, Qt::DashLine});
    cursors_->setLines(std::move(lines));
    zoomButton_->setEnabled(first_ && second_);
    if (first_ && second_ && *first_ != *second_) {
        const double apart = std::abs(*second_ - *first_);
        setReadout(
            tr("%1 s apart: %2").arg(fixedText(apart, 5)).arg(frequencyText(1 / apart, data_->shaftHz)));
    } else {
        setReadout(first_ && data_ ? sayAt(*first_) : QString());
    }
    plot().replot();
}

void WaveformPlot::choose(const QPointF& at, Qt::KeyboardModifiers with) {
    if (!data_ || data_->samples.empty()) return;
    const double seconds = plot().canvasMap(QwtPlot::xBottom).invTransform(at.x());
    if (with.testFlag(Qt::ShiftModifier) && first_) {
        second_ = seconds;
    } else {
        first_ = seconds;
        second_.reset();
    }
    showTicks();
    showCursors();
}

void WaveformPlot::hover(const QPointF& at) {
    if (!data_ || data_->samples.empty()) return;
    if (!second_) setReadout(sayAt(plot().canvasMap(QwtPlot::xBottom).invTransform(at.x())));
}

QString WaveformPlot::tableText(TableExtent extent) const {
    const bool all = extent == TableExtent::All;
    const auto shownPart = visible();
    if (shownPart.first == shownPart.second) return {};
    const std::size_t count = data_->samples.size(), first = all ? 0 : shownPart.first;
    const std::size_t last = all ? count : shownPart.second;
    QString text =
        tableHead(all ? tr("all %1 samples").arg(count)
                      : tr("as shown: samples %1 to %2 of %3").arg(first).arg(last - 1).arg(count));
    text += QStringLiteral("s\t%1\n").arg(data_->unit);
    for (std::size_t i = first; i < last; ++i)
        text += QString::number(double(i) / data_->sampleRateHz, 'f', 6) + QLatin1Char('\t') +
                QString::number(double(data_->samples[i]), 'g', 7) + QLatin1Char('\n');
    return text;
}

void WaveformPlot::takeTheme() {
    PlotFrame::takeTheme();
    curve_->setColour(colour(Role::Curve));
    cursors_->setColours(colour(Role::Cursor), colour(Role::Ground));
    turns_->setColour(colour(Role::MutedInk));
    impacts_->setColour(colour(Role::Accent));
}

}  // namespace fettle
