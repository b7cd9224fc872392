#include "ui/plot/lanes_plot.h"

#include <qwt_plot.h>
#include <qwt_scale_map.h>
#include <qwt_text.h>

#include <QPainter>
#include <QToolButton>
#include <algorithm>
#include <cmath>

#include "ui/plot/cursor_item.h"
#include "ui/plot/gestures.h"
#include "ui/plot/line_item.h"
#include "ui/plot/plot_tool.h"
#include "ui/plot/readout.h"

namespace fettle {

namespace {

constexpr double kRise = 0.72;  // of a lane: the rest is for its name
constexpr double kLanePickPx = 4;
constexpr double kLeastShownHz = 2;  // drift below it sets no scale

double topOf(const SpectrumData& data) {
    double top = 0;
    for (std::size_t i = std::size_t(kLeastShownHz / data.dfHz); i < data.values.size(); ++i)
        top = std::max(top, double(data.values[i]));
    return top > 0 ? top : 1;
}

}  // namespace

// Names over the lanes and the rules they stand on.
class LaneNames : public QwtPlotItem {
  public:
    explicit LaneNames(const Theme& theme) : theme_(theme) {
        setItemAttribute(QwtPlotItem::Legend, false);
        setZ(20);
    }
    void setNames(QStringList names) { names_ = std::move(names); }
    void draw(QPainter* painter, const QwtScaleMap&, const QwtScaleMap& yMap,
              const QRectF& canvas) const override {
        const QFontMetricsF metrics(painter->font());
        for (int i = 0; i < names_.size(); ++i) {
            const double base = yMap.transform(double(names_.size()) - 1 - i);
            const double top = yMap.transform(double(names_.size()) - i);
            painter->setPen(QPen(theme_.colour(Role::Rule), 1));
            painter->drawLine(QPointF(canvas.left(), base), QPointF(canvas.right(), base));
            const QString name = metrics.elidedText(names_[i], Qt::ElideMiddle, canvas.width() - 8);
            const QRectF box(canvas.left() + 4, top + 1, metrics.horizontalAdvance(name), metrics.height());
            QColor ground = theme_.colour(Role::Ground);
            ground.setAlphaF(0.8F);
            painter->fillRect(box, ground);
            painter->setPen(theme_.colour(Role::Ink));
            painter->drawText(box, Qt::AlignLeft | Qt::AlignVCenter, name);
        }
    }

