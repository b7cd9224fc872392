#include "core/diagnosis/speed.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/diagnosis/flux_speed.h"
#include "core/diagnosis/speed_comb.h"

namespace fettle {

namespace {

constexpr double kGivenSpread = 0.002;  // of a given speed that nothing confirms
constexpr double kMostSlip = 1.6;       // over the rated one
constexpr double kAboveSynchronous = 3e-4;
constexpr double kBesideFlux = 0.0015;  // reach of the comb about a speed read from flux
constexpr double kAlike = 3e-4;         // readings this near agree whatever they say of themselves
constexpr double kClockReach = 0.025;   // of a cheap node's clock, tried where the mains then confirms it
constexpr double kAgainstGiven = 8;     // nepers of a comb that is believed against a given speed
constexpr double kSlipKnown = 2e-4;

struct Reach {
    double least = 0, most = 0;  // Hz
};

Reach about(double hz, double share) {
    return {hz * (1 - share), hz * (1 + share)};
}

bool agree(const SpeedReading& a, const SpeedReading& b) {
    return std::abs(a.hz - b.hz) <= a.plusMinusHz + b.plusMinusHz + kAlike * a.hz;
}

class Finder {
  public:
    explicit Finder(const SpeedQuestion& q) : q_(q) {}
    SpeedAnswer find();

  private:
    void readMains();
    void readFlux();
    void readComb();
    bool combWithin(const Reach& reach, double leastNepers = 0);
    bool combByWrongClock();
    void merge();
    void compareGiven();
    void sayWhyNone();
    void addEstimate(const std::string& from, double hz, double plusMinusHz) {
        answer_.speed.estimates.push_back({from, hz * 60, plusMinusHz * 60});
    }
    void note(std::string detail) { answer_.notes.push_back({"speed_disagrees", "", std::move(detail)}); }

