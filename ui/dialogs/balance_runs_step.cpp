#include "ui/dialogs/balance_runs_step.h"

#include <QPushButton>
#include <QVBoxLayout>

#include "ui/dialogs/balance_recording_dialog.h"
#include "ui/dialogs/balance_run_box.h"
#include "ui/model/words.h"

namespace fettle {

BalanceRunsStep::BalanceRunsStep(BalanceModel& model, FleetWork& work, const Theme& theme, QWidget* parent)
    : QScrollArea(parent), model_(model), work_(work), theme_(theme) {
    setObjectName(QStringLiteral("balanceRunsStep"));
    setAccessibleName(tr("Runs"));
    setWidgetResizable(true);
    setFrameStyle(QFrame::NoFrame);
    build();
    connect(&model_, &BalanceModel::changed, this, &BalanceRunsStep::showValues);
}

// What decides which fields there are.
QString BalanceRunsStep::shape() const {
    const BalanceJob& job = model_.job();
    QString shape = QString::number(int(job.method)) + QChar(' ') + QString::number(job.trials.size()) +
                    (job.check ? QStringLiteral(" check") : QString());
    for (const BalanceSensor& sensor : job.sensors)
        shape += QChar('\n') + shown(sensor.name);
    return shape;
}

void BalanceRunsStep::build() {
    shape_ = shape();
    boxes_.clear();
    page_ = new QWidget;
    auto* all = new QVBoxLayout(page_);
    std::vector<int> numbers{0};
    for (std::size_t i = 1; i <= model_.job().trials.size(); ++i)
        numbers.push_back(int(i));
    if (model_.job().check) numbers.push_back(kCheckRun);
    for (const int number : numbers) {
        auto* box = new BalanceRunBox(model_, theme_, number, page_);
        connect(box, &BalanceRunBox::recordingWanted, this, &BalanceRunsStep::askRecording);
        all->addWidget(box);
        boxes_.push_back(box);
    }
    check_ = new QPushButton(tr("&Add the check run"), page_);
    check_->setObjectName(QStringLiteral("addCheck"));
    check_->setToolTip(tr("With the correction fitted: what is left, and whether the grade is reached"));
    connect(check_, &QPushButton::clicked, this, [this] {
        model_.edit([](BalanceJob& job) {
            if (!job.check) job.check = BalanceRun{};
        });
    });
    all->addWidget(check_, 0, Qt::AlignLeft);
    all->addStretch(1);
    setWidget(page_);
    showValues();
}

void BalanceRunsStep::showValues() {
    if (shape_ != shape()) return build();
    for (BalanceRunBox* box : boxes_)
        box->showValues();
    check_->setVisible(!model_.job().check);
    check_->setEnabled(model_.answer().solved && !model_.closed());
}

void BalanceRunsStep::askRecording(int number) {
    auto* ask = new BalanceRecordingDialog(work_, theme_, desk_, model_.job(), window());
    connect(ask, &BalanceRecordingDialog::given, this, [this, number](const BalanceRun& read) {
        model_.edit([&](BalanceJob& job) {
            BalanceRun* run = runOf(job, number);
            if (!run) return;
            const auto trial = run->trial;
            *run = read;
            run->trial = trial;
        });
    });
    ask->open();
}

}  // namespace fettle
