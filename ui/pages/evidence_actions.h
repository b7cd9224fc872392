// Why: what the evidence panel asks for by signals is answered here, so that the page only holds the panel:
// asks and their list, whose line it is, first day listed, where the machine stood in the round, greasings.
// Thread: the window's. Errors: said in the panel, or `troubled`.
#pragma once

#include <QObject>

#include "core/fleet/ask_suggestions.h"
#include "ui/model/selection.h"
#include "ui/work/fleet_work.h"

namespace fettle {

class EvidencePanel;

class EvidenceActions : public QObject {
    Q_OBJECT
  public:
    EvidenceActions(FleetWork& work, Selection& selection, EvidencePanel& panel, QObject* parent);

  signals:
    void asksWanted();
    void troubled(const QString& sentence);

  private:
    void read();
    void readAsks();
    void ask(const AskSuggestion& suggestion);
    void askWhoseLine(double hz);
    void askFirstListed();

    FleetWork& work_;
    Selection& selection_;
    EvidencePanel& panel_;
};

}  // namespace fettle
