// Why: trends of sound and of growing machines, as a sensor on a real one gives them: a level that differs
// from day to day, is lower or higher at weekends, and drifts with weather and product over weeks. Each swing
// about 1 dB where nothing else is said (common practice, no source). Decibels about the level; reproducible
// from the seed.
#pragma once

#include <cmath>
#include <numbers>
#include <random>
#include <vector>

namespace fettle::trials {

struct Swings {
    double dailyDb = 1, weeklyDb = 1, driftDb = 1;  // standard deviations
    double driftDays = 30;                          // over which a drift forgets itself
};

class MadeTrends {
  public:
    explicit MadeTrends(std::uint64_t seed) : random_(seed) {}

    double normal() { return normal_(random_); }
    double uniform(double low, double high) { return std::uniform_real_distribution(low, high)(random_); }
    double logUniform(double low, double high) { return std::exp(uniform(std::log(low), std::log(high))); }
    int whole(int low, int high) { return std::uniform_int_distribution(low, high)(random_); }

    // dB of each of `days` days in a row; a weekly sine of random phase, a drift of the first order.
    std::vector<double> swings(int days, const Swings& s) {
        const double keep = std::exp(-1 / s.driftDays), phase = uniform(0, 2 * std::numbers::pi);
        double drift = s.driftDb * normal();
        std::vector<double> all;
        for (int day = 0; day < days; ++day) {
            const double week = std::sin(2 * std::numbers::pi * day / 7 + phase);
            all.push_back(s.dailyDb * normal() + s.weeklyDb * std::numbers::sqrt2 * week + drift);
            drift = keep * drift + s.driftDb * std::sqrt(1 - keep * keep) * normal();
        }
        return all;
    }

  private:
    std::mt19937_64 random_;
    std::normal_distribution<double> normal_;
};

}  // namespace fettle::trials
