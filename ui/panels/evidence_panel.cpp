#include "ui/panels/evidence_panel.h"

#include <QCheckBox>
#include <QLabel>
#include <QPushButton>

#include "core/fleet/site_calendar.h"
#include "core/machine/path.h"
#include "ui/model/engine_words.h"
#include "ui/model/numbers.h"
#include "ui/model/site_time.h"
#include "ui/model/unit_words.h"
#include "ui/model/words.h"
#include "ui/panels/change_words.h"
#include "ui/panels/evidence_view.h"
#include "ui/panels/evidence_words.h"
#include "ui/panels/fault_list.h"
#include "ui/panels/suggestion_list.h"

namespace fettle {

namespace {

constexpr int kMostClaims = 4;
constexpr int kLowEms = 52;  // lower than that the lines of the chosen fault need the room of the others

// First day at a finding's weight, as it is shown; empty: never.
std::string sinceOf(const FaultEntry& entry, const PanelContent& content) {
    std::optional<Instant> first;
    for (const WeightReached& one : content.reached)
        if (one.fault == entry.fault && placesMeet(one.at, entry.at))
            first = first ? std::min(*first, one.first) : one.first;
    return first ? kept(dateText(siteTime(*first, content.zone).date())) : std::string();
}

std::string sinceOf(const ChangeFacts& change) {
    return change.since ? kept(dateText(dateOfDay(*change.since))) : std::string();
}

}  // namespace

const ChangeFacts* changeOf(const PanelContent& content, const Hypothesis& finding) {
    if (!finding.weightDban || !finding.best.rows.empty()) return nullptr;
    for (const RoundFinding& one : content.changes)
        if (one.finding.fault == finding.fault && one.finding.at == finding.at) return &*one.change;
    return nullptr;
}

EvidencePanel::EvidencePanel(const Theme& theme, Selection& selection, QWidget* parent)
    : QScrollArea(parent), theme_(theme), selection_(selection), page_(new QWidget) {
    setObjectName(QStringLiteral("evidencePanel"));
    setAccessibleName(tr("Fault evidence"));
    setFrameStyle(QFrame::NoFrame);
    setWidgetResizable(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    build();
    setWidget(page_);
    connectParts();
    takeTheme();
    setContent(nullptr);
}

void EvidencePanel::connectParts() {
    connect(week_, &QPushButton::clicked, this, &EvidencePanel::weekWanted);
    connect(sum_, &QCheckBox::toggled, view_, &EvidenceView::showSum);
    connect(copy_, &QPushButton::clicked, view_, &EvidenceView::copyTable);
    connect(asksButton_, &QPushButton::clicked, this, &EvidencePanel::asksWanted);
    connect(firstButton_, &QPushButton::clicked, this, &EvidencePanel::firstListedWanted);
    connect(whoseButton_, &QPushButton::clicked, this, [this] {
        if (selection_.cursorHz()) emit whoseLineWanted(*selection_.cursorHz());
    });
    connect(suggestions_, &SuggestionList::askWanted, this,
            [this](int place) { emit askWanted(suggestions_->suggestions()[std::size_t(place)]); });
    connect(chart_, &WeightChart::recordingPicked, this, [this](qint64 recording, double ms) {
        selection_.setRecording(recording, Instant(std::chrono::milliseconds(std::int64_t(ms))));
    });
    connect(chart_, &WeightChart::weekPicked, this, [this](double ms) {
        selection_.setRecording({}, Instant(std::chrono::milliseconds(std::int64_t(ms))));
    });
    connect(&selection_, &Selection::recordingChanged, this,
            [this] { chart_->setChosen(selection_.recording()); });
    connect(&selection_, &Selection::faultChanged, this, &EvidencePanel::showChosen);
    connect(&selection_, &Selection::cursorChanged, this, [this] {
        sayWhoseLine({});
        showClaims();
    });
    connect(&selection_, &Selection::unitsChanged, this, &EvidencePanel::showChosen);
    connect(&theme_, &Theme::changed, this, &EvidencePanel::takeTheme);
}

void EvidencePanel::resizeEvent(QResizeEvent* event) {
    QScrollArea::resizeEvent(event);
    faults_->setLow(height() < kLowEms * fontMetrics().height());
}

void EvidencePanel::takeTheme() {
    page_->setBackgroundRole(QPalette::Window);
    for (QLabel* label : muted_)
        label->setForegroundRole(QPalette::PlaceholderText);
}

void EvidencePanel::fill(Section& section, const QStringList& paragraphs) {
    QString html;
    for (const QString& paragraph : paragraphs)
        html += QStringLiteral("<p style='margin-top:0;margin-bottom:3px'>%1</p>")
                    .arg(withUnitsBeside(paragraph, selection_.units()).toHtmlEscaped());
    section.body->setText(html);
    section.head->setVisible(!paragraphs.isEmpty());
    section.body->setVisible(!paragraphs.isEmpty());
}

void EvidencePanel::setContent(std::shared_ptr<const PanelContent> content) {
    content_ = std::move(content);
    words_->setVisible(!content_);
    for (QWidget* part : std::initializer_list<QWidget*>{basis_, faults_, scale_, verdict_, facts_, tableRow_,
                                                         sumSays_, view_, claimsRow_, chartHead_, chart_,
                                                         suggestionsHead_, asksButton_, firstButton_})
        part->setVisible(content_ != nullptr);
    week_->setVisible(content_ && !content_->week);
    if (content_) {
        basis_->setText(content_->basis);
        chart_->setZone(content_->zone);
        showFaults();
    }
    sayWhoseLine({});
    sayFirstListed({});
    showChosen();
}

void EvidencePanel::showFaults() {
    std::vector<FaultEntry> entries = faultEntries(content_->examination);
    for (FaultEntry& entry : entries) {
        const Hypothesis* h = hypothesisOf(content_->examination, entry.fault, entry.at);
        const ChangeFacts* change = h ? changeOf(*content_, *h) : nullptr;
        entry.byChange = change != nullptr;
        entry.since = change ? sinceOf(*change) : sinceOf(entry, *content_);
    }
    faults_->setEntries(std::move(entries));
}

void EvidencePanel::setWords(const QString& words) {
    setContent(nullptr);
    words_->setText(words);
}

void EvidencePanel::setWeights(std::vector<WeightPoint> points) {
    chart_->setPoints(std::move(points));
    chart_->setChosen(selection_.recording());
}

void EvidencePanel::setToleranceHz(double hz) {
    toleranceHz_ = hz;
    view_->setToleranceHz(hz);
    showClaims();
}

void EvidencePanel::setStanding(std::optional<RoundStanding> standing) {
    standing_ = std::move(standing);
    showChange(chosen());
}

void EvidencePanel::setAsks(std::vector<Ask> open, bool writable) {
    asks_ = std::move(open);
    suggestions_->setWritable(writable);
    showSuggestions(chosen());
}

void EvidencePanel::setHistory(FaultHistory history) {
    said_ = std::move(history);
    showHistory();
}

void EvidencePanel::sayWhoseLine(const QString& words) {
    whose_->setText(words);
    whose_->setVisible(!words.isEmpty());
}

void EvidencePanel::sayFirstListed(const QString& words) {
    firstListed_->setText(words.isEmpty() ? tr("Since when would the rule have listed this machine?")
                                          : words);
    firstListed_->setVisible(content_ != nullptr);
}

const Hypothesis* EvidencePanel::chosen() const {
    if (!content_) return nullptr;
    return hypothesisOf(content_->examination, selection_.fault().toStdString(),
                        selection_.at().toStdString());
}

const ArithmeticRows& EvidencePanel::rows() const {
    return view_->rows();
}

QString EvidencePanel::verdict() const {
    return verdict_->text();
}

void EvidencePanel::showChosen() {
    const Hypothesis* h = chosen();
    view_->setRows(h ? arithmeticOf(*h) : ArithmeticRows{});
    const ChangeFacts* change = h ? changeOf(*content_, *h) : nullptr;
    const bool weighed = h && h->weightDban && !change;
    for (QWidget* part : std::initializer_list<QWidget*>{tableRow_, sumSays_, view_, chartHead_, chart_})
        part->setVisible(weighed);
    for (QWidget* part : std::initializer_list<QWidget*>{verdict_, facts_})
        part->setVisible(h != nullptr);
    showOtherSide(h ? *h : Hypothesis{});
    showChange(h);
    showSuggestions(h);
    showHistory();
    if (h) {
        verdict_->setText(withUnitsBeside(verdictWords(*h), selection_.units()));
        facts_->setText(change ? tr("By change against the machine's own baseline, outside the list's share "
                                    "of chance entries; no line was weighed for it.")
                               : factWords(*h, *content_, selection_.units()));
        if (weighed) sumSays_->setText(sumWords(*h));
        tableHead_->setText(h->sentence.empty() ? tr("Best chance fit: what each line added")
                                                : tr("What each line added"));
    }
    showClaims();
}

void EvidencePanel::showOtherSide(const Hypothesis& h) {
    QStringList against;
    for (const std::string& text : h.against)
        against << shown(text);
    fill(against_, against);
    fill(rivals_, content_ ? rivalWords(content_->examination, h) : QStringList());
    fill(leftOut_, leftOutWords(h));
    fill(blind_, content_ ? blindWords(content_->examination, h) : QStringList());
    fill(notes_, content_ ? noteWords(content_->examination) : QStringList());
}

void EvidencePanel::showChange(const Hypothesis* h) {
    if (!h || !content_->machine || !content_->urgencies || changeOf(*content_, *h)) return fill(change_, {});
    fill(change_,
         changeWords(whatWouldChange(*content_->machine, content_->examination, *h, *content_->urgencies),
                     standing_, selection_.units()));
}

void EvidencePanel::showSuggestions(const Hypothesis* h) {
    const bool known = h && content_->machine;
    suggestions_->setSuggestions(
        known ? askSuggestions(*content_->machine, content_->examination, *h) : std::vector<AskSuggestion>{},
        asks_, selection_.units());
    suggestionsHead_->setText(suggestions_->suggestions().empty()
                                  ? tr("No further recording is suggested for this fault")
                                  : tr("Recordings that would settle it"));
}

// Greasings concern bearings alone.
void EvidencePanel::showHistory() {
    const Hypothesis* h = chosen();
    QStringList words;
    if (h && h->fault.rfind("bearing", 0) == 0)
        for (const std::string& text : said_.greasings)
            words << shown(text);
    fill(history_, words);
}

void EvidencePanel::showClaims() {
    const bool asked = content_ && selection_.cursorHz();
    claimsRow_->setVisible(asked);
    if (!asked) return;
    const double hz = *selection_.cursorHz();
    const std::vector<Claim> claims = claimsAt(content_->examination, hz, toleranceHz_);
    QStringList texts;
    for (std::size_t i = 0; i < claims.size() && i < kMostClaims; ++i) {
        const Claim& c = claims[i];
        texts << tr("%1 of %2, %3 (%4, %5)")
                     .arg(shown(c.line), faultNameText(c.fault), shown(c.at), engineText(toText(c.state)),
                          fixedText(c.printed, 1));
    }
    if (claims.size() > kMostClaims) texts << tr("%1 more").arg(claims.size() - kMostClaims);
    const ShownUnit unit = shownUnit(QStringLiteral("Hz"), selection_.units());
    const QString place = fixedText(unit.shown(hz), selection_.units().perMinute ? 0 : 2);
    claims_->setText(texts.isEmpty()
                         ? tr("%1 %2: no family has a line here.").arg(place, unit.unit)
                         : tr("%1 %2 is claimed by %3.").arg(place, unit.unit, texts.join(tr("; "))));
}

}  // namespace fettle
