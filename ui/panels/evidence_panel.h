// Why: the fault-evidence panel: what is said of the machine and the arithmetic it stands on. From top to
// bottom: what it is about (week or recording), faults by weight, the verdict of the chosen one in one
// paragraph, the table of lines that adds up, which families claim the cursor's frequency and whose line it
// is, then the other side: counter-evidence, rivals with the lines that decide, what would change the verdict
// and which recordings would settle it; the weight over the weeks; lines left out with the reason, blind
// spots with their cures, what the history says, cautions. Plain data in; what needs the fleet file is asked
// for by signals. Thread: the window's.
#pragma once

#include <QScrollArea>
#include <memory>
#include <vector>

#include "core/fleet/ask_suggestions.h"
#include "core/fleet/asks.h"
#include "core/fleet/what_would_change.h"
#include "ui/model/selection.h"
#include "ui/panels/evidence_rows.h"
#include "ui/panels/panel_content.h"
#include "ui/panels/weight_chart.h"
#include "ui/theme/theme.h"

class QBoxLayout;
class QCheckBox;
class QLabel;
class QPushButton;

namespace fettle {

class EvidenceView;
class FaultList;
class SuggestionList;

class EvidencePanel : public QScrollArea {
    Q_OBJECT
  public:
    EvidencePanel(const Theme& theme, Selection& selection, QWidget* parent);

    void setContent(std::shared_ptr<const PanelContent> content);
    const std::shared_ptr<const PanelContent>& content() const { return content_; }
    void setWords(const QString& words);  // instead of a content: what is missing, what to do next
    void setWeights(std::vector<WeightPoint> points);
    void setToleranceHz(double hz);
    void setStanding(std::optional<RoundStanding> standing);
    void setAsks(std::vector<Ask> open, bool writable);  // of the machine
    void setHistory(FaultHistory history);
    void sayWhoseLine(const QString& words);
    void sayFirstListed(const QString& words);

    const Hypothesis* chosen() const;  // of the Selection's fault
    const ArithmeticRows& rows() const;
    QString verdict() const;

  signals:
    void weekWanted();
    void askWanted(const fettle::AskSuggestion& suggestion);
    void asksWanted();  // the list of the fleet
    void whoseLineWanted(double hz);
    void firstListedWanted();

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    struct Section {
        QLabel *head = nullptr, *body = nullptr;
    };
    void build();
    void buildTop();
    void buildTable();
    void buildOtherSide();
    void buildHistory();
    void connectParts();
    QLabel* addLabel(const QString& name, bool muted);
    QPushButton* addButton(const QString& name, const QString& text, const QString& help);
    QWidget* addRow(std::initializer_list<QWidget*> parts);
    Section addSection(const QString& name, const QString& title);
    void fill(Section& section, const QStringList& paragraphs);
    void showFaults();
    void showChosen();
    void showClaims();
    void showOtherSide(const Hypothesis& h);
    void showChange(const Hypothesis* h);
    void showSuggestions(const Hypothesis* h);
    void showHistory();
    void takeTheme();

    const Theme& theme_;
    Selection& selection_;
    QWidget* page_;
    QBoxLayout* column_;
    QLabel *words_, *basis_, *scale_, *verdict_, *facts_, *tableHead_, *sumSays_, *claims_, *whose_,
        *chartHead_;
    QLabel *suggestionsHead_, *firstListed_;
    QPushButton *week_, *copy_, *whoseButton_, *asksButton_, *firstButton_;
    QCheckBox* sum_;
    QWidget *tableRow_, *claimsRow_;
    FaultList* faults_;
    EvidenceView* view_;
    WeightChart* chart_;
    SuggestionList* suggestions_;
    Section against_, rivals_, change_, leftOut_, blind_, history_, notes_;
    QList<QLabel*> muted_;
    std::shared_ptr<const PanelContent> content_;
    std::optional<RoundStanding> standing_;
    std::vector<Ask> asks_;
    FaultHistory said_;
    double toleranceHz_ = 0.5;
};

}  // namespace fettle
