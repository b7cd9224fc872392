#include "core/round/reliability.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "core/machine/path.h"
#include "core/trend/distribution.h"

namespace fettle {

namespace {

constexpr double kConfidence = 0.95;
// Common practice, no source: an answer comes with the next stop; what the sample missed shows soon or is
// new.
constexpr int kAnswerDays = 90, kSampleDays = 28;

void add(const Answer& answer, FaultRecord& record) {
    record.confirmed += answer.outcome == "confirmed";
    record.notFound += answer.outcome == "not_found";
    record.anotherFault += answer.outcome == "another_fault";
    record.notOpened += answer.outcome == "not_opened";
}

enum class Outcome { None, NotFound, AnotherFault, Confirmed };  // the later outweighs

struct Listing {
    std::string machine;
    int firstDay = 0, lastDay = 0, nextFirstDay = 0;  // of the machine's next listing
    std::vector<KeptEntry::Named> findings;
    std::vector<std::size_t> weeks;  // indices
    Outcome outcome = Outcome::None;
};

bool names(const Listing& listing, const Answer& answer) {
    return std::any_of(listing.findings.begin(), listing.findings.end(), [&](const KeptEntry::Named& one) {
        return one.fault == answer.fault &&
               (one.at.empty() || answer.at.empty() || placesMeet(one.at, answer.at));
    });
}

void append(const KeptEntry& entry, const KeptWeek& week, std::size_t index, Listing& listing) {
    if (listing.weeks.empty()) {
        listing.machine = entry.machine;
        listing.firstDay = week.firstDay;
    }
    listing.lastDay = week.lastDay;
    listing.nextFirstDay = week.lastDay + kAnswerDays + 1;
    listing.weeks.push_back(index);
    listing.findings.insert(listing.findings.end(), entry.findings.begin(), entry.findings.end());
}

std::vector<Listing> listingsOf(std::span<const KeptWeek> weeks) {
    std::vector<Listing> all;
    std::map<std::string, std::size_t> newest;  // by machine
    for (std::size_t i = 0; i < weeks.size(); ++i)
        for (const KeptEntry& entry : weeks[i].entries) {
            if (!entry.onEvidence) continue;
            const auto last = newest.find(entry.machine);
            const bool goesOn = last != newest.end() && all[last->second].weeks.back() + 1 == i;
            if (!goesOn) {
                if (last != newest.end())
                    all[last->second].nextFirstDay =
                        std::min(all[last->second].nextFirstDay, weeks[i].firstDay);
                newest[entry.machine] = all.size();
                all.emplace_back();
            }
            append(entry, weeks[i], i, all[newest[entry.machine]]);
        }
    return all;
}

Outcome outcomeOf(const Listing& listing, const Answer& answer) {
    if (answer.outcome == "not_found") return Outcome::NotFound;
    if (answer.outcome == "another_fault") return Outcome::AnotherFault;
    if (answer.outcome != "confirmed") return Outcome::None;
    return names(listing, answer) ? Outcome::Confirmed : Outcome::AnotherFault;
}

void addAnswers(std::span<const Answer> answers, Listing& listing) {
    for (const Answer& answer : answers)
        if (answer.machine == listing.machine && answer.day >= listing.firstDay &&
            answer.day < listing.nextFirstDay)
            listing.outcome = std::max(listing.outcome, outcomeOf(listing, answer));
}

void addRounds(const std::vector<Listing>& listings, std::size_t weeks, ListRecord& record) {
    std::vector<std::size_t> answered(weeks), notFound(weeks);
    for (const Listing& listing : listings)
        for (const std::size_t week : listing.weeks) {
            answered[week] += listing.outcome != Outcome::None;
            notFound[week] += listing.outcome == Outcome::NotFound;
        }
    for (std::size_t i = 0; i < weeks; ++i) {
        if (answered[i] == 0) continue;
        ++record.roundsAnswered;
        record.meanNotFound += double(notFound[i]) / double(answered[i]);
    }
    if (record.roundsAnswered > 0) record.meanNotFound /= double(record.roundsAnswered);
}

bool hadSomething(std::span<const Answer> answers, const std::string& machine, const KeptWeek& week) {
    return std::any_of(answers.begin(), answers.end(), [&](const Answer& one) {
        return one.machine == machine && (one.outcome == "confirmed" || one.outcome == "another_fault") &&
               one.day >= week.firstDay && one.day <= week.lastDay + kSampleDays;
    });
}

void addSample(std::span<const KeptWeek> weeks, std::span<const Answer> answers, ListRecord& record) {
    std::map<std::string, bool> machines;  // had something in one of its rounds
    for (const KeptWeek& week : weeks)
        for (const KeptEntry& entry : week.entries) {
            if (!entry.sampleOpened) continue;
            ++record.sampleOpenings;
            bool& had = machines[entry.machine];
            had = had || hadSomething(answers, entry.machine, week);
        }
    record.sampleMachines = machines.size();
    for (const auto& [machine, had] : machines)
        record.sampleHadSomething += had;
}

}  // namespace

Share shareOf(std::size_t hits, std::size_t of) {
    Share share{hits, of, 0, 1};
    if (of == 0) return share;
    const double n = double(of), p = double(hits) / n;
    const double z = normalQuantile((1 + kConfidence) / 2), zz = z * z;
    const double middle = (p + zz / (2 * n)) / (1 + zz / n);
    const double half = z / (1 + zz / n) * std::sqrt(p * (1 - p) / n + zz / (4 * n * n));
    share.low = std::max(0.0, middle - half);
    share.high = std::min(1.0, middle + half);
    return share;
}

std::string shareWords(const Share& share) {
    const std::string count = fmt::format("{} of {}", share.hits, share.of);
    if (!share.hasRate()) return count + ", too few to give a rate";
    return count + fmt::format(", {:.0f} % (95 % interval {:.0f} to {:.0f} %)", 100 * share.rate(),
                               100 * share.low, 100 * share.high);
}

std::vector<FaultRecord> faultRecords(std::span<const Answer> answers) {
    std::map<std::string, FaultRecord> byFault;
    for (const Answer& answer : answers)
        add(answer, byFault[answer.fault]);
    std::vector<FaultRecord> all;
    for (auto& [fault, record] : byFault) {
        record.fault = fault;
        all.push_back(record);
    }
    std::stable_sort(all.begin(), all.end(), [](const FaultRecord& a, const FaultRecord& b) {
        return a.confirmedOfOpened().of > b.confirmedOfOpened().of;
    });
    return all;
}

FaultRecord siteRecordOf(std::span<const Answer> answers) {
    FaultRecord site;
    for (const Answer& answer : answers)
        add(answer, site);
    return site;
}

ListRecord listRecord(std::span<const KeptWeek> weeks, std::span<const Answer> answers) {
    ListRecord record;
    record.rounds = weeks.size();
    if (!weeks.empty()) record.alpha = 0;
    for (const KeptWeek& week : weeks)
        record.alpha = std::max(record.alpha, week.alpha);
    std::vector<Listing> listings = listingsOf(weeks);
    record.listings = listings.size();
    for (Listing& listing : listings) {
        addAnswers(answers, listing);
        record.entries += listing.weeks.size();
        record.confirmed += listing.outcome == Outcome::Confirmed;
        record.anotherFault += listing.outcome == Outcome::AnotherFault;
        record.notFound += listing.outcome == Outcome::NotFound;
    }
    addRounds(listings, weeks.size(), record);
    addSample(weeks, answers, record);
    return record;
}

}  // namespace fettle
