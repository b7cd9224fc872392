#include "ui/plot/zoom_span.h"

#include <algorithm>
#include <cmath>

namespace fettle {

void ZoomSpan::setBounds(double low, double high, double narrow) {
    narrowest = std::max(narrow, 1e-12);
    least = low;
    most = std::max(high, low + narrowest);
    showAll();
}

void ZoomSpan::show(double low, double high) {
    if (!std::isfinite(low) || !std::isfinite(high)) return;
    const double wanted = std::clamp(high - low, std::min(narrowest, most - least), most - least);
    const double middle = (low + high) / 2;
    from = std::clamp(middle - wanted / 2, least, most - wanted);
    until = from + wanted;
}

void ZoomSpan::zoom(double factor, double about) {
    if (!(factor > 0)) return;
    const double wanted = std::clamp(width() * factor, std::min(narrowest, most - least), most - least);
    const double share = width() > 0 ? std::clamp((about - from) / width(), 0.0, 1.0) : 0.5;
    const double low = std::clamp(about - share * wanted, least, most - wanted);
    from = low;
    until = low + wanted;
}

void ZoomSpan::pan(double by) {
    show(from + by, until + by);
}

void ZoomSpan::bring(double at) {
    if (at < least || at > most || (at >= from && at <= until)) return;
    pan(at - (from + until) / 2);
}

}  // namespace fettle
