// Why: the round as a table: machines in groups (by urgency, area or criticality, or none), a row for each
// group, filtered by area, urgency, decision and text, sorted within the groups. Plain data handed in whole;
// nothing is read from the fleet file here, and what a row says of its group is counted when rows are
// arranged, not when they are painted. Rows are cheap: 1,500 machines are filtered in one pass. Thread: the
// window's.
#pragma once

#include <QAbstractTableModel>
#include <QString>
#include <QStringList>
#include <optional>
#include <set>
#include <unordered_map>
#include <vector>

#include "ui/model/round_shown.h"
#include "ui/model/units.h"

namespace fettle {

struct LedgerFilter {
    QString area;          // empty: all
    QString text;          // in tag, asset, service, area, finding or what changed; empty: all
    std::string decision;  // undecided (whatever the round still asks) accept dispute defer; empty: all
    std::string urgency;   // empty: all
    bool operator==(const LedgerFilter&) const = default;
};

class LedgerModel : public QAbstractTableModel {
    Q_OBJECT
  public:
    enum Column { Urgency, Name, Changed, Strip, Weight, Age, Decided, Columns };
    enum Order { AsListed, ByTag, ByFinding, ByLevel, ByWeight, ByAge, ByDecision, Orders };
    enum Grouping { ByUrgency, ByArea, ByCriticality, Together, Groupings };

    using QAbstractTableModel::QAbstractTableModel;

    void setRound(RoundShown round);
    void setState(RoundState state);  // decisions alone; rows stay where they are
    const RoundShown& round() const { return round_; }
    void setUnits(const Units& units);  // in which people read; the list stays as it is stored
    const Units& units() const { return units_; }
    void setFilter(const LedgerFilter& filter);
    const LedgerFilter& filter() const { return filter_; }
    // `backwards`: the other way round than usual (heaviest, oldest, nearest to its limit, undecided first).
    void setOrder(Order order, bool backwards = false);
    static Order orderOf(int column);
    void sort(int column, Qt::SortOrder order = Qt::DescendingOrder) override;  // ascending: backwards
    Order order() const { return order_; }
    bool backwards() const { return backwards_; }
    void setGrouping(Grouping grouping);
    Grouping grouping() const { return grouping_; }
    void setFolded(const std::string& group, bool folded);
    bool folded(const std::string& group) const { return folded_.count(group) != 0; }

    QStringList areas() const;
    int shownMachines() const;
    const RoundMachine* machineAt(int row) const;  // null for a group row
    std::string groupAt(int row) const;            // key of the row's group; empty: there are none
    std::string groupOf(const RoundMachine& machine) const;
    bool isGroup(int row) const;
    int rowOf(const std::string& tag) const;  // -1: not shown
    std::vector<int> groupRows() const;

    // What was decided on a machine, null: nothing yet, or taken back.
    const Decision* decisionOf(const std::string& tag) const;
    bool decidable(const RoundMachine& machine) const;  // accept, dispute, defer
    static QStringList listedWords();                   // what may stand under a weight
    bool settled(const RoundMachine& machine) const;    // decided, answered, opened: whatever it asks for
    QString decidedText(const RoundMachine& machine) const;
    QString findingText(const RoundMachine& machine) const;  // what stands there, in one line
    QString weightNote(const RoundMachine& machine) const;  // why it is less than its finding's; may be empty
    QString levelAndAge(const RoundMachine& machine) const;  // what strip and age say, in words
    QString levelText(const RoundMachine& machine) const;  // newest of the strip with its unit; may be empty
    QString limitText(const RoundMachine& machine) const;  // without the unit; empty: there is none
    QString changedText(const RoundMachine& machine) const;  // since the last round
    QString groupTitle(const std::string& group) const;
    QString groupText(const std::string& group) const;  // counts

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

  private:
    struct Row {
        std::string group;
        std::optional<std::size_t> machine;  // index into the list; empty: the group's own row
    };
    void rearrange();  // as one reset
    void arrange();
    std::vector<std::string> groupKeys() const;
    void addGroup(const std::string& group, std::vector<std::size_t> members);
    void sortMembers(const std::string& group, std::vector<std::size_t>& members) const;
    bool passes(std::size_t machine) const;
    bool passesDecision(const RoundMachine& machine) const;
    bool before(std::size_t a, std::size_t b) const;
    void readState();
    void countGroups();
    QString countText(const std::string& group, std::size_t all, std::size_t done) const;
    QString cellText(const RoundMachine& machine, int column) const;
    QString hint(const RoundMachine& machine, int column) const;
    QString ageHint(const RoundMachine& machine) const;
    QString weightHint(const RoundMachine& machine) const;

    RoundShown round_;
    Units units_;
    LedgerFilter filter_;
    Order order_ = AsListed;
    bool backwards_ = false;
    Grouping grouping_ = ByUrgency;
    std::set<std::string> folded_;
    std::vector<Row> rows_;
    std::vector<QString> search_;  // of each machine, all that a text is looked for in
    std::unordered_map<std::string, int> rowOfTag_;
    std::unordered_map<std::string, QString> textOfGroup_;
    std::unordered_map<std::string, std::size_t> decisionOfTag_;  // into round_.state.decisions
    std::set<std::string> opened_, answered_;
};

}  // namespace fettle
