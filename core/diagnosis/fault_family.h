// Why: most faults besides bearing defects draw lines that every sound machine draws too: mesh, blade pass,
// twice the mains. No single recording can weigh them. Their evidence is change, their name a pattern. So a
// family states what it draws and what it takes to see it, and yields measures: numbers that the fault would
// raise, followed over weeks by core/trend. What a recording cannot carry becomes a blind spot with its cure.
// Only where the trade has an absolute limit, or a zone of C or D is made up mostly of the family's lines,
// does one recording name it, and then as possible, with the test that decides. How to add one: a file pair
// family_NAME, one row in faultFamilies(). Units in the names. Thread: pure functions of a prepared
// recording.
#pragma once

#include <string>
#include <vector>

#include "core/diagnosis/prepare.h"
#include "core/diagnosis/supply_lines.h"

namespace fettle {

struct FaultFamily;

// What a family may look at, for one of its places.
struct Listening {
    const FaultFamily& family;
    const Machine& machine;
    const PreparedRecording& prepared;
    const SupplyLines& supply;
    std::string at;
    std::vector<const ChannelViews*> near;   // acceleration channels of this recording that hear the place
    const std::vector<Hypothesis>& weighed;  // the bearings', on this recording
};

struct FamilyReport {
    std::vector<FaultMeasure> measures;
    std::vector<BlindSpot> blind;
    std::vector<Hypothesis> hypotheses;  // at most one a fault and place

    void add(const Listening& of, std::string name, std::string unit, std::size_t channel, double value);
    void addBlind(const Listening& of, std::string why, std::string cure);
};

struct FaultFamily {
    const char* fault;       // key
    const char* lines;       // what it draws
    const char* directions;  // where it shows most
    const char* against;     // what speaks against it
    const char* rivals;      // what draws the same
    const char* needs;       // of sensor and recording
    const char* test;        // that decides
    const char* source;
    const char* provedOn;  // open data | published numbers | simulation only
    std::vector<std::string> (*placesOn)(const Machine& machine);  // empty: does not concern it
    void (*measure)(const Listening& of, FamilyReport& report);
};

// A measure of cavitation by which the round parts it from a dry bearing: how far the noise swings with the
// blades.
inline constexpr const char* kBladeSwing = "blade pass in the noise";

const std::vector<FaultFamily>& faultFamilies();
const FaultFamily* faultFamily(const std::string& fault);  // null: a bearing's, a shaft's, or none

// What every finding by one recording says of its family, severity and sentence left to the caller; `why`: on
// what it rests.
Hypothesis possibleAt(const Listening& of, std::string why);

// "Possible ..." where these lines (r.m.s. together on one channel) make up most of a zone of C or D there;
// else nothing is added. `lines` says them: "2 x mains is 3.1 of 3.4 mm/s".
void addPossible(const Listening& of, std::size_t channel, double mmS, const std::string& lines,
                 FamilyReport& report);

// Rows of the table, by file.
FaultFamily gearMeshFamily();
FaultFamily gearToothFamily();
FaultFamily beltFamily();
FaultFamily bladePassFamily();
FaultFamily cavitationFamily();
FaultFamily flowFamily();
FaultFamily rotorBarFamily();
FaultFamily twiceMainsFamily();
FaultFamily airGapFamily();
FaultFamily supplyUnbalanceFamily();
FaultFamily bearingCurrentFamily();
FaultFamily dryBearingFamily();

}  // namespace fettle
