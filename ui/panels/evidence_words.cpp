#include "ui/panels/evidence_words.h"

#include <algorithm>

#include "core/diagnosis/blind_rows.h"
#include "core/machine/path.h"
#include "ui/model/engine_words.h"
#include "ui/model/numbers.h"
#include "ui/model/round_words.h"
#include "ui/model/site_time.h"
#include "ui/model/words.h"
#include "ui/panels/evidence_rows.h"
#include "ui/plot/readout.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr double kFindingDban = 20;

QString joinedNames(const std::vector<std::string>& names) {
    constexpr std::size_t kMost = 6;
    QStringList parts;
    for (std::size_t i = 0; i < names.size() && i < kMost; ++i)
        parts << shown(names[i]);
    if (names.size() > kMost) parts << tr("%1 more").arg(names.size() - kMost);
    return parts.join(QStringLiteral(", "));
}

QString severityWords(const Severity& s, const Units& units) {
    if (s.kind == "stage") return tr("stage %1").arg(shown(s.value));
    if (s.kind != "zone") return {};
    QString zone = tr("zone %1").arg(shown(s.value));
    if (s.level && s.limit)
        zone =
            tr("zone %1, %2, next boundary %3")
                .arg(shown(s.value), levelText(*s.level, s.unit, units), levelText(*s.limit, s.unit, units));
    else if (s.level)
        zone = tr("zone %1, %2").arg(shown(s.value), levelText(*s.level, s.unit, units));
    return s.basis.empty() ? zone : tr("%1 (%2)").arg(zone, shown(s.basis));
}

// Which lines decide, for the finding and for its rival.
QString decidingWords(const RivalLines& lines) {
    QStringList words;
    words << (lines.shared.empty()
                  ? tr("At the fit that is left to it, it would draw none of the found lines.")
                  : tr("At the fit that is left to it, it would draw %1 of the found lines as well (%2 "
                       "decibans).")
                        .arg(lines.shared.size())
                        .arg(lines.sharedDban, 0, 'f', 1));
    if (!lines.own.empty() && !lines.shared.empty())
        words << tr("Drawn by this fault alone: %1 (%2 decibans).")
                     .arg(joinedNames(lines.own))
                     .arg(lines.ownDban, 0, 'f', 1);
    if (!lines.against.empty())
        words << tr("Lines that it alone would draw are absent: %1.").arg(joinedNames(lines.against));
    if (!lines.forIt.empty())
        words << tr("Lines that it alone would draw are there: %1.").arg(joinedNames(lines.forIt));
    return words.join(u' ');
}

}  // namespace

QString levelText(double stored, const std::string& unit, const Units& units) {
    const ShownUnit to = shownUnit(shown(unit), units);
    return valueText(to.shown(stored), to.unit);
}

QString verdictWords(const Hypothesis& h) {
    if (!h.sentence.empty()) return weighedAlone(shown(h.sentence));
    const QString name = faultNameText(h.fault);
    if (!h.weightDban) return tr("Not judged: %1, %2: %3.").arg(name, shown(h.at), shown(h.why));
    QStringList words{tr("No finding: %1, %2: the best chance fit reaches %3 decibans; a finding needs 20.")
                          .arg(name, shown(h.at))
                          .arg(fixedText(*h.weightDban, 1))};
    if (h.beforeClaimsDban && *h.beforeClaimsDban - *h.weightDban > 1)
        words << tr("Before stronger faults claimed their lines it was %1.")
                     .arg(fixedText(*h.beforeClaimsDban, 1));
    words << tr("This does not prove the machine sound: see the blind spots.");
    return words.join(u' ');
}

QString sumWords(const Hypothesis& h) {
    double found = 0, absent = 0, search = 0, mean = 0, weight = 0;
    int foundLines = 0, absentLines = 0;
    for (const ArithmeticRow& row : arithmeticOf(h)) {
        if (row.kind == ArithmeticRow::Kind::Search) search = row.printed;
        if (row.kind == ArithmeticRow::Kind::Mean) mean = row.printed;
        if (row.kind == ArithmeticRow::Kind::Weight) weight = row.printed;
        if (row.kind != ArithmeticRow::Kind::Line) continue;
        const bool there = row.line->state == LineState::Found;
        (there ? found : absent) += row.printed;
        foundLines += there;
        absentLines += row.line->state == LineState::Absent;
    }
    const auto decibans = [](double value) {
        return (value > 0 ? QStringLiteral("+") : QString()) + fixedText(value, 1);
    };
    QString words = tr("Every line adds to the weight or takes from it, in decibans. Lines found (%1): %2. "
                       "Expected but absent (%3): %4. Search: %5, the price of having tried many fits.")
                        .arg(QString::number(foundLines), decibans(found), QString::number(absentLines),
                             decibans(absent), decibans(search));
    if (h.recordingCount > 1)
        words = tr("%1 From this strongest recording to the mean of all %2: %3.")
                    .arg(words)
                    .arg(h.recordingCount)
                    .arg(decibans(mean));
    return tr("%1 Together %2, the weight at the foot.").arg(words, fixedText(weight, 1));
}

