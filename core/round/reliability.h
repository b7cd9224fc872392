// Why: a list that promises a share of chance entries is held to it on the user's own machines: how often
// what it named was confirmed when it was opened, by fault and over the site, how the kept rounds did beside
// e-BH's promise, and what the random sample of leave machines turned up, the only routine check on what the
// list misses. Rates are told from 20 answers on, with an interval; below that, counts alone. Interval: E. B.
// Wilson, J. Am. Stat. Assoc. 22 (1927) 209-212, the score interval. Days since 1970-01-01. Thread: pure.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace fettle {

inline constexpr std::size_t kRateFrom = 20;  // answers

struct Share {
    std::size_t hits = 0, of = 0;
    double low = 0, high = 1;  // 95 %
    bool hasRate() const { return of >= kRateFrom; }
    double rate() const { return of ? double(hits) / double(of) : 0; }
};
Share shareOf(std::size_t hits, std::size_t of);
// "14 of 20, 70 % (95 % interval 48 to 85 %)"; below 20: "14 of 17, too few to give a rate".
std::string shareWords(const Share& share);

// A planner's report.
struct Answer {
    std::string machine, fault, at, outcome;  // confirmed not_found another_fault not_opened
    int day = 0;
};

struct FaultRecord {
    std::string fault;  // key; empty: the whole site
    std::size_t confirmed = 0, notFound = 0, anotherFault = 0, notOpened = 0;
    Share confirmedOfOpened() const { return shareOf(confirmed, confirmed + notFound + anotherFault); }
};
// Most opened first, then by key.
std::vector<FaultRecord> faultRecords(std::span<const Answer> answers);
FaultRecord siteRecordOf(std::span<const Answer> answers);

// A machine in a kept round.
struct KeptEntry {
    std::string machine;
    bool onEvidence = false;
    bool sampleOpened = false;  // a leave machine of the sample that was looked at
    struct Named {
        std::string fault, at;
    };
    std::vector<Named> findings;
};
struct KeptWeek {
    int firstDay = 0, lastDay = 0;
    double alpha = 0.1;
    std::vector<KeptEntry> entries;
};

// A listing runs over rounds in which one machine stays on the list on evidence. It is answered by reports
// from its first day to 90 days after its last, before the machine's next listing: confirmed where one of its
// findings was, another fault where something else was found, not found where all that was opened was sound.
struct ListRecord {
    std::size_t rounds = 0, entries = 0, listings = 0;
    std::size_t confirmed = 0, anotherFault = 0, notFound = 0;  // of the listings answered
    std::size_t answered() const { return confirmed + anotherFault + notFound; }
    double alpha = 0.1;  // promised: mean share of chance entries over rounds, the largest of any round
    std::size_t roundsAnswered = 0;  // with an answered entry
    double meanNotFound = 0;  // of these rounds: mean share of answered entries where nothing was found
    // Leave machines of the sample that were looked at, and those of them reported confirmed or another fault
    // up to 28 days after the round. A machine opened in several rounds is one: its weeks are alike.
    std::size_t sampleOpenings = 0, sampleMachines = 0, sampleHadSomething = 0;
    Share confirmedOfAnswered() const { return shareOf(confirmed, answered()); }
    Share missed() const { return shareOf(sampleHadSomething, sampleMachines); }
};
// `weeks`: kept rounds, oldest first.
ListRecord listRecord(std::span<const KeptWeek> weeks, std::span<const Answer> answers);

}  // namespace fettle
