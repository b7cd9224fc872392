#include "ui/pages/side_spectra.h"

#include <QDialogButtonBox>
#include <QLabel>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/model/site_time.h"
#include "ui/model/words.h"
#include "ui/pages/compare_strip.h"
#include "ui/pages/page_parts.h"
#include "ui/pages/recording_requests.h"

namespace fettle {

namespace {

struct LanesRead {
    std::vector<Lane> lanes;
    std::size_t without = 0;  // places whose waveform is no longer kept, or without such a spectrum
};

// The place looked at first, then as compared.
std::vector<SideRow> chosenRows(std::vector<SideRow> rows) {
    std::stable_partition(rows.begin(), rows.end(),
                          [](const SideRow& row) { return row.beside == Beside::Here; });
    if (rows.size() > SideSpectra::kMost) rows.resize(SideSpectra::kMost);
    return rows;
}

Result<LanesRead> lanesOf(FleetFile& fleet, const SideSpectraRequest& request, const CancelToken& cancel) {
    LanesRead read;
    for (const SideRow& row : request.rows) {
        if (cancel.cancelled()) return fail(ErrorKind::Cancelled, "", "", "stopped on request");
        const auto plots = plotsLike(fleet, row.recording, row.channel.name, request.view);
        if (!plots && plots.error().kind != ErrorKind::NotFound) return fail(plots.error());
        const SpectrumPtr data = plots ? request.pick(*plots) : nullptr;
        const bool fits = data && (read.lanes.empty() || data->unit == read.lanes.front().data->unit);
        if (!fits) {
            ++read.without;
            continue;
        }
        const QString name = QStringLiteral("%1, %2").arg(CompareStrip::nameOf(row, request.tag),
                                                          momentText(row.time, request.zone));
        read.lanes.push_back({name, data});
    }
    return read;
}

}  // namespace

SideSpectra::SideSpectra(FleetWork& work, Selection& selection, const Theme& theme, QWidget* parent)
    : QDialog(parent), work_(work), plot_(new LanesPlot(theme, selection, this)), words_(new QLabel(this)) {
    setObjectName(QStringLiteral("sideSpectra"));
    setWindowTitle(tr("Twins and train below each other"));
    words_->setObjectName(QStringLiteral("sideSpectraWords"));
    words_->setWordWrap(true);
    setInk(*words_, theme, Role::MutedInk);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* column = new QVBoxLayout(this);
    column->addWidget(plot_, 1);
    column->addWidget(words_);
    column->addWidget(buttons);
    resize(70 * fontMetrics().height(), 44 * fontMetrics().height());
}

void SideSpectra::showPlaces(SideSpectraRequest request) {
    request.rows = chosenRows(std::move(request.rows));
    plot_->setWords(tr("Reading the spectra of %1 places …").arg(request.rows.size()));
    plot_->setSubject(request.tag);
    words_->clear();
    work_.ask<LanesRead>(
        this, QStringLiteral("lanes"),
        [request](FleetFile& fleet, const CancelToken& cancel) { return lanesOf(fleet, request, cancel); },
        [this, request](Result<LanesRead> read) {
            if (!read) return plot_->setWords(sentence(read.error()));
            take(std::move(read->lanes), read->without, request);
        });
    show();
    raise();
}

void SideSpectra::take(std::vector<Lane> lanes, std::size_t without, const SideSpectraRequest& request) {
    const bool alone = lanes.size() < 2;
    plot_->setLanes(std::move(lanes));
    if (request.untilHz > request.fromHz) plot_->showHz(request.fromHz, request.untilHz);
    plot_->setWords(alone
                        ? tr("Fewer than two of the places have a waveform kept from which this spectrum can "
                             "be drawn.")
                        : QString());
    QStringList words{
        tr("The place looked at is on top; all lanes share one scale unless each has its own.")};
    if (without > 0)
        words << tr("Left out, without such a spectrum or with a waveform no longer kept: %1.").arg(without);
    words_->setText(words.join(u' '));
}

}  // namespace fettle
