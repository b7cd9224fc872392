#include "ui/model/ledger_model.h"

#include <algorithm>
#include <cmath>

#include "ui/model/numbers.h"
#include "ui/model/site_time.h"
#include "ui/model/unit_words.h"
#include "ui/model/words.h"

namespace fettle {

namespace {

constexpr const char* kUrgencies[] = {"act", "plan", "watch", "unseen", "leave"};

// Only entries on evidence are within the stated share of chance: the others are marked.
QString listedText(ListedBy by) {
    switch (by) {
        case ListedBy::None:
            return {};
        case ListedBy::Evidence:
            return LedgerModel::tr("\non evidence");
        case ListedBy::Change:
            return LedgerModel::tr("\nby change");
        case ListedBy::Zone:
            return LedgerModel::tr("\nby zone");
        case ListedBy::Hand:
            return LedgerModel::tr("\nby hand");
    }
    return {};
}

constexpr const char* kNoArea = "\x7f";  // sorts last; no area is called so

// Level of the governing quantity against its next limit; without a limit the level alone, behind the others.
double shareOfLimit(const RoundMachine& machine) {
    if (machine.strip.empty() || !std::isfinite(machine.strip.back())) return -2;
    return machine.limit && *machine.limit > 0 ? machine.strip.back() / *machine.limit : -1;
}

// An inch holds 25.4 of what was stored: three decimals where it was two.
QString levelNumber(const ShownUnit& unit, double stored) {
    const double value = unit.shown(stored);
    return unit.factor < 0.1 && std::abs(value) < 1 ? fixedText(value, 3) : numberText(value);
}

QString place(const RoundMachine& machine) {
    QStringList parts{shown(machine.service)};
    if (!machine.area.empty()) parts << shown(machine.area);
    parts.removeAll(QString());
    return parts.join(QStringLiteral(", "));
}

// Of what listed it: of an entry by change that of the change, else the machine's.
std::optional<double> toldWeight(const RoundMachine& machine) {
    if (machine.listedBy != ListedBy::Change) return machine.weightDban;
    std::optional<double> strongest;
    for (const RoundFinding& found : machine.findings)
        if (found.change && found.finding.weightDban)
            strongest = std::max(strongest.value_or(-1e9), *found.finding.weightDban);
    return strongest;
}

}  // namespace

void LedgerModel::setRound(RoundShown round) {
    round_ = std::move(round);
    search_.clear();
    for (const RoundMachine& machine : round_.list.machines)
        search_.push_back(QStringList{shown(machine.tag), shown(machine.asset), shown(machine.service),
                                      shown(machine.area), shown(machine.changed), shown(machine.unseenWords),
                                      findingText(machine)}
                              .join(u'\n'));
    readState();
    rearrange();
}

void LedgerModel::setState(RoundState state) {
    round_.state = std::move(state);
    round_.refresh();
    readState();
    if (!filter_.decision.empty() || order_ == ByDecision) return rearrange();
    countGroups();
    if (!rows_.empty()) emit dataChanged(index(0, 0), index(rowCount() - 1, Columns - 1));
}

void LedgerModel::setUnits(const Units& units) {
    if (units == units_) return;
    units_ = units;
    if (!rows_.empty()) emit dataChanged(index(0, 0), index(rowCount() - 1, Columns - 1));
}

void LedgerModel::setFilter(const LedgerFilter& filter) {
    if (filter == filter_) return;
    filter_ = filter;
    rearrange();
}

void LedgerModel::setOrder(Order order, bool backwards) {
    if (order == order_ && backwards == backwards_) return;
    order_ = order;
    backwards_ = backwards;
    rearrange();
}

LedgerModel::Order LedgerModel::orderOf(int column) {
    static constexpr Order orders[] = {AsListed, ByTag, ByFinding, ByLevel, ByWeight, ByAge, ByDecision};
    static_assert(std::size(orders) == Columns);
    return column >= 0 && column < Columns ? orders[column] : AsListed;
}

void LedgerModel::sort(int column, Qt::SortOrder order) {
    setOrder(orderOf(column), order == Qt::AscendingOrder);
}

void LedgerModel::setGrouping(Grouping grouping) {
    if (grouping == grouping_) return;
    grouping_ = grouping;
    rearrange();
}

void LedgerModel::setFolded(const std::string& group, bool folded) {
    if (folded == this->folded(group)) return;
    if (folded)
        folded_.insert(group);
    else
        folded_.erase(group);
    rearrange();
}

void LedgerModel::rearrange() {
    beginResetModel();
    arrange();
    countGroups();
    endResetModel();
}

void LedgerModel::readState() {
    decisionOfTag_.clear();
    const auto& decisions = round_.state.decisions;
    for (std::size_t i = 0; i < decisions.size(); ++i) {
        const auto [known, first] = decisionOfTag_.emplace(decisions[i].machine, i);
        if (!first && decisions[known->second].at <= decisions[i].at) known->second = i;
    }
    opened_ = {round_.state.opened.begin(), round_.state.opened.end()};
    answered_ = {round_.state.unseenAnswered.begin(), round_.state.unseenAnswered.end()};
}

bool LedgerModel::passesDecision(const RoundMachine& machine) const {
    if (filter_.decision.empty()) return true;
    if (filter_.decision == "undecided") {
        const bool asksNothing = machine.urgency == "leave" && !machine.inSample;
        return !asksNothing && !settled(machine);
    }
    const Decision* decision = decisionOf(machine.tag);
    return decision && toText(decision->kind) == filter_.decision;
}

bool LedgerModel::passes(std::size_t i) const {
    const RoundMachine& machine = round_.list.machines[i];
    if (!filter_.area.isEmpty() && shown(machine.area) != filter_.area) return false;
    if (!filter_.urgency.empty() && machine.urgency != filter_.urgency) return false;
    if (!passesDecision(machine)) return false;
    return filter_.text.isEmpty() || search_[i].contains(filter_.text, Qt::CaseInsensitive);
}

bool LedgerModel::before(std::size_t first, std::size_t second) const {
    const RoundMachine &a = round_.list.machines[first], &b = round_.list.machines[second];
    switch (order_) {
        case ByTag:
            return a.tag < b.tag;
        case ByFinding:
            return findingText(a).localeAwareCompare(findingText(b)) < 0;
        case ByLevel:
            return shareOfLimit(a) > shareOfLimit(b);
        case ByWeight:
            return toldWeight(a).value_or(-1e9) > toldWeight(b).value_or(-1e9);
        case ByAge:
            return a.newest.value_or(Instant{}) < b.newest.value_or(Instant{});
        case ByDecision:
            return !settled(a) && settled(b);
        case AsListed:
        case Orders:
            break;
    }
    return first < second;
}

std::string LedgerModel::groupOf(const RoundMachine& machine) const {
    switch (grouping_) {
        case ByUrgency:
            return machine.urgency;
        case ByArea:
            return machine.area.empty() ? kNoArea : machine.area;
        case ByCriticality:
            return machine.criticality.empty() ? "B" : machine.criticality;
        case Together:
        case Groupings:
            break;
    }
    return {};
}

std::vector<std::string> LedgerModel::groupKeys() const {
    if (grouping_ == ByUrgency) return {std::begin(kUrgencies), std::end(kUrgencies)};
    std::set<std::string> keys;
    for (const RoundMachine& machine : round_.list.machines)
        keys.insert(groupOf(machine));
    const bool withoutArea = keys.erase(kNoArea) > 0;
    std::vector<std::string> inOrder(keys.begin(), keys.end());
    if (withoutArea) inOrder.push_back(kNoArea);
    return inOrder;
}

// Of those to leave the sample stands first: it is what has to be opened.
void LedgerModel::sortMembers(const std::string& group, std::vector<std::size_t>& members) const {
    const auto earlier = [this](std::size_t a, std::size_t b) {
        return backwards_ ? before(b, a) : before(a, b);
    };
    auto end = members.begin();
    if (grouping_ == ByUrgency && group == "leave")
        end = std::stable_partition(members.begin(), members.end(),
                                    [this](std::size_t i) { return round_.list.machines[i].inSample; });
    std::stable_sort(members.begin(), end, earlier);
    std::stable_sort(end, members.end(), earlier);
}

void LedgerModel::addGroup(const std::string& group, std::vector<std::size_t> members) {
    if (members.empty()) return;
    if (grouping_ != Together) rows_.push_back({group, {}});
    if (folded(group)) return;
    sortMembers(group, members);
    for (const std::size_t i : members) {
        rowOfTag_[round_.list.machines[i].tag] = int(rows_.size());
        rows_.push_back({group, i});
    }
}

void LedgerModel::arrange() {
    rows_.clear();
    rowOfTag_.clear();
    std::unordered_map<std::string, std::vector<std::size_t>> members;
    for (std::size_t i = 0; i < round_.list.machines.size(); ++i)
        if (passes(i)) members[groupOf(round_.list.machines[i])].push_back(i);
    for (const std::string& group : groupKeys())
        addGroup(group, std::move(members[group]));
}

// Of the whole round, whatever the filter shows of it.
void LedgerModel::countGroups() {
    std::unordered_map<std::string, std::pair<std::size_t, std::size_t>> counts;
    for (const RoundMachine& machine : round_.list.machines) {
        auto& [all, done] = counts[groupOf(machine)];
        ++all;
        if (settled(machine)) ++done;
    }
    textOfGroup_.clear();
    for (const auto& [group, count] : counts)
        textOfGroup_[group] = countText(group, count.first, count.second);
}

QStringList LedgerModel::areas() const {
    QStringList areas;
    for (const RoundMachine& machine : round_.list.machines)
        if (!machine.area.empty()) areas << shown(machine.area);
    areas.sort();
    areas.removeDuplicates();
    return areas;
}

int LedgerModel::shownMachines() const {
    return int(std::count_if(rows_.begin(), rows_.end(), [](const Row& r) { return r.machine.has_value(); }));
}

const RoundMachine* LedgerModel::machineAt(int row) const {
    if (row < 0 || row >= int(rows_.size()) || !rows_[std::size_t(row)].machine) return nullptr;
    return &round_.list.machines[*rows_[std::size_t(row)].machine];
}

bool LedgerModel::isGroup(int row) const {
    return row >= 0 && row < int(rows_.size()) && !rows_[std::size_t(row)].machine;
}

std::string LedgerModel::groupAt(int row) const {
    return row < 0 || row >= int(rows_.size()) ? std::string() : rows_[std::size_t(row)].group;
}

int LedgerModel::rowOf(const std::string& tag) const {
    const auto found = rowOfTag_.find(tag);
    return found == rowOfTag_.end() ? -1 : found->second;
}

std::vector<int> LedgerModel::groupRows() const {
    std::vector<int> rows;
    for (int i = 0; i < int(rows_.size()); ++i)
        if (isGroup(i)) rows.push_back(i);
    return rows;
}

const Decision* LedgerModel::decisionOf(const std::string& tag) const {
    const auto found = decisionOfTag_.find(tag);
    if (found == decisionOfTag_.end()) return nullptr;
    const Decision& decision = round_.state.decisions[found->second];
    return decision.kind == DecisionKind::Withdraw ? nullptr : &decision;
}

bool LedgerModel::decidable(const RoundMachine& machine) const {
    return machine.urgency != "leave" && machine.urgency != "unseen";
}

bool LedgerModel::settled(const RoundMachine& machine) const {
    if (machine.urgency == "unseen") return answered_.count(machine.tag) != 0;
    if (decidable(machine)) return decisionOf(machine.tag) != nullptr;
    return machine.inSample ? opened_.count(machine.tag) != 0 : round_.state.leaveAccepted;
}

QString LedgerModel::decidedText(const RoundMachine& machine) const {
    if (round_.draft()) return {};
    if (const Decision* decision = decisionOf(machine.tag))
        return decisionText(*decision) + u'\n' + shown(decision->reason);
    if (machine.urgency == "unseen") return settled(machine) ? tr("reason given") : tr("reason to be given");
    if (decidable(machine)) return tr("undecided");
    if (machine.inSample) return settled(machine) ? tr("sample, opened") : tr("sample, to be opened");
    return round_.state.leaveAccepted ? tr("left, with the block") : QString();
}

QString LedgerModel::findingText(const RoundMachine& machine) const {
    if (machine.urgency == "unseen") return unseenReasonWord(machine.unseenReason);
    if (machine.findings.empty()) return {};
    const Hypothesis& first = machine.findings.front().finding;
    const QString name = faultWords(first.fault, first.at);
    const auto more = machine.findings.size() - 1;
    return more == 0 ? name : tr("%1, and %2 more").arg(name, QString::number(more));
}

QString LedgerModel::groupTitle(const std::string& group) const {
    if (grouping_ == ByUrgency) return urgencyWord(group);
    if (grouping_ == ByCriticality) return tr("criticality %1").arg(shown(group));
    return group == kNoArea ? tr("no area") : shown(group);
}

QString LedgerModel::groupText(const std::string& group) const {
    const auto found = textOfGroup_.find(group);
    return found == textOfGroup_.end() ? QString() : found->second;
}

QString LedgerModel::countText(const std::string& group, std::size_t all, std::size_t done) const {
    if (round_.draft()) return QString::number(all);
    const RoundProgress& progress = round_.progress;
    if (grouping_ != ByUrgency || group != "leave") return tr("%1, %2 settled").arg(all).arg(done);
    if (round_.state.leaveAccepted) return tr("%1, accepted as a block").arg(all);
    return tr("%1; of the %2 drawn at random as a sample, %3 opened")
        .arg(all)
        .arg(progress.sample)
        .arg(progress.sampleOpened);
}

int LedgerModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int(rows_.size());
}

int LedgerModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : Columns;
}

QStringList LedgerModel::listedWords() {
    QStringList words;
    for (const ListedBy by : {ListedBy::Evidence, ListedBy::Change, ListedBy::Zone, ListedBy::Hand})
        words << listedText(by).trimmed();
    return words;
}

QString LedgerModel::cellText(const RoundMachine& machine, int column) const {
    switch (column) {
        case Urgency:
            return urgencyWord(machine.urgency);
        case Name:
            return shown(machine.tag) + u'\n' + place(machine);
        case Changed:
            return findingText(machine) + u'\n' + changedText(machine);
        case Weight:
            return weightText(toldWeight(machine)) + listedText(machine.listedBy);
        case Age:
            return machine.newest ? ageText(*machine.newest, round_.end) : tr("never");
        case Decided:
            return decidedText(machine);
        case Strip:
            return levelText(machine);
    }
    return {};
}

QString LedgerModel::hint(const RoundMachine& machine, int column) const {
    if (column == Strip)
        return tr("%1, weekly medians of 26 weeks; limit %2 %3")
            .arg(shown(machine.governing), machine.limit ? limitText(machine) : tr("none"),
                 shownUnit(shown(machine.unit), units_).unit);
    if (column == Age) return ageHint(machine);
    if (column == Weight) return weightHint(machine);
    if (column == Changed)
        return tr("%1\n%2").arg(cellText(machine, Changed), levelAndAge(machine)).trimmed();
    if (column == Urgency) return tr("listed by: %1").arg(shown(toText(machine.listedBy)));
    return cellText(machine, column).trimmed();
}

