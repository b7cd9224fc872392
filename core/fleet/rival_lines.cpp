#include "core/fleet/rival_lines.h"

#include <algorithm>
#include <cmath>

#include "core/machine/path.h"

namespace fettle {

namespace {

constexpr double kPartedBins = 2;
constexpr double kOftenSeen = 0.5;  // a line of true faults from this share on is expected

// Orders of the driver's shaft in the recording whose lines a hypothesis shows.
struct OrderScale {
    double shaftHz = 0, dfHz = 0;

    static OrderScale of(const Examination& examination, const Hypothesis& h) {
        OrderScale scale;
        if (h.recording >= examination.recordings.size()) return scale;
        const RecordingFacts& r = examination.recordings[h.recording];
        if (r.speed.rpm) scale.shaftHz = *r.speed.rpm / 60;
        if (h.best.channel < r.channels.size() && r.channels[h.best.channel].samples > 0)
            scale.dfHz = r.channels[h.best.channel].sampleRateHz / double(r.channels[h.best.channel].samples);
        return scale;
    }
    bool known() const { return shaftHz > 0 && dfHz > 0; }
    double orderOf(const LineRow& row) const {
        return (row.state == LineState::Found && row.foundHz > 0 ? row.foundHz : row.expectedHz) / shaftHz;
    }
};

bool draws(const Hypothesis& h, const OrderScale& scale, double order, double apart) {
    return std::any_of(h.best.rows.begin(), h.best.rows.end(),
                       [&](const LineRow& row) { return std::abs(scale.orderOf(row) - order) <= apart; });
}

void compare(const Hypothesis& h, const OrderScale& own, const Hypothesis& other, const OrderScale& its,
             RivalLines& lines) {
    const double apart = kPartedBins * std::max(own.dfHz / own.shaftHz, its.dfHz / its.shaftHz);
    for (const LineRow& row : h.best.rows) {
        if (row.state != LineState::Found) continue;
        const bool both = draws(other, its, own.orderOf(row), apart);
        (both ? lines.sharedDban : lines.ownDban) += row.weightDban;
        (both ? lines.shared : lines.own).push_back(row.name);
    }
    for (const LineRow& row : other.best.rows) {
        if (row.w < kOftenSeen || draws(h, own, its.orderOf(row), apart)) continue;
        if (row.state == LineState::Absent) lines.against.push_back(row.name);
        if (row.state == LineState::Found) lines.forIt.push_back(row.name);
    }
    lines.known = true;
}

}  // namespace

const Hypothesis* hypothesisIn(const Examination& examination, const std::string& fault,
                               const std::string& at) {
    const Hypothesis* near = nullptr;
    for (const auto* list : {&examination.findings, &examination.considered})
        for (const Hypothesis& h : *list) {
            if (h.fault != fault) continue;
            if (h.at == at) return &h;
            if (!near && placesMeet(h.at, at)) near = &h;
        }
    return near;
}

std::vector<RivalLines> rivalLines(const Examination& examination, const Hypothesis& hypothesis) {
    std::vector<RivalLines> all;
    const OrderScale own = OrderScale::of(examination, hypothesis);
    for (const Rival& rival : hypothesis.rivals) {
        RivalLines lines;
        lines.rival = rival;
        const Hypothesis* other = hypothesisIn(examination, rival.fault, rival.at);
        const bool weighed = other && other->weightDban && hypothesis.weightDban;
        const OrderScale its = weighed ? OrderScale::of(examination, *other) : OrderScale{};
        if (weighed && own.known() && its.known()) compare(hypothesis, own, *other, its, lines);
        all.push_back(std::move(lines));
    }
    return all;
}

}  // namespace fettle
