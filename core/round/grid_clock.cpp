#include "core/round/grid_clock.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "core/trend/daily.h"
#include "core/trend/median.h"

namespace fettle {

namespace {

using std::chrono::minutes;

constexpr double kTold = 0.001, kGrid = 0.004;
constexpr double kNormal = 1.96;                                                               // 95 %
constexpr double kMadToSigma = 1.4826, kQuartilesToSigma = 1 / 1.349, kMedianToMean = 1.2533;  // Gaussian
constexpr minutes kWithin[] = {minutes(10), minutes(60), minutes(24 * 60)};
constexpr std::size_t kFewestOthers = 3;

// Of the clock: common practice, no source; a test asks how often they call a sound clock wrong.
constexpr minutes kShiftStep{10}, kMostShift{24 * 60};
constexpr std::size_t kFewestForClock = 24;
constexpr double kFollows = 0.8, kFollowsNot = 0.5;
constexpr double kLeastWander = 1e-4;  // of the grid, r.m.s. share, over the readings

// A node's mean reading in a slot of time beside the other nodes'.
struct Held {
    std::int64_t slot = 0;
    double hz = 0, plusMinusHz = 0;
    double others = 0, othersSigma = 0;  // median, and how sure it is
    std::size_t count = 0;               // other nodes
    double error() const { return hz / others - 1; }
};
using HeldByNode = std::vector<std::vector<Held>>;

struct InSlot {
    std::size_t node = 0;
    double hz = 0, plusMinusHz = 0;
    std::size_t readings = 0;
};
using Slots = std::map<std::int64_t, std::vector<InSlot>>;

std::int64_t slotOf(Instant time, minutes width) {
    return std::chrono::floor<minutes>(time).time_since_epoch() / width;
}

Slots slotsOf(std::span<const GridNode> nodes, double nominalHz, minutes width) {
    Slots slots;
    for (std::size_t n = 0; n < nodes.size(); ++n) {
        if (nodes[n].nominalHz != nominalHz) continue;
        for (const GridReading& reading : nodes[n].readings) {
            auto& slot = slots[slotOf(reading.time, width)];
            if (slot.empty() || slot.back().node != n) slot.push_back({n});
            InSlot& one = slot.back();
            ++one.readings;
            one.hz += (reading.hz - one.hz) / double(one.readings);
            one.plusMinusHz = std::max(one.plusMinusHz, reading.plusMinusHz);
        }
    }
    return slots;
}

// Of values in order, the one at `at` left out: the value at a share of the rest.
double quantileWithout(const std::vector<InSlot>& sorted, std::size_t at, double share) {
    const auto value = [&](std::size_t i) { return sorted[i < at ? i : i + 1].hz; };
    const double place = share * double(sorted.size() - 2);
    const auto low = std::size_t(place);
    const std::size_t high = std::min(low + 1, sorted.size() - 2);
    return value(low) + (place - double(low)) * (value(high) - value(low));
}

HeldByNode heldWithin(std::span<const GridNode> nodes, double nominalHz, minutes width) {
    HeldByNode held(nodes.size());
    for (auto& [slot, values] : slotsOf(nodes, nominalHz, width)) {
        if (values.size() <= kFewestOthers) continue;
        std::sort(values.begin(), values.end(), [](const InSlot& a, const InSlot& b) { return a.hz < b.hz; });
        const std::size_t others = values.size() - 1;
        for (std::size_t i = 0; i < values.size(); ++i) {
            const double spread = quantileWithout(values, i, 0.75) - quantileWithout(values, i, 0.25);
            held[values[i].node].push_back(
                {slot, values[i].hz, values[i].plusMinusHz, quantileWithout(values, i, 0.5),
                 kMedianToMean * kQuartilesToSigma * spread / std::sqrt(double(others)), others});
        }
    }
    return held;
}

template <class List, class Value>
double medianBy(const List& list, Value value) {
    std::vector<double> all;
    for (const auto& one : list)
        all.push_back(value(one));
    return medianOf(std::move(all));
}

// How sure a median of errors is by their own scatter.
double sigmaOfMedian(const std::vector<double>& errors) {
    const double middle = medianOf(errors);
    const double mad = medianBy(errors, [&](double e) { return std::abs(e - middle); });
    return kMedianToMean * kMadToSigma * mad / std::sqrt(double(errors.size()));
}

void date(const std::vector<Held>& held, minutes width, RateError& rate) {
    std::vector<TimedValue> errors;
    for (const Held& one : held)
        errors.push_back({Instant(width * one.slot), one.error()});
    const std::vector<DayValue> days = dailyMedians(errors);
    for (auto day = days.rbegin(); day != days.rend(); ++day) {
        if (day->value * rate.error <= 0 || std::abs(day->value) <= kTold) break;
        rate.since = day->day;
    }
    rate.sinceFirst = rate.since && *rate.since == days.front().day;
}

RateError rateAmong(const std::vector<Held>& held, Instant from, minutes width) {
    std::vector<Held> asked;
    for (const Held& one : held)
        if (one.slot >= slotOf(from, width)) asked.push_back(one);
    std::vector<double> errors;
    for (const Held& one : asked)
        errors.push_back(one.error());
    RateError rate;
    rate.error = medianOf(errors);
    rate.readings = asked.size();
    rate.within = width;
    rate.neighbours = std::size_t(medianBy(asked, [](const Held& h) { return double(h.count); }));
    const double others = medianBy(asked, [](const Held& h) { return h.othersSigma / h.others; });
    const double reading = medianBy(asked, [](const Held& h) { return h.plusMinusHz / h.hz; });
    rate.plusMinus = kNormal * std::hypot(sigmaOfMedian(errors), others) + reading;
    rate.off = std::abs(rate.error) - rate.plusMinus > kTold;
    if (rate.off) date(held, width, rate);
    return rate;
}

std::optional<RateError> rateByName(const GridNode& node, Instant from) {
    std::vector<double> errors, widths;
    for (const GridReading& reading : node.readings) {
        if (reading.time < from) continue;
        errors.push_back(reading.hz / node.nominalHz - 1);
        widths.push_back(reading.plusMinusHz / reading.hz);
    }
    if (errors.empty()) return std::nullopt;
    RateError rate;
    rate.error = medianOf(errors);
    rate.readings = errors.size();
    rate.plusMinus = kNormal * sigmaOfMedian(errors) + medianOf(widths) + kGrid;
    rate.off = std::abs(rate.error) - rate.plusMinus > kTold;
    return rate;
}

std::size_t countFrom(const std::vector<Held>& held, std::int64_t slot) {
    return std::size_t(
        std::count_if(held.begin(), held.end(), [&](const Held& one) { return one.slot >= slot; }));
}

// The finest width in which half of the readings have others beside them.
std::optional<RateError> rateOf(const GridNode& node, std::size_t n, const std::vector<HeldByNode>& byWidth,
                                Instant from) {
    const auto asked = std::count_if(node.readings.begin(), node.readings.end(),
                                     [&](const GridReading& r) { return r.time >= from; });
    if (asked == 0) return std::nullopt;
    for (std::size_t w = 0; w < byWidth.size(); ++w) {
        const std::size_t held = countFrom(byWidth[w][n], slotOf(from, kWithin[w]));
        const std::size_t most = kWithin[w] > minutes(60) ? 1 : std::size_t(asked + 1) / 2;
        if (held > 0 && held >= most) return rateAmong(byWidth[w][n], from, kWithin[w]);
    }
    return rateByName(node, from);
}

// The grid in slots of ten minutes, one after the other; NaN where too few heard it.
struct GridCourse {
    std::int64_t first = 0;
    std::vector<double> hz;

