#include "ui/sheet/sheet_data.h"

#include "core/fleet/machine_desk.h"

namespace fettle {

SheetData withDetail(FleetFile& fleet, SheetContent content) {
    SheetData data{std::move(content), std::nullopt, {}};
    SheetSpectrum& spectrum = data.content.spectrum;
    if (spectrum.recording == 0) return data;
    const bool plain = spectrum.view == "velocity" || spectrum.view == "own";
    const std::string view = plain ? "" : spectrum.view;
    auto detail = detailOf(fleet, spectrum.recording, spectrum.channel, view);
    if (detail)
        data.detail = std::move(*detail);
    else
        spectrum.caption += "; it cannot be shown: " + detail.error().sentence();
    return data;
}

Result<SheetData> readSheet(FleetFile& fleet, const SheetRequest& request) {
    auto content = sheetContent(fleet, request);
    if (!content) return fail(content.error());
    return withDetail(fleet, std::move(*content));
}

}  // namespace fettle
