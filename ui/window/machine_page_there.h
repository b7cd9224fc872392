// Why: until the machine page is there, an empty page stands in its place. To be deleted.
#pragma once

#if __has_include("ui/pages/machine_page.h")
#include "ui/pages/machine_page.h"
#else
#include <QWidget>

#include "ui/model/selection.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

namespace fettle {

class MachinePage : public QWidget {
    Q_OBJECT
  public:
    MachinePage(FleetWork&, Selection&, const Theme&, QWidget* parent) : QWidget(parent) {}

  signals:
    void sheetWanted(const QString& machine);
    void noteWanted(const QString& machine);
};

}  // namespace fettle
#endif
