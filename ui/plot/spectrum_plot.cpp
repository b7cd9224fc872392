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
#include "ui/plot/gestures.h"
#include "ui/plot/line_item.h"
#include "ui/plot/readout.h"

namespace fettle {

namespace {

constexpr double kPickPx = 7, kMarkPx = 5;
constexpr int kHarmonics = 20, kSidebands = 5;
constexpr double kLogDecades = 4;     // shown below the highest value
constexpr double kPeakOverFloor = 2;  // a peak to step to: over the median about it

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

QToolButton* toggle(const QString& text, const QString& name, const QString& help, QWidget* parent) {
    auto* button = new QToolButton(parent);
    button->setText(text);
    button->setObjectName(name);
    button->setAccessibleName(help);
    button->setToolTip(help);
    button->setCheckable(true);
    return button;
}

}  // namespace

SpectrumPlot::SpectrumPlot(const Theme& theme, Selection& selection, const QString& name,
                           const QString& title, QWidget* parent)
    : PlotFrame(theme, name, title, parent),
      selection_(selection),
      curve_(new LineItem),
      markItem_(new LineMarks(theme)),
      cursors_(new CursorItem),
      cursorLabels_(new CursorItem) {
    curve_->attach(&plot());
    curve_->setWidth(1.1);
    markItem_->attach(&plot());
    cursors_->setZ(5);  // below the curve: a cursor must not hide the peak it stands on
    cursors_->setRimmed(false);
    cursors_->setParts(CursorItem::Lines);
    cursors_->attach(&plot());
    cursorLabels_->setParts(CursorItem::Labels);
    cursorLabels_->attach(&plot());
    addControls();
    connectGestures();
    connect(&selection_, &Selection::cursorChanged, this, &SpectrumPlot::showCursor);
    SpectrumPlot::takeTheme();
}

void SpectrumPlot::addControls() {
    kindBox_ = new QComboBox(this);
    kindBox_->setObjectName(objectName() + QStringLiteral("CursorKind"));
    kindBox_->setAccessibleName(tr("Kind of cursor"));
    kindBox_->setToolTip(tr("Kind of cursor; Shift and click sets the spacing of the sidebands"));
    kindBox_->addItems({tr("one cursor"), tr("harmonics"), tr("sidebands")});
    connect(kindBox_, &QComboBox::currentIndexChanged, this,
            [this](int index) { setCursorKind(CursorKind(index)); });
    ordersButton_ = toggle(tr("orders"), objectName() + QStringLiteral("Orders"),
                           tr("Frequency axis in orders of the shaft"), this);
    connect(ordersButton_, &QToolButton::toggled, this, &SpectrumPlot::setOrders);
    logButton_ = toggle(tr("log"), objectName() + QStringLiteral("Log"), tr("Logarithmic amplitude"), this);
    connect(logButton_, &QToolButton::toggled, this, &SpectrumPlot::setLogarithmic);
    addControl(logButton_);
    addControl(ordersButton_);
    addControl(kindBox_);
}

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
}

void SpectrumPlot::setData(std::shared_ptr<const SpectrumData> data) {
    const double topBefore = across_.most;
    data_ = std::move(data);
    const std::size_t count = data_ ? data_->values.size() : 0;
    const double top = data_ ? data_->dfHz * double(count) : 1;
    if (std::abs(top - topBefore) > 0.01 * top) across_.setBounds(0, top, 8 * (data_ ? data_->dfHz : 1));
    logButton_->setVisible(!data_ || !data_->decibels);
    ordersButton_->setEnabled(data_ && data_->shaftHz > 0);
    rebuild();
}

double SpectrumPlot::unitHz() const {
    return orders_ && data_ && data_->shaftHz > 0 ? data_->shaftHz : 1;
}

void SpectrumPlot::rebuild() {
    SeriesPtr series;
    if (data_) {
        auto made = std::make_shared<Series>();
        made->dx = data_->dfHz / unitHz();
        made->y = data_->values;
        series = made;
    }
    curve_->setSeries(series);
    std::vector<LineMark> marks = marksHz_;
    for (LineMark& mark : marks)
        mark.at /= unitHz();
    markItem_->setMarks(std::move(marks));
    showAxes();
    showAcross();
    showCursor();
}

void SpectrumPlot::setMarks(std::vector<LineMark> marks) {
    marksHz_ = std::move(marks);
    rebuild();
}

void SpectrumPlot::setSidebandHz(double hz) {
    sidebandHz_ = hz;
    showCursor();
}

void SpectrumPlot::setCursorKind(CursorKind kind) {
    kind_ = kind;
    kindBox_->setCurrentIndex(int(kind));
    showCursor();
}

void SpectrumPlot::setOrders(bool orders) {
    orders_ = orders;
    ordersButton_->setChecked(orders);
    rebuild();
}

void SpectrumPlot::setLogarithmic(bool logarithmic) {
    logarithmic_ = logarithmic;
    logButton_->setChecked(logarithmic);
    rebuild();
}

void SpectrumPlot::showHz(double from, double until) {
    across_.show(from, until);
    showAcross();
}

void SpectrumPlot::showAxes() {
    const bool log = logarithmic_ && data_ && !data_->decibels;
    plot().setAxisScaleEngine(
        QwtPlot::yLeft, log ? static_cast<QwtScaleEngine*>(new QwtLogScaleEngine) : new QwtLinearScaleEngine);
    QwtText across = plot().axisTitle(QwtPlot::xBottom), upright = plot().axisTitle(QwtPlot::yLeft);
    across.setText(unitHz() != 1 ? tr("orders of the shaft") : tr("Hz"));
    upright.setText(data_ ? data_->unit : QString());
    plot().setAxisTitle(QwtPlot::xBottom, across);
    plot().setAxisTitle(QwtPlot::yLeft, upright);
}

