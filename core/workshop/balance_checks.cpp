#include "core/workshop/balance_checks.h"

#include <fmt/format.h>

#include <cmath>

namespace fettle {

namespace {

using Kind = BalanceRemark::Kind;

class Checks {
  public:
    Checks(const BalanceJob& job, const BalanceAnswer& answer) : job_(job), answer_(answer) {}

    std::vector<BalanceRemark> all() {
        rotor();
        planes();
        trials();
        conditions();
        saved();
        check();
        return std::move(remarks_);
    }

  private:
    void add(Kind kind, const std::string& place, const std::string& words) {
        remarks_.push_back({kind, place, words});
    }

    void rotor() {
        if (!job_.rotor.massKg || !(*job_.rotor.massKg > 0))
            add(Kind::Missing, "/rotor/mass_kg",
                "without the rotor's mass there is no advice on trial masses "
                "and no permissible unbalance");
        if (!job_.rotor.rpm || !(*job_.rotor.rpm > 0))
            add(Kind::Missing, "/rotor/rpm",
                "without the speed there is no advice on trial masses and no "
                "permissible unbalance");
        if (!job_.cautionsRead) add(Kind::Missing, "/cautions_read", "read the cautions first");
    }

    void planes() {
        for (std::size_t p = 0; p < job_.planes.size(); ++p) {
            const BalancePlane& plane = job_.planes[p];
            if (!(plane.radiusMm > 0))
                add(Kind::Missing, fmt::format("/planes/{}/radius_mm", p),
                    "without the radius of its masses there is no unbalance in g mm");
            if (job_.planes.size() == 2 && !plane.fromCentreMm)
                add(Kind::Missing, fmt::format("/planes/{}/from_centre_mm", p),
                    "without its distance from the centre of mass half of the permissible unbalance is "
                    "taken");
        }
    }

    // Which plane the trial of a run sits in.
    std::size_t planeOf(std::size_t trial) const {
        return job_.method == BalanceMethod::TwoPlanes ? trial : 0;
    }

    void trials() {
        for (std::size_t i = 0; i < job_.trials.size(); ++i) {
            const std::string place = fmt::format("/trials/{}/trial", i);
            const auto& trial = job_.trials[i].trial;
            if (!trial || !(trial->amount > 0)) {
                add(Kind::Missing, place, "needs the trial mass and its place");
                continue;
            }
            const auto& most = answer_.planes[planeOf(i)].trialMostG;
            if (most && trial->amount > 1.0001 * *most)
                add(Kind::Doubt, place,
                    fmt::format(
                        "is more than the {:.3g} g whose force is a tenth of the weight (rule of thumb): "
                        "take less",
                        *most));
            sameMass(i, *trial, place);
            change(i);
        }
    }

    void sameMass(std::size_t i, const Polar& trial, const std::string& place) {
        const auto& first = job_.trials[0].trial;
        if (job_.method == BalanceMethod::FourRuns && first &&
            std::abs(trial.amount - first->amount) > 1e-6 * first->amount && i > 0)
            add(Kind::Refusal, place,
                "must be the mass of the first trial run: the circles hold for one mass");
    }

    void change(std::size_t i) {
        if (job_.method == BalanceMethod::FourRuns) return;
        const bool leftOn = job_.trialMasses == TrialMasses::LeftOn && i > 0;
        double most = 0;
        for (const SensorAnswer& sensor : answer_.sensors) {
            const auto& before = leftOn ? sensor.trials[i - 1] : sensor.initial;
            if (!before || !sensor.trials[i]) return;
            const Phasor a[] = {phasorOf(*before)}, b[] = {phasorOf(*sensor.trials[i])};
            most = std::max(most, changeShare(a, b));
        }
        if (most >= kLeastChangeShare && most < kGoodChangeShare)
            add(Kind::Doubt, fmt::format("/trials/{}", i),
                fmt::format("the trial mass changed the vibration by {:.0f} %; over {:.0f} % is better",
                            100 * most, 100 * kGoodChangeShare));
    }

    void alike(const BalanceRun& run, const std::string& place, const std::optional<double>& rpm,
               const std::optional<double>& load, const std::string& than) {
        if (run.rpm && rpm && std::abs(*run.rpm - *rpm) > kUnlikeSpeedShare * *rpm)
            add(Kind::Doubt, place + "/rpm",
                fmt::format("{:.0f} r/min is not the speed of {} ({:.0f} r/min)", *run.rpm, than, *rpm));
        if (run.loadPct && load && std::abs(*run.loadPct - *load) > kUnlikeLoadPct)
            add(Kind::Doubt, place + "/load_pct",
                fmt::format("{:.0f} % is not the load of {} ({:.0f} %)", *run.loadPct, than, *load));
    }

    void conditions() {
        for (std::size_t i = 0; i < job_.trials.size(); ++i)
            alike(job_.trials[i], fmt::format("/trials/{}", i), job_.initial.rpm, job_.initial.loadPct,
                  "the initial run");
        if (job_.check)
            alike(*job_.check, "/check", job_.initial.rpm, job_.initial.loadPct, "the initial run");
    }

    void saved() {
        if (!job_.saved) return;
        alike(job_.initial, "/initial", job_.saved->rpm, job_.saved->loadPct,
              "the job the coefficients come from");
        add(Kind::Doubt, "/saved",
            fmt::format(
                "coefficients of \"{}\" of {}: they hold for the same zero mark, sensors, planes, speed "
                "and load alone; fit the mass in two steps and check",
                job_.saved->from, job_.saved->date));
    }

    void check() {
        for (std::size_t s = 0; s < answer_.sensors.size(); ++s) {
            const SensorAnswer& sensor = answer_.sensors[s];
            if (sensor.initial && sensor.check && sensor.check->amount > sensor.initial->amount)
                add(Kind::Doubt, fmt::format("/check/sensors/{}", s),
                    "is higher than before the correction: see whether the angles were counted the stated "
                    "way, "
                    "and whether something moved");
        }
    }

    const BalanceJob& job_;
    const BalanceAnswer& answer_;
    std::vector<BalanceRemark> remarks_;
};

}  // namespace

std::vector<BalanceRemark> balanceChecks(const BalanceJob& job, const BalanceAnswer& answer) {
    return Checks(job, answer).all();
}

}  // namespace fettle
