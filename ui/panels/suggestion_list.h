// Why: what would settle a verdict is one click from being asked for: each suggested recording in words with
// a button; one that is open already says so. Thread: the window's.
#pragma once

#include <QWidget>
#include <vector>

#include "core/fleet/ask_suggestions.h"
#include "core/fleet/asks.h"
#include "ui/model/units.h"

class QVBoxLayout;

namespace fettle {

// "By hand at driver DE, axial: 8 s or more, to 10000 Hz, 102400 lines"
QString askWords(const AskSuggestion& suggestion, const Units& units);
bool isAskedAlready(const AskSuggestion& suggestion, const std::vector<Ask>& open);

class SuggestionList : public QWidget {
    Q_OBJECT
  public:
    explicit SuggestionList(QWidget* parent);

    void setSuggestions(std::vector<AskSuggestion> suggestions, const std::vector<Ask>& open,
                        const Units& units);
    const std::vector<AskSuggestion>& suggestions() const { return suggestions_; }
    void setWritable(bool writable);

  signals:
    void askWanted(int place);  // of suggestions()

  private:
    void addRow(int place, bool asked, const Units& units);

    QVBoxLayout* rows_;
    std::vector<AskSuggestion> suggestions_;
    bool writable_ = true;
};

}  // namespace fettle
