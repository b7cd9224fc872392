// Why: every weight stands on the shaft speed, so how often it is right when nobody gives it, how often it is
// said to be unknown, and how often it is sure and wrong are measured over simulated machines and open
// records. Right: within 0.1 % (simulated) or 0.3 % (open records, whose own speeds are no better) of the
// truth in the clock of the recording as used. Sure and wrong: farther off, and by more than it says of
// itself.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>

#include "core/diagnosis/prepare.h"
#include "core/signal/reader.h"
#include "core/simulate/fleet_state.h"
#include "tests/trials/trials.h"

namespace fettle::trials {

namespace {

constexpr double kSimulatedShare = 0.001, kOpenShare = 0.003;

struct Tally {
    int count = 0, right = 0, unknown = 0, wrong = 0, sure = 0, far = 0;

    void add(const SpeedResult& speed, double trueHz, double share) {
        ++count;
        if (!speed.rpm) {
            ++unknown;
            return;
        }
        const double off = std::abs(*speed.rpm / 60 / trueHz - 1);
        right += off <= share;
        wrong += off > share;
        sure += off > share && off > speed.plusMinusRpm / *speed.rpm;
        far += off > 0.003;
    }
    std::string text() const {
        const auto percent = [&](int n) { return 100.0 * n / std::max(1, count); };
        return fmt::format(
            "{:5d}  right {:5.1f} %  unknown {:5.1f} %  wrong {:4.1f} %  sure and wrong {:4.1f} %"
            "  beyond 0.3 % {:4.1f} %",
            count, percent(right), percent(unknown), percent(wrong), percent(sure), percent(far));
    }
};

class Tallies {
  public:
    void add(const std::string& group, const SpeedResult& speed, double trueHz, double share) {
        if (!groups_.count(group)) order_.push_back(group);
        groups_[group].add(speed, trueHz, share);
    }
    void print() const {
        for (const std::string& group : order_)
            fmt::print("  {:<34}{}\n", group, groups_.at(group).text());
    }

  private:
    std::map<std::string, Tally> groups_;
    std::vector<std::string> order_;
};

bool has(const Arguments& arguments, const std::string& name) {
    return std::find(arguments.begin(), arguments.end(), name) != arguments.end();
}

std::string told(const SpeedResult& speed, double trueHz) {
    if (!speed.rpm) return fmt::format("true {:.2f}; {}", trueHz * 60, speed.from);
    std::string text = fmt::format("true {:.2f}, said {:.2f} +- {:.2f} r/min ({:+.3f} %)", trueHz * 60,
                                   *speed.rpm, speed.plusMinusRpm, (*speed.rpm / 60 / trueHz - 1) * 100);
    for (const SpeedEstimate& e : speed.estimates)
        text += fmt::format("; {} {:.2f} +- {:.2f}", e.from, e.rpm, e.plusMinusRpm);
    return text;
}

RecordingPtr recordingOf(const sim::SimulationSetup& setup, const sim::SimulatedRecording& made) {
    auto recording = std::make_shared<Recording>();
    recording->file = "simulated";
    recording->point = setup.machine.points[setup.point].id;
    const double steps = std::ldexp(1.0, made.bits - 1);
    for (const sim::SimulatedChannel& from : made.channels) {
        Channel channel{from.name, recording->point, from.unit, made.rateHz, {}, from.scale};
        for (const std::int32_t sample : from.samples)
            channel.samples.push_back(sample / steps * from.scale);
        recording->channels.push_back(std::move(channel));
    }
    return recording;
}

// One recording and what was made of it.
struct Heard {
    std::string what;
    const Machine& machine;
    PreparedRecording prepared;
    double trueHz = 0;  // of the shaft, in the clock of the recording as used
    double seconds = 0;
    bool disturbed = false;  // a node off its seat, or a neighbour's orders through the floor
    double slip = 0, clockError = 0, rateError = 0;

    const SpeedResult& speed() const { return prepared.facts.speed; }
    bool flux() const { return !prepared.flux.empty(); }
    bool right(double share) const {
        return speed().rpm && std::abs(*speed().rpm / 60 / trueHz - 1) <= share;
    }
};

struct Clocks {
    int off = 0, put = 0, spoilt = 0;  // by more than 0.4 %; put right within 0.15 %; changed and not right

