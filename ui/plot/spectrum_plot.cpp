#include "ui/plot/spectrum_plot.h"

#include <qwt_plot.h>
#include <qwt_scale_engine.h>
#include <qwt_scale_map.h>
#include <qwt_text.h>

#include <QComboBox>
#include <QToolButton>
#include <algorithm>
#include <cmath>

#include "ui/plot/cursor_item.h"
#include "ui/plot/cursor_strip.h"
#include "ui/plot/cursor_table.h"
#include "ui/plot/gestures.h"
#include "ui/plot/line_item.h"
#include "ui/plot/overlay_items.h"

namespace fettle {

namespace {
constexpr double kLogDecades = 4;  // shown below the highest value
constexpr std::size_t kNoScale =
    3;  // the first lines hold what is left of the mean: not what the scale is for
}  // namespace

SpectrumPlot::SpectrumPlot(const Theme& theme, Selection& selection, const QString& name,
                           const QString& title, QWidget* parent)
    : PlotFrame(theme, name, title, parent),
      selection_(selection),
      curve_(new LineItem),
      referenceCurve_(new LineItem),
      markItem_(new LineMarks(theme)),
      bandItem_(new BandItem),
      rangeItem_(new RangeItem(theme)),
      legend_(new LegendItem(theme)),
      cursors_(new CursorItem),
      cursorLabels_(new CursorItem) {
    curve_->setWidth(1.1);
    referenceCurve_->setWidth(1.1);
    referenceCurve_->setZ(8);
    cursors_->setZ(5);  // below the curve: a cursor must not hide the peak it stands on
    cursors_->setRimmed(false);
    cursors_->setParts(CursorItem::Lines);
    cursorLabels_->setParts(CursorItem::Labels);
    legend_->setTop(LineMarks::headroom(QFontMetricsF(font())));
    for (QwtPlotItem* item : std::initializer_list<QwtPlotItem*>{
             curve_, referenceCurve_, markItem_, bandItem_, rangeItem_, legend_, cursors_, cursorLabels_})
        item->attach(&plot());
    addControls();
    addCursorParts();
    connectGestures();
    connect(&selection_, &Selection::cursorChanged, this, &SpectrumPlot::showCursor);
    connect(&selection_, &Selection::unitsChanged, this, &SpectrumPlot::rebuild);
    SpectrumPlot::takeTheme();
    setCursorKind(CursorKind::Single);
}

bool SpectrumPlot::usable() const {
    return data_ && !data_->values.empty() && data_->dfHz > 0;
}

void SpectrumPlot::setData(std::shared_ptr<const SpectrumData> data) {
    const double topBefore = across_.most;
    data_ = std::move(data);
    const std::size_t count = data_ ? data_->values.size() : 0;
    const double top = data_ ? data_->dfHz * double(count) : 1;
    if (std::abs(top - topBefore) > 0.01 * top) across_.setBounds(0, top, 8 * (data_ ? data_->dfHz : 1));
    ordersButton_->setEnabled(data_ && data_->shaftHz > 0);
    rebuild();
}

double SpectrumPlot::unitHz() const {
    if (orders_ && data_ && data_->shaftHz > 0) return data_->shaftHz;
    return 1 / shownUnit(QStringLiteral("Hz"), selection_.units()).factor;
}

void SpectrumPlot::rebuild() {
    reading_ = data_ ? SpectrumReading(*data_, amplitude_, selection_.units()) : SpectrumReading();
    shownValues_ = data_ ? reading_.shown(data_->values) : std::vector<float>();
    SeriesPtr series;
    if (data_) {
        auto made = std::make_shared<Series>();
        made->dx = data_->dfHz / unitHz();
        made->y = shownValues_;
        series = made;
    }
    curve_->setSeries(series);
    std::vector<LineMark> marks = marksHz_;
    for (LineMark& mark : marks)
        mark.at /= unitHz();
    markItem_->setMarks(std::move(marks));
    showAmplitudeChoice();
    rebuildOverlays();
    showAxes();
    showAcross();
    showCursor();
}

void SpectrumPlot::setMarks(std::vector<LineMark> marks) {
    marksHz_ = std::move(marks);
    rebuild();
}

void SpectrumPlot::setOrders(bool orders) {
    orders_ = orders;
    ordersButton_->setChecked(orders);
    rebuild();
}

void SpectrumPlot::setLogarithmic(bool logarithmic) {
    setAmplitude({amplitude_.reading, logarithmic ? AmplitudeScale::Logarithmic : AmplitudeScale::Linear});
}

void SpectrumPlot::setAmplitude(AmplitudeChoice choice) {
    amplitude_ = choice;
    rebuild();
}

void SpectrumPlot::showHz(double from, double until) {
    across_.show(from, until);
    showAcross();
}

void SpectrumPlot::showAxes() {
    const bool log = amplitude_.scale == AmplitudeScale::Logarithmic && !reading_.decibels();
    plot().setAxisScaleEngine(
        QwtPlot::yLeft, log ? static_cast<QwtScaleEngine*>(new QwtLogScaleEngine) : new QwtLinearScaleEngine);
    QwtText across = plot().axisTitle(QwtPlot::xBottom), upright = plot().axisTitle(QwtPlot::yLeft);
    const bool inOrders = orders_ && data_ && data_->shaftHz > 0;
    across.setText(inOrders ? tr("orders of the shaft")
                            : shownUnit(QStringLiteral("Hz"), selection_.units()).unit);
    upright.setText(data_ ? reading_.unit() : QString());
    plot().setAxisTitle(QwtPlot::xBottom, across);
    plot().setAxisTitle(QwtPlot::yLeft, upright);
}

void SpectrumPlot::showAcross() {
    plot().setAxisScale(QwtPlot::xBottom, across_.from / unitHz(), across_.until / unitHz());
    plot().setAxisMaxMajor(QwtPlot::xBottom, 10);
    showUpright();
}

float SpectrumPlot::highestWithin(const std::vector<float>& values, double dfHz) const {
    if (values.empty() || !(dfHz > 0)) return -1e9F;
    const auto first = std::min(std::size_t(across_.from / dfHz), values.size() - 1);
    const auto last = std::clamp(std::size_t(across_.until / dfHz) + 1, first + 1, values.size());
    const auto from = std::min(std::max(first, kNoScale), last - 1);
    return *std::max_element(values.begin() + std::ptrdiff_t(from), values.begin() + std::ptrdiff_t(last));
}

// The highest value seen, and room above it for the marks.
void SpectrumPlot::showUpright() {
    if (!usable()) return;
    double high = double(highestWithin(shownValues_, data_->dfHz));
    if (reference_)
        high = std::max(high, double(highestWithin(shownReference_, reference_->data->dfHz * stretch())));
    const double head = LineMarks::headroom(QFontMetricsF(font()));
    const double height = std::max(canvas()->height() - head, 40.0);
    const bool log = amplitude_.scale == AmplitudeScale::Logarithmic && !reading_.decibels();
    plot().setAxisMaxMajor(QwtPlot::yLeft, log ? 8 : 5);
    if (log) {
        high = std::max(high, 1e-9);
        const double low = high / std::pow(10, kLogDecades);
        plot().setAxisScale(QwtPlot::yLeft, low, high * std::pow(high / low, head / height));
    } else {
        const double low = reading_.decibels() && !data_->decibels ? reading_.bottom(high) : data_->least;
        high = high > low ? high : low + 1e-6;
        plot().setAxisScale(QwtPlot::yLeft, low, high + (high - low) * (head / height + 0.03));
    }
    plot().replot();
}

void SpectrumPlot::resizeEvent(QResizeEvent* event) {
    PlotFrame::resizeEvent(event);
    showUpright();
}

void SpectrumPlot::takeTheme() {
    PlotFrame::takeTheme();
    curve_->setColour(colour(Role::Curve));
    referenceCurve_->setColour(colour(Role::SecondCurve));
    bandItem_->setColour(colour(Role::MutedInk));
    cursors_->setColours(colour(Role::Cursor), colour(Role::Ground));
    cursorLabels_->setColours(colour(Role::Cursor), colour(Role::Ground));
    rebuildLegend();
}

QString SpectrumPlot::tableText(TableExtent extent) const {
    if (!usable()) return {};
    const SpectrumReading stored(*data_, amplitude_, Units{});  // exported in SI
    const bool all = extent == TableExtent::All;
    const std::size_t last = data_->values.size() - 1;
    const auto from = all ? 0 : std::min(last, std::size_t(std::ceil(across_.from / data_->dfHz)));
    const auto until = all ? last : std::min(last, std::size_t(across_.until / data_->dfHz));
    QString text = tableHead(all ? tr("all %1 lines").arg(last + 1)
                                 : tr("as shown: lines %1 to %2 of %3").arg(from).arg(until).arg(last + 1));
    const bool orders = data_->shaftHz > 0;
    text += orders ? QStringLiteral("Hz\torder\t%1\n").arg(stored.unit())
                   : QStringLiteral("Hz\t%1\n").arg(stored.unit());
    for (std::size_t i = from; i <= until; ++i) {
        const double hz = data_->dfHz * double(i);
        text += QString::number(hz, 'f', 4);
        if (orders) text += QLatin1Char('\t') + QString::number(hz / data_->shaftHz, 'f', 5);
        text += QLatin1Char('\t') + QString::number(stored.shown(double(data_->values[i])), 'g', 6) +
                QLatin1Char('\n');
    }
    return text;
}

}  // namespace fettle
