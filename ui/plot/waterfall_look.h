// Why: raster and cascade are two pictures of one thing: they share the spectra, the range of strengths (by
// the data between two percentiles, or by hand), the scale (decibels or linear) and the map of colours, so
// that switching between them changes nothing but the drawing. Data: immutable, made elsewhere. Values are
// kept in the unit of the data; what is said is in the unit people read in. Thread: the window's.
#pragma once

#include <QObject>
#include <memory>
#include <optional>

#include "ui/model/selection.h"
#include "ui/plot/waterfall_data.h"
#include "ui/theme/theme.h"

namespace fettle {

enum class MapChoice { BlueToYellow, Greys };

class WaterfallLook : public QObject {
    Q_OBJECT
  public:
    WaterfallLook(const Theme& theme, const Selection& selection, QObject* parent);

    void setData(std::shared_ptr<const WaterfallData> data);
    const std::shared_ptr<const WaterfallData>& data() const { return data_; }
    bool empty() const { return !data_ || data_->rows() == 0; }

    ColourRange range() const;
    void setRange(std::optional<ColourRange> range);  // nothing: by the data
    bool byHand() const { return byHand_.has_value(); }
    void setShares(double low, double high);  // percentiles / 100, for a range by the data
    double lowShare() const { return lowShare_; }
    double highShare() const { return highShare_; }
    void setLinear(bool linear);
    bool linear() const { return linear_; }
    void setMap(MapChoice map);
    MapChoice map() const { return map_; }
    const ColourMap& colours() const;  // paper is always grey; weak is what is near the ground

    // As said on legend and readout: 0.52 "mm/s r.m.s.", -5.7 "dB re 1 mm/s r.m.s.", 12 "dB over floor".
    QString unit() const;
    double shown(double value) const;
    double stored(double shownValue) const;
    QString text(double value) const;     // with its unit
    QString endText(double value) const;  // without, as short as can be

    // Of the upright axis: 1 for Hz, 60 for r/min, 1 for orders; and its name.
    double uprightFactor() const;
    QString uprightUnit() const;
    // Hz of one unit of the data's upright axis in this row.
    double hzPerUnit(std::size_t row) const;

  signals:
    void changed();      // everything
    void lookChanged();  // range, scale, map

  private:
    double unitFactor() const;
    bool saysDecibels() const;

    const Theme& theme_;
    const Selection& selection_;
    std::shared_ptr<const WaterfallData> data_;
    std::optional<ColourRange> byHand_;
    double lowShare_ = WaterfallData::kLowShare, highShare_ = WaterfallData::kHighShare;
    bool linear_ = false;
    MapChoice map_ = MapChoice::BlueToYellow;
};

}  // namespace fettle
