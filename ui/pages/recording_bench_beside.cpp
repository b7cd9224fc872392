#include <algorithm>
#include <utility>

#include "ui/model/site_time.h"
#include "ui/model/words.h"
#include "ui/pages/compare_strip.h"
#include "ui/pages/recording_bench.h"
#include "ui/pages/side_spectra.h"
#include "ui/plot/spectrum_plot.h"

namespace fettle {

SpectrumPtr RecordingBench::ofQuantity(const RecordingPlots& plots, const QString& quantity) {
    if (quantity == QStringLiteral("displacement")) return plots.displacement;
    return quantity == QStringLiteral("plain") ? plots.plain : plots.velocity;
}

bool RecordingBench::envelopeSeen() const {
    return to_.envelope.isVisible() && !to_.spectrum.isVisible();
}

std::optional<KeptReference> RecordingBench::reference() const {
    if (!view_) return std::nullopt;
    return references_.of(shown(view_->tag), shown(view_->channel.point));
}

QString RecordingBench::nameOf(const KeptReference& reference) const {
    return tr("%1, %2").arg(channelWords(view_->channel), momentText(reference.time, view_->zone));
}

void RecordingBench::keepReference() {
    if (!view_ || view_->time == Instant{}) return;
    const KeptReference kept{view_->plots.recording, view_->time};
    references_.keep(shown(view_->tag), shown(view_->channel.point), kept);
    showReference_ = true;
    askReference();
    for (SpectrumPlot* plot : {&to_.spectrum, &to_.envelope})
        plot->say(
            tr("Kept as reference: %1. It is laid over the other recordings of this point, next time too.")
                .arg(nameOf(kept)));
}

void RecordingBench::removeReference() {
    if (!view_) return;
    references_.remove(shown(view_->tag), shown(view_->channel.point));
    askReference();
    for (SpectrumPlot* plot : {&to_.spectrum, &to_.envelope})
        plot->say(tr("No reference is kept for this point any more."));
}

// The reference is of the channel shown now; over itself it says nothing.
void RecordingBench::askReference() {
    if (!view_) return;
    const auto kept = reference();
    if (!showReference_ || !kept || kept->recording == view_->plots.recording) return clearOverlay();
    overlay(kept->recording, view_->channel.name, tr("reference: %1").arg(nameOf(*kept)), kept->time);
}

void RecordingBench::overlay(std::int64_t recording, const std::string& channel, const QString& name,
                             std::optional<Instant> time) {
    work_.ask<RecordingPlots>(
        this, QStringLiteral("overlay"),
        [recording, channel, time, view = view_->plots.view, whole = view_->plots.wholeBand](
            FleetFile& fleet, const CancelToken&) {
            return plotsLike(fleet, recording, channel, whole ? std::string() : view, time);
        },
        [this, name, turn = ++overlays_](Result<RecordingPlots> plots) {
            if (turn != overlays_) return;  // cleared meanwhile
            if (plots) return takeOverlay(*plots, name);
            clearOverlay();
            to_.spectrum.say(sentence(plots.error()));
        });
}

void RecordingBench::takeOverlay(const RecordingPlots& plots, const QString& name) {
    over_ = plots;
    overName_ = name;
    const auto reference = [&](std::shared_ptr<const SpectrumData> data) {
        return data ? std::make_shared<SpectrumReference>(SpectrumReference{name, std::move(data)}) : nullptr;
    };
    to_.spectrum.setReference(reference(ofQuantity(plots, quantity_)));
    to_.envelope.setReference(reference(plots.envelope));
}

void RecordingBench::clearOverlay() {
    ++overlays_;
    over_ = {};
    overName_.clear();
    to_.spectrum.setReference(nullptr);
    to_.envelope.setReference(nullptr);
}

void RecordingBench::askOrbit() {
    if (!view_) return;
    const OrbitRequest request{view_->plots.recording, view_->channel.point, view_->plots.shaftHz,
                               to_.orbit.wanted()};
    work_.ask<OrbitAnswer>(
        this, QStringLiteral("orbit"),
        [request, machine = view_->machine](FleetFile& fleet, const CancelToken&) {
            return orbitOf(fleet, *machine, request);
        },
        [this](Result<OrbitAnswer> answer) {
            if (!view_) return;
            to_.orbit.setData(answer ? answer->data : nullptr);
            to_.orbit.setWords(answer ? answer->words : sentence(answer.error()));
        });
}

void RecordingBench::compareNext(int steps) {
    if (!view_) return;
    if (!comparing_) {
        comparing_ = true;
        to_.compare.show();
        return askSides();
    }
    const int count = int(to_.compare.rows().size());
    if (count < 2) return;
    int row = to_.compare.chosen();
    do
        row = ((row < 0 ? (steps > 0 ? -1 : 0) : row) + steps + count) % count;
    while (to_.compare.rows()[std::size_t(row)].beside == Beside::Here);
    to_.compare.setChosen(row);
}

void RecordingBench::closeComparison() {
    comparing_ = false;
    belowWanted_ = false;
    to_.compare.hide();
    to_.compare.setRows({}, {});
    clearOverlay();
    askReference();
}

// A line at the cursor is asked for in the kind of spectrum that is seen.
void RecordingBench::askSides() {
    SideQuestion question{view_->tag, view_->channel.id, view_->time, {}};
    if (selection_.cursorHz() && view_->plots.shaftHz > 0)
        question.order = *selection_.cursorHz() / view_->plots.shaftHz;
    question.kind = envelopeSeen()                         ? WaterfallKind::Envelope
                    : quantity_ == QStringLiteral("plain") ? WaterfallKind::Acceleration
                                                           : WaterfallKind::Velocity;
    to_.compare.setWords(tr("Reading the other places …"));
    using Rows = std::vector<SideRow>;
    work_.ask<Rows>(
        this, QStringLiteral("sides"),
        [question](FleetFile& fleet, const CancelToken& cancel) {
            return sideBySide(fleet, question, cancel);
        },
        [this, kind = question.kind](Result<Rows> rows) {
            if (!comparing_) return;
            const bool below = std::exchange(belowWanted_, false);
            if (!rows) return to_.compare.setWords(sentence(rows.error()));
            to_.compare.setRows(std::move(*rows), kind == WaterfallKind::Envelope ? tr("times the floor")
                                                  : kind == WaterfallKind::Velocity
                                                      ? QStringLiteral("mm/s r.m.s.")
                                                      : QStringLiteral("g r.m.s."));
            if (to_.compare.rows().size() < 2)
                return to_.compare.setWords(
                    tr("No other place of this machine and no twin of it was recorded "
                       "within three days of this moment."));
            compareNext(1);
            if (below) showBelow();
        });
}

void RecordingBench::showBelow() {
    if (!view_) return;
    if (to_.compare.rows().size() < 2) {
        belowWanted_ = true;
        return comparing_ ? askSides() : compareNext(1);
    }
    if (!below_) {
        below_ = new SideSpectra(work_, selection_, theme_, to_.compare.window());
        below_->setAttribute(Qt::WA_DeleteOnClose);
    }
    SideSpectraRequest request;
    request.tag = shown(view_->tag);
    request.rows = to_.compare.rows();
    request.zone = view_->zone;
    if (!view_->plots.wholeBand) request.view = view_->plots.view;
    const ZoomSpan& seen = (envelopeSeen() ? to_.envelope : to_.spectrum).acrossHz();
    request.fromHz = seen.from;
    request.untilHz = seen.until;
    request.pick = [quantity = quantity_, envelope = envelopeSeen()](const RecordingPlots& plots) {
        return envelope ? plots.envelope : ofQuantity(plots, quantity);
    };
    below_->showPlaces(std::move(request));
}

void RecordingBench::overlaySide(int row) {
    const auto& rows = to_.compare.rows();
    if (row < 0 || row >= int(rows.size()) || !view_) return;
    const SideRow& place = rows[std::size_t(row)];
    if (place.beside == Beside::Here) return clearOverlay();
    overlay(place.recording, place.channel.name,
            tr("%1, %2").arg(CompareStrip::nameOf(place, shown(view_->tag)),
                             momentText(place.time, view_->zone)));
}

}  // namespace fettle
