// Why: clipped and overlapping text, controls without a name and controls the keyboard does not reach are
// found by walking the widgets that are shown, on every page and in every dialog, instead of by luck. Each
// trouble is one sentence with the widget's path of object names. Thread: the window's.
#pragma once

#include <QStringList>
#include <QWidget>

namespace fettle::desk_test {

QStringList clippedTexts(QWidget& root);
QStringList overlaps(QWidget& root);             // of widgets of one layout
QStringList namelessControls(QWidget& root);     // what takes the focus and has no accessible name
QStringList unreachableControls(QWidget& root);  // what is worked by mouse only

}  // namespace fettle::desk_test