    void add(const Heard& h) {
        off += std::abs(h.clockError) > 0.004;
        const bool changed = std::abs(h.rateError - h.clockError) > 1e-6;
        put += changed && std::abs(h.rateError) < 0.0015;
        spoilt += changed && std::abs(h.rateError) >= 0.0015;
    }
};

struct Slips {
    int known = 0, within = 0;

    void add(const Heard& h) {
        const auto slip = slipReading(h.machine, h.speed(), h.prepared.mains);
        if (!slip || !slip->known) return;
        ++known;
        within += std::abs(slip->share - h.slip) <= 2e-4;
    }
};

PreparedRecording heardWithoutSpeed(const Machine& machine, const RecordingPtr& recording) {
    PrepareOptions options;
    options.ignoreSpeed = true;
    return prepare(machine, recording, options);
}

class Simulations {
  public:
    Simulations(std::uint64_t key, bool list) : key_(key), list_(list) {}
    void machine(const sim::Scenario& scenario, const sim::FleetMachine& fleet);
    void print() const;

  private:
    void add(const std::string& what, const Machine& machine, const sim::SimulationSetup& setup);
    void count(const Heard& h);

    std::uint64_t key_;
    bool list_;
    Tallies tallies_;
    Clocks clocks_;
    Slips slips_;
};

void Simulations::add(const std::string& what, const Machine& machine, const sim::SimulationSetup& setup) {
    const auto made = sim::simulate(setup);
    if (!made || made->shaftHz <= 0) return;
    Heard h{what, machine, heardWithoutSpeed(machine, recordingOf(setup, *made)), 0, setup.seconds};
    const double used = h.prepared.recording->channels[0].sampleRateHz;
    h.trueHz = made->shaftHz * used / made->trueRateHz;
    h.slip = made->slip;
    for (const sim::Condition& condition : setup.conditions)
        h.disturbed |= condition.kind == "loose_node" || condition.kind == "neighbour";
    h.clockError = made->rateHz / made->trueRateHz - 1;
    h.rateError = used / made->trueRateHz - 1;
    count(h);
}

void Simulations::count(const Heard& h) {
    const std::string kind = h.flux() ? "with flux" : "vibration only";
    for (const std::string& group :
         {std::string("all simulated"), kind, fmt::format("{}, {:.0f} s", kind, h.seconds)})
        tallies_.add(group, h.speed(), h.trueHz, kSimulatedShare);
    if (h.disturbed)
        tallies_.add("node off its seat, or a neighbour", h.speed(), h.trueHz, kSimulatedShare);
    else
        tallies_.add("node seated, no neighbour", h.speed(), h.trueHz, kSimulatedShare);
    if (!h.disturbed && h.seconds >= 2)
        tallies_.add("all others of 2 s and longer", h.speed(), h.trueHz, kSimulatedShare);
    if (std::abs(h.clockError) > 0.001)
        tallies_.add("clock off by more than 0.1 %", h.speed(), h.trueHz, kSimulatedShare);
    if (list_ && !h.right(kSimulatedShare)) fmt::print("    {}: {}\n", h.what, told(h.speed(), h.trueHz));
    clocks_.add(h);
    slips_.add(h);
}

// Each node's captures as they are, and its usual one at several lengths, at three loads.
void Simulations::machine(const sim::Scenario& scenario, const sim::FleetMachine& fleet) {
    const Instant time = scenario.start + std::chrono::days(150) + std::chrono::hours(9);
    std::uint64_t key = key_;
    for (const sim::FleetNode& node : fleet.nodes) {
        std::vector<sim::CaptureKind> captures = node.captures;
        for (const double seconds : {1.0, 2.0, 4.0, 8.0}) {
            captures.push_back(node.captures[0]);
            captures.back().seconds = seconds;
        }
        for (const sim::CaptureKind& capture : captures)
            for (const double load : {0.4, 0.7, 1.0}) {
                auto setup = sim::setupAt(scenario, fleet, node, capture, time, ++key);
                setup.operation.turning = setup.operation.energised = true;
                setup.operation.load = load;
                add(fmt::format("{} {} {:g} s {:g} Hz load {}", fleet.machine.tag,
                                fleet.machine.points[node.point].id, setup.seconds, setup.node.rateHz, load),
                    fleet.machine, setup);
            }
    }
}

void Simulations::print() const {
    tallies_.print();
    fmt::print("  slip said to be known in {} recordings, truly within 0.02 % in {}\n", slips_.known,
               slips_.within);
    fmt::print(
        "  clocks off by more than 0.4 %: {}; sample rates put right by the mains: {}, made wrong: {}\n",
        clocks_.off, clocks_.put, clocks_.spoilt);
}

int simulated(const std::string& folder, std::uint64_t key, bool list) {
    const RealFileSystem files;
    const auto scenario = sim::loadScenario(files, folder);
    if (!scenario) {
        fmt::print(stderr, "{}\n", scenario.error().sentence());
        return 3;
    }
    fmt::print("Simulated machines of {}, key {}, speed not given; right: within 0.1 %\n", folder, key);
    Simulations all(key, list);
    for (const sim::FleetMachine& fleet : scenario->machines)
        all.machine(*scenario, fleet);
    all.print();
    return 0;
}

RecordingPtr pieceOf(const Recording& whole, std::size_t from, std::size_t count) {
    auto piece = std::make_shared<Recording>(whole);
    for (Channel& channel : piece->channels) {
        const auto first = channel.samples.begin() + std::ptrdiff_t(from);
        channel.samples = std::vector<double>(first, first + std::ptrdiff_t(count));
    }
    return piece;
}

// The record whole and cut, its speed ignored.
void addOpen(const Machine& machine, const RecordingPtr& recording, bool list, Tallies& tallies) {
    const double rate = recording->channels[0].sampleRateHz, trueHz = *recording->speedRpm / 60;
    const std::size_t samples = recording->channels[0].samples.size();
    for (const double seconds : {0.0, 4.0, 2.0, 1.0}) {
        const std::size_t length = seconds > 0 ? std::size_t(seconds * rate) : samples;
        for (std::size_t from = 0; from + length <= samples; from += length) {
            const Heard h{fmt::format("{} {:g} s", recording->file, seconds), machine,
                          heardWithoutSpeed(machine, pieceOf(*recording, from, length)), trueHz, seconds};
            tallies.add(
                seconds > 0 ? fmt::format("open records, pieces of {:g} s", seconds) : "open records, whole",
                h.speed(), trueHz, kOpenShare);
            if (list && seconds != 1 && !h.right(kOpenShare))
                fmt::print("    {}: {}\n", h.what, told(h.speed(), trueHz));
        }
    }
}

std::vector<std::string> namesIn(const std::string& labels) {
    std::vector<std::string> names;
    for (std::size_t at = 0; at < labels.size(); at = labels.find('\n', at) + 1) {
        const std::string name = labels.substr(at, labels.find('\t', at) - at);
        if (name != "name") names.push_back(name);
        if (labels.find('\n', at) == std::string::npos) break;
    }
    return names;
}

int openRecords(const std::string& folder, bool list) {
    const RealFileSystem files;
    const auto text = files.read(folder + "/machine.json"), labels = files.read(folder + "/labels.tsv");
    const auto machine = text ? parseMachine(*text, folder) : Result<ParsedMachine>(fail(text.error()));
    if (!machine || !labels) {
        fmt::print(stderr, "{}: no machine.json or labels.tsv that can be read\n", folder);
        return 3;
    }
    fmt::print("Open records of {}, their speed ignored; right: within 0.3 %\n", folder);
    Tallies tallies;
    for (const std::string& name : namesIn(*labels)) {
        const auto recording = readRecording(files, folder + "/" + name + ".wav");
        if (recording && (*recording)->speedRpm) addOpen(machine->machine, *recording, list, tallies);
    }
    tallies.print();
    return 0;
}

}  // namespace

int speedTrial(const Arguments& arguments) {
    const bool list = has(arguments, "--list");
    int status = 0;
    if (!has(arguments, "--open-only"))
        status = simulated(textAfter(arguments, "--scenario", "sample_fleet"),
                           std::uint64_t(numberAfter(arguments, "--key", 1)), list);
    if (const char* open = std::getenv("FETTLE_OPEN_RECORDS"))
        status = std::max(status, openRecords(std::string(open) + "/cwru", list));
    else
        fmt::print("Open records skipped: FETTLE_OPEN_RECORDS is not set\n");
    return status;
}

}  // namespace fettle::trials
