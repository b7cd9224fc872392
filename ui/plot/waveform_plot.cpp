#include "ui/plot/waveform_plot.h"

#include <qwt_plot.h>
#include <qwt_scale_map.h>
#include <qwt_text.h>

#include <algorithm>
#include <cmath>

#include "ui/plot/cursor_item.h"
#include "ui/plot/gestures.h"
#include "ui/plot/line_item.h"
#include "ui/plot/readout.h"

namespace fettle {

WaveformPlot::WaveformPlot(const Theme& theme, QWidget* parent)
    : PlotFrame(theme, QStringLiteral("waveform"), tr("Waveform"), parent),
      curve_(new LineItem),
      cursors_(new CursorItem) {
    curve_->attach(&plot());
    curve_->setWidth(1);
    cursors_->attach(&plot());
    QwtText title = plot().axisTitle(QwtPlot::xBottom);
    title.setText(tr("s"));
    plot().setAxisTitle(QwtPlot::xBottom, title);
    connectGestures();
    WaveformPlot::takeTheme();
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
    const bool there = data_ && !data_->samples.empty() && data_->sampleRateHz > 0;
    SeriesPtr series;
    if (there) {
        auto made = std::make_shared<Series>();
        made->dx = 1 / data_->sampleRateHz;
        made->y = data_->samples;
        series = made;
        across_.setBounds(0, double(data_->samples.size()) * made->dx, 8 * made->dx);
    }
    curve_->setSeries(series);
    QwtText unit = plot().axisTitle(QwtPlot::yLeft);
    unit.setText(data_ ? data_->unit : QString());
    plot().setAxisTitle(QwtPlot::yLeft, unit);
    if (there) {
        const auto [low, high] = std::minmax_element(data_->samples.begin(), data_->samples.end());
        const double room = std::max(0.05 * double(*high - *low), 1e-9);
        plot().setAxisScale(QwtPlot::yLeft, double(*low) - room, double(*high) + room);
    }
    plot().setAxisMaxMajor(QwtPlot::yLeft, 5);
    showAcross();
    showCursors();
}

void WaveformPlot::showAcross() {
    plot().setAxisScale(QwtPlot::xBottom, across_.from, across_.until);
    plot().replot();
}

QString WaveformPlot::sayAt(double seconds) const {
    const auto i = std::clamp<long long>(std::llround(seconds * data_->sampleRateHz), 0,
                                         (long long)(data_->samples.size()) - 1);
    return tr("%1 s, %2")
        .arg(double(i) / data_->sampleRateHz, 0, 'f', 5)
        .arg(valueText(double(data_->samples[std::size_t(i)]), data_->unit));
}

void WaveformPlot::showCursors() {
    std::vector<CursorLine> lines;
    if (first_) lines.push_back({*first_, {}, true, Qt::SolidLine});
    if (second_) lines.push_back({*second_, {}, true, Qt::DashLine});
    cursors_->setLines(std::move(lines));
    if (first_ && second_ && *first_ != *second_) {
        const double apart = std::abs(*second_ - *first_);
        setReadout(tr("%1 s apart: %2").arg(apart, 0, 'f', 5).arg(frequencyText(1 / apart, data_->shaftHz)));
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
    showCursors();
}

void WaveformPlot::hover(const QPointF& at) {
    if (!data_ || data_->samples.empty()) return;
    if (!second_) setReadout(sayAt(plot().canvasMap(QwtPlot::xBottom).invTransform(at.x())));
}

void WaveformPlot::takeTheme() {
    PlotFrame::takeTheme();
    curve_->setColour(colour(Role::Curve));
    cursors_->setColours(colour(Role::Cursor), colour(Role::Ground));
}

}  // namespace fettle