    double at(std::int64_t slot) const {
        const bool inside = slot >= first && slot - first < std::int64_t(hz.size());
        return inside ? hz[std::size_t(slot - first)] : std::numeric_limits<double>::quiet_NaN();
    }
};

// Of nodes whose own rate errors are taken out.
GridCourse courseOf(std::span<const GridNode> nodes, double nominalHz) {
    std::vector<GridNode> put(nodes.begin(), nodes.end());
    for (GridNode& node : put) {
        const double own = medianBy(node.readings, [](const GridReading& r) { return r.hz; });
        for (GridReading& reading : node.readings)
            reading.hz *= nominalHz / own;
    }
    const Slots slots = slotsOf(put, nominalHz, kWithin[0]);
    GridCourse course;
    if (slots.empty()) return course;
    course.first = slots.begin()->first;
    course.hz.assign(std::size_t(slots.rbegin()->first - course.first) + 1,
                     std::numeric_limits<double>::quiet_NaN());
    for (const auto& [slot, values] : slots)
        if (values.size() > kFewestOthers)
            course.hz[std::size_t(slot - course.first)] =
                medianBy(values, [](const InSlot& one) { return one.hz; });
    return course;
}

struct Likeness {
    double r = 0;
    std::size_t count = 0;
};

// Of the node's readings with the grid so many slots later.
Likeness likenessAt(const std::vector<GridReading>& readings, const GridCourse& grid, std::int64_t later) {
    const double about = readings.front().hz;  // sums of squares about it lose no digits
    double n = 0, sx = 0, sy = 0, sxx = 0, syy = 0, sxy = 0;
    for (const GridReading& reading : readings) {
        const double y = grid.at(slotOf(reading.time, kWithin[0]) + later);
        if (!std::isfinite(y)) continue;
        const double dx = reading.hz - about, dy = y - about;
        ++n, sx += dx, sy += dy, sxx += dx * dx, syy += dy * dy, sxy += dx * dy;
    }
    Likeness likeness{0, std::size_t(n)};
    if (n < 2) return likeness;
    const double vx = sxx - sx * sx / n, vy = syy - sy * sy / n;
    if (vx > 0 && vy > 0 && std::sqrt(vy / n) > kLeastWander * about)
        likeness.r = (sxy - sx * sy / n) / std::sqrt(vx * vy);
    return likeness;
}

std::optional<ClockError> clockOf(const GridNode& node, const GridCourse& grid, Instant from) {
    std::vector<GridReading> asked;
    for (const GridReading& reading : node.readings)
        if (reading.time >= from) asked.push_back(reading);
    if (asked.size() < kFewestForClock) return std::nullopt;
    const Likeness stated = likenessAt(asked, grid, 0);
    if (stated.r > kFollowsNot) return std::nullopt;
    ClockError best;
    for (std::int64_t later = -(kMostShift / kShiftStep); later <= kMostShift / kShiftStep; ++later) {
        const Likeness one = likenessAt(asked, grid, later);
        if (one.count < std::max(kFewestForClock, asked.size() / 2) || one.r <= best.likeness) continue;
        best = {-kShiftStep * later, one.r, stated.r, one.count};
    }
    if (best.likeness < kFollows) return std::nullopt;
    return best;
}

std::string widthWords(minutes within) {
    if (within >= minutes(24 * 60)) return "of the same day";
    return within >= minutes(60) ? "within the hour" : "within ten minutes";
}

}  // namespace

std::vector<GridVerdict> askGrid(std::span<const GridNode> nodes, Instant from) {
    std::vector<GridVerdict> verdicts(nodes.size());
    std::map<double, std::vector<std::size_t>> grids;
    for (std::size_t n = 0; n < nodes.size(); ++n)
        grids[nodes[n].nominalHz].push_back(n);
    for (const auto& [nominalHz, members] : grids) {
        std::vector<HeldByNode> byWidth;
        for (const minutes width : kWithin)
            byWidth.push_back(heldWithin(nodes, nominalHz, width));
        const GridCourse course = courseOf(nodes, nominalHz);
        for (const std::size_t n : members)
            verdicts[n] = {rateOf(nodes[n], n, byWidth, from), clockOf(nodes[n], course, from)};
    }
    return verdicts;
}

std::string rateWords(const RateError& rate) {
    if (!rate.off) return "";
    std::string words =
        fmt::format("sample rate {:.2f} % (+- {:.2f} %) too {} against ", std::abs(rate.error) * 100,
                    rate.plusMinus * 100, rate.error > 0 ? "high" : "low");
    words += rate.neighbours == 0
                 ? std::string("the grid's own frequency")
                 : fmt::format("the grid of {} neighbours {}", rate.neighbours, widthWords(rate.within));
    if (rate.since)
        words += fmt::format(", since {}{}", formatDate(startOfDay(*rate.since)),
                             rate.sinceFirst ? " or before" : "");
    return words;
}

std::string clockWords(const ClockError& clock) {
    const auto by = std::chrono::abs(clock.ahead).count();
    return fmt::format(
        "clock {}:{:02} h {}: its mains follows the grid of that other hour (likeness {:.2f}, as stated "
        "{:.2f})",
        by / 60, by % 60, clock.ahead.count() > 0 ? "ahead" : "behind", clock.likeness, clock.asStated);
}

}  // namespace fettle
