// Why: a picture of maxima over hours must not pass for one of single spectra: one way of saying so in every
// plot of spectra over time. Empty where every spectrum is there. Times UTC.
#pragma once

#include <QString>

#include "ui/plot/waterfall_data.h"

namespace fettle {

QString completeness(const WaterfallData& spectra);

}  // namespace fettle