QString LedgerModel::ageHint(const RoundMachine& machine) const {
    if (!machine.newest) return tr("nothing was ever recorded");
    const QTimeZone zone = siteZone(round_.timeZone);
    return tr("newest recording of the machine: %1,\n%2 before the end of the period, %3")
        .arg(momentText(*machine.newest, zone), ageText(*machine.newest, round_.end),
             momentText(round_.end, zone));
}

// A machine's weight against its findings', and why the two differ.
QString LedgerModel::weightHint(const RoundMachine& machine) const {
    if (!machine.weightDban) return tr("nothing was weighed");
    QStringList lines{
        tr("the machine's week: %1 decibans").arg(weightText(machine.weightDban)),
        tr("a mean of e-values: over the recordings of the week, over the fault families of each\n"
           "bearing, over the bearings. So nothing is gained by looking for more.")};
    for (const RoundFinding& found : machine.findings)
        if (found.finding.weightDban)
            lines << tr("by itself %1: %2")
                         .arg(faultWords(found.finding.fault, found.finding.at),
                              weightText(found.finding.weightDban));
    lines << tr("with its criticality (%1, %2%3) against %4 for the list")
                 .arg(shown(machine.criticality), machine.priorDban < 0 ? QString() : QStringLiteral("+"),
                      weightText(machine.priorDban), weightText(round_.list.listNeedsDban));
    return lines.join(u'\n');
}

