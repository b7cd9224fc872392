// Why: what a mass at a radius means on a turning rotor, in the words of the balancing standard: unbalance
// (g mm), the permissible one of a grade, force, equivalent grade, shares of two planes, the mass that gives
// a share of the rotor's weight. Balancing and seeded-fault trials both speak these. A grade G is e omega in
// mm/s; e is g mm a kg, which is um. Units in the names. Thread: pure. A speed or mass that is not positive
// gives 0. Source: ISO 21940-11:2016 (formerly ISO 1940-1), grades and formulae from memory.
#pragma once

#include <array>
#include <optional>
#include <string>

namespace fettle {

// Grades of ISO 21940-11, table 1, in mm/s.
inline constexpr std::array<double, 11> kBalanceGrades = {0.4, 1,   2.5, 6.3,  16,  40,
                                                          100, 250, 630, 1600, 4000};

double angularSpeed(double rpm);  // rad/s
double unbalanceGmm(double massG, double radiusMm);
// e_per = 1000 G / omega, in um (g mm a kg of rotor).
double permissibleOffsetUm(double grade, double rpm);
// U_per = e_per m, of the whole rotor.
double permissibleUnbalanceGmm(double grade, double rotorKg, double rpm);
double unbalanceForceN(double unbalanceGmm, double rpm);
// e omega, the grade at which this unbalance would be the permissible one.
double equivalentGrade(double unbalanceGmm, double rotorKg, double rpm);
// The mass at a radius whose force is `share` of the rotor's weight; 0.1 is the usual most of a trial mass
// (rule of thumb, no source).
double massOfWeightShareG(double share, double rotorKg, double rpm, double radiusMm);

// Permissible unbalance of a rotor between or beside its bearings, shared out to two planes by their distance
// from the centre of mass: the nearer plane gets the more (ISO 21940-11, 7.2). Distances over 0, in mm.
struct PlaneShares {
    double first = 0, second = 0;  // g mm
};
PlaneShares shareToPlanes(double unbalanceGmm, double firstFromCentreMm, double secondFromCentreMm);

// The least grade of the table that holds this value; nothing above the largest.
std::optional<double> gradeThatHolds(double value);
std::string gradeName(double grade);  // "G 6.3"

// The grade usually asked of a machine. Electric motors: shaft height under 80 mm or at most 950 r/min G 6.3,
// else G 2.5; fans, pumps and other machinery G 6.3 (ISO 21940-11, table 1, from memory).
enum class RotorKind { ElectricMotor, FanOrPump, General };
double usualGrade(RotorKind kind, double rpm, std::optional<double> shaftHeightMm = {});

}  // namespace fettle
