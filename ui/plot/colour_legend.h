// Why: a picture in colours says nothing without its scale: the legend always stands in the waterfall's head,
// with both ends, decade ticks and the unit. It is a button: pressed, it lets the ends be set by hand or
// left to the data. Ends linear; shown in the unit, or in dB for amplitude ratios.
#pragma once

#include <QAbstractButton>
#include <optional>

#include "ui/plot/colour_scale.h"
#include "ui/theme/theme.h"

namespace fettle {

class ColourLegend : public QAbstractButton {
    Q_OBJECT
  public:
    ColourLegend(const Theme& theme, QWidget* parent);

    void show(ColourRange range, const QString& unit, bool decibels, const ColourMap& map);
    QString text() const;  // "0.001 to 0.52 mm/s r.m.s."
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

  signals:
    void rangeWanted(std::optional<fettle::ColourRange> range);  // nothing: by the data

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    void ask();
    QString endText(double value) const;

    const Theme& theme_;
    ColourRange range_;
    QString unit_;
    bool decibels_ = false;
    const ColourMap* map_ = nullptr;
};

}  // namespace fettle
