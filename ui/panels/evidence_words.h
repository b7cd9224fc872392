// Why: the panel's sentences, apart from its widgets: the verdict, the facts beside it, since when, what
// speaks against, rivals with the lines that decide, lines left out, blind spots with their cures.
// Frequencies and levels in the units people read in. Thread: the window's.
#pragma once

#include <QStringList>

#include "core/fleet/rival_lines.h"
#include "ui/model/units.h"
#include "ui/panels/panel_content.h"

namespace fettle {

QString verdictWords(const Hypothesis& h);
QString factWords(const Hypothesis& h, const PanelContent& content, const Units& units);
// "first at 20 decibans on 3 May 2026, in 31 recordings since"; empty: never.
QString sinceWords(const Hypothesis& h, const PanelContent& content);
QStringList rivalWords(const Examination& examination, const Hypothesis& h);
QStringList leftOutWords(const Hypothesis& h);
// How the table is read: what its lines, the search and the mean come to, and that they make the weight.
QString sumWords(const Hypothesis& h);
// Those that hide this fault first.
QStringList blindWords(const Examination& examination, const Hypothesis& h);
QStringList noteWords(const Examination& examination);  // about the recordings
// "A weight of 30 decibans: chance lines reach it in at most 1 recording of 1,000."
QString scaleWords();
// "6.20 mm/s" in the units people read in.
QString levelText(double stored, const std::string& unit, const Units& units);

}  // namespace fettle
