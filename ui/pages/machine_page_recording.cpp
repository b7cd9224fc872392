#include <QAction>
#include <QComboBox>
#include <QSignalBlocker>
#include <algorithm>
#include <utility>

#include "ui/model/shortcuts.h"
#include "ui/model/words.h"
#include "ui/pages/machine_page.h"
#include "ui/pages/recording_bench.h"

namespace fettle {

namespace {

constexpr double kLeastShownHz = 200, kRoomAbove = 1.2;  // of the envelope: up to the highest line and a bit
constexpr double kSpeedShare = 0.002;                    // how unsure a speed is of which nothing is said
constexpr double kToleranceLines = 2;  // a cursor is on a line within so many spectrum lines

// "x, envelope 3000-3920 Hz, whitened" belongs to channel x.
bool viewIsOf(const std::string& view, const std::string& channel) {
    return view.starts_with(channel + ", ");
}

}  // namespace

void MachinePage::askPlots() {
    const auto recording = shownRecording();
    const ChannelEntry* entry = channel();
    if (!recording || !entry) return;
    const Hypothesis* h = chosen();
    std::string view;
    if (h && h->weightDban && viewIsOf(h->best.view, entry->name)) view = h->best.view;
    work_.ask<RecordingPlots>(
        this, QStringLiteral("plots"),
        [id = *recording, name = entry->name, view](FleetFile& fleet, const CancelToken&) {
            return recordingPlots(fleet, id, name, view);
        },
        [this, tag = selection_.machine()](Result<RecordingPlots> plots) {
            if (tag != selection_.machine()) return;
            if (plots) return showPlots(*plots);
            plots_ = {};
            sayBelow(plots.error().kind == ErrorKind::NotFound
                         ? tr("The samples of this recording are no longer kept, or never came.\n"
                              "Waterfall and trend still show it; choose another recording or channel for "
                              "its full spectra.")
                         : sentence(plots.error()));
        });
}

void MachinePage::showPlots(const RecordingPlots& plots) {
    plots_ = plots;
    const QVariant before = spectrumBox_->currentData();
    {
        const QSignalBlocker quiet(spectrumBox_);
        spectrumBox_->clear();
        if (plots_.velocity) spectrumBox_->addItem(tr("velocity"), QStringLiteral("velocity"));
        if (plots_.displacement) spectrumBox_->addItem(tr("displacement"), QStringLiteral("displacement"));
        if (plots_.plain) spectrumBox_->addItem(shown(plots_.quantity), QStringLiteral("plain"));
        spectrumBox_->setCurrentIndex(std::max(0, spectrumBox_->findData(before)));
        spectrumBox_->setVisible(spectrumBox_->count() > 0);
    }
    showSpectrum();
    envelope_->setData(plots_.envelope);
    envelope_->setWords(
        plots_.envelope
            ? QString()
            : tr("No envelope of %1: it needs a channel of acceleration.").arg(selection_.channel()));
    envelope_->setToolTip(shown(plots_.view));
    waveform_->setData(plots_.waveform);
    waveform_->setWords({});
    if (plots_.envelope) panel_->setToleranceHz(kToleranceLines * plots_.envelope->dfHz);
    showMarks();
    showOnBench();
}

void MachinePage::showSpectrum() {
    const QString kind = spectrumBox_->currentData().toString();
    const auto& lines = kind == QStringLiteral("velocity")       ? plots_.velocity
                        : kind == QStringLiteral("displacement") ? plots_.displacement
                                                                 : plots_.plain;
    bench_->setQuantity(kind);
    spectrum_->setData(lines);
    spectrum_->setWords(lines ? QString() : tr("No spectrum of %1.").arg(selection_.channel()));
}

void MachinePage::connectRecording() {
    const auto key = [this](const char* id, auto done) {
        QAction* action = actionFor(id, this);
        connect(action, &QAction::triggered, this, done);
        addAction(action);
    };
    key("machine.twins", [this] { bench_->compareNext(1); });
    key("machine.twinsBack", [this] { bench_->compareNext(-1); });
    key("machine.twinsBelow", [this] { bench_->showBelow(); });
    key("machine.reference", [this] { bench_->keepReference(); });
    connect(bench_, &RecordingBench::goTo, this,
            [this](const QString& tag, const QString& place, std::int64_t recording, Instant time) {
                selection_.setMachine(tag);
                selection_.setRecording(recording, time);
                selection_.setChannel(place);
            });
}

void MachinePage::showTwins() {
    twinsWanted_ = !plots_.waveform;
    if (!twinsWanted_) bench_->showBelow();
}

void MachinePage::showOnBench() {
    const ChannelEntry* entry = channel();
    if (!entry || !facts_ || !facts_->machine) return;
    BenchView view{facts_->entry.tag, facts_->machine, *entry, {}, kSpeedShare, plots_, facts_->zone};
    const auto& content = panel_->content();
    for (std::size_t i = 0; content && i < content->recordings.size() && i < content->times.size(); ++i) {
        if (content->recordings[i] != plots_.recording) continue;
        view.time = content->times[i];
        if (i >= content->examination.recordings.size()) continue;
        const SpeedResult& speed = content->examination.recordings[i].speed;
        if (speed.rpm && *speed.rpm > 0) view.speedShare = speed.plusMinusRpm / *speed.rpm;
    }
    bench_->show(std::move(view));
    bench_->setChosen(chosen());
    if (std::exchange(twinsWanted_, false)) bench_->showBelow();
}

// Lines are marked where they were weighed; in the plain spectrum stand the ordinary ones, and where the
// chosen fault's carriers would be.
void MachinePage::showMarks() {
    const Hypothesis* h = chosen();
    std::vector<LineMark> ordinary = ordinaryMarks(plots_.shaftHz, plots_.mainsHz);
    std::vector<LineMark> weighed;
    if (h && !plots_.view.empty() && viewIsOf(h->best.view, plots_.channel)) weighed = marksOf(*h);
    for (const LineMark& mark : weighed)
        if (mark.importance < 100) {
            LineMark carrier = mark;
            carrier.kind = MarkKind::Ordinary;
            ordinary.push_back(carrier);
        }
    showWhereLinesStand(weighed);
    spectrum_->setMarks(std::move(ordinary));
    envelope_->setMarks(std::move(weighed));
}

// On another fault or channel; what the user zoomed to since stays.
void MachinePage::showWhereLinesStand(const std::vector<LineMark>& marks) {
    const QString about = tabChosenFor_ + QChar(' ') + selection_.channel();
    if (about == zoomedFor_ || marks.empty()) return;
    zoomedFor_ = about;
    double highest = 0;
    for (const LineMark& mark : marks)
        highest = std::max(highest, mark.at);
    envelope_->showHz(0, std::max(kLeastShownHz, kRoomAbove * highest));
}

}  // namespace fettle
