// Why: a standard's limit says what is bad for any such machine; a control chart says what is unusual for
// this one. Shewhart, EWMA and tabular CUSUM, and how long each runs between false alarms, so that a limit is
// never drawn without its price. Sources: W. A. Shewhart (1931); S. W. Roberts, Technometrics 1 (1959)
// 239-250 (EWMA); E. S. Page, Biometrika 41 (1954) 100-115 (CUSUM); run lengths: J. M. Lucas and M. S.
// Saccucci, Technometrics 32 (1990) 1-29, S. V. Crowder, Technometrics 29 (1987) 401-407 (integral
// equations). Values in the unit of target and sigma. Thread: pure.
#pragma once

#include <span>
#include <vector>

namespace fettle {

struct ChartBasis {
    double target = 0, sigma = 1;
};

struct EwmaOptions {
    double lambda = 0.2;
    double width = 2.86;       // L; with lambda 0.2 one false alarm in 371 values
    bool fixedLimits = false;  // those of a long run from the first value on
};
struct EwmaPoint {
    double value = 0, low = 0, high = 0;
    bool out = false;
};
std::vector<EwmaPoint> ewma(std::span<const double> values, const ChartBasis& basis,
                            const EwmaOptions& options = {});

struct CusumOptions {
    double k = 0.5, h = 5;  // in sigmas
};
struct CusumPoint {
    double up = 0, down = 0;     // C+ and C-, in sigmas
    int upRun = 0, downRun = 0;  // values since they were last zero, N+ and N-
    bool out = false;
};
struct CusumChart {
    std::vector<CusumPoint> points;
};
CusumChart cusum(std::span<const double> values, const ChartBasis& basis, const CusumOptions& options = {});

// Indices of values more than `width` sigmas from the target.
std::vector<std::size_t> shewhartOut(std::span<const double> values, const ChartBasis& basis,
                                     double width = 3);

// Mean number of values until the chart signals, for values whose mean is `shift` sigmas off the target:
// known target and sigma, started at the target, two-sided, fixed limits.
double ewmaRunLength(const EwmaOptions& options, double shift);
double cusumRunLength(const CusumOptions& options, double shift);
double cusumOneSidedRunLength(const CusumOptions& options, double shift);
double shewhartRunLength(double width, double shift);

}  // namespace fettle
