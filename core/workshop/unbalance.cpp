#include "core/workshop/unbalance.h"

#include <fmt/format.h>

#include "core/base/units.h"

namespace fettle {

namespace {
constexpr double kGmmPerKgM = 1e6;  // 1 kg m is a million g mm
}

double angularSpeed(double rpm) {
    return rpm > 0 ? kTwoPi * rpm / 60 : 0;
}

double unbalanceGmm(double massG, double radiusMm) {
    return massG > 0 && radiusMm > 0 ? massG * radiusMm : 0;
}

double permissibleOffsetUm(double grade, double rpm) {
    return rpm > 0 ? 1000 * grade / angularSpeed(rpm) : 0;
}

double permissibleUnbalanceGmm(double grade, double rotorKg, double rpm) {
    return rotorKg > 0 ? permissibleOffsetUm(grade, rpm) * rotorKg : 0;
}

double unbalanceForceN(double unbalanceGmm, double rpm) {
    return unbalanceGmm / kGmmPerKgM * angularSpeed(rpm) * angularSpeed(rpm);
}

double equivalentGrade(double unbalanceGmm, double rotorKg, double rpm) {
    return rotorKg > 0 ? unbalanceGmm / rotorKg * angularSpeed(rpm) / 1000 : 0;
}

double massOfWeightShareG(double share, double rotorKg, double rpm, double radiusMm) {
    if (rotorKg <= 0 || rpm <= 0 || radiusMm <= 0) return 0;
    const double forceN = share * rotorKg * kStandardGravity;
    return forceN / (angularSpeed(rpm) * angularSpeed(rpm)) * kGmmPerKgM / radiusMm;
}

PlaneShares shareToPlanes(double unbalanceGmm, double firstFromCentreMm, double secondFromCentreMm) {
    const double apart = firstFromCentreMm + secondFromCentreMm;
    if (apart <= 0) return {};
    return {unbalanceGmm * secondFromCentreMm / apart, unbalanceGmm * firstFromCentreMm / apart};
}

std::optional<double> gradeThatHolds(double value) {
    for (const double grade : kBalanceGrades)
        if (value <= grade) return grade;
    return std::nullopt;
}

std::string gradeName(double grade) {
    return fmt::format("G {:g}", grade);
}

double usualGrade(RotorKind kind, double rpm, std::optional<double> shaftHeightMm) {
    if (kind != RotorKind::ElectricMotor) return 6.3;
    return rpm <= 950 || shaftHeightMm.value_or(80) < 80 ? 6.3 : 2.5;
}

}  // namespace fettle
