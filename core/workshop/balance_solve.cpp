#include "core/workshop/balance_solve.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/workshop/balance_checks.h"
#include "core/workshop/readings.h"
#include "core/workshop/unbalance.h"

namespace fettle {

namespace {

using Kind = BalanceRemark::Kind;

// One reading a sensor; empty where a reading is missing or refused.
using RunVectors = std::vector<std::optional<Phasor>>;

bool complete(const RunVectors& run) {
    return std::all_of(run.begin(), run.end(), [](const auto& one) { return one.has_value(); });
}

std::vector<Phasor> values(const RunVectors& run) {
    std::vector<Phasor> all;
    for (const auto& one : run)
        all.push_back(one.value_or(Phasor()));
    return all;
}

class Solver {
  public:
    explicit Solver(const BalanceJob& job) : job_(job) { fitToMethod(job_); }

    BalanceAnswer answer() {
        answer_.planes.resize(job_.planes.size());
        answer_.sensors.resize(job_.sensors.size());
        readRuns();
        addGrade();
        for (BalanceRemark& remark : balanceChecks(job_, answer_))
            answer_.remarks.push_back(std::move(remark));
        if (job_.method == BalanceMethod::FourRuns)
            solveCircles();
        else
            solveInfluence();
        if (answer_.solved) addCheck();
        std::stable_sort(answer_.remarks.begin(), answer_.remarks.end(),
                         [](const auto& a, const auto& b) { return int(a.kind) > int(b.kind); });
        return std::move(answer_);
    }

  private:
    void remark(Kind kind, const std::string& place, const std::string& words) {
        answer_.remarks.push_back({kind, place, words});
    }
    void refuse(const Error& error, const std::string& place) { remark(Kind::Refusal, place, error.rule); }
    bool amountsAlone() const { return job_.method == BalanceMethod::FourRuns; }

    std::optional<Phasor> readSensor(const std::vector<VibrationReading>& readings,
                                     const std::string& place) {
        std::vector<Phasor> arrows;
        for (const VibrationReading& one : readings) {
            if (!amountsAlone() && !one.degrees) {
                remark(Kind::Missing, place, "needs a phase beside every amount");
                return std::nullopt;
            }
            const Polar read{one.amount, amountsAlone() ? 0 : *one.degrees};
            arrows.push_back(amountsAlone() ? phasorOf(read) : vibrationPhasor(read, job_.convention));
        }
        if (arrows.empty()) {
            remark(Kind::Missing, place, "has no reading yet");
            return std::nullopt;
        }
        const auto mean = steadyMean(arrows);
        if (!mean) {
            refuse(mean.error(), place);
            return std::nullopt;
        }
        return mean->mean;
    }

    RunVectors readRun(const BalanceRun& run, const std::string& place) {
        RunVectors all;
        for (std::size_t s = 0; s < run.sensors.size(); ++s)
            all.push_back(readSensor(run.sensors[s], fmt::format("{}/sensors/{}", place, s)));
        return all;
    }

    std::optional<Polar> shown(const std::optional<Phasor>& arrow) const {
        if (!arrow) return std::nullopt;
        return amountsAlone() ? Polar{std::abs(*arrow), 0} : vibrationAsRead(*arrow, job_.convention);
    }

    void readRuns() {
        initial_ = readRun(job_.initial, "/initial");
        for (std::size_t i = 0; i < job_.trials.size(); ++i)
            trials_.push_back(readRun(job_.trials[i], fmt::format("/trials/{}", i)));
        if (job_.check) check_ = readRun(*job_.check, "/check");
        for (std::size_t s = 0; s < answer_.sensors.size(); ++s) {
            SensorAnswer& sensor = answer_.sensors[s];
            sensor.initial = shown(initial_[s]);
            for (const RunVectors& run : trials_)
                sensor.trials.push_back(shown(run[s]));
            if (job_.check) sensor.check = shown(check_[s]);
        }
    }

    // Shares of weight and of the permissible unbalance; halves where the distances are not known.
    PlaneShares sharesOf(double whole) const {
        if (job_.planes.size() < 2) return {whole, 0};
        const auto &a = job_.planes[0].fromCentreMm, &b = job_.planes[1].fromCentreMm;
        if (a && b && *a + *b > 0) return shareToPlanes(whole, *a, *b);
        return {whole / 2, whole / 2};
    }

