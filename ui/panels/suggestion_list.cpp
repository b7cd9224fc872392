#include "ui/panels/suggestion_list.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/model/words.h"
#include "ui/sheet/walk_sheet.h"

namespace fettle {

QString askWords(const AskSuggestion& suggestion, const Units& units) {
    Request where;
    where.point = suggestion.point;
    where.direction = suggestion.direction;
    return (suggestion.byHand ? SuggestionList::tr("By hand at %1: %2")
                              : SuggestionList::tr("The node at %1: %2"))
        .arg(askedWhere(where), askedWhat(suggestion.spec, units));
}

bool isAskedAlready(const AskSuggestion& suggestion, const std::vector<Ask>& open) {
    return std::any_of(open.begin(), open.end(), [&](const Ask& ask) {
        return ask.request.byHand == suggestion.byHand && ask.request.point == suggestion.point &&
               ask.request.direction == suggestion.direction && ask.spec == suggestion.spec;
    });
}

SuggestionList::SuggestionList(QWidget* parent) : QWidget(parent), rows_(new QVBoxLayout(this)) {
    setObjectName(QStringLiteral("suggestions"));
    setAccessibleName(tr("Recordings that would settle it"));
    rows_->setContentsMargins(0, 0, 0, 0);
    rows_->setSpacing(4);
}

void SuggestionList::setWritable(bool writable) {
    writable_ = writable;
}

void SuggestionList::setSuggestions(std::vector<AskSuggestion> suggestions, const std::vector<Ask>& open,
                                    const Units& units) {
    while (QLayoutItem* item = rows_->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    suggestions_ = std::move(suggestions);
    for (std::size_t i = 0; i < suggestions_.size(); ++i)
        addRow(int(i), isAskedAlready(suggestions_[i], open), units);
}

void SuggestionList::addRow(int place, bool asked, const Units& units) {
    const AskSuggestion& one = suggestions_[std::size_t(place)];
    auto* row = new QWidget(this);
    auto* line = new QHBoxLayout(row);
    line->setContentsMargins(0, 0, 0, 0);
    const QString what = askWords(one, units);
    auto* label = new QLabel(tr("%1 \u2014 %2").arg(what, shown(one.why)), row);
    label->setObjectName(QStringLiteral("suggestion%1").arg(place));
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    auto* button = new QPushButton(asked ? tr("asked") : tr("Ask"), row);
    button->setObjectName(QStringLiteral("ask%1").arg(place));
    button->setAccessibleName(tr("Ask for: %1").arg(what));
    button->setToolTip(asked ? tr("It stands on the list of what is asked for.")
                             : tr("Puts it on the list of what is asked for."));
    button->setEnabled(!asked && writable_);
    connect(button, &QPushButton::clicked, this, [this, place] { emit askWanted(place); });
    line->addWidget(label, 1);
    line->addWidget(button, 0, Qt::AlignTop);
    rows_->addWidget(row);
}

}  // namespace fettle
