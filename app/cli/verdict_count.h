// Why: a verdict beside a label, counted alike for whole records, pieces and every arm of the node-grade
// trial. The top finding is the strongest one with a weight. Thread: plain data.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/diagnosis/examination.h"

namespace fettle {

// A row of labels.tsv: what was seeded into a record, and where. Fault "none": a sound machine.
struct Label {
    std::string name, fault, at;
    bool sound() const { return fault == "none"; }
    bool ball() const { return fault == "bearing_rolling_element"; }
};
std::vector<Label> readLabels(const std::string& text);

const Hypothesis* hypothesisOf(const Examination& e, const std::string& fault, const std::string& at);
const Hypothesis* topBearing(const Examination& e);  // null: no finding with a weight
const Hypothesis* strongest(const Examination& e);   // of all that was weighed, found or not
std::vector<const Hypothesis*> findingsElsewhere(const Examination& e, const std::string& at);

struct Judged {
    bool bearing = false, element = false;  // the top finding names the seeded bearing, and its element
    bool elsewhere = false;                 // something is found at another bearing
};
Judged judged(const Label& label, const Examination& e);

struct VerdictCount {
    std::size_t faulty = 0, bearings = 0, elements = 0, elsewhere = 0;
    std::size_t notBall = 0, notBallElements = 0;
    std::size_t sound = 0, soundFound = 0;  // soundFound: with a finding that has a weight
    std::optional<double> soundDban;        // the strongest hypothesis of any sound record
    std::vector<double> hitDban;            // weights of the seeded fault where it is the top finding

    void add(const Label& label, const Examination& e);
};

}  // namespace fettle