    void addGrade() {
        const BalanceRotor& rotor = job_.rotor;
        if (!rotor.massKg || !rotor.rpm || !(*rotor.massKg > 0) || !(*rotor.rpm > 0)) return;
        answer_.offsetUm = permissibleOffsetUm(rotor.grade, *rotor.rpm);
        answer_.permissibleGmm = permissibleUnbalanceGmm(rotor.grade, *rotor.massKg, *rotor.rpm);
        const PlaneShares permissible = sharesOf(*answer_.permissibleGmm), weight = sharesOf(*rotor.massKg);
        for (std::size_t p = 0; p < answer_.planes.size(); ++p) {
            const double radius = job_.planes[p].radiusMm;
            answer_.planes[p].permissibleGmm = p == 0 ? permissible.first : permissible.second;
            if (radius > 0)
                answer_.planes[p].trialMostG = massOfWeightShareG(
                    kTrialShare, p == 0 ? weight.first : weight.second, *rotor.rpm, radius);
        }
    }

    bool trialMassesThere() const {
        return std::all_of(job_.trials.begin(), job_.trials.end(),
                           [](const BalanceRun& run) { return run.trial && run.trial->amount > 0; });
    }
    bool runsThere() const {
        return complete(initial_) && std::all_of(trials_.begin(), trials_.end(), complete) &&
               trialMassesThere();
    }

    std::optional<Influence> savedInfluence() const {
        Influence influence = job_.saved->influence;
        for (std::size_t p = 0; p < influence.planes; ++p) {
            const double then = p < job_.saved->radiiMm.size() ? job_.saved->radiiMm[p] : 0;
            const double now = job_.planes[p].radiusMm;
            for (std::size_t s = 0; then > 0 && now > 0 && s < influence.planes; ++s)
                influence.perGram[s * influence.planes + p] *= now / then;
        }
        return influence;
    }

    std::optional<Influence> learntInfluence() {
        std::vector<TrialRun> runs;
        for (std::size_t i = 0; i < trials_.size(); ++i)
            runs.push_back({massPhasor(*job_.trials[i].trial, job_.convention), values(trials_[i])});
        const auto influence = influenceOf(values(initial_), runs, job_.trialMasses);
        if (influence) return *influence;
        const std::string& place = influence.error().place;
        refuse(influence.error(), place == "run 1"   ? "/trials/0"
                                  : place == "run 2" ? "/trials/1"
                                                     : "/trials");
        return std::nullopt;
    }

    void solveInfluence() {
        if (!runsThere()) return;
        answer_.influence = job_.saved ? savedInfluence() : learntInfluence();
        if (!answer_.influence) return;
        answer_.condition = conditionOf(*answer_.influence);
        const auto masses = massesAgainst(*answer_.influence, values(initial_));
        if (!masses) return refuse(masses.error(), "/planes");
        answer_.solved = true;
        std::vector<Phasor> onRotor(masses->size());
        for (std::size_t p = 0; p < masses->size(); ++p) {
            const bool trialStays = job_.trialMasses == TrialMasses::LeftOn && !job_.saved;
            const Phasor stays = trialStays ? massPhasor(*job_.trials[p].trial, job_.convention) : Phasor();
            onRotor[p] = stays + fitPlane(p, (*masses)[p], stays);
        }
        const std::vector<Phasor> left = predicted(*answer_.influence, values(initial_), onRotor);
        for (std::size_t s = 0; s < left.size(); ++s)
            answer_.sensors[s].predicted = shown(left[s]);
    }

    void solveCircles() {
        if (!runsThere()) return;
        std::vector<AmountRun> runs;
        for (std::size_t i = 0; i < trials_.size(); ++i)
            runs.push_back({polarOf(massPhasor(*job_.trials[i].trial, job_.convention)).degrees,
                            std::abs(*trials_[i][0])});
        const auto circles = fromFourRuns(std::abs(*initial_[0]), job_.trials[0].trial->amount, runs);
        if (!circles) {
            const std::string& place = circles.error().place;
            const bool ofTrial = place.starts_with("run ") && place != "run 0";
            return refuse(circles.error(),
                          ofTrial ? fmt::format("/trials/{}", std::stoi(place.substr(4)) - 1) : "/trials");
        }
        answer_.circles = *circles;
        answer_.solved = true;
        const Phasor fitted = fitPlane(0, circles->correction, Phasor());
        answer_.sensors[0].predicted = Polar{std::abs(circles->correction - fitted) * circles->perGram, 0};
        if (circles->missShare > kWarnMissShare)
            remark(
                Kind::Doubt, "/trials",
                fmt::format("the circles miss each other by {:.0f} % of the initial vibration: take the mass "
                            "as a first step and check",
                            100 * circles->missShare));
    }

