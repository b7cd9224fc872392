#include "ui/dialogs/balance_recording_dialog.h"

#include <QComboBox>
#include <cmath>

#include "ui/model/site_time.h"
#include "ui/model/words.h"

namespace fettle {

namespace {

constexpr double kMmPerInch = 25.4;

// From mm/s r.m.s. to the job's unit; velocities only. 0: another quantity.
double factorTo(const std::string& unit) {
    const double peak = std::sqrt(2.0);
    if (unit == "mm/s r.m.s.") return 1;
    if (unit == "mm/s peak") return peak;
    if (unit == "in/s r.m.s.") return 1 / kMmPerInch;
    return unit == "in/s peak" ? peak / kMmPerInch : 0;
}

QComboBox* plainBox(QWidget* parent, const QString& help) {
    auto* box = new QComboBox(parent);
    box->setToolTip(help);
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(24);
    return box;
}

}  // namespace

BalanceRecordingDialog::BalanceRecordingDialog(FleetWork& work, const Theme& theme, const BalanceDesk& desk,
                                               const BalanceJob& job, QWidget* parent)
    : AnswerDialog(theme, QStringLiteral("balanceRecordingDialog"), tr("Readings from a recording"),
                   tr("Read"), parent),
      work_(work),
      desk_(desk),
      job_(job),
      recording_(plainBox(this, tr("Recordings of this machine that hold two channels or more"))),
      mark_(plainBox(this, tr("The channel of the once-per-turn pick-up"))) {
    explain(
        tr("1x is read against the pulses of the mark, turn by turn; five stretches of the recording stand "
           "as repeat readings."));
    for (const RecordingEntry& entry : desk_.recordings)
        recording_->addItem(
            tr("%1, point %2").arg(momentText(entry.time, QTimeZone::utc()), shown(entry.point)));
    addField(tr("Recording"), recording_, "recording");
    addField(tr("Once-per-turn channel"), mark_, "mark");
    for (std::size_t s = 0; s < job_.sensors.size(); ++s) {
        sensors_.push_back(plainBox(this, tr("The channel that is this sensor")));
        addField(shown(job_.sensors[s].name), sensors_.back(), s == 0 ? "sensor1" : "sensor2");
    }
    connect(recording_, &QComboBox::currentIndexChanged, this, &BalanceRecordingDialog::fillChannels);
    fillChannels();
    if (desk_.recordings.empty())
        lacks(
            tr("No recording of this machine holds two channels: import one with the pick-up's channel, or "
               "type the readings."));
    else if (factorTo(job_.unit) == 0)
        lacks(tr("Recordings give velocities: choose mm/s or in/s as unit of this job."));
}

void BalanceRecordingDialog::fillChannels() {
    const int index = recording_->currentIndex();
    std::vector<QComboBox*> boxes{mark_};
    boxes.insert(boxes.end(), sensors_.begin(), sensors_.end());
    for (QComboBox* box : boxes) {
        box->clear();
        if (index < 0) continue;
        for (const std::string& channel : desk_.recordings[std::size_t(index)].channels)
            box->addItem(shown(channel));
    }
    if (mark_->count() > 0) mark_->setCurrentIndex(mark_->count() - 1);
    if (sensors_.size() == 2 && mark_->count() > 2) sensors_[1]->setCurrentIndex(1);
}

void BalanceRecordingDialog::accept() {
    const int index = recording_->currentIndex();
    if (index < 0) return;
    const std::int64_t id = desk_.recordings[std::size_t(index)].id;
    const std::string mark = kept(mark_->currentText());
    std::vector<std::string> channels;
    for (const QComboBox* box : sensors_)
        channels.push_back(kept(box->currentText()));
    using Readings = std::vector<RecordedReading>;
    work_.ask<Readings>(
        this, QStringLiteral("once per turn"),
        [id, mark, channels](FleetFile& fleet, const CancelToken&) -> Result<Readings> {
            Readings all;
            for (const std::string& channel : channels) {
                auto one = onceOfRecording(fleet, id, channel, mark);
                if (!one) return fail(one.error());
                all.push_back(std::move(*one));
            }
            return all;
        },
        [this](Result<Readings> readings) {
            if (!readings) return lacks(sentence(readings.error()));
            emit given(runFrom(*readings));
            AnswerDialog::accept();
        });
}

// Recordings give lags; who reads leads gets them turned round.
BalanceRun BalanceRecordingDialog::runFrom(const std::vector<RecordedReading>& readings) const {
    BalanceRun run;
    const double factor = factorTo(job_.unit);
    for (const RecordedReading& one : readings) {
        std::vector<VibrationReading> repeats;
        for (const Polar& part : one.once.parts) {
            const Polar read = vibrationAsRead(phasorOf(part), job_.convention);
            repeats.push_back({factor * read.amount, read.degrees});
        }
        run.sensors.push_back(std::move(repeats));
    }
    run.rpm = readings.empty() ? std::nullopt : std::optional(readings[0].once.rpm);
    run.loadPct = readings.empty() ? std::nullopt : readings[0].loadPct;
    run.source = kept(tr("the recording of %1").arg(recording_->currentText()));
    run.recording = desk_.recordings[std::size_t(recording_->currentIndex())].id;
    return run;
}

}  // namespace fettle
