// Recordings in which no fault of the machine is: noise of every colour, tones and combs that nobody listed,
// knocks, pickup of an inverter, a neighbour through the floor, a machine that stands still. What is named
// all the same, each recording by itself.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <complex>
#include <map>
#include <numbers>
#include <random>

#include "core/diagnosis/examine.h"
#include "tests/trials/made_weeks.h"
#include "tests/trials/share.h"
#include "tests/trials/trials.h"

namespace fettle::trials {

namespace {

constexpr double kTurn = 2 * std::numbers::pi;
constexpr double kNoiseG = 0.02;

class Draw {
  public:
    explicit Draw(std::uint64_t seed) : random_(seed) {}
    double normal() { return normal_(random_); }
    double within(double low, double high) { return low + (high - low) * even_(random_); }

  private:
    std::mt19937_64 random_;
    std::normal_distribution<double> normal_;
    std::uniform_real_distribution<double> even_;
};

struct Sound {
    std::vector<double>& g;
    double rateHz, shaftHz, mainsHz;

    double seconds() const { return double(g.size()) / rateHz; }
    void silence() { std::fill(g.begin(), g.end(), 0.0); }
    void addNoise(Draw& draw, double rms) {
        for (double& x : g)
            x += rms * draw.normal();
    }
    void addTone(double hz, double amplitude, double phase) {
        if (hz <= 0 || hz > 0.49 * rateHz) return;
        for (std::size_t i = 0; i < g.size(); ++i)
            g[i] += amplitude * std::sin(kTurn * hz * double(i) / rateHz + phase);
    }
    void addComb(Draw& draw, double hz, int harmonics, double amplitude) {
        for (int h = 1; h <= harmonics; ++h)
            addTone(h * hz, amplitude / std::sqrt(h) * draw.within(0.3, 1), draw.within(0, kTurn));
    }
    // Noise through a resonance of one degree of freedom.
    void addResonance(Draw& draw, double hz, double damping, double rms) {
        const double radius = std::exp(-kTurn * hz * damping / rateHz);
        const double a = 2 * radius * std::cos(kTurn * hz / rateHz), b = -radius * radius;
        const double gain = rms * std::sqrt((1 - b * b) * (1 - a * a / ((1 - b) * (1 - b))));
        double y1 = 0, y2 = 0;
        for (double& x : g) {
            const double y = gain * draw.normal() + a * y1 + b * y2;
            x += y;
            y2 = std::exchange(y1, y);
        }
    }
    void addRing(double at, double hz, double amplitude) {
        const auto first = std::size_t(at * rateHz),
                   last = std::min(g.size(), first + std::size_t(0.01 * rateHz));
        for (std::size_t i = first; i < last; ++i) {
            const double t = double(i - first) / rateHz;
            g[i] += amplitude * std::exp(-500 * t) * std::sin(kTurn * hz * t);
        }
    }
};

void coloured(Sound& sound, Draw& draw) {
    sound.silence();
    double slow = 0;
    for (double& x : sound.g) {
        slow = 0.999 * slow + draw.normal();
        x = 2e-3 * slow;
    }
    for (int i = 0; i < 4; ++i)
        sound.addResonance(draw, draw.within(0.03, 0.45) * sound.rateHz, draw.within(0.005, 0.05), kNoiseG);
    sound.addNoise(draw, kNoiseG / 4);
}

void tones(Sound& sound, Draw& draw) {
    sound.silence();
    sound.addNoise(draw, kNoiseG);
    for (int i = 0; i < 40; ++i)
        sound.addTone(std::exp(draw.within(std::log(5), std::log(0.48 * sound.rateHz))),
                      kNoiseG * std::exp(draw.within(-2, 1.5)), draw.within(0, kTurn));
}

void foreignComb(Sound& sound, Draw& draw) {
    sound.silence();
    sound.addNoise(draw, kNoiseG);
    sound.addComb(draw, sound.shaftHz * draw.within(0.3, 3), 25, 2 * kNoiseG);
}

void knocks(Sound& sound, Draw& draw) {
    sound.silence();
    sound.addNoise(draw, kNoiseG);
    const double hz = draw.within(0.1, 0.4) * sound.rateHz, rate = draw.within(1, 40);
    for (double t = 0; t < sound.seconds(); t -= std::log(draw.within(1e-9, 1)) / rate)
        sound.addRing(t, hz, 20 * kNoiseG * draw.within(0.2, 1));
}

void inverterPickup(Sound& sound, Draw& draw) {
    const double carrier = draw.within(1500, 8000), output = draw.within(0.6, 1.1) * sound.mainsHz;
    for (int n = 1; n <= 2; ++n)
        for (int k = -3; k <= 3; ++k) {
            double hz = std::fmod(n * carrier + 2 * k * output, sound.rateHz);
            hz = std::min(hz, sound.rateHz - hz);  // what lies above half the rate folds back
            sound.addTone(hz, kNoiseG / (1 + std::abs(k)), draw.within(0, kTurn));
        }
    sound.addComb(draw, 6 * output, 8, kNoiseG / 3);
}

void neighbour(Sound& sound, Draw& draw) {
    const double shaft = sound.shaftHz * draw.within(0.985, 0.995);
    sound.addComb(draw, shaft, 12, kNoiseG);
    sound.addComb(draw, shaft * std::floor(draw.within(5, 13)), 3, kNoiseG);
}

// Struck at a rate of its own, each blow a little late or early as a cage slips.
void neighbourBearing(Sound& sound, Draw& draw) {
    const double rate = sound.shaftHz * draw.within(0.985, 0.995) * draw.within(2.4, 8.6);
    const double hz = draw.within(0.1, 0.4) * sound.rateHz;
    for (double t = draw.within(0, 0.1); t < sound.seconds(); t += (1 + 0.01 * draw.normal()) / rate)
        sound.addRing(t, hz, 4 * kNoiseG);
}

struct Kind {
    const char* name;
    void (*make)(Sound& sound, Draw& draw);
};
const std::vector<Kind> kKinds = {
    {"a sound machine", [](Sound&, Draw&) {}},
    {"white noise alone",
     [](Sound& s, Draw& d) {
         s.silence();
         s.addNoise(d, kNoiseG);
     }},
    {"coloured noise alone", coloured},
    {"forty tones in noise", tones},
    {"a comb of no shaft in noise", foreignComb},
    {"knocks at random", knocks},
    {"sound, with an inverter's pickup", inverterPickup},
    {"sound, with multiples of the mains",
     [](Sound& s, Draw& d) { s.addComb(d, 2 * s.mainsHz, 15, 2 * kNoiseG); }},
    {"sound, beside a neighbour 1 % slower", neighbour},
    {"sound, a damaged bearing next door", neighbourBearing},
    {"stopped: the sensor's own noise",
     [](Sound& s, Draw& d) {
         s.silence();
         s.addNoise(d, 1e-3);
     }},
};

struct Count {
    std::size_t recordings = 0, described = 0, unknown = 0, others = 0, weighed = 0, ten = 0;
    double largest = -1e9;
};

void add(const Examination& one, Count& count) {
    ++count.recordings;
    bool described = false, unknown = false, others = false;
    for (const Hypothesis& h : one.findings)
        (h.fault == "bearing_unknown"                      ? unknown
         : h.fault.starts_with("bearing_") && h.weightDban ? described
                                                           : others) = true;
    count.described += described;
    count.unknown += unknown;
    count.others += others;
    for (const Hypothesis& h : one.considered) {
        if (!h.weightDban) continue;
        ++count.weighed;
        count.ten += *h.weightDban >= 10;
        count.largest = std::max(count.largest, *h.weightDban);
    }
}

// One recording of a machine of the scenario, with what the kind makes of its acceleration channels.
Examination examined(const sim::Scenario& scenario, const Kind& kind, std::size_t nth) {
    WeekOrder order;
    order.like = nth % scenario.machines.size();
    order.tag = fmt::format("{} {} {}", scenario.machines[order.like].machine.tag, kind.name, nth);
    order.perNode = 1;
    order.key = nth + 1;
    MadeWeek week = madeWeek(scenario, order);
    const auto& made = week.recordings[nth / scenario.machines.size() % week.recordings.size()];
    auto recording = std::make_shared<Recording>(*made);
    const auto rpm = recording->speedRpm ? recording->speedRpm : week.machine.driver.ratedRpm;
    recording->speedRpm = rpm;
    Draw draw(1000 * nth + std::size_t(&kind - kKinds.data()));
    for (Channel& channel : recording->channels) {
        if (channel.unit != "g") continue;
        Sound sound{channel.samples, channel.sampleRateHz, rpm.value_or(1500) / 60, week.machine.mainsHz};
        kind.make(sound, draw);
    }
    auto examination = examine(week.machine, {recording});
    if (!examination) fmt::print(stderr, "{}\n", examination.error().sentence());
    return examination ? *examination : Examination{};
}

void list(const Kind& kind, const Examination& one) {
    for (const Hypothesis& h : one.findings)
        if (h.weightDban)
            fmt::print(
                "{}: {} at {} of {}, {:.1f} decibans in {}, {:+.2f} %, {:.1f} s\n", kind.name, h.fault, h.at,
                one.machine, *h.weightDban, h.best.view, 100 * h.best.cageShift,
                double(one.recordings[0].channels[0].samples) / one.recordings[0].channels[0].sampleRateHz);
}

std::string shareText(std::size_t hits, std::size_t n) {
    const Interval interval = shareInterval(double(hits), double(n));
    return fmt::format("{:>3} ({:.1f} to {:.1f} %)", hits, 100 * interval.low, 100 * interval.high);
}

}  // namespace

int quietRecords(const Arguments& arguments) {
    const auto scenario = sampleScenario(textAfter(arguments, "--scenario", "sample_fleet"));
    const auto each = std::size_t(numberAfter(arguments, "--each", 300));
    std::vector<Examination> all(each * kKinds.size());
    onAllCores(all.size(), [&](std::size_t i) { all[i] = examined(scenario, kKinds[i / each], i % each); });
    fmt::print(
        "{} recordings a kind, each by itself; recordings (95 % interval) with a finding of 20 decibans\n",
        each);
    fmt::print("{:<38}{:<24}{:<24}{:<24}{:>9}{:>9}\n", "", "a described bearing", "an unknown bearing",
               "anything else", "10 dban", "largest");
    if (std::find(arguments.begin(), arguments.end(), "--list") != arguments.end())
        for (std::size_t i = 0; i < all.size(); ++i)
            list(kKinds[i / each], all[i]);
    for (std::size_t k = 0; k < kKinds.size(); ++k) {
        Count count;
        for (std::size_t i = 0; i < each; ++i)
            add(all[k * each + i], count);
        fmt::print("{:<38}{:<24}{:<24}{:<24}{:>8.2f}%{:>9}\n", kKinds[k].name,
                   shareText(count.described, count.recordings), shareText(count.unknown, count.recordings),
                   shareText(count.others, count.recordings),
                   100.0 * double(count.ten) / double(std::max<std::size_t>(1, count.weighed)),
                   count.weighed ? fmt::format("{:.1f}", count.largest) : "-");
    }
    return 0;
}

}  // namespace fettle::trials
