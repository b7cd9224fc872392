// Why: a curve that falls is a repair or a fault of the sensor, and the history says which: what was done to
// the machine and said of it, newest first, beside the plots: greasings with what the sensor heard, parts,
// alignment values, remarks, photographs. Corrections stand under what they correct. A click or Enter
// on a line moves the shared moment; the moment chosen in a plot marks the line next before it. Thread: the
// window's.
#pragma once

#include <QTimeZone>
#include <QWidget>
#include <vector>

#include "core/fleet/history.h"
#include "ui/model/selection.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QComboBox;
class QLabel;
class QPushButton;
class QTreeWidget;
class QTreeWidgetItem;

namespace fettle {

class PhotoStrip;

class HistoryList : public QWidget {
    Q_OBJECT
  public:
    HistoryList(FleetWork& work, Selection& selection, const Theme& theme, QWidget* parent = nullptr);

    const std::vector<HistoryEntry>& entries() const { return entries_; }

  signals:
    void noteWanted(const QString& tag);
    void correctionWanted(const fettle::Event& of);
    void compareWanted(const fettle::Event& around);
    void photoWanted(const QString& tag, qlonglong photo);
    void importWanted();

  private:
    struct Answer {
        std::vector<HistoryEntry> entries;
        QTimeZone zone = QTimeZone::utc();
    };
    void build(const Theme& theme);
    QWidget* buildFoot();
    void read();
    void fill();
    void addEntry(const HistoryEntry& entry);
    void chosen();
    void go();
    void followMoment();
    const HistoryEntry* current() const;
    void say(const QString& words);

    FleetWork& work_;
    Selection& selection_;
    std::vector<HistoryEntry> entries_;
    QTimeZone zone_ = QTimeZone::utc();
    bool following_ = false;
    QComboBox* kind_;
    QTreeWidget* tree_;
    QLabel* words_;
    PhotoStrip* photos_;
    QPushButton *note_, *correct_, *compare_, *import_;
};

}  // namespace fettle
