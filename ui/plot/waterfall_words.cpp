#include "ui/plot/waterfall_words.h"

#include "ui/model/words.h"
#include "ui/plot/time_axis.h"
#include "ui/theme/tr.h"

namespace fettle {

QString completeness(const WaterfallData& spectra) {
    const WaterfallOptions& options = spectra.options();
    if (options.coarseHours > 0)
        return tr("coarse: the largest of every %1 hours so far").arg(options.coarseHours);
    if (options.thinnedUntilMs > 0)
        return tr("until %1 the largest of every %2 hours: single spectra are no longer kept")
            .arg(dateText(toInstant(options.thinnedUntilMs)))
            .arg(options.thinnedHours);
    return {};
}

}  // namespace fettle
