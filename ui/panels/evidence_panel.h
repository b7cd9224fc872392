// Why: the fault-evidence panel: what is said of the machine and the arithmetic it stands on. From top to
// bottom: what it is about (week or recording), faults by weight, the verdict of the chosen one in one
// paragraph, the table of lines that adds up, which families claim the cursor's frequency, the weight over
// the weeks, then the other side: counter-evidence, rivals, lines left out with the reason, blind spots with
// their cures, cautions. Plain data in; parts of it are exposed for tests and the sheet. Thread: the
// window's.
#pragma once

#include <QScrollArea>
#include <QTimeZone>
#include <memory>
#include <vector>

#include "core/base/time.h"
#include "core/diagnosis/examination.h"
#include "ui/model/selection.h"
#include "ui/panels/evidence_rows.h"
#include "ui/panels/weight_chart.h"
#include "ui/theme/theme.h"

class QBoxLayout;
class QLabel;
class QPushButton;

namespace fettle {

class EvidenceView;
class FaultList;

struct PanelContent {
    Examination examination;
    std::vector<Instant> times;            // of its recordings
    std::vector<std::int64_t> recordings;  // their ids
    QString basis;                         // "Week to 24 May 2026: 7 recordings"
    bool week = true;                      // else one recording
    QTimeZone zone = QTimeZone::utc();     // of the site, for moments
};

class EvidencePanel : public QScrollArea {
    Q_OBJECT
  public:
    EvidencePanel(const Theme& theme, Selection& selection, QWidget* parent);

    void setContent(std::shared_ptr<const PanelContent> content);
    const std::shared_ptr<const PanelContent>& content() const { return content_; }
    void setWords(const QString& words);  // instead of a content: what is missing, what to do next
    void setWeights(std::vector<WeightPoint> points);
    void setToleranceHz(double hz);
    const Hypothesis* chosen() const;  // of the Selection's fault
    const ArithmeticRows& rows() const;
    QString verdict() const;

  signals:
    void weekWanted();

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    struct Section {
        QLabel *head = nullptr, *body = nullptr;
    };
    void build();
    QLabel* addLabel(const QString& name, bool muted);
    Section addSection(const QString& name, const QString& title);
    void fill(Section& section, const QStringList& paragraphs);
    void showChosen();
    void showClaims();
    void showOtherSide(const Hypothesis& h);
    QString factsOf(const Hypothesis& h) const;
    QString verdictOf(const Hypothesis& h) const;
    QStringList blindSpots(const Hypothesis& h) const;
    void takeTheme();

    const Theme& theme_;
    Selection& selection_;
    QWidget* page_;
    QBoxLayout* column_;
    QLabel *words_, *basis_, *verdict_, *facts_, *tableHead_, *claims_, *chartHead_;
    QPushButton* week_;
    FaultList* faults_;
    EvidenceView* view_;
    WeightChart* chart_;
    Section against_, rivals_, leftOut_, blind_, notes_;
    QList<QLabel*> muted_;
    std::shared_ptr<const PanelContent> content_;
    double toleranceHz_ = 0.5;
};

}  // namespace fettle