QString LedgerModel::weightNote(const RoundMachine& machine) const {
    std::optional<double> strongest;
    for (const RoundFinding& found : machine.findings)
        if (found.finding.weightDban)
            strongest = std::max(strongest.value_or(-1e9), *found.finding.weightDban);
    if (!strongest || !machine.weightDban) return {};
    return tr("Weight %1 of the machine, %2 of the finding by itself: the machine's is a mean over its "
              "bearings "
              "and all that was looked for there.")
        .arg(weightText(machine.weightDban), weightText(strongest));
}

QString LedgerModel::levelText(const RoundMachine& machine) const {
    if (machine.strip.empty() || !std::isfinite(machine.strip.back())) return {};
    const ShownUnit unit = shownUnit(shown(machine.unit), units_);
    return tr("%1 %2").arg(levelNumber(unit, machine.strip.back()), unit.unit);
}

QString LedgerModel::limitText(const RoundMachine& machine) const {
    if (!machine.limit) return {};
    return levelNumber(shownUnit(shown(machine.unit), units_), *machine.limit);
}

QString LedgerModel::changedText(const RoundMachine& machine) const {
    return withUnitsBeside(shown(machine.changed), units_);
}

QString LedgerModel::levelAndAge(const RoundMachine& machine) const {
    QStringList parts;
    const ShownUnit unit = shownUnit(shown(machine.unit), units_);
    if (!machine.strip.empty() && std::isfinite(machine.strip.back()))
        parts << tr("%1 %2 %3%4")
                     .arg(shown(machine.governing), levelNumber(unit, machine.strip.back()), unit.unit,
                          machine.limit ? tr(" of %1").arg(limitText(machine)) : QString());
    parts << (machine.newest ? tr("newest recording %1 before the end of the period")
                                   .arg(ageText(*machine.newest, round_.end))
                             : tr("nothing was ever recorded"));
    return parts.join(QStringLiteral("; "));
}

