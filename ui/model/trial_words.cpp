#include "ui/model/trial_words.h"

#include "core/workshop/unbalance.h"
#include "ui/model/engine_words.h"
#include "ui/model/unit_words.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

QString wordIn(const std::vector<Word>& words, const std::string& key) {
    for (const Word& word : words)
        if (word.key == key) return word.text;
    return shown(key);
}

QString levelText(double mmS, const Units& units) {
    const ShownUnit unit = shownUnit(QStringLiteral("mm/s r.m.s."), units);
    return tr("%1 %2").arg(numberText(unit.shown(mmS)), unit.unit);
}

QString rangeText(double low, double high, const Units& units) {
    const ShownUnit unit = shownUnit(QStringLiteral("mm/s r.m.s."), units);
    return tr("%1 to %2 %3").arg(numberText(unit.shown(low)), numberText(unit.shown(high)), unit.unit);
}

QString linesText(const std::vector<ExpectedLine>& lines) {
    QStringList parts;
    for (const ExpectedLine& line : lines)
        parts << (line.hz > 0 ? tr("%1 (%2 x, %3 Hz)")
                                    .arg(shown(line.name), numberText(line.order), numberText(line.hz))
                              : tr("%1 (%2 x)").arg(shown(line.name), numberText(line.order)));
    return parts.join(QStringLiteral("; "));
}

void addMass(const TrialChange& change, const TrialExpectation& e, std::vector<TrialFigure>& rows) {
    if (!e.unbalanceGmm || !e.forceN) return;
    rows.push_back({tr("unbalance added"), tr("%1 g mm").arg(numberText(*e.unbalanceGmm))});
    rows.push_back({tr("force, turning"),
                    e.weightShare ? tr("%1 N, %2 % of the rotor's weight")
                                        .arg(numberText(*e.forceN), numberText(100 * *e.weightShare))
                                  : tr("%1 N").arg(numberText(*e.forceN))});
    if (e.equivalentGrade)
        rows.push_back({tr("equals the grade"), tr("G %1 by itself").arg(numberText(*e.equivalentGrade))});
    if (e.permissibleGmm && e.permissibleMassG)
        rows.push_back({tr("allowed for %1").arg(shown(gradeName(change.grade))),
                        tr("%1 g mm: %2 g at this radius")
                            .arg(numberText(*e.permissibleGmm), numberText(*e.permissibleMassG))});
}

}  // namespace

std::vector<Word> trialKinds() {
    return {{"mass", tr("mass at a radius")},
            {"bearing", tr("bearing with a known defect")},
            {"bolt", tr("bolt slackened at rest")},
            {"other", tr("something else")}};
}

std::vector<Word> trialElements() {
    return {{"bearing_outer_race", tr("outer race")},
            {"bearing_inner_race", tr("inner race")},
            {"bearing_rolling_element", tr("rolling element")},
            {"bearing_cage", tr("cage")}};
}

std::vector<Word> trialFollows() {
    return {{"1x", tr("1x of a channel")},
            {"velocity", tr("overall velocity of a channel")},
            {"looseness", tr("looseness of a channel")},
            {"weight", tr("the weight of a bearing fault")}};
}

QString trialOutcomeWord(const std::string& outcome) {
    const std::vector<Word> words = {{"passed", tr("passed")},
                                     {"failed", tr("failed")},
                                     {"open", tr("not decided yet")},
                                     {"not comparable", tr("not comparable")}};
    return wordIn(words, outcome);
}

QString trialMarkWord(TrialMark mark) {
    if (mark == TrialMark::Passed) return tr("kept");
    return mark == TrialMark::Failed ? tr("not kept") : tr("open");
}

QString trialStateWord(const Trial& trial, bool closed) {
    if (closed && trial.result) return trialOutcomeWord(trial.result->outcome);
    if (trial.changed()) return tr("changed, recordings come in");
    return trial.started() ? tr("started, promise frozen") : tr("planned");
}

QString trialChangeText(const TrialChange& change) {
    const QString at = shown(change.at);
    switch (change.kind) {
        case TrialKind::Mass:
            return tr("%1 g at %2 mm, %3").arg(numberText(change.massG), numberText(change.radiusMm), at);
        case TrialKind::Bearing:
            return tr("defect made on purpose: %1, %2").arg(wordIn(trialElements(), change.fault), at);
        case TrialKind::Bolt:
            return tr("bolt slackened, %1").arg(at);
        case TrialKind::Other:
            break;
    }
    return change.words.empty() ? at : shown(change.words);
}

std::vector<TrialFigure> trialFigures(const TrialChange& change, const TrialExpectation& e,
                                      const Units& units) {
    std::vector<TrialFigure> rows;
    if (e.speedRpm > 0)
        rows.push_back({tr("speed of this shaft"), tr("%1 r/min").arg(numberText(e.speedRpm))});
    addMass(change, e, rows);
    if (e.moveLowMmS && e.moveHighMmS)
        rows.push_back({tr("moves 1x by"), rangeText(*e.moveLowMmS, *e.moveHighMmS, units)});
    if (e.onceNowMmS) rows.push_back({tr("1x before"), levelText(*e.onceNowMmS, units)});
    if (e.onceLowMmS && e.onceHighMmS)
        rows.push_back({tr("1x afterwards"), rangeText(*e.onceLowMmS, *e.onceHighMmS, units)});
    if (!e.lines.empty()) rows.push_back({tr("lines to appear"), linesText(e.lines)});
    return rows;
}

QString linesOf(const std::vector<std::string>& sentences, const Units& units) {
    QStringList lines;
    for (const std::string& one : sentences)
        lines << withUnitsBeside(engineText(one), units);
    return lines.join(u'\n');
}

}  // namespace fettle
