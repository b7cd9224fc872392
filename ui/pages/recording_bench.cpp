#include "ui/pages/recording_bench.h"

#include <QAction>
#include <QActionGroup>
#include <QCompleter>
#include <QLineEdit>
#include <QMenu>
#include <QToolButton>
#include <QWidgetAction>
#include <algorithm>

#include "core/workshop/bearing_finder.h"
#include "ui/model/site_time.h"
#include "ui/model/words.h"
#include "ui/pages/compare_strip.h"
#include "ui/pages/side_spectra.h"
#include "ui/plot/spectrum_plot.h"
#include "ui/plot/waveform_plot.h"

namespace fettle {

QStringList RecordingBench::knownDesignations(const Machine* machine) {
    QStringList all;
    for (const BearingPlace& place : machine ? machine->bearings : std::vector<BearingPlace>{})
        if (!place.bearing.designation.empty()) all << shown(place.bearing.designation);
    if (const auto known = knownBearings())
        for (const KnownBearing& bearing : *known)
            if (bearing.build) all << shown(bearing.designation);
    all.removeDuplicates();
    return all;
}

RecordingBench::RecordingBench(FleetWork& work, Selection& selection, const Theme& theme, BenchPlots plots,
                               QObject* parent)
    : QObject(parent), work_(work), selection_(selection), theme_(theme), to_(plots) {
    for (SpectrumPlot* plot : {&to_.spectrum, &to_.envelope})
        connect(plot->overlayButton().menu(), &QMenu::aboutToShow, this, [this, plot] { fillMenu(*plot); });
    connect(&to_.orbit, &OrbitPlot::wantedChanged, this, &RecordingBench::askOrbit);
    connect(&to_.compare, &CompareStrip::chosenChanged, this, &RecordingBench::overlaySide);
    connect(&to_.compare, &CompareStrip::belowWanted, this, &RecordingBench::showBelow);
    connect(&to_.compare, &CompareStrip::closed, this, &RecordingBench::closeComparison);
    connect(&to_.compare, &CompareStrip::goTo, this, [this](int row) {
        const SideRow place = to_.compare.rows()[std::size_t(row)];
        emit goTo(shown(place.tag), channelWords(place.channel), place.recording, place.time);
    });
    const auto units = [this] {
        to_.waveform.setUnits(selection_.units());
        to_.orbit.setUnits(selection_.units());
        to_.compare.setUnits(selection_.units());
    };
    connect(&selection_, &Selection::unitsChanged, this, units);
    units();
}

QString RecordingBench::channelWords(const ChannelEntry& channel) const {
    return shown(channel.point + " " + channel.name);
}

void RecordingBench::clear() {
    view_.reset();
    bands_.reset();
    variant_.reset();
    closeComparison();
    if (below_) below_->close();
    showBands();
    showRanges();
    to_.waveform.setImpact({});
    to_.orbit.setData(nullptr);
}

void RecordingBench::show(BenchView view) {
    const bool otherChannel = !view_ || view_->channel.id != view.channel.id;
    view_ = std::move(view);
    for (SpectrumPlot* plot : {&to_.spectrum, &to_.envelope})
        plot->setSpacings(spacingsOf(*view_->machine, view_->plots.shaftHz, view_->plots.mainsHz));
    to_.compare.setZone(view_->zone);
    showSubject();
    showRanges();
    if (otherChannel) bands_.reset();
    askBands();
    if (comparing_)
        askSides();
    else
        askReference();
    askOrbit();
}

void RecordingBench::showSubject() {
    QString subject = tr("%1 %2").arg(shown(view_->tag), channelWords(view_->channel));
    if (view_->time != Instant{}) subject = tr("%1, %2").arg(subject, momentText(view_->time, view_->zone));
    for (PlotFrame* plot :
         std::initializer_list<PlotFrame*>{&to_.spectrum, &to_.envelope, &to_.waveform, &to_.orbit})
        plot->setSubject(subject);
}

void RecordingBench::setQuantity(const QString& key) {
    quantity_ = key;
    showBands();
    if (!overName_.isEmpty()) takeOverlay(over_, overName_);
}

// The impacts of a bearing's fault: the first of its lines that is a carrier.
void RecordingBench::setChosen(const Hypothesis* hypothesis) {
    WaveformPeriod impact;
    if (hypothesis && hypothesis->weightDban)
        for (const LineRow& row : hypothesis->best.rows)
            if (row.carrier && row.harmonic == 1 && row.expectedHz > 0) {
                const double hz = row.foundHz > 0 ? row.foundHz : row.expectedHz;
                impact = {tr("%1 of %2").arg(shown(row.name), shown(hypothesis->at)), 1 / hz};
                break;
            }
    to_.waveform.setImpact(impact);
}

void RecordingBench::fillMenu(SpectrumPlot& plot) {
    QMenu& menu = *plot.overlayButton().menu();
    menu.clear();
    qDeleteAll(menu.findChildren<QMenu*>(Qt::FindDirectChildrenOnly));  // not the menu's own to clear
    const auto add = [&](const char* name, const QString& text, auto done) {
        QAction* action = menu.addAction(text);
        action->setObjectName(QString::fromLatin1(name));
        connect(action, &QAction::triggered, this, done);
        return action;
    };
    QAction* keep =
        add("keepReference", tr("Keep this recording as reference (K)"), [this] { keepReference(); });
    keep->setEnabled(view_.has_value());
    const auto kept = reference();
    QAction* laid =
        add("showReference", kept ? tr("Reference: %1").arg(nameOf(*kept)) : tr("Reference: none kept"),
            [this](bool on) {
                showReference_ = on;
                askReference();
            });
    laid->setCheckable(true);
    laid->setChecked(kept && showReference_);
    laid->setEnabled(kept.has_value());
    add("removeReference", tr("Keep no reference"), [this] {
        removeReference();
    })->setEnabled(kept.has_value());
    QAction* band = add("showBand", tr("Band of the sound machine"), [this](bool on) {
        showBand_ = on;
        askBands();
        showBands();
    });
    band->setCheckable(true);
    band->setChecked(showBand_);
    menu.addSeparator();
    fillBearings(menu);
}

void RecordingBench::fillBearings(QMenu& menu) {
    QMenu* of = menu.addMenu(tr("Lines of a bearing"));
    of->setObjectName(QStringLiteral("bearingLines"));
    QAction* none = of->addAction(tr("none"));
    none->setObjectName(QStringLiteral("bearingNone"));
    connect(none, &QAction::triggered, this, [this] { showBearing({}); });
    for (std::size_t i = 0; view_ && i < view_->machine->bearings.size(); ++i) {
        const BearingPlace& place = view_->machine->bearings[i];
        QAction* action = of->addAction(tr("%1: %2").arg(shown(place.at), shown(place.bearing.designation)));
        action->setObjectName(QStringLiteral("bearing%1").arg(i));
        action->setEnabled(!place.bearing.variants.empty());
        connect(action, &QAction::triggered, this, [this, at = shown(place.at)] { showBearing(at); });
    }
    of->addSeparator();
    auto* typed = new QWidgetAction(of);
    auto* box = new QLineEdit(of);
    box->setObjectName(QStringLiteral("bearingDesignation"));
    box->setAccessibleName(tr("Designation of a bearing"));
    box->setToolTip(
        tr("Designation of any bearing of the table, on the driver's shaft; Return shows its lines"));
    box->setPlaceholderText(tr("designation, Return"));
    auto* known = new QCompleter(knownDesignations(view_ ? view_->machine.get() : nullptr), box);
    known->setObjectName(QStringLiteral("bearingCompleter"));
    known->setCaseSensitivity(Qt::CaseInsensitive);
    known->setFilterMode(Qt::MatchContains);
    box->setCompleter(known);
    typed->setDefaultWidget(box);
    of->addAction(typed);
    connect(box, &QLineEdit::returnPressed, of, [this, box] {
        if (showDesignation(box->text())) return;
        for (SpectrumPlot* plot : {&to_.spectrum, &to_.envelope})
            plot->say(tr("%1 is not in the table of bearings with its inner build; the machine's own are in "
                         "the register.")
                          .arg(box->text()));
    });
}

void RecordingBench::showBearing(const QString& at) {
    variant_.reset();
    for (const BearingPlace& place : view_ ? view_->machine->bearings : std::vector<BearingPlace>{})
        if (shown(place.at) == at && !place.bearing.variants.empty())
            showVariant(place.bearing.variants.front(), view_->machine->shafts[place.shaft].ratio,
                        tr("%1: %2").arg(at, shown(place.bearing.designation)));
    showRanges();
}

bool RecordingBench::showDesignation(const QString& designation) {
    variant_.reset();
    const auto variants = typicalVariants(kept(designation), TurningRing::Inner);
    if (variants && !variants->empty()) showVariant(variants->front(), 1, designation.trimmed());
    showRanges();
    return variant_.has_value();
}

void RecordingBench::showVariant(const BearingVariant& variant, double ratio, const QString& name) {
    variant_ = variant;
    ratio_ = ratio;
    variantName_ =
        variant.confirmed
            ? tr("%1: likely and farthest range of its lines").arg(name)
            : tr("%1 (%2, typical): likely and farthest range of its lines").arg(name, shown(variant.name));
}

void RecordingBench::showRanges() {
    for (SpectrumPlot* plot : {&to_.spectrum, &to_.envelope}) {
        std::vector<DefectBand> ranges;
        const auto& data = plot->data();
        if (variant_ && view_ && view_->plots.shaftHz > 0 && data)
            ranges = defectRanges(*variant_, view_->plots.shaftHz * ratio_, view_->speedShare,
                                  data->dfHz * double(data->values.size()));
        plot->setRanges(std::move(ranges), variantName_);
    }
}

void RecordingBench::askBands() {
    if (!showBand_ || !view_) return showBands();
    if (bands_) return showBands();
    work_.ask<SoundBands>(
        this, QStringLiteral("bands"),
        [tag = view_->tag, machine = view_->machine, channel = view_->channel,
         shaftHz = view_->plots.shaftHz](FleetFile& fleet, const CancelToken&) {
            return soundBands(fleet, tag, *machine, channel, shaftHz);
        },
        [this](Result<SoundBands> bands) {
            if (!bands) return to_.spectrum.say(sentence(bands.error()));
            bands_ = std::move(*bands);
            showBands();
            if (!bands_->velocity && !bands_->acceleration)
                for (SpectrumPlot* plot : {&to_.spectrum, &to_.envelope})
                    plot->say(tr("No band of the sound machine: %1.").arg(bands_->why));
        });
}

void RecordingBench::showBands() {
    const bool shown = showBand_ && bands_ && view_;
    std::shared_ptr<const SpectrumBandData> band, envelope;
    if (shown) {
        band = quantity_ == QStringLiteral("velocity")       ? bands_->velocity
               : quantity_ == QStringLiteral("displacement") ? bands_->displacement
                                                             : bands_->acceleration;
        if (view_->plots.wholeBand) envelope = bands_->envelope;
    }
    to_.spectrum.setBand(band);
    to_.envelope.setBand(envelope);
}

}  // namespace fettle
