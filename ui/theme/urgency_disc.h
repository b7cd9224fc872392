// Why: urgency is a disc that fills, in one ink, so that it reads in black and white and for every eye: empty
// ring leave, quarter watch, half plan, full act, dashed ring unseen. The word always stands beside it.
// Paints into any painter at any size (screen, PDF); nothing is kept.
#pragma once

#include <QColor>
#include <QIcon>
#include <QRectF>
#include <QString>
#include <string>

class QPainter;

namespace fettle {

enum class Urgency { Leave, Watch, Plan, Act, Unseen };

// Of the engine's word ("watch"); another word: unseen.
Urgency urgencyOf(const std::string& word);
QString urgencyWord(Urgency urgency);

// The largest disc that fits, in the middle of `in`.
void paintUrgencyDisc(QPainter& painter, const QRectF& in, Urgency urgency, const QColor& ink);
// The same as an icon of `size` logical pixels, sharp up to three device pixels each.
QIcon urgencyIcon(Urgency urgency, const QColor& ink, int size);

}  // namespace fettle
