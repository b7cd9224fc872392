// Why: the register as a tree: site, area, machine; with a filter, for 1,500 machines. Thread: the window's.
#pragma once

#include <QTreeWidget>
#include <QWidget>
#include <vector>

#include "core/store/register_store.h"

class QLineEdit;

namespace fettle {

class RegisterTree : public QWidget {
    Q_OBJECT
  public:
    explicit RegisterTree(QWidget* parent = nullptr);

    void show(const std::vector<MachineEntry>& machines, const QString& site);
    void choose(const QString& tag);  // without a signal
    QString currentMachine() const;   // empty: a site or area
    QString currentArea() const;
    int machines() const { return machines_; }
    void focusFilter();

  signals:
    void machineChosen(const QString& tag);

  private:
    void filter(const QString& text);
    QTreeWidgetItem* child(QTreeWidgetItem* parent, const QString& text);

    QLineEdit* filter_;
    QTreeWidget* tree_;
    int machines_ = 0;
};

}  // namespace fettle
