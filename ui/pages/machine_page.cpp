#include "ui/pages/machine_page.h"

#include <QComboBox>
#include <QPushButton>
#include <QSignalBlocker>
#include <QTabWidget>
#include <algorithm>

#include "ui/model/site_time.h"
#include "ui/model/words.h"
#include "ui/pages/evidence_actions.h"
#include "ui/panels/nameplate_line.h"
#include "ui/plot/waterfall.h"

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
    connect(nameplate_, &NameplateLine::bearingPicked, this, &MachinePage::pickBearing);
    connect(nameplate_, &NameplateLine::pointPicked, this, &MachinePage::pickPoint);
    connect(sheetButton_, &QPushButton::clicked, this, [this] { emit sheetWanted(selection_.machine()); });
    connect(noteButton_, &QPushButton::clicked, this, [this] { emit noteWanted(selection_.machine()); });
    connect(channelBox_, &QComboBox::activated, this,
            [this] { selection_.setChannel(channelBox_->currentData().toString()); });
    connect(kindBox_, &QComboBox::activated, this, &MachinePage::askWaterfall);
    connect(axisBox_, &QComboBox::activated, this, &MachinePage::askWaterfall);
    connect(quantityBox_, &QComboBox::activated, this, &MachinePage::askTrend);
    connect(spectrumBox_, &QComboBox::activated, this, &MachinePage::showSpectrum);
}

void MachinePage::sayEverywhere(const QString& words) {
    waterfall_->setWords(words);
    trend_->setWords(words);
    sayBelow(words);
    panel_->setWords(words);
}

void MachinePage::sayBelow(const QString& words) {
    for (PlotFrame* plot : std::initializer_list<PlotFrame*>{spectrum_, envelope_, waveform_})
        plot->setWords(words);
}

void MachinePage::machineChanged() {
    facts_.reset();
    plots_ = {};
    tabChosenFor_.clear();
    zoomedFor_.clear();
    axis_->setShown({});
    channelBox_->clear();
    nameplate_->setMachine(nullptr);
    waterfall_->setData(nullptr);
    trend_->setData(nullptr);
    trend_->setEvents({});
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
    trend_->setEvents(facts_->events);
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
    axis_->setZone(facts_->zone);
    axis_->setBounds({*facts_->first, *facts_->newest});
    if (channel())
        askHistory();
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
        askHistory();
        askPlots();
    }
}

void MachinePage::askHistory() {
    fillKinds();
    askWaterfall();
    askTrend();
}

// What a channel of this quantity can have: a flux channel has no velocity.
void MachinePage::fillKinds() {
    const bool acceleration = channel() && channel()->quantity == "acceleration";
    const QVariant before = kindBox_->currentData();
    const QSignalBlocker quiet(kindBox_);
    kindBox_->clear();
    if (acceleration || (channel() && channel()->quantity == "velocity"))
        kindBox_->addItem(tr("velocity"), int(WaterfallKind::Velocity));
    if (acceleration) {
        kindBox_->addItem(tr("acceleration"), int(WaterfallKind::Acceleration));
        kindBox_->addItem(tr("envelope"), int(WaterfallKind::Envelope));
    }
    kindBox_->setCurrentIndex(std::max(0, kindBox_->findData(before)));
    kindBox_->setVisible(kindBox_->count() > 0);
    if (!acceleration && tabs_->currentWidget() == envelope_) tabs_->setCurrentWidget(spectrum_);
}

void MachinePage::askWaterfall() {
    if (!channel()) return;
    if (kindBox_->count() == 0) {
        waterfall_->setData(nullptr);
        return waterfall_->setWords(tr("%1 keeps no spectra for the waterfall: choose a channel of "
                                       "acceleration.")
                                        .arg(selection_.channel()));
    }
    const WaterfallRequest request{channel()->id, WaterfallKind(kindBox_->currentData().toInt()),
                                   axisBox_->currentIndex() == 1};
    using Answer = std::shared_ptr<const WaterfallData>;
    work_.ask<Answer>(
        this, QStringLiteral("waterfall"),
        [request](FleetFile& fleet, const CancelToken& cancel) {
            return waterfallOf(fleet, request, cancel);
        },
        [this](Result<Answer> spectra) {
            if (!spectra) return waterfall_->setWords(sentence(spectra.error()));
            waterfall_->setData(*spectra);
            waterfall_->setWords((*spectra)->rows() > 0
                                     ? QString()
                                     : tr("No spectra of this kind are kept for %1. Choose another kind or "
                                          "channel.")
                                           .arg(selection_.channel()));
        });
}

void MachinePage::askTrend() {
    const ChannelEntry* entry = channel();
    if (!entry) return;
    const auto quantity = Quantity(quantityBox_->currentData().toInt());
    work_.ask<TrendAnswer>(
        this, QStringLiteral("trend"),
        [asked = *entry, quantity, machine = facts_->machine, tag = facts_->entry.tag](
            FleetFile& fleet, const CancelToken&) { return trendOf(fleet, tag, machine, asked, quantity); },
        [this](Result<TrendAnswer> answer) {
            if (!answer) return trend_->setWords(sentence(answer.error()));
            trend_->setData(answer->data);
            showTrendWords(*answer);
            trend_->setWords(answer->data->samples.empty()
                                 ? tr("%1 was not measured on %2. Choose another quantity or channel.")
                                       .arg(answer->data->quantity, selection_.channel())
                                 : QString());
        });
}

// Room for the date at the limit, a third of the span at most; and in words what is drawn.
void MachinePage::showTrendWords(const TrendAnswer& answer) {
    QStringList words;
    if (!answer.basis.isEmpty()) words << tr("Limits: %1.").arg(answer.basis);
    if (!answer.past.isEmpty()) words << answer.past;
    if (answer.data->fan) words << answer.data->fan->words;
    quantityBox_->setToolTip(words.isEmpty() ? tr("Quantity of the trend") : words.join(QLatin1Char('\n')));
    if (!facts_->first) return;
    const double from = toMs(*facts_->first), until = toMs(*facts_->newest);
    const auto& fan = answer.data->fan;
    const double wanted = fan ? fan->latestMs.value_or(fan->middleMs) : until;
    axis_->setBounds({*facts_->first, toInstant(std::clamp(wanted, until, until + (until - from) / 3))});
    // The upright scales keep their room once the wider time scale is laid out.
    QMetaObject::invokeMethod(axis_, &TimeAxis::align, Qt::QueuedConnection);
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
        [this, until](Result<Answer> content) {
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
    axis_->setShown(ms);
}

// Bearings speak in the envelope, shafts in the spectrum. Left alone where the fault stays the same.
void MachinePage::chooseTab() {
    const Hypothesis* h = chosen();
    const QString about = selection_.fault() + QChar('@') + selection_.at();
    if (!h || about == tabChosenFor_) return;
    tabChosenFor_ = about;
    if (tabs_->currentWidget() == panel_) return;
    tabs_->setCurrentWidget(h->weightDban ? envelope_ : spectrum_);
}

// The channel on which the chosen fault speaks loudest is the one to look at: that of its lines, or the one
// with the highest velocity.
void MachinePage::followFault() {
    const Hypothesis* h = chosen();
    if (!h) return;
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
