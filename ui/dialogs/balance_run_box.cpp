#include "ui/dialogs/balance_run_box.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/dialogs/balance_field.h"
#include "ui/dialogs/balance_readings.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"

namespace fettle {

BalanceRun* runOf(BalanceJob& job, int number) {
    if (number == 0) return &job.initial;
    if (number == kCheckRun) return job.check ? &*job.check : nullptr;
    return std::size_t(number) <= job.trials.size() ? &job.trials[std::size_t(number) - 1] : nullptr;
}

const BalanceRun* runOf(const BalanceJob& job, int number) {
    return runOf(const_cast<BalanceJob&>(job), number);
}

QString runTitle(const BalanceJob& job, int number) {
    if (number == 0) return BalanceRunBox::tr("Run 0: as found");
    if (number == kCheckRun) return BalanceRunBox::tr("Check run: with the correction fitted");
    if (job.method == BalanceMethod::FourRuns)
        return BalanceRunBox::tr("Run %1: the trial mass at place %1 of 3").arg(number);
    const std::size_t plane = job.method == BalanceMethod::TwoPlanes ? std::size_t(number) - 1 : 0;
    return BalanceRunBox::tr("Run %1: trial mass in %2").arg(number).arg(shown(job.planes[plane].name));
}

BalanceRunBox::BalanceRunBox(BalanceModel& model, const Theme& theme, int number, QWidget* parent)
    : QGroupBox(parent),
      model_(model),
      theme_(theme),
      number_(number),
      name_(number == kCheckRun ? QStringLiteral("check") : QStringLiteral("run%1").arg(number)),
      note_(new QLabel(this)),
      source_(new QLabel(this)) {
    setObjectName(name_ + QStringLiteral("Box"));
    auto* all = new QVBoxLayout(this);
    row_ = new QHBoxLayout;
    if (number > 0 && number != kCheckRun) {
        mass_ = addField(tr("Trial mass"), name_ + QStringLiteral("mass"), tr("g at"), 0.001, 1e6, {});
        degrees_ = addField(tr("Place of the trial mass"), name_ + QStringLiteral("degrees"), tr("degrees"),
                            -360, 720, {});
        for (BalanceField* field : {mass_, degrees_})
            connect(field, &BalanceField::edited, this, &BalanceRunBox::editTrial);
    }
    rpm_ = addField(tr("Speed of this run"), name_ + QStringLiteral("rpm"), tr("r/min"), 1, 1e5,
                    [](BalanceRun& run, std::optional<double> value) { run.rpm = value; });
    load_ = addField(tr("Load of this run"), name_ + QStringLiteral("load"), tr("% load"), 0, 1000,
                     [](BalanceRun& run, std::optional<double> value) { run.loadPct = value; });
    recording_ = new QPushButton(tr("From a recording…"), this);
    recording_->setObjectName(name_ + QStringLiteral("recording"));
    recording_->setToolTip(tr("Reads 1x against the once-per-turn channel of a recording in the fleet file"));
    connect(recording_, &QPushButton::clicked, this, [this] { emit recordingWanted(number_); });
    row_->addStretch(1);
    row_->addWidget(recording_, 0, Qt::AlignTop);
    all->addLayout(row_);
    const bool phases = model_.job().method != BalanceMethod::FourRuns;
    for (std::size_t s = 0; s < model_.job().sensors.size(); ++s) {
        const QString name = name_ + QStringLiteral("sensor%1").arg(s + 1);
        auto* readings = new BalanceReadings(theme_, name, shown(model_.job().sensors[s].name), phases, this);
        connect(readings, &BalanceReadings::edited, this,
                [this, s](const std::vector<VibrationReading>& all_) {
                    model_.edit([&](BalanceJob& job) {
                        BalanceRun* run = runOf(job, number_);
                        if (!run) return;
                        run->sensors[s] = all_;
                        run->source.clear();
                        run->recording = 0;
                    });
                });
        sensors_.push_back(readings);
        all->addWidget(readings);
    }
    for (QLabel* label : {source_, note_}) {
        label->setWordWrap(true);
        label->hide();
        all->addWidget(label);
    }
    note_->setObjectName(name_ + QStringLiteral("Note"));
    source_->setObjectName(name_ + QStringLiteral("Source"));
}

BalanceField* BalanceRunBox::addField(const QString& title, const QString& name, const QString& unit,
                                      double least, double most,
                                      std::function<void(BalanceRun&, std::optional<double>)> typed) {
    auto* field = new BalanceField(theme_, name, title, unit, {least, most}, this);
    field->setLetters(6);
    row_->addWidget(field, 0, Qt::AlignTop);
    if (typed)
        connect(field, &BalanceField::edited, this, [this, typed](std::optional<double> value) {
            model_.edit([&](BalanceJob& job) {
                if (BalanceRun* run = runOf(job, number_)) typed(*run, value);
            });
        });
    return field;
}

// Mass and place are one; four runs keep one mass.
void BalanceRunBox::editTrial() {
    model_.edit([this](BalanceJob& job) {
        BalanceRun* run = runOf(job, number_);
        if (!run) return;
        if (!mass_->value() && !degrees_->value())
            run->trial.reset();
        else
            run->trial = Polar{mass_->value().value_or(0), degrees_->value().value_or(0)};
        if (job.method != BalanceMethod::FourRuns || number_ != 1 || !run->trial) return;
        for (std::size_t i = 1; i < job.trials.size(); ++i) {
            if (!job.trials[i].trial)
                job.trials[i].trial = Polar{0, turned(run->trial->degrees + 120.0 * double(i))};
            job.trials[i].trial->amount = run->trial->amount;
        }
    });
}

std::string BalanceRunBox::place() const {
    if (number_ == 0) return "/initial";
    return number_ == kCheckRun ? "/check" : "/trials/" + std::to_string(number_ - 1);
}

void BalanceRunBox::showValues() {
    const BalanceJob& job = model_.job();
    const BalanceRun* run = runOf(job, number_);
    if (!run) return;
    setTitle(runTitle(job, number_));
    setEnabled(!model_.closed());
    const std::string at = place();
    if (mass_) {
        mass_->setValue(run->trial && run->trial->amount > 0 ? std::optional(run->trial->amount)
                                                             : std::nullopt);
        degrees_->setValue(run->trial ? std::optional(run->trial->degrees) : std::nullopt);
    }
    rpm_->setValue(run->rpm);
    load_->setValue(run->loadPct);
    for (std::size_t s = 0; s < sensors_.size() && s < run->sensors.size(); ++s) {
        const std::string sensor = at + "/sensors/" + std::to_string(s);
        sensors_[s]->setUnit(shown(job.unit));
        sensors_[s]->setReadings(run->sensors[s]);
        sensors_[s]->setNote(model_.remarksAt(sensor), model_.troubleAt(sensor));
    }
    QStringList notes;
    bool trouble = false;
    for (const char* part : {"", "/trial", "/rpm", "/load_pct"}) {
        notes << model_.remarksAt(at + part);
        trouble = trouble || model_.troubleAt(at + part);
    }
    if (number_ > 0 && number_ != kCheckRun && number_ == int(job.trials.size())) {
        notes << model_.remarksAt("/trials");
        trouble = trouble || model_.troubleAt("/trials");
    }
    notes.removeAll(QString());
    note_->setText(notes.join(QStringLiteral("; ")));
    note_->setVisible(!notes.isEmpty());
    setInk(*note_, theme_, trouble ? Role::Trouble : Role::MutedInk);
    source_->setText(run->source.empty() ? QString() : tr("Taken from %1.").arg(shown(run->source)));
    source_->setVisible(!run->source.empty());
    setInk(*source_, theme_, Role::MutedInk);
}

}  // namespace fettle
