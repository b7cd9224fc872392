#include "ui/plot/orbit_plot.h"

#include <qwt_painter.h>
#include <qwt_plot.h>
#include <qwt_plot_item.h>
#include <qwt_scale_map.h>
#include <qwt_text.h>

#include <QComboBox>
#include <QEvent>
#include <QLabel>
#include <QPainter>
#include <QScrollArea>
#include <algorithm>
#include <cmath>

namespace fettle {

namespace {
constexpr double kRoom = 1.1, kMarkPx = 7;
const QString kMicrometres = QStringLiteral("µm");
}  // namespace

class OrbitItem : public QwtPlotItem {
  public:
    OrbitItem() {
        setItemAttribute(QwtPlotItem::Legend, false);
        setRenderHint(QwtPlotItem::RenderAntialiased);
        setZ(10);
    }
    void setPath(QPolygonF path, bool mark) {
        path_ = std::move(path);
        mark_ = mark;
        itemChanged();
    }
    void setColour(const QColor& colour) { colour_ = colour; }
    int rtti() const override { return QwtPlotItem::Rtti_PlotUserItem + 15; }
    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF&) const override {
        QPolygonF pixels;
        for (const QPointF& point : path_)
            pixels << QPointF(xMap.transform(point.x()), yMap.transform(point.y()));
        painter->setPen(QPen(colour_, 1.4));
        painter->setBrush(Qt::NoBrush);
        if (pixels.size() > 1) QwtPainter::drawPolyline(painter, pixels);
        if (!mark_ || pixels.isEmpty()) return;
        painter->setBrush(colour_);
        painter->drawEllipse(pixels.front(), kMarkPx / 2, kMarkPx / 2);
    }

  private:
    QPolygonF path_;
    bool mark_ = false;
    QColor colour_;
};

OrbitPlot::OrbitPlot(const Theme& theme, QWidget* parent)
    : PlotFrame(theme, QStringLiteral("orbit"), tr("Orbit"), parent), path_(new OrbitItem) {
    path_->attach(&plot());
    whatBox_ = new QComboBox(this);
    whatBox_->setObjectName(QStringLiteral("orbitOf"));
    whatBox_->setAccessibleName(tr("Of which orders the orbit is made"));
    whatBox_->setToolTip(whatBox_->accessibleName());
    whatBox_->addItems({tr("1x"), tr("2x"), tr("1x and 2x"), tr("1x to 5x"), tr("unfiltered")});
    connect(whatBox_, &QComboBox::currentIndexChanged, this, &OrbitPlot::wantedChanged);
    addControl(whatBox_);
    limits_ = new QLabel(this);
    limits_->setObjectName(QStringLiteral("orbitLimits"));
    limits_->setWordWrap(true);
    limits_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    limits_->setMinimumWidth(11 * fontMetrics().height());
    limits_->setMargin(6);
    limits_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    auto* scroll = new QScrollArea(this);
    scroll->setObjectName(QStringLiteral("orbitLimitsScroll"));
    scroll->setAccessibleName(tr("What the orbit shows and what it cannot"));
    scroll->setFrameStyle(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setWidget(limits_);
    scroll->setMinimumWidth(limits_->minimumWidth() + 20);
    setSide(scroll);
    canvas()->installEventFilter(this);
    OrbitPlot::takeTheme();
}

OrbitOf OrbitPlot::wanted() const {
    return OrbitOf(whatBox_->currentIndex());
}

void OrbitPlot::setData(std::shared_ptr<const OrbitData> data) {
    data_ = std::move(data);
    rebuild();
}

void OrbitPlot::setUnits(Units units) {
    units_ = units;
    rebuild();
}

QString OrbitPlot::limits() const {
    if (!data_) return {};
    QStringList words = {data_->what};
    words << tr("Seen by sensors on the housing: its motion, not the shaft's within the bearing.");
    if (data_->mark)
        words << tr("The dot is the once-per-turn mark.") << data_->turning;
    else
        words << tr(
            "No once-per-turn mark was recorded: where a turn begins, where the heavy spot is and "
            "whether the path runs with the shaft or against it cannot be told.");
    words.removeAll(QString());
    return words.join(QStringLiteral("\n\n"));
}

void OrbitPlot::rebuild() {
    const ShownUnit unit = shownUnit(kMicrometres, units_);
    QPolygonF path;
    most_ = 0;
    for (std::size_t i = 0; data_ && i < std::min(data_->x.size(), data_->y.size()); ++i) {
        const QPointF at(unit.shown(double(data_->x[i])), unit.shown(double(data_->y[i])));
        most_ = std::max({most_, std::abs(at.x()), std::abs(at.y())});
        path << at;
    }
    most_ = most_ > 0 ? most_ * kRoom : 1;
    path_->setPath(std::move(path), data_ && data_->mark);
    limits_->setText(limits());
    limits_->setVisible(data_ != nullptr);
    const auto name = [&](int axis, const QString& text) {
        QwtText title = plot().axisTitle(axis);
        title.setText(text.isEmpty() ? unit.unit : tr("%1, %2 peak").arg(text, unit.unit));
        plot().setAxisTitle(axis, title);
    };
    name(QwtPlot::xBottom, data_ ? data_->across : QString());
    name(QwtPlot::yLeft, data_ ? data_->upright : QString());
    showAxes();
}

// One scale for both: the longer side of the canvas shows more.
void OrbitPlot::showAxes() {
    const double width = std::max(canvas()->width(), 20), height = std::max(canvas()->height(), 20);
    const double least = std::min(width, height);
    plot().setAxisMaxMajor(QwtPlot::xBottom, 6);
    plot().setAxisMaxMajor(QwtPlot::yLeft, 6);
    plot().setAxisScale(QwtPlot::xBottom, -most_ * width / least, most_ * width / least);
    plot().setAxisScale(QwtPlot::yLeft, -most_ * height / least, most_ * height / least);
    plot().replot();
}

// The canvas gets its size after the scales beside it were laid out.
bool OrbitPlot::eventFilter(QObject* watched, QEvent* event) {
    if (watched == canvas() && event->type() == QEvent::Resize)
        QMetaObject::invokeMethod(this, &OrbitPlot::showAxes, Qt::QueuedConnection);
    return PlotFrame::eventFilter(watched, event);
}

QString OrbitPlot::tableText(TableExtent) const {
    if (!data_ || data_->x.empty()) return {};
    QString text = tableHead(data_->what);
    text += tr("%1, um\t%2, um\n").arg(data_->across, data_->upright);
    for (std::size_t i = 0; i < std::min(data_->x.size(), data_->y.size()); ++i)
        text += QString::number(double(data_->x[i]), 'g', 6) + QLatin1Char('\t') +
                QString::number(double(data_->y[i]), 'g', 6) + QLatin1Char('\n');
    return text;
}

void OrbitPlot::takeTheme() {
    PlotFrame::takeTheme();
    path_->setColour(colour(Role::Curve));
}

}  // namespace fettle
