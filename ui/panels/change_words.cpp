#include "ui/panels/change_words.h"

#include <cmath>

#include "ui/model/engine_words.h"
#include "ui/model/numbers.h"
#include "ui/model/words.h"
#include "ui/panels/evidence_words.h"
#include "ui/plot/readout.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr std::size_t kLinesTold = 3;

QString tenth(double value) {
    return fixedText(value, 1);
}

QString percent(double share) {
    return fixedText(share * 100, 2);
}

QString lineWords(const LineLoss& line) {
    return tr("Without %1 (%2 decibans) the weight would be %3; were it absent where it is expected, %4.")
        .arg(shown(line.name), tenth(line.dban), tenth(line.without), tenth(line.ifAbsent));
}

QString loseWords(const WhatWouldChange& change) {
    if (!change.linesToLose)
        return change.weightDban && *change.weightDban >= change.findingDban && !change.lines.empty()
                   ? tr("It stays a finding even without all of its found lines: the search carries the "
                        "rest.")
                   : QString();
    if (*change.linesToLose == 1)
        return tr("It hangs on one line: without %1 it is below the %2 decibans of a finding.")
            .arg(shown(change.lines.front().name))
            .arg(fixedText(change.findingDban, 0));
    return tr("It stays a finding until the %1 heaviest of its %2 found lines are gone.")
        .arg(*change.linesToLose)
        .arg(change.lines.size());
}

QString gainWords(const LineGain& gain) {
    if (!gain.oneIn)
        return tr("%1 decibans are missing to a finding; no single line can bring them.")
            .arg(tenth(gain.missingDban));
    return tr("%1 decibans are missing to a finding: %2 alone would bring them if its peak were among the "
              "highest 1 of %3 positions.")
        .arg(tenth(gain.missingDban), shown(gain.name))
        .arg(fixedText(std::ceil(*gain.oneIn), 0));
}

QString stageWords(const StageStep& stage) {
    const QString then = urgencyWord(stage.urgency);
    if (stage.velocityLines > 0)
        return tr("Stage %1 (%2) when %3 of its harmonics stand in the velocity spectrum below 1 kHz.")
            .arg(engineText(stage.value), then)
            .arg(stage.velocityLines);
    if (stage.sidebands == 0)
        return tr("Stage %1 (%2) with %3 more harmonics.")
            .arg(engineText(stage.value), then)
            .arg(stage.carriers);
    if (stage.carriers == 0)
        return tr("Stage %1 (%2) with %3 more sidebands.")
            .arg(engineText(stage.value), then)
            .arg(stage.sidebands);
    return tr("Stage %1 (%2) with %3 more harmonics and %4 more sidebands.")
        .arg(engineText(stage.value), then)
        .arg(stage.carriers)
        .arg(stage.sidebands);
}

QString levelWords(const LevelStep& step, const Units& units) {
    const QString level = levelText(step.level, step.unit, units),
                  now = levelText(step.now, step.unit, units);
    if (step.unit == "dB")
        return step.value.empty()
                   ? tr("No longer graded when the sideband is %1 or more below its carrier (now %2).")
                         .arg(level, now)
                   : tr("Graded %1 (%2) when the sideband is %3 below its carrier (now %4).")
                         .arg(engineText(step.value), urgencyWord(step.urgency), level, now);
    return (step.up ? tr("Zone %1 (%2) above %3, %5 % higher than now (%4).")
                    : tr("Zone %1 (%2) at %3 or less, %5 % lower than now (%4)."))
        .arg(engineText(step.value), urgencyWord(step.urgency), level, now)
        .arg(fixedText(std::abs(step.level / step.now - 1) * 100, 0));
}

QString speedWords(const SpeedReach& speed) {
    return tr("The speed is known to %1 %. Wrong by %2 % or %3 %, the lines would ask for more slip than "
              "bearings usually have.")
        .arg(percent(speed.known), percent(speed.low),
             (speed.high > 0 ? QStringLiteral("+") : QString()) + percent(speed.high));
}

QString standingWords(const RoundStanding& standing) {
    const double margin = *standing.weightDban - standing.needsDban;
    const QString day = dateText(standing.until);
    return margin >= 0
               ? tr("The list of the round to %1 asks for %2 decibans, the machine had %3: it would leave "
                    "the "
                    "list by evidence with %4 less.")
                     .arg(day, tenth(standing.needsDban), tenth(*standing.weightDban), tenth(margin))
               : tr("The list of the round to %1 asks for %2 decibans, the machine had %3: %4 were missing "
                    "to be "
                    "listed by evidence.")
                     .arg(day, tenth(standing.needsDban), tenth(*standing.weightDban), tenth(-margin));
}

}  // namespace

QStringList changeWords(const WhatWouldChange& change, const std::optional<RoundStanding>& standing,
                        const Units& units) {
    QStringList words;
    words << loseWords(change);
    for (std::size_t i = 0; i < change.lines.size() && i < kLinesTold; ++i)
        if (change.lines[i].dban >= 1) words << lineWords(change.lines[i]);
    if (change.gain) words << gainWords(*change.gain);
    if (change.withoutStrongest)
        words << tr("Without its strongest recording the week would weigh %1 decibans.")
                     .arg(tenth(*change.withoutStrongest));
    if (change.stage) words << stageWords(*change.stage);
    for (const LevelStep& step : change.levels)
        words << levelWords(step, units);
    if (change.speed) words << speedWords(*change.speed);
    if (standing && standing->weightDban && change.weightDban) words << standingWords(*standing);
    words.removeAll(QString());
    return words;
}

}  // namespace fettle
