#include <qwt_plot.h>
#include <qwt_scale_map.h>

#include <QComboBox>
#include <algorithm>
#include <cmath>

#include "ui/model/numbers.h"
#include "ui/plot/cursor_item.h"
#include "ui/plot/cursor_strip.h"
#include "ui/plot/cursor_table.h"
#include "ui/plot/gestures.h"
#include "ui/plot/readout.h"
#include "ui/plot/spectrum_plot.h"

namespace fettle {

namespace {

constexpr double kPeakPx = 7, kSignPx = 5;
constexpr double kPeakOverFloor = 2;  // a peak to step to: over the median about it
constexpr double kFine = 0.1;         // of a line

bool isPeak(const SpectrumData& data, std::size_t i) {
    if (i == 0 || i + 1 >= data.values.size()) return false;
    const float v = data.values[i];
    if (v < data.values[i - 1] || v <= data.values[i + 1]) return false;
    const std::size_t first = i > 12 ? i - 12 : 0, last = std::min(data.values.size(), i + 13);
    std::vector<float> near(data.values.begin() + std::ptrdiff_t(first),
                            data.values.begin() + std::ptrdiff_t(last));
    std::nth_element(near.begin(), near.begin() + std::ptrdiff_t(near.size() / 2), near.end());
    const float floor = near[near.size() / 2];
    return data.decibels ? double(v - floor) > 20 * std::log10(kPeakOverFloor)
                         : double(v) > kPeakOverFloor * double(floor);
}

}  // namespace

void SpectrumPlot::connectGestures() {
    const auto hz = [this](double x) {
        return plot().canvasMap(QwtPlot::xBottom).invTransform(x) * unitHz();
    };
    connect(&gestures(), &Gestures::zoomed, this, [=, this](double factor, const QPointF& at, bool) {
        across_.zoom(factor, hz(at.x()));
        showAcross();
    });
    connect(&gestures(), &Gestures::panned, this, [=, this](const QPointF& by) {
        across_.pan(hz(0) - hz(by.x()));
        showAcross();
    });
    connect(&gestures(), &Gestures::framed, this,
            [=, this](const QRect& part) { showHz(hz(part.left()), hz(part.right())); });
    connect(&gestures(), &Gestures::showAll, this, [this] {
        across_.showAll();
        showAcross();
    });
    connect(&gestures(), &Gestures::hovered, this, &SpectrumPlot::hover);
    connect(&gestures(), &Gestures::clicked, this, &SpectrumPlot::choose);
    connect(&gestures(), &Gestures::left, this, &SpectrumPlot::showCursor);
    connect(&gestures(), &Gestures::stepped, this, &SpectrumPlot::step);
    connect(&gestures(), &Gestures::nudged, this, &SpectrumPlot::nudge);
}

void SpectrumPlot::setSidebandHz(double hz) {
    cursor_.spacingHz = hz;
    showCursor();
}

void SpectrumPlot::setSecondHz(std::optional<double> hz) {
    cursor_.second = hz;
    showCursor();
}

void SpectrumPlot::setCursorKind(CursorKind kind) {
    cursor_.kind = kind;
    kindBox_->setCurrentIndex(kindBox_->findData(int(kind)));
    showCursor();
}

std::vector<double> SpectrumPlot::cursorPlacesHz() const {
    std::vector<double> hz;
    if (selection_.cursorHz())
        for (const CursorPlace& place :
             cursorPlaces(cursor_, *selection_.cursorHz(), data_ ? data_->shaftHz : 0))
            hz.push_back(place.hz);
    return hz;
}

std::vector<CursorRow> SpectrumPlot::cursorLines() const {
    if (!selection_.cursorHz() || !usable()) return {};
    return cursorRows(cursorPlaces(cursor_, *selection_.cursorHz(), data_->shaftHz), *data_, reading_);
}

void SpectrumPlot::showCursor() {
    std::vector<CursorPlace> places;
    if (selection_.cursorHz())
        places = cursorPlaces(cursor_, *selection_.cursorHz(), data_ ? data_->shaftHz : 0);
    std::vector<CursorLine> lines;
    for (std::size_t i = 0; i < places.size(); ++i)
        lines.push_back(
            {places[i].hz / unitHz(), places[i].name, true, i == 0 ? Qt::SolidLine : Qt::DashLine});
    cursorLabels_->setLines(lines);
    cursors_->setLines(std::move(lines));
    const std::vector<CursorRow> rows = cursorLines();
    strip_->show(cursor_, selection_.cursorHz(), data_ ? data_->shaftHz : 0, data_ ? data_->dfHz : 1,
                 selection_.units());
    showDifference(rows);
    if (!table_->isHidden()) table_->setRows(rows, reading_.unit(), selection_.units());
    if (places.empty() || !usable()) {
        setReadout({});
    } else {
        const auto line = std::size_t(std::llround(places[0].hz / data_->dfHz));
        setReadout(line < data_->values.size() ? sayAt(line) : QString());
    }
    plot().replot();
}

// B minus A in Hz, orders and r/min, B over A as a ratio and in decibels.
void SpectrumPlot::showDifference(const std::vector<CursorRow>& rows) {
    if (cursor_.kind != CursorKind::Two) return;
    if (rows.size() < 2) return strip_->setDifference(tr("Shift and click sets B"));
    const double db =
        data_->decibels ? rows[1].value - rows[0].value : reading_.ratioDb(rows[1].value, rows[0].value);
    const QString between =
        tr("B − A: %1").arg(frequencyText(*cursor_.second - *selection_.cursorHz(), data_->shaftHz));
    strip_->setDifference(data_->decibels ? tr("%1; %2 dB").arg(between).arg(fixedText(db, 1))
                                          : tr("%1; B / A %2 (%3 dB)")
                                                .arg(between, significant(std::pow(10, db / 20)))
                                                .arg(fixedText(db, 1)));
}

QString SpectrumPlot::sayAt(std::size_t line) const {
    const double hz = data_->dfHz * double(line), value = reading_.shown(double(data_->values[line]));
    const QString amplitude = reading_.decibels() ? fixedText(value, 1) + QChar(' ') + reading_.unit()
                                                  : valueText(value, reading_.unit());
    return tr("%1, %2").arg(frequencyText(hz, data_->shaftHz), amplitude);
}

std::size_t SpectrumPlot::highestNear(double x, double px) const {
    const QwtScaleMap map = plot().canvasMap(QwtPlot::xBottom);
    const double low = map.invTransform(x - px) * unitHz() / data_->dfHz;
    const double high = map.invTransform(x + px) * unitHz() / data_->dfHz;
    const auto count = data_->values.size();
    const auto first = std::min(std::size_t(std::max(0.0, std::ceil(low))), count - 1);
    const auto last = std::clamp(std::size_t(std::max(0.0, std::floor(high))) + 1, first + 1, count);
    const auto top = std::max_element(data_->values.begin() + std::ptrdiff_t(first),
                                      data_->values.begin() + std::ptrdiff_t(last));
    return std::size_t(top - data_->values.begin());
}

void SpectrumPlot::choose(const QPointF& at, Qt::KeyboardModifiers with) {
    if (!usable()) return;
    const double hz = data_->dfHz * double(highestNear(at.x(), kPeakPx));
    if (!with.testFlag(Qt::ShiftModifier) || !selection_.cursorHz()) return selection_.setCursorHz(hz);
    if (cursor_.kind == CursorKind::Two) return setSecondHz(hz);
    setCursorKind(CursorKind::Sidebands);
    setSidebandHz(std::abs(hz - *selection_.cursorHz()));
}

void SpectrumPlot::hover(const QPointF& at) {
    if (!usable()) return;
    const QwtScaleMap map = plot().canvasMap(QwtPlot::xBottom);
    const auto mark = markItem_->markNear(map, at.x(), kSignPx);
    QString text = sayAt(highestNear(at.x(), 1));
    const double hz = map.invTransform(at.x()) * unitHz();
    const auto range = std::find_if(ranges_.begin(), ranges_.end(), [hz](const DefectBand& one) {
        return hz >= one.fromHz && hz <= one.untilHz;
    });
    if (mark)
        text = tr("%1: %2. %3").arg(mark->name, mark->note, text);
    else if (range != ranges_.end())
        text = tr("%1: %2. %3").arg(range->name, range->note, text);
    setReadout(text);
}

void SpectrumPlot::step(int steps, bool far) {
    if (!usable() || data_->values.size() < 2) return;
    const double now = selection_.cursorHz().value_or((across_.from + across_.until) / 2);
    const auto last = std::ptrdiff_t(data_->values.size()) - 1;
    auto line = std::clamp<std::ptrdiff_t>(std::llround(now / data_->dfHz) + steps, 0, last);
    if (far)
        while (line > 0 && line < last && !isPeak(*data_, std::size_t(line)))
            line += steps;
    selection_.setCursorHz(data_->dfHz * double(line));
    across_.bring(data_->dfHz * double(line));
    showAcross();
}

// The carrier by a tenth of a line; or what belongs to its kind.
void SpectrumPlot::nudge(int steps, bool other) {
    if (!usable() || !selection_.cursorHz()) return;
    const double by = steps * kFine * data_->dfHz;
    if (!other) return selection_.setCursorHz(std::max(0.0, *selection_.cursorHz() + by));
    if (cursor_.kind == CursorKind::Harmonics)
        cursor_.harmonics = std::clamp(cursor_.harmonics + steps, 1, 60);
    if (cursor_.kind == CursorKind::Two)
        cursor_.second = std::max(0.0, cursor_.second.value_or(*selection_.cursorHz()) + steps * data_->dfHz);
    if (cursor_.kind == CursorKind::Sidebands) {
        const double apart = cursor_.spacingHz > 0 ? cursor_.spacingHz : data_->shaftHz;
        cursor_.spacingHz = std::max(by, apart + by);
    }
    showCursor();
}

}  // namespace fettle