void SpectrumPlot::showAcross() {
    plot().setAxisScale(QwtPlot::xBottom, across_.from / unitHz(), across_.until / unitHz());
    plot().setAxisMaxMajor(QwtPlot::xBottom, 10);
    showUpright();
}

// The highest value seen, and room above it for the marks.
void SpectrumPlot::showUpright() {
    if (!data_ || data_->values.empty() || !(data_->dfHz > 0)) return;
    const auto first = std::min(std::size_t(across_.from / data_->dfHz), data_->values.size() - 1);
    const auto last =
        std::clamp(std::size_t(across_.until / data_->dfHz) + 1, first + 1, data_->values.size());
    // The first three lines hold what is left of the mean: not what the scale is for.
    const auto from = std::min(std::max<std::size_t>(first, 3), last - 1);
    double high = double(*std::max_element(data_->values.begin() + std::ptrdiff_t(from),
                                           data_->values.begin() + std::ptrdiff_t(last)));
    const double head = LineMarks::headroom(QFontMetricsF(font()));
    const double height = std::max(canvas()->height() - head, 40.0);
    plot().setAxisMaxMajor(QwtPlot::yLeft, logarithmic_ ? 8 : 5);
    if (logarithmic_ && !data_->decibels) {
        high = std::max(high, 1e-9);
        const double low = high / std::pow(10, kLogDecades);
        plot().setAxisScale(QwtPlot::yLeft, low, high * std::pow(high / low, head / height));
    } else {
        const double low = data_->least;
        high = high > low ? high : low + 1e-6;
        plot().setAxisScale(QwtPlot::yLeft, low, high + (high - low) * (head / height + 0.03));
    }
    plot().replot();
}

void SpectrumPlot::resizeEvent(QResizeEvent* event) {
    PlotFrame::resizeEvent(event);
    showUpright();
}

std::vector<double> SpectrumPlot::cursorPlacesHz() const {
    if (!selection_.cursorHz()) return {};
    const double at = *selection_.cursorHz();
    std::vector<double> places = {at};
    const double apart = sidebandHz_ > 0 ? sidebandHz_ : data_ ? data_->shaftHz : 0;
    if (kind_ == CursorKind::Harmonics)
        for (int h = 2; h <= kHarmonics; ++h)
            places.push_back(h * at);
    if (kind_ == CursorKind::Sidebands && apart > 0)
        for (int k = 1; k <= kSidebands; ++k)
            for (const int side : {-1, 1})
                if (at + side * k * apart > 0) places.push_back(at + side * k * apart);
    return places;
}

void SpectrumPlot::showCursor() {
    const std::vector<double> places = cursorPlacesHz();
    std::vector<CursorLine> lines;
    for (std::size_t i = 0; i < places.size(); ++i) {
        QString label;
        if (kind_ == CursorKind::Harmonics && i > 0) label = QString::number(i + 1);
        lines.push_back({places[i] / unitHz(), label, true, i == 0 ? Qt::SolidLine : Qt::DashLine});
    }
    cursorLabels_->setLines(lines);
    cursors_->setLines(std::move(lines));
    if (places.empty() || !data_ || data_->values.empty() || !(data_->dfHz > 0)) {
        setReadout({});
    } else {
        const auto line = std::size_t(std::llround(places[0] / data_->dfHz));
        setReadout(line < data_->values.size() ? sayAt(line) : QString());
    }
    plot().replot();
}

QString SpectrumPlot::sayAt(std::size_t line) const {
    const double hz = data_->dfHz * double(line);
    const double value = double(data_->values[line]);
    const QString amplitude = data_->decibels ? QString::number(value, 'f', 1) + QChar(' ') + data_->unit
                                              : valueText(value, data_->unit);
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
    if (!data_ || data_->values.empty() || !(data_->dfHz > 0)) return;
    const double hz = data_->dfHz * double(highestNear(at.x(), kPickPx));
    if (with.testFlag(Qt::ShiftModifier) && selection_.cursorHz()) {
        setCursorKind(CursorKind::Sidebands);
        setSidebandHz(std::abs(hz - *selection_.cursorHz()));
    } else {
        selection_.setCursorHz(hz);
    }
}

void SpectrumPlot::hover(const QPointF& at) {
    if (!data_ || data_->values.empty() || !(data_->dfHz > 0)) return;
    const QwtScaleMap map = plot().canvasMap(QwtPlot::xBottom);
    const auto mark = markItem_->markNear(map, at.x(), kMarkPx);
    QString text = sayAt(highestNear(at.x(), 1));
    if (mark) text = tr("%1: %2. %3").arg(mark->name, mark->note, text);
    setReadout(text);
}

void SpectrumPlot::step(int steps, bool far) {
    if (!data_ || data_->values.size() < 2 || !(data_->dfHz > 0)) return;
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

void SpectrumPlot::takeTheme() {
    PlotFrame::takeTheme();
    curve_->setColour(colour(Role::Curve));
    cursors_->setColours(colour(Role::Cursor), colour(Role::Ground));
    cursorLabels_->setColours(colour(Role::Cursor), colour(Role::Ground));
}

}  // namespace fettle
