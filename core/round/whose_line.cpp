#include "core/round/whose_line.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace fettle {

namespace {

struct Block {
    Turning turning = Turning::Unknown;
    Instant from{}, until{};
    std::size_t there = 0, gone = 0;  // recordings of the line in it

    bool told() const { return there + gone > 0; }
    bool isGone() const { return gone > there; }
};

// A state reaches half-way to its neighbours, and no farther than it is believed alone.
void reach(std::vector<Block>& blocks) {
    for (std::size_t i = 0; i < blocks.size(); ++i) {
        const Instant::duration most = kStateReaches;
        const bool last = i + 1 == blocks.size();
        const auto after = last ? most : std::min(most, (blocks[i + 1].from - blocks[i].until) / 2);
        if (i == 0) blocks[i].from -= most;
        blocks[i].until += after;
        if (!last) blocks[i + 1].from -= after;
    }
}

std::vector<Block> blocksOf(const std::vector<TurningAt>& states) {
    std::vector<Block> blocks;
    for (const TurningAt& one : states) {
        const bool goesOn = !blocks.empty() && blocks.back().turning == one.turning &&
                            one.time - blocks.back().until <= kStateHolds;
        if (goesOn)
            blocks.back().until = one.time;
        else
            blocks.push_back({one.turning, one.time, one.time});
    }
    reach(blocks);
    std::erase_if(blocks, [](const Block& block) { return block.turning == Turning::Unknown; });
    return blocks;
}

void count(std::span<const LineSeen> seen, std::vector<Block>& blocks) {
    for (const LineSeen& one : seen)
        for (Block& block : blocks)
            if (one.time >= block.from && one.time <= block.until) ++(one.there ? block.there : block.gone);
}

std::string wordsOf(const LeavesWith& one) {
    const std::string name = one.itself ? "the machine itself" : one.machine;
    if (one.stops == 0) return "no stop of " + name + " tells";
    const std::string stops = fmt::format("{} of {} stop{}", one.left, one.stops, one.stops == 1 ? "" : "s");
    if (2 * one.left > one.stops) return "leaves with " + name + " in " + stops;
    return "stays when " + name + " stops: it left in " + stops;
}

LeavesWith answerOf(std::span<const LineSeen> seen, const Neighbour& neighbour, std::size_t asked) {
    std::vector<Block> blocks = blocksOf(neighbour.turning);
    count(seen, blocks);
    std::erase_if(blocks, [](const Block& block) { return !block.told(); });
    LeavesWith out;
    out.machine = neighbour.machine;
    out.itself = neighbour.itself;
    std::size_t stopsGone = 0, stops = 0;
    const Block* runBefore = nullptr;
    for (const Block& block : blocks) {
        if (block.turning == Turning::Yes) {
            ++out.runs;
            out.gone += block.isGone();
            runBefore = &block;
            continue;
        }
        ++stops;
        stopsGone += block.isGone();
        if (!runBefore || runBefore->isGone()) continue;
        ++out.stops;
        out.left += block.isGone();
    }
    if (out.stops > 0)
        out.chance = std::min(1.0, double(asked) * hypergeometricTail(stops + out.runs, stopsGone + out.gone,
                                                                      stops, stopsGone));
    out.words = wordsOf(out);
    return out;
}

double logChoose(double n, double k) {
    return std::lgamma(n + 1) - std::lgamma(k + 1) - std::lgamma(n - k + 1);
}

}  // namespace

double hypergeometricTail(std::size_t all, std::size_t marked, std::size_t drawn, std::size_t hits) {
    if (hits == 0) return 1;
    double sum = 0;
    for (std::size_t x = hits; x <= std::min(marked, drawn); ++x) {
        if (drawn - x > all - marked) continue;
        sum += std::exp(logChoose(double(marked), double(x)) +
                        logChoose(double(all - marked), double(drawn - x)) -
                        logChoose(double(all), double(drawn)));
    }
    return std::min(sum, 1.0);
}

std::vector<LeavesWith> leavesWith(std::span<const LineSeen> seen, std::span<const Neighbour> neighbours) {
    std::vector<LeavesWith> all;
    for (const Neighbour& neighbour : neighbours)
        all.push_back(answerOf(seen, neighbour, neighbours.size()));
    std::stable_sort(all.begin(), all.end(), [](const LeavesWith& a, const LeavesWith& b) {
        return std::tuple(a.stops == 0, a.chance, b.left) < std::tuple(b.stops == 0, b.chance, a.left);
    });
    return all;
}

}  // namespace fettle
