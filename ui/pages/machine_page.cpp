#include "ui/pages/machine_page.h"

#include <QComboBox>
#include <QPushButton>
#include <QSignalBlocker>
#include <QTabWidget>
#include <algorithm>

#include "ui/model/site_time.h"
#include "ui/model/words.h"
#include "ui/pages/evidence_actions.h"
#include "ui/pages/machine_history.h"
#include "ui/pages/recording_bench.h"
#include "ui/panels/nameplate_line.h"
#include "ui/plot/orbit_plot.h"

namespace fettle {

namespace {

QString channelText(const ChannelEntry& channel) {
    return shown(channel.point + " " + channel.name);
}

QString channelLabel(const ChannelEntry& channel) {
    QString label = channelText(channel);
    if (!channel.direction.empty() && channel.direction != "unknown")
        label += QStringLiteral(", ") + shown(channel.direction);
    else if (!channel.quantity.empty() && channel.quantity != "acceleration")
        label += QStringLiteral(", ") + shown(channel.quantity);
    return label;
}

// The channel of the highest velocity.
std::size_t fastestChannel(const RecordingFacts& recording) {
    const auto slower = [](const ChannelLevels& a, const ChannelLevels& b) {
        return a.velocityRmsMmS.value_or(-1) < b.velocityRmsMmS.value_or(-1);
    };
    return std::size_t(std::max_element(recording.levels.begin(), recording.levels.end(), slower) -
                       recording.levels.begin());
}

}  // namespace

MachinePage::MachinePage(FleetWork& work, Selection& selection, const Theme& theme, QWidget* parent)
    : QWidget(parent), work_(work), selection_(selection), theme_(theme) {
    setObjectName(QStringLiteral("machinePage"));
    setAccessibleName(tr("Machine"));
    build();
    connectParts();
    arrange();
    machineChanged();
}

MachinePage::~MachinePage() = default;

void MachinePage::connectParts() {
    connect(&selection_, &Selection::machineChanged, this, &MachinePage::machineChanged);
    connect(&selection_, &Selection::recordingChanged, this, &MachinePage::recordingChanged);
    connect(&selection_, &Selection::faultChanged, this, &MachinePage::faultChanged);
    connect(&selection_, &Selection::channelChanged, this, &MachinePage::channelChanged);
    connect(&work_, &FleetWork::changedFleet, this, [this] {
        if (!selection_.machine().isEmpty()) askFacts();
    });
    connect(panel_, &EvidencePanel::weekWanted, this, [this] { selection_.setRecording({}, {}); });
    auto* actions = new EvidenceActions(work_, selection_, *panel_, this);
    connect(actions, &EvidenceActions::asksWanted, this, &MachinePage::asksWanted);
    connect(actions, &EvidenceActions::troubled, this, &MachinePage::troubled);
    connect(history_, &MachineHistory::baselineWanted, this,
            [this] { emit baselineWanted(selection_.machine()); });
    connect(nameplate_, &NameplateLine::bearingPicked, this, &MachinePage::pickBearing);
    connect(nameplate_, &NameplateLine::pointPicked, this, &MachinePage::pickPoint);
    connect(sheetButton_, &QPushButton::clicked, this, [this] { emit sheetWanted(selection_.machine()); });
    connect(noteButton_, &QPushButton::clicked, this, [this] { emit noteWanted(selection_.machine()); });
    connect(channelBox_, &QComboBox::activated, this,
            [this] { selection_.setChannel(channelBox_->currentData().toString()); });
    connect(spectrumBox_, &QComboBox::activated, this, &MachinePage::showSpectrum);
    connectRecording();
}

void MachinePage::sayEverywhere(const QString& words) {
    history_->say(words);
    sayBelow(words);
    panel_->setWords(words);
}

void MachinePage::sayBelow(const QString& words) {
    for (PlotFrame* plot : std::initializer_list<PlotFrame*>{spectrum_, envelope_, waveform_, orbit_})
        plot->setWords(words);
    spectrumBox_->setVisible(spectrumBox_->count() > 0);
}

void MachinePage::machineChanged() {
    facts_.reset();
    plots_ = {};
    bench_->clear();
    tabChosenFor_.clear();
    zoomedFor_.clear();
    channelBox_->clear();
    nameplate_->setMachine(nullptr);
    history_->clear({});
    const bool none = selection_.machine().isEmpty();
    sheetButton_->setDisabled(none);
    noteButton_->setDisabled(none);
    sayEverywhere(none ? tr("No machine is chosen. Open one from the round or the register.")
                       : tr("Reading %1 …").arg(selection_.machine()));
    if (!none) askFacts();
}

void MachinePage::askFacts() {
    const std::string tag = kept(selection_.machine());
    work_.ask<MachineFacts>(
        this, QStringLiteral("machine"),
        [tag](FleetFile& fleet, const CancelToken&) { return machineFacts(fleet, tag); },
        [this](Result<MachineFacts> facts) {
            if (facts)
                takeFacts(std::move(*facts));
            else
                sayEverywhere(sentence(facts.error()));
        });
}

void MachinePage::takeFacts(MachineFacts facts) {
    facts_ = std::move(facts);
    nameplate_->setMachine(facts_->machine);
    history_->setMachine(*facts_);
    {
        const QSignalBlocker quiet(channelBox_);
        channelBox_->clear();
        for (const ChannelEntry& entry : facts_->channels)
            channelBox_->addItem(channelLabel(entry), channelText(entry));
        channelBox_->setCurrentIndex(channelBox_->findData(selection_.channel()));
    }
    if (!facts_->newest)
        return sayEverywhere(tr("No recording of %1 yet. Import recordings to see its waterfall, trend and "
                                "evidence.")
                                 .arg(selection_.machine()));
    if (channel())
        history_->setChannel(*channel());
    else if (!facts_->channels.empty())
        selection_.setChannel(channelText(firstChannel()));
    askContent();
}

const ChannelEntry* MachinePage::channel() const {
    if (!facts_) return nullptr;
    const auto at =
        std::find_if(facts_->channels.begin(), facts_->channels.end(),
                     [&](const ChannelEntry& c) { return channelText(c) == selection_.channel(); });
    return at == facts_->channels.end() ? nullptr : &*at;
}

// The first that hears vibration, else the first at all.
const ChannelEntry& MachinePage::firstChannel() const {
    const auto& all = facts_->channels;
    const auto at = std::find_if(all.begin(), all.end(),
                                 [](const ChannelEntry& c) { return c.quantity == "acceleration"; });
    return at == all.end() ? all.front() : *at;
}

void MachinePage::channelChanged() {
    channelBox_->setCurrentIndex(channelBox_->findData(selection_.channel()));
    if (const ChannelEntry* entry = channel()) {
        nameplate_->setChosen(selection_.at(), shown(entry->point));
        if (entry->quantity != "acceleration" && tabs_->currentWidget() == envelope_)
            tabs_->setCurrentWidget(spectrum_);
        history_->setChannel(*entry);
        askPlots();
    }
}

void MachinePage::recordingChanged() {
    if (facts_) askContent();
}

void MachinePage::askContent() {
    if (!facts_ || !facts_->newest) return;
    const std::string tag = facts_->entry.tag;
    const auto recording = selection_.recording();
    const Instant until = selection_.time().value_or(*facts_->newest);
    using Answer = std::shared_ptr<const PanelContent>;
    work_.ask<Answer>(
        this, QStringLiteral("content"),
        [tag, recording, until](FleetFile& fleet, const CancelToken&) {
            return recording ? recordingContent(fleet, *recording, until) : weekContent(fleet, tag, until);
        },
        [this, tag, until](Result<Answer> content) {
            if (tag != kept(selection_.machine())) return;
            if (!content) {
                panel_->setWords(sentence(content.error()));
                return sayBelow(sentence(content.error()));
            }
            takeContent(std::move(*content), until);
        });
}

void MachinePage::takeContent(std::shared_ptr<const PanelContent> content, Instant until) {
    if (!content) {
        const QString words =
            tr("No running recording in the week to %1, so nothing was weighed. Choose "
               "another moment in the trend.")
                .arg(dateText(siteTime(until, facts_ ? facts_->zone : QTimeZone::utc()).date()));
        panel_->setWords(words);
        return sayBelow(words);
    }
    panel_->setContent(std::move(content));
    const QString faultBefore = selection_.fault(), atBefore = selection_.at();
    chooseFault();
    if (selection_.fault() == faultBefore && selection_.at() == atBefore) faultChanged();
}

// The Selection's fault where it is one of those considered; else the one of that name, or the heaviest.
void MachinePage::chooseFault() {
    if (chosen()) return;
    const std::vector<FaultEntry> entries = faultEntries(panel_->content()->examination);
    if (entries.empty()) return;
    const std::string wanted = kept(selection_.fault()), place = kept(selection_.at());
    auto at = std::find_if(entries.begin(), entries.end(),
                           [&](const FaultEntry& e) { return !wanted.empty() && e.fault == wanted; });
    if (at == entries.end() && !place.empty())
        at = std::find_if(entries.begin(), entries.end(), [&](const FaultEntry& e) { return e.at == place; });
    if (at == entries.end()) at = entries.begin();
    selection_.setFault(shown(at->fault), shown(at->at));
}

const Hypothesis* MachinePage::chosen() const {
    return panel_->chosen();
}

std::optional<std::int64_t> MachinePage::shownRecording() const {
    if (selection_.recording()) return selection_.recording();
    const auto& content = panel_->content();
    if (!content || content->recordings.empty()) return std::nullopt;
    const Hypothesis* h = chosen();
    return content->recordings[h ? std::min(h->recording, content->recordings.size() - 1) : 0];
}

void MachinePage::faultChanged() {
    if (!facts_ || !panel_->content()) return;
    askWeights();
    followFault();
    const ChannelEntry* entry = channel();
    nameplate_->setChosen(selection_.at(), entry ? shown(entry->point) : QString());
    showStrongest();
    chooseTab();
    askPlots();
}

// Without a chosen recording the strongest of the week is shown: where it stands in time.
void MachinePage::showStrongest() {
    const auto& content = panel_->content();
    const auto recording = shownRecording();
    std::optional<double> ms;
    if (content && recording && !selection_.recording())
        for (std::size_t i = 0; i < content->recordings.size() && i < content->times.size(); ++i)
            if (content->recordings[i] == *recording) ms = toMs(content->times[i]);
    history_->axis().setShown(ms);
}

// Bearings speak in the envelope, shafts in the spectrum. Left alone where the fault stays the same.
void MachinePage::chooseTab() {
    const Hypothesis* h = chosen();
    const QString about = selection_.fault() + QChar('@') + selection_.at();
    if (!h || about == tabChosenFor_) return;
    tabChosenFor_ = about;
    if (tabs_->currentWidget() == panel_) return;
    tabs_->setCurrentWidget(h->weightDban && !changeOf(*panel_->content(), *h) ? envelope_ : spectrum_);
}

// The channel on which the chosen fault speaks loudest is the one to look at: that of its lines, or the one
// with the highest velocity.
void MachinePage::followFault() {
    const Hypothesis* h = chosen();
    const ChangeFacts* change = h ? changeOf(*panel_->content(), *h) : nullptr;
    history_->follow(change);
    if (!h) return;
    if (change) {
        for (const ChannelEntry& entry : facts_->channels)
            if (entry.point == change->point && (entry.name == change->channel || change->channel.empty()))
                return selection_.setChannel(channelText(entry));
        return;
    }
    const auto& recordings = panel_->content()->examination.recordings;
    if (h->recording >= recordings.size()) return;
    const auto& channels = recordings[h->recording].channels;
    const std::size_t loudest = h->weightDban ? h->best.channel : fastestChannel(recordings[h->recording]);
    if (loudest >= channels.size()) return;
    const ChannelFacts& best = channels[loudest];
    for (const ChannelEntry& entry : facts_->channels)
        if (entry.name == best.name && entry.point == best.point) selection_.setChannel(channelText(entry));
}

void MachinePage::askWeights() {
    const Hypothesis* h = chosen();
    if (!h) return panel_->setWeights({});
    using Answer = std::vector<WeightAt>;
    work_.ask<Answer>(
        this, QStringLiteral("weights"),
        [tag = facts_->entry.tag, fault = h->fault, at = h->at, from = *facts_->first,
         until = *facts_->newest](FleetFile& fleet, const CancelToken&) {
            return weightHistory(fleet, tag, fault, at, from, until);
        },
        [this](Result<Answer> weights) {
            std::vector<WeightPoint> points;
            if (weights)
                for (const WeightAt& weight : *weights)
                    points.push_back({toMs(weight.time), weight.weightDban, weight.recording});
            panel_->setWeights(std::move(points));
        });
}

void MachinePage::pickBearing(const QString& at) {
    if (!panel_->content()) return;
    for (const FaultEntry& entry : faultEntries(panel_->content()->examination))
        if (entry.at == kept(at)) return selection_.setFault(shown(entry.fault), at);
}

void MachinePage::pickPoint(const QString& id) {
    if (!facts_) return;
    for (const ChannelEntry& entry : facts_->channels)
        if (shown(entry.point) == id) return selection_.setChannel(channelText(entry));
}

}  // namespace fettle