  private:
    const Theme& theme_;
    QStringList names_;
};

LanesPlot::LanesPlot(const Theme& theme, Selection& selection, QWidget* parent)
    : PlotFrame(theme, QStringLiteral("lanesPlot"), tr("Spectra below each other"), parent),
      selection_(selection),
      names_(new LaneNames(theme)),
      cursor_(new CursorItem),
      ordersButton_(plotTool(tr("orders"), QStringLiteral("lanesOrders"),
                             tr("Orders of each machine's own shaft across"), this)),
      ownButton_(plotTool(tr("own scales"), QStringLiteral("lanesOwn"),
                          tr("Each lane up to its own highest line"), this)) {
    names_->attach(&plot());
    cursor_->attach(&plot());
    plot().setAxisVisible(QwtPlot::yLeft, false);
    for (QToolButton* button : {ordersButton_, ownButton_})
        button->setCheckable(true);
    addControl(ownButton_);
    addControl(ordersButton_);
    connect(ordersButton_, &QToolButton::toggled, this, &LanesPlot::setOrders);
    connect(ownButton_, &QToolButton::toggled, this, &LanesPlot::setOwnScales);
    connect(&selection_, &Selection::unitsChanged, this, &LanesPlot::rebuild);
    connect(&selection_, &Selection::cursorChanged, this, &LanesPlot::showCursor);
    connectGestures();
    LanesPlot::takeTheme();
}

LanesPlot::~LanesPlot() = default;

void LanesPlot::connectGestures() {
    const auto x = [this](double px) { return plot().canvasMap(QwtPlot::xBottom).invTransform(px); };
    connect(&gestures(), &Gestures::zoomed, this, [=, this](double factor, const QPointF& at) {
        across_.zoom(factor, x(at.x()));
        showAxes();
    });
    connect(&gestures(), &Gestures::panned, this, [=, this](const QPointF& by) {
        across_.pan(x(0) - x(by.x()));
        showAxes();
    });
    connect(&gestures(), &Gestures::framed, this, [=, this](const QRect& part) {
        across_.show(x(part.left()), x(part.right()));
        showAxes();
    });
    connect(&gestures(), &Gestures::showAll, this, [this] {
        across_.showAll();
        showAxes();
    });
    connect(&gestures(), &Gestures::hovered, this, &LanesPlot::hover);
    connect(&gestures(), &Gestures::clicked, this, &LanesPlot::choose);
    connect(&gestures(), &Gestures::left, this, [this] { setReadout({}); });
}

void LanesPlot::setLanes(std::vector<Lane> lanes) {
    lanes_ = std::move(lanes);
    std::erase_if(lanes_, [](const Lane& lane) {
        return !lane.data || !(lane.data->dfHz > 0) || lane.data->values.empty();
    });
    const bool speeds =
        std::all_of(lanes_.begin(), lanes_.end(), [](const Lane& lane) { return lane.data->shaftHz > 0; });
    ordersButton_->setEnabled(speeds);
    if (!speeds) orders_ = false;
    ordersButton_->setChecked(orders_);
    rebuild();
}

void LanesPlot::setOrders(bool orders) {
    orders_ = orders;
    ordersButton_->setChecked(orders);
    rebuild();
}

void LanesPlot::setOwnScales(bool own) {
    own_ = own;
    ownButton_->setChecked(own);
    rebuild();
}

void LanesPlot::showHz(double from, double until) {
    if (lanes_.empty()) return;
    across_.show(from / unitHz(lanes_.front()), until / unitHz(lanes_.front()));
    showAxes();
}

double LanesPlot::unitHz(const Lane& lane) const {
    return orders_ ? lane.data->shaftHz : 1 / shownUnit(QStringLiteral("Hz"), selection_.units()).factor;
}

double LanesPlot::placeOf(std::size_t lane, double value) const {
    return double(lanes_.size() - 1 - lane) + kRise * std::clamp(value / tops_[lane], 0.0, 1.0);
}

QString LanesPlot::valueOf(const Lane& lane, std::size_t line) const {
    const double value = double(lane.data->values[line]);
    if (lane.data->decibels) return valueText(value, lane.data->unit);
    const ShownUnit to = shownUnit(lane.data->unit, selection_.units());
    return valueText(to.shown(value), to.unit);
}

void LanesPlot::rebuild() {
    for (LineItem* curve : curves_) {
        curve->detach();
        delete curve;
    }
    curves_.clear();
    tops_.clear();
    for (const Lane& lane : lanes_)
        tops_.push_back(topOf(*lane.data));
    const double most = tops_.empty() ? 1 : *std::max_element(tops_.begin(), tops_.end());
    if (!own_) std::fill(tops_.begin(), tops_.end(), most);
    QStringList names;
    double end = 0, narrow = 1e9;
    for (std::size_t i = 0; i < lanes_.size(); ++i) {
        const Lane& lane = lanes_[i];
        auto series = std::make_shared<Series>();
        series->dx = lane.data->dfHz / unitHz(lane);
        series->y.reserve(lane.data->values.size());
        for (const float value : lane.data->values)
            series->y.push_back(float(placeOf(i, double(value))));
        end = std::max(end, series->dx * double(series->size()));
        narrow = std::min(narrow, 8 * series->dx);
        const auto from = lane.data->values.begin() +
                          std::ptrdiff_t(std::min(lane.data->values.size() - 1,
                                                  std::size_t(kLeastShownHz / lane.data->dfHz)));
        const auto highest =
            std::size_t(std::max_element(from, lane.data->values.end()) - lane.data->values.begin());
        names << tr("%1: highest %2 at %3")
                     .arg(lane.name, valueOf(lane, highest),
                          frequencyText(double(highest) * lane.data->dfHz, lane.data->shaftHz));
        auto* curve = new LineItem;
        curve->setSeries(series);
        curve->setColour(colour(Role::Curve));
        curve->attach(&plot());
        curves_.push_back(curve);
    }
    names_->setNames(std::move(names));
    if (end > 0 && std::abs(end - across_.most) > 1e-9 * end) across_.setBounds(0, end, narrow);
    showAxes();
    showCursor();
}

void LanesPlot::showAxes() {
    plot().setAxisScale(QwtPlot::xBottom, across_.from, across_.until);
    plot().setAxisScale(QwtPlot::yLeft, 0, std::max<double>(1, double(lanes_.size())), 1);
    QwtText across = plot().axisTitle(QwtPlot::xBottom);
    across.setText(orders_ ? tr("orders of each machine's own shaft")
                           : shownUnit(QStringLiteral("Hz"), selection_.units()).unit);
    plot().setAxisTitle(QwtPlot::xBottom, across);
    plot().replot();
}

void LanesPlot::showCursor() {
    std::vector<CursorLine> lines;
    if (selection_.cursorHz() && !lanes_.empty())
        lines.push_back({*selection_.cursorHz() / unitHz(lanes_.front()), {}, true, Qt::SolidLine});
    if (lines == cursor_->lines()) return;
    cursor_->setLines(std::move(lines));
    plot().replot();
}

std::optional<std::size_t> LanesPlot::laneAt(double y) const {
    const double up = plot().canvasMap(QwtPlot::yLeft).invTransform(y);
    if (lanes_.empty() || up < 0 || up >= double(lanes_.size())) return std::nullopt;
    return lanes_.size() - 1 - std::size_t(up);
}

std::optional<std::size_t> LanesPlot::peakAt(const Lane& lane, double x, double px) const {
    const QwtScaleMap map = plot().canvasMap(QwtPlot::xBottom);
    const double perLine = lane.data->dfHz / unitHz(lane);
    const auto lineAt = [&](double at) {
        const double line = std::round(map.invTransform(at) / perLine);
        return std::size_t(std::clamp(line, 0.0, double(lane.data->values.size() - 1)));
    };
    const std::size_t first = lineAt(x - px), last = lineAt(x + px);
    const auto begin = lane.data->values.begin();
    return std::size_t(std::max_element(begin + std::ptrdiff_t(first), begin + std::ptrdiff_t(last) + 1) -
                       begin);
}

void LanesPlot::hover(const QPointF& at) {
    const auto lane = laneAt(at.y());
    if (!lane) return setReadout({});
    const Lane& over = lanes_[*lane];
    const auto line = peakAt(over, at.x(), 0.5);
    setReadout(tr("%1: %2, %3")
                   .arg(over.name, frequencyText(double(*line) * over.data->dfHz, over.data->shaftHz),
                        valueOf(over, *line)));
}

// The cursor of all plots: in orders that of the machine shown.
void LanesPlot::choose(const QPointF& at) {
    const auto lane = laneAt(at.y());
    if (!lane) return;
    const Lane& chosen = lanes_[*lane];
    const double hz = double(*peakAt(chosen, at.x(), kLanePickPx)) * chosen.data->dfHz;
    selection_.setCursorHz(hz / unitHz(chosen) * unitHz(lanes_.front()));
}

QString LanesPlot::tableText(TableExtent extent) const {
    if (lanes_.empty()) return {};
    const bool all = extent == TableExtent::All;
    QString text = tableHead(all ? tr("all data") : tr("as shown"));
    text += QStringLiteral("place\tHz\torder\t%1\n").arg(lanes_.front().data->unit);
    for (const Lane& lane : lanes_)
        for (std::size_t i = 0; i < lane.data->values.size(); ++i) {
            const double hz = double(i) * lane.data->dfHz, at = hz / unitHz(lane);
            if (!all && (at < across_.from || at > across_.until)) continue;
            const QString order =
                lane.data->shaftHz > 0 ? QString::number(hz / lane.data->shaftHz, 'g', 9) : QString();
            text += QStringLiteral("%1\t%2\t%3\t%4\n")
                        .arg(lane.name, QString::number(hz, 'g', 9), order,
                             QString::number(double(lane.data->values[i]), 'g', 6));
        }
    return text;
}

void LanesPlot::takeTheme() {
    PlotFrame::takeTheme();
    for (LineItem* curve : curves_)
        curve->setColour(colour(Role::Curve));
    cursor_->setColours(colour(Role::Cursor), colour(Role::Ground));
    plot().replot();
}

}  // namespace fettle
