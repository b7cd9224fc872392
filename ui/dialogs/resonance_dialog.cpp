#include "ui/dialogs/resonance_dialog.h"

#include <QComboBox>
#include <QCoreApplication>
#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QSignalBlocker>
#include <QTableWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/model/numbers.h"
#include "ui/model/site_time.h"
#include "ui/model/unit_words.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"
#include "ui/pages/ruled_table.h"

namespace fettle {

namespace {

constexpr double kLeastShownHz = 150, kBeyondFound = 1.4;
constexpr int kOrdersDrawn = 12;

std::shared_ptr<const WaterfallData> gridOf(const SpeedMap& map, bool median, bool orders) {
    std::vector<WaterfallRow> rows;
    const std::vector<float>& cells = median ? map.middle : map.most;
    for (std::size_t bin = 0; bin < map.bins.size(); ++bin) {
        const auto first = cells.begin() + std::ptrdiff_t(bin * map.lines);
        const double rpm = map.bins[bin].middle();
        rows.push_back({rpm, std::int64_t(map.bins[bin].count), map.topHz, rpm / 60,
                        std::vector<float>(first, first + std::ptrdiff_t(map.lines))});
    }
    WaterfallOptions options;
    options.orders = orders;
    options.unit = "mm/s r.m.s.";
    return WaterfallData::make(std::move(rows), options);
}

QString supportText(const SkipBand& band) {
    if (band.orders > 1 && band.channels > 1)
        return QCoreApplication::translate("fettle::ResonanceDialog", "%1 orders and %2 channels agree")
            .arg(band.orders)
            .arg(band.channels);
    if (band.orders > 1)
        return QCoreApplication::translate("fettle::ResonanceDialog", "%1 orders agree").arg(band.orders);
    if (band.channels > 1)
        return QCoreApplication::translate("fettle::ResonanceDialog", "%1 channels agree").arg(band.channels);
    return QCoreApplication::translate("fettle::ResonanceDialog", "one order alone");
}

}  // namespace

std::shared_ptr<const ResonanceData> resonanceData(const MachineResonance& found, std::size_t channel,
                                                   bool median) {
    auto data = std::make_shared<ResonanceData>();
    const SpeedMap& map = found.map.channels[channel];
    data->hz = gridOf(map, median, false);
    data->orders = gridOf(map, median, true);
    double highest = 0;
    for (const SkipBand& band : found.map.bands) {
        data->marks.push_back({band.hz, band.fromRpm, band.toRpm, band.order});
        highest = std::max(highest, band.hz);
    }
    data->shownHz = std::min(map.topHz, std::max(kLeastShownHz, kBeyondFound * highest));
    for (int order = 1; order <= kOrdersDrawn; ++order)
        data->lines.push_back(order);
    return data;
}

ResonanceDialog::ResonanceDialog(FleetWork& work, const Theme& theme, const QString& machine,
                                 const Units& units, QWidget* parent)
    : QDialog(parent), work_(work), machine_(machine), units_(units) {
    setObjectName(QStringLiteral("resonanceDialog"));
    setWindowTitle(tr("Resonance map of %1").arg(machine));
    setAttribute(Qt::WA_DeleteOnClose);
    build(theme);
    connect(&work_, &FleetWork::changedFleet, this, &ResonanceDialog::read);
    plot_->setWords(tr("The stored spectra are gathered by speed…"));
    read();
}

void ResonanceDialog::build(const Theme& theme) {
    plot_ = new ResonancePlot(theme, units_, this);
    channel_ = new QComboBox(plot_);
    channel_->setObjectName(QStringLiteral("resonanceChannel"));
    channel_->setAccessibleName(tr("Channel"));
    channel_->setToolTip(tr("Whose spectra are shown; the table below looks at all"));
    channel_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    value_ = new QComboBox(plot_);
    value_->setObjectName(QStringLiteral("resonanceValue"));
    value_->setAccessibleName(tr("Value of a speed"));
    value_->setToolTip(tr("Of all recordings at a speed: the largest, or the median, line by line"));
    value_->addItems({tr("largest"), tr("median")});
    plot_->addControl(value_);
    plot_->addControl(channel_);
    for (QComboBox* box : {channel_, value_})
        connect(box, &QComboBox::currentIndexChanged, this, &ResonanceDialog::showMap);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* all = new QVBoxLayout(this);
    all->addWidget(plot_, 7);
    all->addWidget(buildBelow(theme), 4);
    all->addWidget(buttons);
    resize(72 * fontMetrics().height(), 44 * fontMetrics().height());
}

QWidget* ResonanceDialog::buildBelow(const Theme& theme) {
    auto* box = new QWidget(this);
    summary_ = new QLabel(box);
    summary_->setObjectName(QStringLiteral("resonanceSummary"));
    limits_ = new QLabel(box);
    limits_->setObjectName(QStringLiteral("resonanceLimits"));
    setInk(*limits_, theme, Role::MutedInk);
    for (QLabel* label : {summary_, limits_}) {
        label->setWordWrap(true);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    }
    bands_ = new QTableWidget(0, 7, box);
    bands_->setObjectName(QStringLiteral("resonanceBands"));
    bands_->setAccessibleName(tr("Bands of speed to skip"));
    const ShownUnit unit = shownUnit(QStringLiteral("mm/s"), units_);
    const ShownUnit pitch = shownUnit(QStringLiteral("Hz"), units_);
    bands_->setHorizontalHeaderLabels({tr("r/min to skip"), tr("order"), tr("meets, %1").arg(pitch.unit),
                                       tr("rises by, dB"), tr("its level there, %1").arg(unit.unit),
                                       tr("recordings"), tr("how sure")});
    bands_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    setRuled(*bands_, theme);
    bands_->horizontalHeader()->setStretchLastSection(true);
    connect(bands_, &QTableWidget::itemSelectionChanged, this, &ResonanceDialog::chooseBand);
    auto* lines = new QVBoxLayout(box);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->addWidget(summary_);
    lines->addWidget(bands_, 1);
    lines->addWidget(limits_);
    return box;
}

void ResonanceDialog::read() {
    work_.ask<MachineResonance>(
        this, QStringLiteral("resonance"),
        [tag = kept(machine_)](FleetFile& fleet, const CancelToken&) { return resonanceOf(fleet, tag); },
        [this](Result<MachineResonance> found) { take(std::move(found)); });
}

void ResonanceDialog::take(Result<MachineResonance> found) {
    if (!found) return plot_->setWords(sentence(found.error()));
    found_ = std::make_shared<const MachineResonance>(std::move(*found));
    {
        const QSignalBlocker quiet(channel_);
        const int before = channel_->currentIndex();
        channel_->clear();
        for (const SpeedMap& map : found_->map.channels)
            channel_->addItem(shown(map.channel));
        channel_->setCurrentIndex(std::max(0, std::min(before, channel_->count() - 1)));
    }
    showMap();
    showBands();
    showWords();
}

void ResonanceDialog::showMap() {
    if (!found_) return;
    if (!found_->map.lacking.empty() || channel_->currentIndex() < 0) {
        const bool mains = !found_->machine->driver.inverter;
        return plot_->setWords(
            mains ? tr("This machine runs on the mains at one speed: %1. A map needs a drive "
                       "that changes speed.")
                        .arg(shown(found_->map.lacking))
                  : tr("No map yet: %1. Let the drive run at more speeds, recordings come in "
                       "by themselves.")
                        .arg(shown(found_->map.lacking)));
    }
    plot_->setWords({});
    plot_->setSubject(
        tr("%1 %2, %3 to %4")
            .arg(machine_, channel_->currentText(), dateText(found_->from), dateText(found_->until)));
    plot_->setData(
        resonanceData(*found_, std::size_t(channel_->currentIndex()), value_->currentIndex() == 1));
    chooseBand();
}

void ResonanceDialog::showBands() {
    const QSignalBlocker quiet(bands_);
    const ShownUnit unit = shownUnit(QStringLiteral("mm/s"), units_);
    const ShownUnit pitch = shownUnit(QStringLiteral("Hz"), units_);
    bands_->setRowCount(int(found_->map.bands.size()));
    int row = 0;
    for (const SkipBand& band : found_->map.bands) {
        const QString sure = supportText(band);
        const QString cells[] = {tr("%1 to %2").arg(band.fromRpm, 0, 'f', 0).arg(band.toRpm, 0, 'f', 0),
                                 tr("%1 x").arg(band.order),
                                 fixedText(pitch.shown(band.hz), pitch.factor > 1 ? 0 : 1),
                                 fixedText(band.riseDb, 1),
                                 numberText(unit.shown(band.level)),
                                 QString::number(band.recordings),
                                 band.small ? tr("%1; small, hardly worth skipping").arg(sure) : sure};
        for (int column = 0; column < 7; ++column)
            bands_->setItem(row, column, new QTableWidgetItem(cells[column]));
        ++row;
    }
    bands_->resizeColumnsToContents();
    for (int column = 0; column + 1 < bands_->columnCount(); ++column) {
        const int head = fontMetrics().horizontalAdvance(bands_->horizontalHeaderItem(column)->text());
        bands_->setColumnWidth(
            column, std::max(bands_->columnWidth(column), head + 4 * fontMetrics().averageCharWidth()));
    }
    bands_->setVisible(!found_->map.bands.empty());
}

void ResonanceDialog::showWords() {
    const ResonanceMap& map = found_->map;
    if (!map.lacking.empty()) {
        summary_->clear();
        limits_->clear();
        return;
    }
    const auto worth =
        std::count_if(map.bands.begin(), map.bands.end(), [](const SkipBand& band) { return !band.small; });
    const QString where = tr("%1 recordings between %2 and %3 r/min, %4 to %5.")
                              .arg(map.recordings)
                              .arg(map.leastRpm, 0, 'f', 0)
                              .arg(map.mostRpm, 0, 'f', 0)
                              .arg(dateText(found_->from), dateText(found_->until));
    const QString what =
        map.bands.empty()
            ? tr("No order grows where it meets a fixed frequency.")
            : tr("%1 natural frequencies are met by an order; %2 bands of speed are worth skipping. A bump "
                 "test "
                 "at rest or a run-down decides; the drive's own skip bands are set by who answers for it.")
                  .arg(map.resonances.size())
                  .arg(worth);
    summary_->setText(where + u' ' + what);
    QStringList lines;
    const ShownUnit pitch = shownUnit(QStringLiteral("Hz"), units_);
    for (const FixedLine& line : map.fixed)
        lines << tr("%1 %2 at %3 stays whatever the speed: mains or a neighbour, no resonance.")
                     .arg(fixedText(pitch.shown(line.hz), pitch.factor > 1 ? 0 : 1), pitch.unit,
                          shown(line.channel));
    for (const std::string& one : map.unseen)
        lines << sentence({ErrorKind::Invalid, "", "", one});
    limits_->setText(lines.join(u'\n'));
}

void ResonanceDialog::chooseBand() {
    plot_->choose(bands_->selectionModel() && bands_->selectionModel()->hasSelection() ? bands_->currentRow()
                                                                                       : -1);
}

}  // namespace fettle
