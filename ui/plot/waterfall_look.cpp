#include "ui/plot/waterfall_look.h"

#include <algorithm>
#include <cmath>

#include "ui/model/numbers.h"
#include "ui/plot/readout.h"

namespace fettle {

namespace {

constexpr double kLeastApart = 1.1;  // of the ends

const ColourMap& greysOnDark() {
    static const ColourMap map = [] {
        ColourMap turned = greysForPrint();
        std::reverse(turned.begin(), turned.end());
        return turned;
    }();
    return map;
}

}  // namespace

WaterfallLook::WaterfallLook(const Theme& theme, const Selection& selection, QObject* parent)
    : QObject(parent), theme_(theme), selection_(selection) {
    connect(&theme_, &Theme::changed, this, &WaterfallLook::lookChanged);
    connect(&selection_, &Selection::unitsChanged, this, &WaterfallLook::changed);
}

void WaterfallLook::setData(std::shared_ptr<const WaterfallData> data) {
    data_ = std::move(data);
    emit changed();
}

ColourRange WaterfallLook::range() const {
    ColourRange range = byHand_ ? *byHand_ : data_ ? data_->rangeAt(lowShare_, highShare_) : ColourRange{};
    range.linear = linear_;
    return range;
}

void WaterfallLook::setRange(std::optional<ColourRange> range) {
    if (range) range->high = std::max(range->high, range->low * kLeastApart);
    byHand_ = range;
    emit lookChanged();
}

void WaterfallLook::setShares(double low, double high) {
    lowShare_ = std::clamp(low, 0.0, 1.0);
    highShare_ = std::clamp(high, lowShare_, 1.0);
    byHand_.reset();
    emit lookChanged();
}

void WaterfallLook::setLinear(bool linear) {
    linear_ = linear;
    emit lookChanged();
}

void WaterfallLook::setMap(MapChoice map) {
    map_ = map;
    emit lookChanged();
}

const ColourMap& WaterfallLook::colours() const {
    if (theme_.choice() == ThemeChoice::Paper) return greysForPrint();
    if (map_ == MapChoice::BlueToYellow) return blueToYellow();
    return theme_.isDark() ? greysOnDark() : greysForPrint();
}

double WaterfallLook::unitFactor() const {
    if (!data_ || data_->options().decibels) return 1;
    return shownUnit(QString::fromStdString(data_->options().unit), selection_.units()).factor;
}

bool WaterfallLook::saysDecibels() const {
    return !linear_;
}

QString WaterfallLook::unit() const {
    if (!data_) return {};
    const QString stored = QString::fromStdString(data_->options().unit);
    if (data_->options().decibels) return saysDecibels() ? stored : tr("times the floor");
    const QString read = shownUnit(stored, selection_.units()).unit;
    return saysDecibels() ? tr("dB re 1 %1").arg(read) : read;
}

double WaterfallLook::shown(double value) const {
    const double read = value * unitFactor();
    return saysDecibels() ? 20 * std::log10(std::max(read, 1e-12)) : read;
}

double WaterfallLook::stored(double shownValue) const {
    return (saysDecibels() ? std::pow(10, shownValue / 20) : shownValue) / unitFactor();
}

QString WaterfallLook::endText(double value) const {
    return saysDecibels() ? fixedText(shown(value), 0) : significant(shown(value), 2);
}

// Under the pointer both are said: people think in the unit whatever the scale is.
QString WaterfallLook::text(double value) const {
    if (!data_) return {};
    if (data_->options().decibels)
        return valueText(value, QString::fromStdString(data_->options().unit), true);
    const ShownUnit read = shownUnit(QString::fromStdString(data_->options().unit), selection_.units());
    return valueText(read.shown(value), read.unit);
}

double WaterfallLook::uprightFactor() const {
    if (data_ && data_->options().orders) return 1;
    return shownUnit(QStringLiteral("Hz"), selection_.units()).factor;
}

QString WaterfallLook::uprightUnit() const {
    if (data_ && data_->options().orders) return tr("orders");
    return shownUnit(QStringLiteral("Hz"), selection_.units()).unit;
}

double WaterfallLook::hzPerUnit(std::size_t row) const {
    return data_->options().orders ? data_->shaftHz(row) : 1;
}

}  // namespace fettle
