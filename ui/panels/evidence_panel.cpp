#include "ui/panels/evidence_panel.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "core/diagnosis/blind_rows.h"
#include "core/diagnosis/wording.h"
#include "ui/model/site_time.h"
#include "ui/model/words.h"
#include "ui/panels/evidence_view.h"
#include "ui/panels/fault_list.h"
#include "ui/plot/readout.h"

namespace fettle {

namespace {

constexpr int kMostClaims = 4;
constexpr int kLowEms = 52;  // lower than that the lines of the chosen fault need the room of the others

}  // namespace

EvidencePanel::EvidencePanel(const Theme& theme, Selection& selection, QWidget* parent)
    : QScrollArea(parent), theme_(theme), selection_(selection), page_(new QWidget) {
    setObjectName(QStringLiteral("evidencePanel"));
    setAccessibleName(tr("Fault evidence"));
    setFrameStyle(QFrame::NoFrame);
    setWidgetResizable(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    build();
    setWidget(page_);
    connect(week_, &QPushButton::clicked, this, &EvidencePanel::weekWanted);
    connect(&selection_, &Selection::faultChanged, this, &EvidencePanel::showChosen);
    connect(&selection_, &Selection::cursorChanged, this, &EvidencePanel::showClaims);
    connect(&theme_, &Theme::changed, this, &EvidencePanel::takeTheme);
    takeTheme();
    setContent(nullptr);
}

QLabel* EvidencePanel::addLabel(const QString& name, bool muted) {
    auto* label = new QLabel(page_);
    label->setObjectName(name);
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    label->setFocusPolicy(Qt::ClickFocus);
    column_->addWidget(label);
    if (muted) muted_ << label;
    return label;
}

EvidencePanel::Section EvidencePanel::addSection(const QString& name, const QString& title) {
    Section section;
    section.head = addLabel(name + QStringLiteral("Head"), false);
    section.head->setText(title);
    QFont bold = font();
    bold.setBold(true);
    section.head->setFont(bold);
    section.body = addLabel(name, false);
    section.body->setTextFormat(Qt::RichText);
    return section;
}

void EvidencePanel::build() {
    column_ = new QVBoxLayout(page_);
    column_->setContentsMargins(10, 0, 10, 10);
    column_->setSpacing(6);
    auto* top = new QHBoxLayout;
    column_->addLayout(top);
    basis_ = addLabel(QStringLiteral("panelBasis"), true);
    column_->removeWidget(basis_);
    top->addWidget(basis_, 1);
    week_ = new QPushButton(tr("Show the week"), page_);
    week_->setObjectName(QStringLiteral("showWeek"));
    top->addWidget(week_, 0, Qt::AlignTop);
    words_ = addLabel(QStringLiteral("panelWords"), true);
    faults_ = new FaultList(theme_, selection_, page_);
    column_->addWidget(faults_);
    verdict_ = addLabel(QStringLiteral("verdict"), false);
    facts_ = addLabel(QStringLiteral("verdictFacts"), true);
    tableHead_ = addLabel(QStringLiteral("evidenceHead"), false);
    QFont bold = font();
    bold.setBold(true);
    tableHead_->setFont(bold);
    view_ = new EvidenceView(theme_, selection_, page_);
    column_->addWidget(view_);
    claims_ = addLabel(QStringLiteral("claims"), false);
    chartHead_ = addLabel(QStringLiteral("weightHead"), false);
    chartHead_->setFont(bold);
    chartHead_->setText(tr("Weight over the weeks, decibans a recording"));
    chart_ = new WeightChart(theme_, page_);
    column_->addWidget(chart_);
    against_ = addSection(QStringLiteral("against"), tr("Against"));
    rivals_ = addSection(QStringLiteral("rivals"), tr("Rivals for the same lines"));
    leftOut_ = addSection(QStringLiteral("leftOut"), tr("Left out"));
    blind_ = addSection(QStringLiteral("blindSpots"), tr("Blind spots"));
    notes_ = addSection(QStringLiteral("notes"), tr("About the recordings"));
    column_->addStretch(1);
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
        html +=
            QStringLiteral("<p style='margin-top:0;margin-bottom:3px'>%1</p>").arg(paragraph.toHtmlEscaped());
    section.body->setText(html);
    section.head->setVisible(!paragraphs.isEmpty());
    section.body->setVisible(!paragraphs.isEmpty());
}

void EvidencePanel::setContent(std::shared_ptr<const PanelContent> content) {
    content_ = std::move(content);
    words_->setVisible(!content_);
    for (QWidget* part : std::initializer_list<QWidget*>{basis_, faults_, verdict_, facts_, tableHead_, view_,
                                                         claims_, chartHead_, chart_})
        part->setVisible(content_ != nullptr);
    week_->setVisible(content_ && !content_->week);
    if (content_) {
        basis_->setText(content_->basis);
        faults_->setEntries(faultEntries(content_->examination));
    }
    showChosen();
}

void EvidencePanel::setWords(const QString& words) {
    setContent(nullptr);
    words_->setText(words);
}

void EvidencePanel::setWeights(std::vector<WeightPoint> points) {
    chart_->setPoints(std::move(points));
}

void EvidencePanel::setToleranceHz(double hz) {
    toleranceHz_ = hz;
    view_->setToleranceHz(hz);
    showClaims();
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
    const bool weighed = h && h->weightDban;
    for (QWidget* part : std::initializer_list<QWidget*>{tableHead_, view_, chartHead_, chart_})
        part->setVisible(weighed);
    for (QWidget* part : std::initializer_list<QWidget*>{verdict_, facts_})
        part->setVisible(h != nullptr);
    showOtherSide(h ? *h : Hypothesis{});
    if (h) {
        verdict_->setText(verdictOf(*h));
        facts_->setText(factsOf(*h));
        tableHead_->setText(h->sentence.empty() ? tr("Best chance fit: what each line added, decibans")
                                                : tr("What each line added, decibans"));
    }
    showClaims();
}

QString EvidencePanel::verdictOf(const Hypothesis& h) const {
    if (!h.sentence.empty()) return shown(h.sentence);
    const QString name = shown(faultName(h.fault));
    if (!h.weightDban) return tr("Not judged: %1, %2: %3.").arg(name, shown(h.at), shown(h.why));
    QString text = tr("No finding: %1, %2: the best chance fit reaches %3 decibans; a finding needs 20.")
                       .arg(name, shown(h.at))
                       .arg(*h.weightDban, 0, 'f', 1);
    if (h.beforeClaimsDban && *h.beforeClaimsDban - *h.weightDban > 1)
        text +=
            tr(" Before stronger faults claimed their lines it was %1.").arg(*h.beforeClaimsDban, 0, 'f', 1);
    return text + tr(" This does not prove the machine sound: see the blind spots.");
}

QString EvidencePanel::factsOf(const Hypothesis& h) const {
    QStringList facts;
    const Severity& s = h.severity;
    if (s.kind == "stage") facts << tr("stage %1").arg(shown(s.value));
    if (s.kind == "zone") {
        QString zone = tr("zone %1").arg(shown(s.value));
        if (s.level) zone += tr(", %1 %2").arg(significant(*s.level), shown(s.unit));
        if (s.limit) zone += tr(", next boundary %1").arg(significant(*s.limit));
        facts << zone + QStringLiteral(" (") + shown(s.basis) + QStringLiteral(")");
    }
    if (h.weightDban) {
        facts << shown(h.best.view) << tr("cage shift %1 %").arg(h.best.cageShift * 100, 0, 'f', 2);
        if (!h.best.variant.empty()) facts << shown(h.best.variant);
        if (h.recordingCount > 1 && h.recording < content_->times.size())
            facts << tr("lines of the strongest recording, %1")
                         .arg(momentText(content_->times[h.recording], content_->zone));
    }
    if (h.persistence && content_->week)
        facts << (h.weightDban ? tr("10 decibans or more in %1 % of the week's recordings")
                               : tr("named in %1 % of the week's recordings"))
                     .arg(*h.persistence * 100, 0, 'f', 0);
    if (!h.provedOn.empty()) facts << tr("proved on %1").arg(shown(h.provedOn));
    facts.removeAll(QString());
    return facts.join(QStringLiteral("; "));
}

QStringList EvidencePanel::blindSpots(const Hypothesis& h) const {
    QStringList own, others;
    for (const BlindRow& row : blindRows(content_->examination.blind)) {
        QString text = shown(blindWhat(row));
        text += (text.isEmpty() ? QString() : QStringLiteral(": ")) + shown(row.why);
        if (!row.cure.empty()) text += tr(". Cure: %1").arg(shown(row.cure));
        const bool ofFault = std::count(row.faults.begin(), row.faults.end(), h.fault) > 0;
        const bool ofPlace = row.places.empty() || std::count(row.places.begin(), row.places.end(), h.at) > 0;
        (ofFault && ofPlace ? own : others) << text;
    }
    return own + others;
}

void EvidencePanel::showOtherSide(const Hypothesis& h) {
    QStringList against, rivals, leftOut, notes;
    for (const std::string& text : h.against)
        against << shown(text);
    for (const Rival& r : h.rivals)
        rivals << tr("%1, %2: %3 decibans before claims; %4")
                      .arg(shown(faultName(r.fault)), shown(r.at))
                      .arg(r.weightDban, 0, 'f', 1)
                      .arg(shown(r.lines));
    for (const auto& [reason, lines] : leftOutByReason(h))
        leftOut << tr("%1: %2").arg(shown(reason), shown(lines));
    if (content_) {
        for (const RecordingFacts& r : content_->examination.recordings)
            for (const QualityNote& q : r.quality)
                notes << tr("%1: %2").arg(shown(q.channel), shown(q.detail));
        for (const std::string& w : content_->examination.warnings)
            notes << shown(w);
        notes.removeDuplicates();
    }
    fill(against_, against);
    fill(rivals_, rivals);
    fill(leftOut_, leftOut);
    fill(blind_, content_ ? blindSpots(h) : QStringList());
    fill(notes_, notes);
}

void EvidencePanel::showClaims() {
    const bool asked = content_ && selection_.cursorHz();
    claims_->setVisible(asked);
    if (!asked) return;
    const double hz = *selection_.cursorHz();
    const std::vector<Claim> claims = claimsAt(content_->examination, hz, toleranceHz_);
    QStringList texts;
    for (std::size_t i = 0; i < claims.size() && i < kMostClaims; ++i) {
        const Claim& c = claims[i];
        texts << tr("%1 of %2, %3 (%4, %5)")
                     .arg(shown(c.line), shown(faultName(c.fault)), shown(c.at), shown(toText(c.state)),
                          QString::number(c.printed, 'f', 1));
    }
    if (claims.size() > kMostClaims) texts << tr("%1 more").arg(claims.size() - kMostClaims);
    claims_->setText(texts.isEmpty()
                         ? tr("%1 Hz: no family has a line here.").arg(hz, 0, 'f', 2)
                         : tr("%1 Hz is claimed by %2.").arg(hz, 0, 'f', 2).arg(texts.join(tr("; "))));
}

}  // namespace fettle
