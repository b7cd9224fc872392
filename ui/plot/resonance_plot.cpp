#include "ui/plot/resonance_plot.h"

#include <qwt_plot.h>
#include <qwt_scale_map.h>
#include <qwt_text.h>

#include <QToolButton>
#include <cmath>

#include "ui/plot/colour_legend.h"
#include "ui/plot/gestures.h"
#include "ui/plot/order_rays.h"
#include "ui/plot/readout.h"
#include "ui/plot/waterfall_item.h"

namespace fettle {

ResonancePlot::ResonancePlot(const Theme& theme, const Units& units, QWidget* parent)
    : PlotFrame(theme, QStringLiteral("resonancePlot"), tr("Level by speed and frequency"), parent),
      item_(new WaterfallItem),
      rays_(new OrderRays(theme)),
      look_(new WaterfallLook(theme, selection_, this)),
      legend_(new ColourLegend(theme, *look_, this)),
      ordersButton_(new QToolButton(this)) {
    selection_.setUnits(units);
    item_->attach(&plot());
    rays_->attach(&plot());
    hideGrid();
    ordersButton_->setObjectName(QStringLiteral("resonanceOrders"));
    ordersButton_->setText(tr("orders"));
    ordersButton_->setCheckable(true);
    ordersButton_->setToolTip(tr("Upright axis in orders of the shaft instead of frequency"));
    ordersButton_->setAccessibleName(ordersButton_->toolTip());
    addControl(legend_);
    addControl(ordersButton_);
    connect(ordersButton_, &QToolButton::toggled, this, &ResonancePlot::setOrders);
    connect(look_, &WaterfallLook::lookChanged, this, [this] {
        setScale();
        plot().replot();
    });
    connectGestures();
    ResonancePlot::takeTheme();
}

ResonancePlot::~ResonancePlot() = default;

void ResonancePlot::connectGestures() {
    const auto x = [this](double px) { return plot().canvasMap(QwtPlot::xBottom).invTransform(px); };
    const auto y = [this](double px) {
        return plot().canvasMap(QwtPlot::yLeft).invTransform(px) / look_->uprightFactor();
    };
    connect(&gestures(), &Gestures::zoomed, this, [=, this](double factor, const QPointF& at, bool upright) {
        if (upright)
            upright_.zoom(factor, y(at.y()));
        else
            across_.zoom(factor, x(at.x()));
        showAxes();
    });
    connect(&gestures(), &Gestures::panned, this, [=, this](const QPointF& by) {
        across_.pan(x(0) - x(by.x()));
        upright_.pan(y(0) - y(by.y()));
        showAxes();
    });
    connect(&gestures(), &Gestures::framed, this, [=, this](const QRect& part) {
        across_.show(x(part.left()), x(part.right()));
        upright_.show(y(part.bottom()), y(part.top()));
        showAxes();
    });
    connect(&gestures(), &Gestures::showAll, this, [this] {
        across_.showAll();
        upright_.showAll();
        showAxes();
    });
    connect(&gestures(), &Gestures::hovered, this, &ResonancePlot::hover);
    connect(&gestures(), &Gestures::left, this, [this] { setReadout({}); });
}

void ResonancePlot::setData(std::shared_ptr<const ResonanceData> map) {
    data_ = std::move(map);
    rays_->setData(data_);
    takeGrid();
}

void ResonancePlot::setOrders(bool orders) {
    orders_ = orders;
    ordersButton_->setChecked(orders);
    takeGrid();
}

void ResonancePlot::takeGrid() {
    look_->setData(!data_ ? nullptr : orders_ ? data_->orders : data_->hz);
    item_->setData(look_->data());
    rays_->setAxis(orders_, look_->uprightFactor());
    if (!look_->empty()) {
        const WaterfallData& grid = *look_->data();
        across_.setBounds(grid.cover(0).from, grid.cover(grid.rows() - 1).until, 10);
        upright_.setBounds(0, grid.top(), 8 * grid.top() / double(grid.lines()));
        const double slowest = grid.shaftHz(0);
        upright_.show(0, orders_ && slowest > 0 ? data_->shownHz / slowest : data_->shownHz);
    }
    setScale();
    showAxes();
}

void ResonancePlot::showAxes() {
    const double factor = look_->uprightFactor();
    item_->setUprightFactor(factor);
    plot().setAxisScale(QwtPlot::xBottom, across_.from, across_.until);
    plot().setAxisScale(QwtPlot::yLeft, upright_.from * factor, upright_.until * factor);
    plot().setAxisMaxMajor(QwtPlot::yLeft, 6);
    const auto name = [this](QwtAxisId axis, const QString& text) {
        QwtText title = plot().axisTitle(axis);
        title.setText(text);
        plot().setAxisTitle(axis, title);
    };
    name(QwtPlot::xBottom, tr("speed, r/min"));
    name(QwtPlot::yLeft, look_->uprightUnit());
    plot().replot();
}

void ResonancePlot::setScale() {
    item_->setScale(std::make_shared<ColourScale>(look_->range(), look_->colours(), colour(Role::Gap).rgb()));
}

void ResonancePlot::choose(int mark) {
    rays_->choose(mark);
    plot().replot();
}

void ResonancePlot::hover(const QPointF& at) {
    if (look_->empty()) return;
    const WaterfallData& grid = *look_->data();
    const QwtScaleMap xMap = plot().canvasMap(QwtPlot::xBottom), yMap = plot().canvasMap(QwtPlot::yLeft);
    const double factor = look_->uprightFactor();
    const auto peak = grid.peakWithin(
        grid.rowsWithin(xMap.invTransform(std::floor(at.x())), xMap.invTransform(std::floor(at.x()) + 1)),
        grid.linesWithin(yMap.invTransform(at.y() + 0.5) / factor, yMap.invTransform(at.y() - 0.5) / factor));
    if (!peak) return setReadout(tr("%1 r/min, never run").arg(significant(xMap.invTransform(at.x()), 4)));
    const double up = (double(peak->line) + 0.5) * grid.top() / double(grid.lines());
    setReadout(tr("%1 r/min, %2, %3, %4 recordings")
                   .arg(significant(grid.ms(peak->row), 4),
                        frequencyText(up * look_->hzPerUnit(peak->row), grid.shaftHz(peak->row)),
                        look_->text(double(peak->value)))
                   .arg(grid.recording(peak->row)));
}

QString ResonancePlot::tableText(TableExtent) const {
    if (look_->empty()) return {};
    const WaterfallData& grid = *look_->data();
    QString text = tableHead(tr("all"));
    text += QStringLiteral("speed_rpm\trecordings");
    for (std::size_t line = 0; line < grid.lines(); ++line)
        text += QStringLiteral("\t%1").arg((double(line) + 0.5) * grid.top() / double(grid.lines()));
    text += u'\n';
    for (std::size_t row = 0; row < grid.rows(); ++row) {
        text += QStringLiteral("%1\t%2").arg(grid.ms(row)).arg(grid.recording(row));
        for (std::size_t line = 0; line < grid.lines(); ++line)
            text += QStringLiteral("\t%1").arg(double(grid.cell(row, line)));
        text += u'\n';
    }
    return text;
}

void ResonancePlot::takeTheme() {
    PlotFrame::takeTheme();
    plot().setCanvasBackground(colour(Role::Gap));
    setScale();
    plot().replot();
}

}  // namespace fettle
