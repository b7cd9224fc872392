#include "core/round/change_groups.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/round/e_bh.h"

namespace fettle {

namespace {

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();
constexpr double kShaftShare = 0.3;                 // of the power added to the level
constexpr double kWorth = 0.1;                      // of what was added at 1x and 2x
constexpr double kManyOrders = 4, kHalfOrders = 2;  // counts of the table that a clear rise stands for

bool sameQuestion(const FollowedChange& a, const FollowedChange& b) {
    return a.quantity == b.quantity && a.fault == b.fault && a.name == b.name && a.at == b.at &&
           a.point == b.point;
}

void weigh(ChangeGroup& group) {
    std::vector<double> weights;
    for (const FollowedChange* one : group.members) {
        weights.push_back(one->week.change->weightDban);
        const bool stronger =
            !group.strongest || one->week.change->weightDban > group.strongest->week.change->weightDban;
        if (one->week.matters && stronger) group.strongest = one;
    }
    group.weightDban = meanDban(weights);
}

// mm/s that were added, in power; 0 where it fell.
double added(const FollowedChange& one) {
    const Change& c = *one.week.change;
    return std::sqrt(std::max(c.now * c.now - c.was * c.was, 0.0));
}

struct Added {
    double radial[4]{}, axial1 = 0, overall = 0;  // [h] of h x
    double most1 = 0, least1 = std::numeric_limits<double>::infinity();
    int radial1 = 0;
    bool hasAxial = false;
    double high = kNone, half = kNone;
};

void take(double& into, double value) {
    into = std::isnan(into) ? value : std::max(into, value);
}

void takeOrder(Added& sum, const FollowedChange& one) {
    const int h = int(one.quantity) - int(Followed::Order1) + 1;
    const double value = added(one);
    if (one.direction == "axial") {
        sum.hasAxial |= h == 1;
        if (h == 1) take(sum.axial1, value);
        return;
    }
    take(sum.radial[h], value);
    if (h != 1) return;
    ++sum.radial1;
    sum.most1 = std::max(sum.most1, value);
    sum.least1 = std::min(sum.least1, value);
}

Added sumOf(const std::vector<ChangeGroup>& groups) {
    Added sum;
    for (const ChangeGroup& group : groups)
        for (const FollowedChange* one : group.members) {
            if (one->name.starts_with("orders 4-10")) take(sum.high, added(*one));
            if (one->name.starts_with("half orders")) take(sum.half, added(*one));
            if (one->quantity == Followed::Velocity && one->direction != "axial")
                take(sum.overall, added(*one));
            if (one->quantity <= Followed::Order3) takeOrder(sum, *one);
        }
    return sum;
}

// Whether what was added to the level is, to a part worth speaking of, the shaft's: else its orders tell no
// cause.
bool isOfTheShaft(const Added& sum) {
    if (!(sum.overall > 0)) return true;
    double power = sum.axial1 * sum.axial1;
    for (const double one : sum.radial)
        power += one * one;
    for (const double one : {sum.high, sum.half})
        if (!std::isnan(one)) power += one * one;
    return power >= kShaftShare * sum.overall * sum.overall;
}

double ratioDb(double a, double b) {
    return 20 * std::log10(std::max(a, 1e-6) / std::max(b, 1e-6));
}

}  // namespace

std::vector<ChangeGroup> changeGroups(const std::vector<FollowedChange>& changes) {
    std::vector<ChangeGroup> groups;
    for (const FollowedChange& one : changes) {
        if (!one.week.change) continue;
        const auto known = std::find_if(groups.begin(), groups.end(),
                                        [&](const ChangeGroup& g) { return sameQuestion(g.first(), one); });
        if (known == groups.end())
            groups.push_back({{&one}, nullptr, 0});
        else
            known->members.push_back(&one);
    }
    for (ChangeGroup& group : groups)
        weigh(group);
    return groups;
}

bool isListed(const ChangeGroup& group, double findingDban) {
    return group.strongest && group.weightDban >= findingDban;
}

bool isShaft(const FollowedChange& change) {
    return change.quantity <= Followed::Velocity || change.fault == "looseness";
}

std::vector<CauseFeature> addedPattern(const std::vector<ChangeGroup>& groups) {
    const Added sum = sumOf(groups);
    std::vector<CauseFeature> features;
    const double one = sum.radial[1], two = sum.radial[2], larger = std::max({one, two, sum.axial1});
    if (!(larger > 0) || !isOfTheShaft(sum)) return features;
    features.push_back({"two_over_one", ratioDb(two, one)});
    features.push_back({"three_over_one", ratioDb(sum.radial[3], one)});
    if (sum.hasAxial) features.push_back({"axial_over_radial", ratioDb(sum.axial1, one)});
    if (sum.overall > 0)
        features.push_back({"one_share", std::min(1.0, one * one / (sum.overall * sum.overall))});
    if (!std::isnan(sum.high))
        features.push_back({"high_orders", sum.high > 2 * kWorth * larger ? kManyOrders : 0});
    if (!std::isnan(sum.half))
        features.push_back({"half_orders", sum.half > kWorth * larger ? kHalfOrders : 0});
    if (sum.radial1 >= 2 && sum.most1 > 0)
        features.push_back({"one_direction", ratioDb(sum.most1, std::max(sum.least1, 0.05 * sum.most1))});
    return features;
}

}  // namespace fettle
