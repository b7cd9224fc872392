#include "core/simulate/impact_train.h"

#include <cmath>

#include "core/simulate/exact_math.h"

namespace fettle::sim {

namespace {
constexpr double kLoadFactor = 0.45;
constexpr double kInnerStrikeShare =
    0.65;  // of an element's spall: on the inner race it is heard through the element

double cageOrder(const DefectMotion& motion) {
    return exact::steady(motion.orders.ftf) * (1 + motion.cageShift);
}

double loadAt(double turns) {
    const double share = 1 - (1 - exact::cosine(turns)) / (2 * kLoadFactor);
    return share > 0 ? share * std::sqrt(share) : 0;
}

// Strength of the n-th strike at a shaft angle.
double strengthAt(const DefectMotion& motion, double angle, std::size_t n) {
    switch (motion.defect) {
        case Defect::InnerRace:
            return 0.04 + loadAt(angle);
        case Defect::RollingElement:
            return (0.06 + loadAt(angle * cageOrder(motion))) * (n % 2 ? kInnerStrikeShare : 1);
        default:
            return 1;
    }
}
}  // namespace

double strikesPerTurn(const DefectMotion& motion) {
    const double cage = cageOrder(motion);
    switch (motion.defect) {
        case Defect::OuterRace:
            return motion.rollingElements * cage;
        case Defect::InnerRace:
            return motion.rollingElements * (1 - cage);
        case Defect::RollingElement:
            return 2 * exact::steady(motion.orders.bsf) * (1 + motion.cageShift);
        default:
            return cage;
    }
}

std::vector<Impact> impactTrain(const DefectMotion& motion, const std::vector<double>& shaftTurns,
                                RandomStream chance) {
    std::vector<Impact> impacts;
    if (shaftTurns.size() < 2) return impacts;
    const double interval = 1 / strikesPerTurn(motion);
    const double defectAt = chance.uniform();
    double angle = shaftTurns.front() + interval * chance.uniform();
    std::size_t i = 0;
    for (std::size_t n = 0; angle < shaftTurns.back(); ++n) {
        while (shaftTurns[i + 1] < angle)
            ++i;
        const double between = (angle - shaftTurns[i]) / (shaftTurns[i + 1] - shaftTurns[i]);
        const double spread = 1 + motion.roughness * chance.normal();
        const double strength = strengthAt(motion, angle + defectAt, n) * (spread > 0 ? spread : 0);
        impacts.push_back({double(i) + between, strength});
        const double step = 1 + motion.slipJitter * chance.normal();
        angle += interval * (step > 0.05 ? step : 0.05);
    }
    return impacts;
}

}  // namespace fettle::sim
