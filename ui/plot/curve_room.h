// Why: a name stands beside the curve, not on it: the place for it that no curve crosses, moved to the right
// along its line. Places only; nothing is drawn here. Units: pixels, and those of the axes for the curves.
// Thread: any.
#pragma once

#include <QRectF>
#include <vector>

#include "ui/plot/series.h"

class QwtScaleMap;

namespace fettle {

struct CurveRoom {
    const std::vector<SeriesPtr>& curves;
    const QwtScaleMap& xMap;
    const QwtScaleMap& yMap;

    bool crossed(const QRectF& box) const;
    // The box as it is, or moved right as far as needed, within `right` and off `taken`; as it is where
    // nowhere is free.
    QRectF freed(const QRectF& box, double right, const std::vector<QRectF>& taken) const;
};

}  // namespace fettle
