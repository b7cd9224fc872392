#include "core/round/node_pose.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/trend/median.h"

namespace fettle {

namespace {

constexpr double kToldDegrees = 3, kDegrees = 180 / std::numbers::pi;
constexpr std::size_t kAround = 3;                       // recordings to either side
constexpr std::size_t kStays = 2;                        // of those after, before a move is told
constexpr double kFelt = 0.1;                            // g, of one or two axes
constexpr double kLeastLength = 0.8, kMostLength = 1.2;  // g, of three
constexpr double kUp = 0.7;                              // g: within 45 degrees

using Vector = std::vector<double>;

double lengthOf(const Vector& g) {
    double sum = 0;
    for (const double x : g)
        sum += x * x;
    return std::sqrt(sum);
}

// Between two sets of axes: the angle of three; of fewer, by how much one of them tilted at least.
double degreesBetween(const Vector& a, const Vector& b) {
    if (a.size() >= 3) {
        double dot = 0;
        for (std::size_t i = 0; i < a.size(); ++i)
            dot += a[i] * b[i];
        const double lengths = lengthOf(a) * lengthOf(b);
        return lengths > 0 ? std::acos(std::clamp(dot / lengths, -1.0, 1.0)) * kDegrees : 0;
    }
    double most = 0;
    for (std::size_t i = 0; i < a.size(); ++i) {
        const double tilt = std::asin(std::clamp(b[i], -1.0, 1.0)) - std::asin(std::clamp(a[i], -1.0, 1.0));
        most = std::max(most, std::abs(tilt) * kDegrees);
    }
    return most;
}

Vector medianOfReadings(std::span<const PoseReading> readings) {
    Vector middle;
    for (std::size_t axis = 0; axis < readings.front().g.size(); ++axis) {
        std::vector<double> values;
        for (const PoseReading& reading : readings)
            values.push_back(reading.g[axis]);
        middle.push_back(medianOf(std::move(values)));
    }
    return middle;
}

double scatterOf(std::span<const PoseReading> readings, const Vector& about) {
    double most = 0;
    for (const PoseReading& reading : readings)
        most = std::max(most, degreesBetween(about, reading.g));
    return most;
}

bool feels(const Vector& g) {
    const double length = lengthOf(g);
    if (g.size() < 3) return length > kFelt && length < kMostLength;
    return length > kLeastLength && length < kMostLength;
}

// A move between recording `at` - 1 and `at`.
std::optional<PoseMove> moveAt(std::span<const PoseReading> readings, std::size_t at) {
    const auto before = readings.subspan(at - std::min(at, kAround), std::min(at, kAround));
    const auto after = readings.subspan(at, std::min(readings.size() - at, kAround));
    if (after.size() < kStays) return std::nullopt;
    PoseMove move{readings[at - 1].time, readings[at].time, 0, medianOfReadings(before),
                  medianOfReadings(after)};
    move.degrees = degreesBetween(move.was, move.now);
    const double scatter = std::max(scatterOf(before, move.was), scatterOf(after, move.now));
    if (!feels(move.was) && !feels(move.now)) return std::nullopt;
    if (move.degrees < kToldDegrees || move.degrees < 2 * scatter) return std::nullopt;
    return move;
}

std::vector<PoseMove> movesOf(std::span<const PoseReading> readings) {
    std::vector<PoseMove> moves;
    for (std::size_t at = 1; at < readings.size(); ++at)
        if (const auto move = moveAt(readings, at)) moves.push_back(*move);
    return moves;
}

std::string signOf(double g) {
    return g < 0 ? "down" : "up";
}

std::string poseWords(std::span<const PoseAxis> axes, const Vector& g) {
    const auto most =
        std::max_element(g.begin(), g.end(), [](double a, double b) { return std::abs(a) < std::abs(b); });
    const PoseAxis& axis = axes[std::size_t(most - g.begin())];
    if (std::abs(*most) < kUp && g.size() < 3)
        return fmt::format("no axis upright, {} most so with {:.2f} g", axis.name, *most);
    return fmt::format("{} {} with {:.2f} g", axis.name, signOf(*most), std::abs(*most));
}

std::string misfitOf(std::span<const PoseAxis> axes, const Vector& g) {
    for (std::size_t i = 0; i < axes.size(); ++i) {
        if (axes[i].direction == "vertical" && std::abs(g[i]) < kUp)
            return fmt::format("the register calls {} vertical, gravity reads {:.2f} g on it", axes[i].name,
                               g[i]);
        const bool level = axes[i].direction == "horizontal" || axes[i].direction == "axial";
        if (level && std::abs(g[i]) > kUp)
            return fmt::format("the register calls {} {}, gravity reads {:.2f} g on it", axes[i].name,
                               axes[i].direction, g[i]);
    }
    return "";
}

std::string notFelt(const Vector& g) {
    const double length = lengthOf(g);
    if (length > kMostLength || (g.size() >= 3 && length > kFelt))
        return fmt::format("the mean of its axes is {:.2f} g long: not gravity alone", length);
    return "no gravity in its records: held back by the sensor, or its axes lie level";
}

}  // namespace

NodePose askGravity(std::span<const PoseAxis> axes, std::span<const PoseReading> readings) {
    NodePose pose;
    if (axes.empty() || readings.empty()) {
        pose.words = "no recording of an acceleration";
        return pose;
    }
    pose.g = medianOfReadings(readings.last(std::min(readings.size(), kAround)));
    pose.felt = feels(pose.g);
    pose.moves = movesOf(readings);
    pose.words = pose.felt ? poseWords(axes, pose.g) : notFelt(pose.g);
    if (pose.felt) pose.misfit = misfitOf(axes, pose.g);
    return pose;
}

std::string moveWords(const PoseMove& move, const std::string& before, const std::string& after) {
    return fmt::format("knocked, turned or swapped between {} and {}: {}{:.0f} degrees", before, after,
                       move.was.size() < 3 ? "at least " : "", move.degrees);
}

}  // namespace fettle
