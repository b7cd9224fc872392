#include "core/round/round.h"

#include <algorithm>
#include <map>

#include "core/base/text.h"
#include "core/diagnosis/settings.h"
#include "core/diagnosis/wording.h"
#include "core/round/change_findings.h"
#include "core/round/changed.h"
#include "core/round/e_bh.h"
#include "core/round/evidence.h"
#include "core/round/judge.h"
#include "core/round/last_day.h"
#include "core/round/unseen.h"

namespace fettle {

namespace {

constexpr int kStripWeeks = 26;

struct Entry {
    const MachineWeek* week = nullptr;
    RoundMachine machine;
    std::vector<Hypothesis> hypotheses;
    ListCut cut;
};

using MachinesByTag = std::map<std::string, const RoundMachine*>;

RoundMachine described(const MachineWeek& week, const RoundSettings& settings) {
    RoundMachine m;
    m.tag = week.tag;
    m.asset = week.asset;
    m.service = week.service;
    m.area = week.area;
    m.criticality = week.criticality;
    m.newest = week.newest;
    m.governing = week.governing;
    m.unit = week.unit;
    m.strip = weeklyMedians(week.days, lastDayOf(settings), kStripWeeks);
    m.limit = week.limit;
    m.zone = week.zone;
    m.lateRecordings = week.lateRecordings;
    if (week.byHand) m.byHandWhy = week.byHandWhy;
    m.baseline = baselineWords(week);
    return m;
}

Entry weighed(const MachineWeek& week, const RoundSettings& settings) {
    Entry entry;
    entry.week = &week;
    entry.machine = described(week, settings);
    if (const auto unseen = unseenOf(week, settings)) {
        entry.machine.urgency = "unseen";
        entry.machine.unseenReason = unseen->reason;
        entry.machine.unseenWords = unseen->words;
        entry.machine.zone.clear();
        if (week.byHand) entry.machine.listedBy = ListedBy::Hand;
    } else if (week.week) {
        entry.hypotheses = hypothesesOf(*week.week);
        entry.machine.weightDban = machineDban(entry.hypotheses);
    }
    return entry;
}

std::vector<Entry*> weighable(std::vector<Entry>& entries) {
    std::vector<Entry*> some;
    for (Entry& entry : entries)
        if (entry.machine.weightDban) some.push_back(&entry);
    return some;
}

// Cuts the list; returns what a machine needs to be on it.
double cutList(std::vector<Entry>& entries, double alpha) {
    const std::vector<Entry*> some = weighable(entries);
    std::vector<double> shares, weights;
    for (const Entry* entry : some)
        shares.push_back(criticalityPrior(entry->machine.criticality));
    const std::vector<double> priors = priorsDban(shares);
    for (std::size_t i = 0; i < some.size(); ++i) {
        some[i]->machine.priorDban = priors[i];
        weights.push_back(*some[i]->machine.weightDban + priors[i]);
    }
    const EbhResult result = eBh(weights, alpha);
    for (std::size_t i = 0; i < some.size(); ++i)
        some[i]->cut = {result.listed[i], weights[i], result.needsDban};
    return result.needsDban;
}

// What an unseen machine was listed for when it was last seen, as words.
std::string foundBefore(const RoundMachine* before, const std::string& until) {
    if (!before) return "";
    if (!before->unseenReason.empty()) return before->foundBefore;
    std::vector<std::string> names;
    for (const RoundFinding& f : before->findings)
        names.push_back(findingName(f.finding));
    if (names.empty()) return "";
    return joined(names, " and ") + ": " + before->urgency + " in the round to " + until;
}

// Of the node, not of the machine: it lists nothing, it is told.
RoundFinding findingOf(const NodeDoubt& doubt) {
    RoundFinding f;
    f.finding.fault = "sensor";
    f.finding.at = doubt.at;
    f.finding.urgency = "leave";
    f.finding.sentence = doubt.words;
    f.persistence = 1;
    return f;
}

void conclude(Entry& entry, const RoundSettings& settings, const UrgencyRule& rule, const RoundList* last,
              const MachinesByTag& lastByTag) {
    RoundMachine& m = entry.machine;
    const auto at = lastByTag.find(m.tag);
    const RoundMachine* before = at == lastByTag.end() ? nullptr : at->second;
    if (m.unseenReason.empty()) {
        Verdict verdict = judge(*entry.week, entry.hypotheses, entry.cut, settings, rule);
        m.urgency = verdict.urgency;
        m.listedBy = verdict.listedBy;
        m.findings = std::move(verdict.findings);
    } else {
        m.foundBefore = foundBefore(before, last ? last->until : "");
    }
    for (const NodeDoubt& doubt : entry.week->nodes)
        m.findings.push_back(findingOf(doubt));
    m.changed = changedSentence(m, before, last == nullptr, entry.week->workDone);
}

// The weight counts in the order where it is why the machine stands there.
double orderWeight(const RoundMachine& m) {
    const bool evidence = std::any_of(m.findings.begin(), m.findings.end(), [](const RoundFinding& f) {
        return f.finding.weightDban && !f.change;
    });
    return evidence && m.weightDban ? *m.weightDban + m.priorDban : -1e9;
}

bool before(const RoundMachine& a, const RoundMachine& b) {
    if (groupOf(a.urgency) != groupOf(b.urgency)) return groupOf(a.urgency) < groupOf(b.urgency);
    const bool byWeight = a.urgency != "leave" && a.urgency != "unseen";
    if (byWeight && orderWeight(a) != orderWeight(b)) return orderWeight(a) > orderWeight(b);
    if (byWeight && a.zone != b.zone) return a.zone > b.zone;
    return a.tag < b.tag;
}

std::string enginesOf(const std::vector<MachineWeek>& weeks) {
    std::vector<std::string> engines;
    for (const MachineWeek& week : weeks)
        if (week.week && !week.week->engine.empty() &&
            std::find(engines.begin(), engines.end(), week.week->engine) == engines.end())
            engines.push_back(week.week->engine);
    return engines.empty() ? WeighingSettings().engine() : joined(engines, ", ");
}

}  // namespace

std::string toText(ListedBy by) {
    switch (by) {
        case ListedBy::Evidence:
            return "evidence";
        case ListedBy::Change:
            return "change";
        case ListedBy::Zone:
            return "zone";
        case ListedBy::Hand:
            return "hand";
        case ListedBy::None:
            break;
    }
    return "none";
}

std::optional<ListedBy> listedByFrom(const std::string& text) {
    for (const ListedBy by :
         {ListedBy::None, ListedBy::Evidence, ListedBy::Change, ListedBy::Zone, ListedBy::Hand})
        if (toText(by) == text) return by;
    return std::nullopt;
}

const RoundMachine* rowOf(const RoundList& list, const std::string& tag) {
    const auto found = std::find_if(list.machines.begin(), list.machines.end(),
                                    [&](const RoundMachine& m) { return m.tag == tag; });
    return found == list.machines.end() ? nullptr : &*found;
}

int groupOf(const std::string& urgency) {
    constexpr const char* order[] = {"act", "plan", "watch", "unseen"};
    return int(std::find(std::begin(order), std::end(order), urgency) - std::begin(order));
}

std::string findingName(const Hypothesis& finding) {
    if (finding.fault.empty()) return "raised vibration, cause not named";
    return faultName(finding.fault) + (finding.at.empty() ? "" : ", " + finding.at);
}

double criticalityPrior(const std::string& criticality) {
    return criticality == "A" ? 2 : criticality == "C" ? 0.5 : 1;
}

RoundList makeRound(const std::vector<MachineWeek>& weeks, const RoundSettings& settings,
                    const RoundList* last) {
    RoundList list;
    list.from = settings.from;
    list.until = settings.until;
    list.alpha = settings.alpha;
    list.engine = enginesOf(weeks);
    const UrgencyRule rule;
    if (!rule.problem().empty()) list.warnings.push_back(rule.problem());
    MachinesByTag lastByTag;
    if (last)
        for (const RoundMachine& m : last->machines)
            lastByTag[m.tag] = &m;
    std::vector<Entry> entries;
    for (const MachineWeek& week : weeks)
        entries.push_back(weighed(week, settings));
    list.listNeedsDban = cutList(entries, settings.alpha);
    for (Entry& entry : entries) {
        conclude(entry, settings, rule, last, lastByTag);
        list.machines.push_back(std::move(entry.machine));
    }
    std::sort(list.machines.begin(), list.machines.end(), before);
    return list;
}

}  // namespace fettle