QString sinceWords(const Hypothesis& h, const PanelContent& content) {
    std::optional<Instant> first;
    std::size_t recordings = 0;
    for (const WeightReached& one : content.reached) {
        if (one.fault != h.fault || !placesMeet(one.at, h.at)) continue;
        first = first ? std::min(*first, one.first) : one.first;
        recordings += one.recordings;
    }
    if (!first) return {};
    return tr("first at %1 decibans on %2, in %3 recordings by now")
        .arg(fixedText(kFindingDban, 0))
        .arg(dateText(siteTime(*first, content.zone).date()))
        .arg(recordings);
}

QString factWords(const Hypothesis& h, const PanelContent& content, const Units& units) {
    QStringList facts{severityWords(h.severity, units)};
    if (h.persistence && content.week)
        facts << (h.weightDban ? tr("10 decibans or more in %1 % of the week's recordings")
                               : tr("named in %1 % of the week's recordings"))
                     .arg(fixedText(*h.persistence * 100, 0));
    facts << sinceWords(h, content);
    if (h.weightDban) {
        facts << shown(h.best.view) << tr("cage shift %1 %").arg(fixedText(h.best.cageShift * 100, 2));
        if (!h.best.variant.empty()) facts << shown(h.best.variant);
        if (h.recordingCount > 1 && h.recording < content.times.size())
            facts << tr("lines of the strongest recording, %1")
                         .arg(momentText(content.times[h.recording], content.zone));
    }
    if (!h.provedOn.empty()) facts << tr("proved on %1").arg(engineText(h.provedOn));
    facts.removeAll(QString());
    return facts.join(QStringLiteral("; "));
}

QStringList rivalWords(const Examination& examination, const Hypothesis& h) {
    QStringList words;
    for (const RivalLines& lines : rivalLines(examination, h)) {
        const Rival& r = lines.rival;
        QString text =
            tr("%1, %2: %3 decibans before claims; %4.")
                .arg(faultNameText(r.fault), shown(r.at), fixedText(r.weightDban, 1), shown(r.lines));
        if (lines.known) text += u' ' + decidingWords(lines);
        words << text;
    }
    return words;
}

QStringList leftOutWords(const Hypothesis& h) {
    QStringList words;
    for (const auto& [reason, lines] : leftOutByReason(h))
        words << tr("%1: %2").arg(shown(reason), shown(lines));
    return words;
}

QStringList blindWords(const Examination& examination, const Hypothesis& h) {
    QStringList own, others;
    for (const BlindRow& row : blindRows(examination.blind)) {
        QString text = blindWhatText(row);
        text = text.isEmpty() ? engineText(row.why) : tr("%1: %2").arg(text, engineText(row.why));
        if (!row.cure.empty()) text = tr("%1. Cure: %2").arg(text, engineText(row.cure));
        const bool ofFault = std::count(row.faults.begin(), row.faults.end(), h.fault) > 0;
        const bool ofPlace = row.places.empty() || std::count(row.places.begin(), row.places.end(), h.at) > 0;
        (ofFault && ofPlace ? own : others) << text;
    }
    return own + others;
}

QStringList noteWords(const Examination& examination) {
    QStringList notes;
    for (const RecordingFacts& r : examination.recordings)
        for (const QualityNote& q : r.quality)
            notes << tr("%1: %2").arg(shown(q.channel), shown(q.detail));
    for (const std::string& w : examination.warnings)
        notes << shown(w);
    notes.removeDuplicates();
    return notes;
}

QString scaleWords() {
    return tr("Bars: for to the right, against to the left. %1 decibans (dashed) make a finding. 30 "
              "decibans: "
              "chance lines reach it in at most 1 recording of 1,000.")
        .arg(fixedText(kFindingDban, 0));
}

}  // namespace fettle