QVariant LedgerModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const RoundMachine* machine = machineAt(index.row());
    if (!machine) {
        const std::string group = groupAt(index.row());
        if (role == Qt::DisplayRole && index.column() == 0)
            return tr("%1: %2").arg(groupTitle(group), groupText(group));
        return {};
    }
    if (role == Qt::DisplayRole) return cellText(*machine, index.column());
    if (role == Qt::ToolTipRole) return hint(*machine, index.column());
    if (role == Qt::AccessibleTextRole) return cellText(*machine, index.column()).replace(u'\n', u' ');
    if (role == Qt::TextAlignmentRole && index.column() == Weight)
        return QVariant(Qt::AlignRight | Qt::AlignVCenter);
    return {};
}

QVariant LedgerModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    static const char* const names[] = {
        QT_TR_NOOP("Urgency"),         QT_TR_NOOP("Machine"),      QT_TR_NOOP("Finding, and what changed"),
        QT_TR_NOOP("26 weeks, limit"), QT_TR_NOOP("Weight, dban"), QT_TR_NOOP("Newest"),
        QT_TR_NOOP("Decision")};
    static const char* const hints[] = {
        QT_TR_NOOP("leave, watch, plan or act; unseen where the machine could not be judged"),
        QT_TR_NOOP("tag, service and area"),
        QT_TR_NOOP("the strongest finding, and in one sentence what changed since the last round"),
        QT_TR_NOOP("weekly medians of the governing quantity with its next limit"),
        QT_TR_NOOP(
            "decibans of the machine's week: how unlike chance, not the odds that the fault is there; a mean "
            "over "
            "its bearings and what was looked for there, so less than its strongest finding by itself"),
        QT_TR_NOOP(
            "age of the machine's newest recording at the end of the period, which is midnight at the site"),
        QT_TR_NOOP("accept, dispute with a reason, defer to a date")};
    if (section < 0 || section >= Columns) return {};
    if (role == Qt::DisplayRole) return tr(names[section]);
    if (role == Qt::ToolTipRole) return tr(hints[section]);
    if (role == Qt::TextAlignmentRole)
        return QVariant((section == Weight ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    return {};
}

Qt::ItemFlags LedgerModel::flags(const QModelIndex& index) const {
    if (!index.isValid()) return Qt::NoItemFlags;
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable;
}

}  // namespace fettle
