#include "ui/pages/machine_history.h"

#include <QAction>
#include <QComboBox>
#include <QPushButton>
#include <QSignalBlocker>
#include <algorithm>

#include "ui/model/shortcuts.h"
#include "ui/model/words.h"
#include "ui/plot/cascade.h"
#include "ui/plot/colour_legend.h"
#include "ui/plot/waterfall.h"

namespace fettle {

namespace {

constexpr double kDayMs = 24 * 3600 * 1e3;
constexpr double kSpanDays[] = {0, 182, 30, 7, 1};  // as in the box; 0: all

QComboBox* box(const QString& name, const QString& says, const QStringList& items, QWidget* parent) {
    auto* combo = new QComboBox(parent);
    combo->setObjectName(name);
    combo->setAccessibleName(says);
    combo->setToolTip(says);
    combo->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    combo->addItems(items);
    return combo;
}

QString againstWords(Quantity quantity) {
    switch (quantity) {
        case Quantity::SpeedRpm:
            return MachineHistory::tr("against speed");
        case Quantity::LoadPct:
            return MachineHistory::tr("against load");
        case Quantity::FrameTempC:
            return MachineHistory::tr("against frame");
        default:
            return MachineHistory::tr("against ambient");
    }
}

}  // namespace

MachineHistory::MachineHistory(FleetWork& work, Selection& selection, const Theme& theme,
                               QComboBox* channelBox, QWidget* parent)
    : QObject(parent), work_(work), selection_(selection), theme_(theme), page_(parent) {
    build(channelBox);
    connectParts();
    addActions(*parent);
}

void MachineHistory::build(QComboBox* channelBox) {
    axis_ = new TimeAxis(selection_, this);
    waterfalls_ = new SwitchedPlots(QStringLiteral("waterfalls"), page_);
    waterfall_ = new Waterfall(theme_, *axis_, selection_, waterfalls_);
    cascade_ = new Cascade(theme_, *axis_, selection_, waterfall_->look(), waterfalls_);
    trends_ = new SwitchedPlots(QStringLiteral("trends"), page_);
    trend_ = new TrendPlot(theme_, *axis_, selection_, trends_);
    scatter_ = new ScatterPlot(theme_, *axis_, selection_, trends_);
    for (PlotFrame* plot : std::initializer_list<PlotFrame*>{waterfall_, cascade_})
        waterfalls_->addPlot(plot);
    for (PlotFrame* plot : std::initializer_list<PlotFrame*>{trend_, scatter_})
        trends_->addPlot(plot);
    kindBox_ = box(QStringLiteral("waterfallKind"), tr("Kind of spectra in the waterfall"), {}, waterfall_);
    formBox_ = box(QStringLiteral("waterfallForm"), tr("Waterfall in colours or as traces (W)"),
                   {tr("colours"), tr("traces")}, waterfall_);
    axisBox_ = box(QStringLiteral("waterfallAxis"), tr("Frequencies or orders of the shaft"),
                   {tr("frequency"), tr("orders")}, waterfall_);
    picker_ = new QuantityPicker(trend_);
    againstBox_ = box(QStringLiteral("trendAgainst"), tr("What the quantity is drawn against"), {}, trend_);
    againstBox_->addItem(tr("over time"), -1);
    for (const Quantity quantity :
         {Quantity::SpeedRpm, Quantity::LoadPct, Quantity::FrameTempC, Quantity::AmbientTempC})
        againstBox_->addItem(againstWords(quantity), int(quantity));
    chartBox_ = box(QStringLiteral("trendChart"), tr("Control chart of the first quantity's daily medians"),
                    {tr("no chart"), tr("EWMA"), tr("CUSUM")}, trend_);
    spanBox_ = box(QStringLiteral("timeSpan"), tr("Span of time shown (keys 1 to 5)"),
                   {tr("all"), tr("6 months"), tr("month"), tr("week"), tr("day")}, trend_);
    spanBox_->setPlaceholderText(tr("part"));
    waterfalls_->setControls({channelBox, kindBox_, formBox_, axisBox_, &waterfall_->legend()});
    baselineButton_ = new QPushButton(tr("New baseline…"), trend_);
    baselineButton_->setObjectName(QStringLiteral("trendNewBaseline"));
    baselineButton_->setAccessibleName(tr("Begin a new baseline"));
    baselineButton_->setToolTip(
        tr("Begins a baseline at the moment chosen in the trend: the days from then on, 14 at least over two "
           "weekends"));
    baselineButton_->hide();
    trends_->setControls({picker_, againstBox_, chartBox_, baselineButton_, spanBox_});
    fillQuantities();
}

void MachineHistory::connectParts() {
    connect(kindBox_, &QComboBox::activated, this, &MachineHistory::askWaterfall);
    connect(axisBox_, &QComboBox::activated, this, &MachineHistory::askWaterfall);
    connect(formBox_, &QComboBox::activated, this, &MachineHistory::showForm);
    connect(picker_, &QuantityPicker::chosenChanged, this, &MachineHistory::askTrend);
    connect(againstBox_, &QComboBox::activated, this, &MachineHistory::askTrend);
    connect(chartBox_, &QComboBox::activated, this, &MachineHistory::askPast);
    connect(spanBox_, &QComboBox::activated, this, &MachineHistory::chooseSpan);
    connect(baselineButton_, &QPushButton::clicked, this, &MachineHistory::baselineWanted);
    connect(axis_, &TimeAxis::changed, this, &MachineHistory::showSpan);
}

void MachineHistory::addActions(QWidget& at) {
    const auto add = [&](const char* id, auto done) {
        QAction* action = actionFor(id, &at);
        connect(action, &QAction::triggered, this, done);
        at.addAction(action);
    };
    add("span.day", [this] { chooseSpan(4); });
    add("span.week", [this] { chooseSpan(3); });
    add("span.month", [this] { chooseSpan(2); });
    add("span.halfYear", [this] { chooseSpan(1); });
    add("span.all", [this] { chooseSpan(0); });
    add("history.form", [this] {
        formBox_->setCurrentIndex(1 - formBox_->currentIndex());
        showForm();
    });
}

void MachineHistory::labelTimes(bool labelled) {
    waterfall_->labelTimes(labelled);
}

void MachineHistory::showForm() {
    waterfalls_->showPlot(formBox_->currentIndex() == 1 ? static_cast<PlotFrame*>(cascade_) : waterfall_);
}

// About the chosen moment, else up to the newest.
void MachineHistory::chooseSpan(int at) {
    if (at <= 0 || !facts_ || !facts_->newest) return axis_->showAll();
    const double width = kSpanDays[at] * kDayMs;
    const double newest = toMs(*facts_->newest) + 0.01 * width;
    double until = newest;
    if (selection_.recording() && selection_.time())
        until = std::min(newest, toMs(*selection_.time()) + width / 2);
    axis_->show(until - width, until);
}

void MachineHistory::showSpan() {
    const QSignalBlocker quiet(spanBox_);
    int found = axis_->span().all() ? 0 : -1;
    for (int i = 1; i < spanBox_->count() && found < 0; ++i)
        if (std::abs(axis_->span().width() / (kSpanDays[i] * kDayMs) - 1) < 0.01) found = i;
    spanBox_->setCurrentIndex(found);
}

void MachineHistory::clear(const QString& words) {
    facts_.reset();
    channel_.reset();
    further_.clear();
    answer_ = {};
    past_ = {};
    axis_->setShown({});
    waterfall_->setData(nullptr);
    trend_->setData(nullptr);
    trend_->setEvents({});
    scatter_->setData(nullptr);
    say(words);
}

void MachineHistory::say(const QString& words) {
    for (PlotFrame* plot : std::initializer_list<PlotFrame*>{waterfall_, cascade_, trend_, scatter_})
        plot->setWords(words);
}

void MachineHistory::setMachine(const MachineFacts& facts) {
    facts_ = facts;
    trend_->setEvents(facts.events);
    axis_->setZone(facts.zone);
    if (!facts.newest) return;
    axis_->setBounds({*facts.first, *facts.newest});
    askFurther();
}

QString MachineHistory::channelName() const {
    return channel_ ? shown(channel_->point + " " + channel_->name) : QString();
}

void MachineHistory::setChannel(const ChannelEntry& channel) {
    channel_ = channel;
    const QString subject = tr("%1 %2").arg(selection_.machine(), channelName());
    for (PlotFrame* plot : std::initializer_list<PlotFrame*>{waterfall_, cascade_, trend_, scatter_})
        plot->setSubject(subject);
    fillKinds();
    askTrend();
    askWaterfall();
}

// What a channel of this quantity can have: a flux channel has no velocity.
void MachineHistory::fillKinds() {
    const bool acceleration = channel_ && channel_->quantity == "acceleration";
    const QVariant before = kindBox_->currentData();
    const QSignalBlocker quiet(kindBox_);
    kindBox_->clear();
    if (acceleration || (channel_ && channel_->quantity == "velocity"))
        kindBox_->addItem(tr("velocity"), int(WaterfallKind::Velocity));
    if (acceleration) {
        kindBox_->addItem(tr("acceleration"), int(WaterfallKind::Acceleration));
        kindBox_->addItem(tr("envelope"), int(WaterfallKind::Envelope));
    }
    kindBox_->setCurrentIndex(std::max(0, kindBox_->findData(before)));
    kindBox_->setVisible(kindBox_->count() > 0);
}

void MachineHistory::fillQuantities() {
    std::vector<PickedQuantity> all;
    for (const auto& list : {levelQuantities(), further_})
        for (const HistoryQuantity& one : list)
            all.push_back(one.picked());
    picker_->setQuantities(std::move(all));
}

void MachineHistory::follow(const ChangeFacts* change) {
    followed_ = change ? std::optional(*change) : std::nullopt;
    if (!keysBefore_.isEmpty() && picker_->chosen() == followedKeys_) picker_->choose(keysBefore_);
    keysBefore_.clear();
    chooseFollowed();
}

void MachineHistory::chooseFollowed() {
    if (!followed_) return;
    for (const auto& list : {levelQuantities(), further_})
        for (const HistoryQuantity& one : list) {
            if (!one.isOf(*followed_)) continue;
            if (keysBefore_.isEmpty()) keysBefore_ = picker_->chosen();
            followedKeys_ = {one.key};
            return picker_->choose(followedKeys_);
        }
}

void MachineHistory::askFurther() {
    using Answer = std::vector<HistoryQuantity>;
    work_.ask<Answer>(
        this, QStringLiteral("quantities"),
        [machine = facts_->entry.id](FleetFile& fleet, const CancelToken&) {
            return furtherQuantities(fleet, machine);
        },
        [this](Result<Answer> further) {
            if (!further) return;
            further_ = std::move(*further);
            const QStringList before = picker_->chosen();
            fillQuantities();
            if (picker_->chosen() != before) askTrend();
            chooseFollowed();
        });
}

WaterfallRequest MachineHistory::waterfallRequest() const {
    return {channel_->id, WaterfallKind(kindBox_->currentData().toInt()), axisBox_->currentIndex() == 1};
}

// Coarse first where there are many; the whole follows at once, and only if nobody went on meanwhile.
void MachineHistory::askWaterfall() {
    if (!channel_) return;
    if (kindBox_->count() == 0) {
        waterfall_->setData(nullptr);
        const QString words =
            tr("%1 keeps no spectra for the waterfall: choose a channel of acceleration.").arg(channelName());
        cascade_->setWords(words);
        return waterfall_->setWords(words);
    }
    work_.ask<WaterfallPtr>(
        this, QStringLiteral("waterfall"),
        [request = waterfallRequest()](FleetFile& fleet, const CancelToken&) {
            return coarseWaterfall(fleet, request);
        },
        [this](Result<WaterfallPtr> spectra) {
            const QString words =
                !spectra ? sentence(spectra.error())
                : (*spectra)->rows() > 0
                    ? QString()
                    : tr("No spectra of this kind are kept for %1. Choose another kind or channel.")
                          .arg(channelName());
            if (spectra) waterfall_->setData(*spectra);
            waterfall_->setWords(words);
            cascade_->setWords(words);
            if (spectra && (*spectra)->coarse()) askWhole();
        });
}

void MachineHistory::askWhole() {
    work_.ask<WaterfallPtr>(
        this, QStringLiteral("waterfall"),
        [request = waterfallRequest()](FleetFile& fleet, const CancelToken& cancel) {
            return waterfallOf(fleet, request, cancel);
        },
        [this](Result<WaterfallPtr> spectra) {
            if (spectra) return waterfall_->setData(*spectra);
            waterfall_->setWords(sentence(spectra.error()));
            cascade_->setWords(sentence(spectra.error()));
        });
}

TrendRequest MachineHistory::trendRequest() const {
    TrendRequest request{facts_->entry.tag, facts_->machine, *channel_, {}, {}};
    for (const QString& key : picker_->chosen())
        for (const auto& list : {levelQuantities(), further_})
            for (const HistoryQuantity& one : list)
                if (one.key == key) request.quantities.push_back(one);
    if (const int against = againstBox_->currentData().toInt(); against >= 0)
        request.against = Quantity(against);
    return request;
}

void MachineHistory::askTrend() {
    if (!channel_ || !facts_) return;
    trends_->showPlot(againstBox_->currentIndex() > 0 ? static_cast<PlotFrame*>(scatter_) : trend_);
    work_.ask<TrendAnswer>(
        this, QStringLiteral("trend"),
        [request = trendRequest()](FleetFile& fleet, const CancelToken& cancel) {
            return trendsOf(fleet, request, cancel);
        },
        [this](Result<TrendAnswer> answer) {
            past_ = {};
            if (!answer) {
                trend_->setWords(sentence(answer.error()));
                return scatter_->setWords(sentence(answer.error()));
            }
            answer_ = std::move(*answer);
            showTrends();
            askPast();
        });
}

void MachineHistory::askPast() {
    if (!channel_ || !facts_ || answer_.all.empty()) return;
    work_.ask<PastAnswer>(
        this, QStringLiteral("past"),
        [request = trendRequest(), data = answer_.all.front(),
         chart = ControlChart(chartBox_->currentIndex())](FleetFile& fleet, const CancelToken&) {
            return pastOf(fleet, request, data, chart);
        },
        [this](Result<PastAnswer> past) {
            if (!past) return;
            past_ = std::move(*past);
            showTrends();
        });
}

// The first quantity with its past where that is known, its chart, then the others.
void MachineHistory::showTrends() {
    std::vector<TrendPlot::DataPtr> all = answer_.all;
    if (past_.data && !all.empty()) all.front() = past_.data;
    for (const auto& line : past_.chart)
        all.insert(all.begin() + 1, line);
    trend_->setAll(std::move(all));
    scatter_->setData(answer_.scatter);
    const bool empty = std::all_of(answer_.all.begin(), answer_.all.end(),
                                   [](const auto& one) { return one->samples.empty(); });
    trend_->setWords(empty && !answer_.all.empty()
                         ? tr("%1 was not measured on %2. Choose another quantity or channel.")
                               .arg(answer_.all.front()->quantity, channelName())
                         : QString());
    const bool none = answer_.scatter && answer_.scatter->points.empty();
    scatter_->setWords(none ? tr("No recording of %1 has both %2 and %3. Draw it over time, or against "
                                 "something else.")
                                  .arg(channelName(), answer_.scatter->yName, answer_.scatter->xName)
                            : QString());
    showTrendWords();
}

// Room for the date at the limit, a third of the span at most; and in words what is drawn.
void MachineHistory::showTrendWords() {
    QStringList words{picker_->accessibleName()};
    if (!answer_.basis.isEmpty()) words << tr("Limits: %1.").arg(answer_.basis);
    if (!past_.past.isEmpty()) words << past_.past;
    if (past_.data && past_.data->fan) words << past_.data->fan->words;
    picker_->setToolTip(words.join(QLatin1Char('\n')));
    chartBox_->setToolTip(past_.chartWords.isEmpty() ? chartBox_->accessibleName() : past_.chartWords);
    trend_->setNote(past_.chartNote);
    baselineButton_->setVisible(past_.lacksBaseline && chartBox_->currentIndex() > 0 && work_.writable());
    if (!facts_->first) return;
    const double from = toMs(*facts_->first), until = toMs(*facts_->newest);
    const auto* fan = past_.data && past_.data->fan ? &*past_.data->fan : nullptr;
    const double wanted = fan ? fan->latestMs.value_or(fan->middleMs) : until;
    axis_->setBounds({*facts_->first, toInstant(std::clamp(wanted, until, until + (until - from) / 3))});
    // The upright scales keep their room once the wider time scale is laid out.
    QMetaObject::invokeMethod(axis_, &TimeAxis::align, Qt::QueuedConnection);
}

}  // namespace fettle