    const SpeedQuestion& q_;
    SpeedAnswer answer_;
    std::optional<SpeedRange> range_;
    std::vector<CombView> views_;
    std::vector<SpeedReading> read_;  // those that were measured, the most trusted first
    std::vector<SpeedReading> slip_;  // slip sidebands: only beside a reading that they agree with
    std::optional<Comb> doubtful_;    // a comb that stands, beside another that fits nearly as well
};

void Finder::readMains() {
    answer_.mains = statedMains(q_.machine, q_.recording, q_.settings);
    if (const auto measured = mainsInFlux(q_.machine, q_.recording, q_.flux)) answer_.mains = *measured;
    range_ = answer_.mains.measured ? speedRangeAt(q_.machine, answer_.mains) : speedRange(q_.machine);
}

void Finder::readFlux() {
    if (!range_) return;
    for (SpeedReading& r :
         speedInFlux(q_.machine, q_.flux, answer_.mains, range_->least / 60, range_->most / 60))
        (r.from == kSlipSidebands ? slip_ : read_).push_back(std::move(r));
    for (const SpeedReading& r : read_)
        addEstimate(r.from, r.hz, r.plusMinusHz);
    answer_.inFlux = !read_.empty() && slips(q_.machine);
}

// Takes the comb as a reading where it stands alone.
bool Finder::combWithin(const Reach& reach, double leastNepers) {
    const auto comb = findComb(views_, reach.least, reach.most, answer_.mains);
    if (!comb || comb->nepers < leastNepers) return false;
    if (!comb->single()) {
        if (comb->stands()) doubtful_ = comb;
        return false;
    }
    read_.push_back({"shaft comb", comb->hz, comb->plusMinusHz});
    addEstimate("shaft comb", comb->hz, comb->plusMinusHz);
    answer_.combSeen = true;
    return true;
}

// A clock a few per cent off moves the comb out of the nameplate's range; believed only where the mains
// stands in the vibration as far off.
bool Finder::combByWrongClock() {
    if (!range_ || answer_.mains.measured || answer_.mains.output || !ratedSlipHz(q_.machine)) return false;
    const auto comb = findComb(views_, range_->least / 60 * (1 - kClockReach),
                               range_->most / 60 * (1 + kClockReach), answer_.mains);
    if (!comb || !comb->single()) return false;
    const auto mains = mainsInVibration(q_.machine, q_.views, comb->hz);
    if (!mains || !checkClock(q_.machine, *mains).corrected) return false;
    answer_.mains = *mains;
    read_.push_back({"shaft comb", comb->hz, comb->plusMinusHz});
    addEstimate("shaft comb", comb->hz, comb->plusMinusHz);
    return answer_.combSeen = true;
}

void Finder::readComb() {
    double most = range_ ? range_->most * (1 + kClockReach) : 0;
    if (q_.givenRpm) most = std::max(most, *q_.givenRpm * 1.01);
    views_ = combViews(q_.views, most / 60, strongOrders(q_.machine));
    if (!read_.empty() && combWithin(about(read_[0].hz, kBesideFlux))) return;
    if (q_.givenRpm && combWithin(about(*q_.givenRpm / 60, q_.settings.speedReachGiven))) return;
    if (range_ && combWithin({range_->least / 60, range_->most / 60}, q_.givenRpm ? kAgainstGiven : 0))
        return;
    if (read_.empty()) combByWrongClock();
}

// The first reading leads; those that agree sharpen it, the others are told and widen it.
void Finder::merge() {
    if (read_.empty()) return;
    for (const SpeedReading& r : slip_)
        if (agree(r, read_[0])) {
            addEstimate(r.from, r.hz, r.plusMinusHz);
            read_.push_back(r);
            answer_.inFlux = true;
        }
    const SpeedReading lead = read_[0];
    double weights = 0, sum = 0, widest = 0;
    for (const SpeedReading& r : read_) {
        if (agree(r, lead)) {
            const double weight = 1 / (r.plusMinusHz * r.plusMinusHz);
            weights += weight;
            sum += weight * r.hz;
        } else {
            note(fmt::format("{} says {:.1f} r/min, {} says {:.1f} r/min", lead.from, lead.hz * 60, r.from,
                             r.hz * 60));
            widest = kBesideFlux * lead.hz;
        }
    }
    answer_.speed.rpm = sum / weights * 60;
    answer_.speed.plusMinusRpm = std::max(widest, 1 / std::sqrt(weights)) * 60;
    answer_.speed.from = "found";
}

void Finder::compareGiven() {
    if (!q_.givenRpm) return;
    SpeedResult& speed = answer_.speed;
    const double given = *q_.givenRpm;
    speed.givenRpm = given;
    addEstimate("given", given / 60, given / 60 * kGivenSpread);
    if (!speed.rpm) {
        speed.rpm = given;
        speed.plusMinusRpm = given * kGivenSpread;
        speed.from = "given";
    } else if (std::abs(*speed.rpm - given) <= q_.settings.speedReachGiven * given + speed.plusMinusRpm) {
        speed.from = "given, refined";
    } else {
        note(fmt::format("{:.1f} r/min is given, {} says {:.1f} r/min", given, read_[0].from, *speed.rpm));
        speed.plusMinusRpm = std::max(speed.plusMinusRpm, 0.001 * given);
    }
}

void Finder::sayWhyNone() {
    if (answer_.speed.rpm) return;
    std::string& why = answer_.speed.from;
    if (!range_)
        why = "not given, and the nameplate has neither poles nor rated speed";
    else if (doubtful_ && doubtful_->secondHz > 0)
        why = fmt::format(
            "not given, and it cannot be known from this recording: {:.1f} and {:.1f} r/min fit nearly alike",
            doubtful_->hz * 60, doubtful_->secondHz * 60);
    else
        why = fmt::format(
            "not given, and no comb of shaft orders stands out between {:.0f} and {:.0f} r/min ({})",
            range_->least, range_->most, range_->from);
}

SpeedAnswer Finder::find() {
    readMains();
    readFlux();
    readComb();
    merge();
    compareGiven();
    sayWhyNone();
    if (!answer_.mains.measured && answer_.combSeen)
        if (const auto mains = mainsInVibration(q_.machine, q_.views, *answer_.speed.rpm / 60))
            answer_.mains = *mains;
    return std::move(answer_);
}

}  // namespace

std::optional<SpeedRange> speedRange(const Machine& machine) {
    const Driver& d = machine.driver;
    if (d.inverter && d.rpmMin && d.rpmMax)
        return SpeedRange{*d.rpmMin, *d.rpmMax, "nameplate: inverter range"};
    const auto synchronous = machine.synchronousRpm();
    if (synchronous && d.ratedRpm && *d.ratedRpm < *synchronous && slips(machine))
        return SpeedRange{*synchronous - kMostSlip * (*synchronous - *d.ratedRpm), *synchronous * 1.002,
                          fmt::format("nameplate: {} poles, {:g} Hz, rated {:g} r/min", d.poles.value_or(0),
                                      machine.mainsHz, *d.ratedRpm)};
    if (synchronous)
        return SpeedRange{*synchronous * (slips(machine) ? 0.94 : 0.998), *synchronous * 1.002,
                          fmt::format("nameplate: {} poles, {:g} Hz", d.poles.value_or(0), machine.mainsHz)};
    if (d.ratedRpm) return SpeedRange{*d.ratedRpm * 0.97, *d.ratedRpm * 1.03, "nameplate: rated speed"};
    return std::nullopt;
}

std::optional<SpeedRange> speedRangeAt(const Machine& machine, const Mains& mains) {
    const Driver& d = machine.driver;
    if (!d.poles) return speedRange(machine);
    const double synchronous = 120 * mains.hz / *d.poles;
    const auto slip = ratedSlipHz(machine);
    const double least = slip ? synchronous - kMostSlip * *slip * 60
                              : synchronous * (slips(machine) ? 0.94 : 1 - kAboveSynchronous);
    return SpeedRange{std::max(least, 0.2 * synchronous), synchronous * (1 + kAboveSynchronous),
                      fmt::format("{} poles, {:.2f} Hz measured", *d.poles, mains.hz)};
}

SpeedAnswer findSpeed(const SpeedQuestion& question) {
    return Finder(question).find();
}

std::optional<SlipReading> slipReading(const Machine& machine, const SpeedResult& speed, const Mains& mains) {
    if (!speed.rpm || !machine.driver.poles || mains.hz <= 0) return std::nullopt;
    const double synchronous = 120 * mains.hz / *machine.driver.poles;
    SlipReading slip;
    slip.share = 1 - *speed.rpm / synchronous;
    slip.plusMinus = std::hypot(speed.plusMinusRpm / *speed.rpm, mains.plusMinusHz / mains.hz);
    slip.known = mains.measured && speed.from != "given" && slip.plusMinus <= kSlipKnown;
    return slip;
}

}  // namespace fettle
