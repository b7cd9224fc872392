// Why: on paper nothing can be pointed at: events stand in the trend as numbers, and its caption tells them.
// What happened on one day is one number. Thread: any.
#pragma once

#include <QString>
#include <vector>

#include "core/fleet/sheet_content.h"

namespace fettle {

struct PaperEvent {
    double ms = 0;
    QString words;  // "part replaced, repair"
};
std::vector<PaperEvent> paperEvents(const SheetTrend& trend);  // the earliest first
// "1 greasing, 20 January 2026; 2 repair, 3 April 2026"; empty: there are none.
QString eventsCaption(const SheetTrend& trend);

}  // namespace fettle