    // Fills the plane's answer; what is really added, as the places take it.
    Phasor fitPlane(std::size_t p, Phasor total, Phasor stays) {
        const BalancePlane& plane = job_.planes[p];
        PlaneAnswer& out = answer_.planes[p];
        out.toFit = massAsCounted(total - stays, job_.convention);
        out.initialGmm = std::abs(total) * plane.radiusMm;
        out.split = splitOver(out.toFit, plane.places);
        addSplitDoubt(p, out);
        if (!plane.existing.empty() && plane.radiusMm > 0) {
            std::vector<FittedMass> all = plane.existing;
            all.push_back({out.toFit, plane.radiusMm});
            if (std::abs(stays) > 0) all.push_back({massAsCounted(stays, job_.convention), plane.radiusMm});
            out.instead = combined(all, plane.radiusMm);
        }
        return massPhasor(out.toFit, job_.convention) - massPhasor(out.split.leftOver, job_.convention);
    }

    void addSplitDoubt(std::size_t p, const PlaneAnswer& out) {
        if (out.split.leftOver.amount <= kMostLeftShare * out.toFit.amount) return;
        remark(Kind::Doubt, fmt::format("/planes/{}/places", p),
               fmt::format("the free places cannot take it all: {:.1f} g of {:.1f} g stay uncorrected",
                           out.split.leftOver.amount, out.toFit.amount));
    }

    void addCheck() {
        if (!job_.check || !complete(check_)) return;
        std::vector<Phasor> left(answer_.planes.size());
        if (answer_.circles) {
            left[0] = std::abs(*check_[0]) / answer_.circles->perGram;
        } else {
            const auto masses = massesAgainst(*answer_.influence, values(check_));
            if (!masses) return;
            left = *masses;
        }
        bool within = true, judged = true;
        for (std::size_t p = 0; p < left.size(); ++p) {
            PlaneAnswer& out = answer_.planes[p];
            const double radius = job_.planes[p].radiusMm;
            if (radius > 0) out.residualGmm = std::abs(left[p]) * radius;
            judged = judged && out.residualGmm && out.permissibleGmm;
            within = judged && within && *out.residualGmm <= *out.permissibleGmm;
            if (answer_.circles) continue;
            out.trim = massAsCounted(left[p], job_.convention);
            out.trimSplit = splitOver(*out.trim, job_.planes[p].places);
        }
        if (judged) answer_.withinGrade = within;
    }

    BalanceJob job_;
    BalanceAnswer answer_;
    RunVectors initial_, check_;
    std::vector<RunVectors> trials_;
};

}  // namespace

bool BalanceAnswer::refused() const {
    return std::any_of(remarks.begin(), remarks.end(),
                       [](const BalanceRemark& remark) { return remark.kind == Kind::Refusal; });
}

std::optional<double> BalanceAnswer::perGram(std::size_t sensor, std::size_t plane) const {
    if (circles && sensor == 0 && plane == 0) return circles->perGram;
    if (!influence || sensor >= influence->planes || plane >= influence->planes) return std::nullopt;
    return std::abs(influence->at(sensor, plane));
}

BalanceAnswer solveBalance(const BalanceJob& job) {
    return Solver(job).answer();
}

std::optional<SavedInfluence> influenceToSave(const BalanceJob& job, const std::string& date) {
    const BalanceAnswer answer = solveBalance(job);
    if (!answer.solved || !answer.influence) return std::nullopt;
    SavedInfluence saved{job.name, date, *answer.influence, {}, {}, job.initial.loadPct};
    for (const BalancePlane& plane : job.planes)
        saved.radiiMm.push_back(plane.radiusMm);
    saved.rpm = job.initial.rpm ? job.initial.rpm : job.rotor.rpm;
    return saved;
}

}  // namespace fettle
