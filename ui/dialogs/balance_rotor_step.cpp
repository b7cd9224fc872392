#include "ui/dialogs/balance_rotor_step.h"

#include <QComboBox>
#include <QFormLayout>
#include <QGroupBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "core/workshop/unbalance.h"
#include "ui/dialogs/balance_field.h"
#include "ui/dialogs/balance_lists.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"
#include "ui/plot/readout.h"

namespace fettle {

namespace {

const char* const kUnits[] = {"mm/s r.m.s.", "mm/s peak", "µm peak to peak",
                              "in/s r.m.s.", "in/s peak", "mil peak to peak"};

QLabel* noteBelow(QFormLayout* form, const QString& name) {
    auto* note = new QLabel(form->parentWidget());
    note->setObjectName(name);
    note->setWordWrap(true);
    form->addRow(QString(), note);
    note->hide();
    return note;
}

void setText(QLineEdit* edit, const std::string& text) {
    if (!edit->hasFocus() && kept(edit->text()) != text) edit->setText(shown(text));
}

void choose(QComboBox* box, int index) {
    const QSignalBlocker quiet(box);
    box->setCurrentIndex(index);
}

}  // namespace

BalanceRotorStep::BalanceRotorStep(BalanceModel& model, const Theme& theme, QWidget* parent)
    : QScrollArea(parent), model_(model), theme_(theme), page_(new QWidget) {
    setObjectName(QStringLiteral("balanceRotorStep"));
    setAccessibleName(tr("Rotor, planes and sensors"));
    setWidgetResizable(true);
    setFrameStyle(QFrame::NoFrame);
    auto* all = new QVBoxLayout(page_);
    auto* method = new QFormLayout;
    method->setRowWrapPolicy(QFormLayout::WrapAllRows);  // what is chosen is long
    auto* rotor = new QFormLayout;
    auto* top = new QHBoxLayout;
    top->addLayout(method, 1);
    top->addLayout(rotor, 1);
    all->addLayout(top);
    buildMethod(method);
    buildRotor(rotor);
    auto* planes = new QHBoxLayout;
    auto* sensors = new QHBoxLayout;
    for (std::size_t i = 0; i < 2; ++i) {
        planes_.push_back(buildPlane(i));
        sensors_.push_back(buildSensor(i));
        planes->addWidget(planes_[i].box, 1);
        sensors->addWidget(sensors_[i].box, 1);
    }
    all->addLayout(planes);
    all->addLayout(sensors);
    all->addStretch(1);
    setWidget(page_);
    connect(&model_, &BalanceModel::changed, this, &BalanceRotorStep::showValues);
    showValues();
}

QComboBox* BalanceRotorStep::choice(QFormLayout* form, const QString& title, const char* name,
                                    const std::vector<QString>& texts, const QString& help,
                                    std::function<void(BalanceJob&, int)> chosen) {
    auto* box = new QComboBox(page_);
    box->setObjectName(QString::fromLatin1(name));
    box->setAccessibleName(title);
    box->setToolTip(help);
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(12);
    for (const QString& text : texts)
        box->addItem(text);
    form->addRow(title, box);
    connect(box, &QComboBox::currentIndexChanged, this, [this, chosen = std::move(chosen)](int index) {
        if (index >= 0) model_.edit([&](BalanceJob& job) { chosen(job, index); });
    });
    return box;
}

QLineEdit* BalanceRotorStep::line(QFormLayout* form, const QString& title, const QString& name,
                                  const QString& help,
                                  std::function<void(BalanceJob&, const std::string&)> typed) {
    auto* edit = new QLineEdit(page_);
    edit->setObjectName(name);
    edit->setAccessibleName(title);
    edit->setToolTip(help);
    form->addRow(title, edit);
    connect(edit, &QLineEdit::textEdited, this, [this, typed = std::move(typed)](const QString& text) {
        model_.edit([&](BalanceJob& job) { typed(job, kept(text)); });
        showNotes();  // of a list that cannot be taken nothing changes
    });
    return edit;
}

BalanceField* BalanceRotorStep::number(QFormLayout* form, const QString& title, const QString& name,
                                       const QString& unit, double least, double most,
                                       std::function<void(BalanceJob&, std::optional<double>)> typed) {
    auto* field = new BalanceField(theme_, name, title, unit, {least, most}, page_);
    form->addRow(title, field);
    connect(field, &BalanceField::edited, this,
            [this, typed = std::move(typed)](std::optional<double> value) {
                model_.edit([&](BalanceJob& job) { typed(job, value); });
            });
    return field;
}

void BalanceRotorStep::buildMethod(QFormLayout* form) {
    method_ = choice(
        form, tr("Method"), "balanceMethod",
        {tr("One plane, with phase"), tr("Two planes, with phase"), tr("One plane, four runs without phase")},
        tr("With phase: a once-per-turn mark and its phase. Without: four amounts and three places of one "
           "trial mass."),
        [](BalanceJob& job, int index) { job.method = BalanceMethod(index); });
    saved_ = new QComboBox(page_);
    saved_->setObjectName(QStringLiteral("balanceSaved"));
    saved_->setAccessibleName(tr("What a gram does"));
    saved_->setToolTip(tr("Learnt by trial runs, or taken from a closed balancing of this machine"));
    saved_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    saved_->setMinimumContentsLength(12);
    form->addRow(tr("What a gram does"), saved_);
    connect(saved_, &QComboBox::activated, this, &BalanceRotorStep::chooseSaved);
    savedNote_ = noteBelow(form, QStringLiteral("balanceSavedNote"));
    left_ = choice(form, tr("Trial masses"), "balanceTrials", {tr("taken off again"), tr("left on")},
                   tr("Whether a trial mass stays on the rotor for the next run"),
                   [](BalanceJob& job, int index) {
                       job.trialMasses = index == 1 ? TrialMasses::LeftOn : TrialMasses::Removed;
                   });
    turns_ = choice(form, tr("Turns, as seen"), "balanceTurns", {tr("clockwise"), tr("anticlockwise")},
                    tr("Sense of rotation seen from the stated side"),
                    [](BalanceJob& job, int index) { job.rotor.clockwise = index == 0; });
    seen_ = line(form, tr("Seen from the"), QStringLiteral("balanceSeen"),
                 tr("The side everybody looks from, like: coupling side"),
                 [](BalanceJob& job, const std::string& text) { job.rotor.viewedFrom = text; });
    places_ = choice(form, tr("Places are counted"), "balancePlaces",
                     {tr("against the rotation"), tr("with the rotation")},
                     tr("From the mark on the rotor, see the drawing"), [](BalanceJob& job, int index) {
                         job.convention.rotor = index == 1 ? Counted::WithRotation : Counted::AgainstRotation;
                     });
    phase_ = choice(
        form, tr("Phase is a"), "balancePhase",
        {tr("lag: mark first, then the peak"), tr("lead: peak first, then the mark")},
        tr("As the instrument gives it; readings from recordings are lags"),
        [](BalanceJob& job, int index) { job.convention.phase = index == 1 ? PhaseIs::Lead : PhaseIs::Lag; });
}

void BalanceRotorStep::buildRotor(QFormLayout* form) {
    component_ = new QComboBox(page_);
    component_->setObjectName(QStringLiteral("balanceComponent"));
    component_->setAccessibleName(tr("Rotor of the"));
    component_->setToolTip(tr("Which rotor is balanced; speed and grade follow"));
    component_->addItems({tr("motor"), tr("driven machine")});
    form->addRow(tr("Rotor of the"), component_);
    connect(component_, &QComboBox::activated, this, &BalanceRotorStep::chooseComponent);
    mass_ = number(form, tr("Rotor mass"), QStringLiteral("balanceMass"), tr("kg"), 0.01, 1e6,
                   [](BalanceJob& job, std::optional<double> value) { job.rotor.massKg = value; });
    speed_ = number(form, tr("Speed"), QStringLiteral("balanceSpeed"), tr("r/min"), 1, 1e5,
                    [](BalanceJob& job, std::optional<double> value) { job.rotor.rpm = value; });
    std::vector<QString> grades;
    for (const double grade : kBalanceGrades)
        grades.push_back(shown(gradeName(grade)));
    grade_ = choice(form, tr("Balance grade"), "balanceGrade", grades,
                    tr("ISO 21940-11, from memory: motors to 950 r/min or under 80 mm shaft height G 6.3, "
                       "other motors G 2.5, fans and pumps G 6.3"),
                    [](BalanceJob& job, int index) { job.rotor.grade = kBalanceGrades[std::size_t(index)]; });
    permissible_ = noteBelow(form, QStringLiteral("balancePermissible"));
    std::vector<QString> units;
    for (const char* unit : kUnits)
        units.push_back(QString::fromUtf8(unit));
    unit_ =
        choice(form, tr("Vibration in"), "balanceUnit", units, tr("One unit for all readings of this job"),
               [](BalanceJob& job, int index) { job.unit = kUnits[index]; });
}

BalanceRotorStep::PlaneFields BalanceRotorStep::buildPlane(std::size_t p) {
    PlaneFields fields;
    const auto named = [p](const char* name) { return QString::fromLatin1(name) + QString::number(p + 1); };
    fields.box = new QGroupBox(tr("Plane %1").arg(p + 1), page_);
    fields.box->setObjectName(named("balancePlane"));
    auto* form = new QFormLayout(fields.box);
    fields.name = line(form, tr("Name"), named("planeName"), tr("As people on the floor call it"),
                       [p](BalanceJob& job, const std::string& text) { job.planes[p].name = text; });
    fields.radius = number(
        form, tr("Radius of the masses"), named("planeRadius"), tr("mm"), 1, 1e5,
        [p](BalanceJob& job, std::optional<double> value) { job.planes[p].radiusMm = value.value_or(0); });
    fields.advice = noteBelow(form, named("planeAdvice"));
    fields.fromCentre =
        number(form, tr("From the centre of mass"), named("planeDistance"), tr("mm"), 1, 1e5,
               [p](BalanceJob& job, std::optional<double> value) { job.planes[p].fromCentreMm = value; });
    buildPlaces(form, p, fields);
    fields.existing =
        line(form, tr("Masses already there"), named("planeExisting"),
             tr("Grams at degrees, like: 12 @ 30; 5 @ 200 @ 390 with a radius of their own in mm"),
             [this, p](BalanceJob& job, const std::string& text) {
                 if (const auto masses = massesIn(shown(text), job.planes[p].radiusMm))
                     job.planes[p].existing = *masses;
             });
    fields.existingNote = noteBelow(form, named("planeExistingNote"));
    return fields;
}

void BalanceRotorStep::buildPlaces(QFormLayout* form, std::size_t p, PlaneFields& fields) {
    const auto named = [p](const char* name) { return QString::fromLatin1(name) + QString::number(p + 1); };
    fields.count = number(form, tr("Places (holes, blades)"), named("planePlaces"), tr("0 = any angle"), 0,
                          360, [p](BalanceJob& job, std::optional<double> value) {
                              job.planes[p].places.count = int(value.value_or(0));
                          });
    fields.first = number(form, tr("Place 1 at"), named("planeFirst"), tr("degrees"), -360, 360,
                          [p](BalanceJob& job, std::optional<double> value) {
                              job.planes[p].places.firstDegrees = value.value_or(0);
                          });
    fields.taken =
        line(form, tr("Places taken"), named("planeTaken"), tr("Numbers that can carry no mass, like: 3, 4"),
             [p](BalanceJob& job, const std::string& text) {
                 if (const auto numbers = numbersIn(shown(text))) job.planes[p].places.taken = *numbers;
             });
    fields.takenNote = noteBelow(form, named("planeTakenNote"));
    fields.most =
        number(form, tr("Most at one place"), named("planeMost"), tr("g"), 0.001, 1e6,
               [p](BalanceJob& job, std::optional<double> value) { job.planes[p].places.mostG = value; });
    fields.step = number(form, tr("Masses come in steps of"), named("planeStep"), tr("g"), 0, 1e5,
                         [p](BalanceJob& job, std::optional<double> value) {
                             job.planes[p].places.stepG = value.value_or(0);
                         });
}

BalanceRotorStep::SensorFields BalanceRotorStep::buildSensor(std::size_t s) {
    SensorFields fields;
    const auto named = [s](const char* name) { return QString::fromLatin1(name) + QString::number(s + 1); };
    fields.box = new QGroupBox(tr("Sensor %1").arg(s + 1), page_);
    fields.box->setObjectName(named("balanceSensor"));
    auto* form = new QFormLayout(fields.box);
    fields.name = line(form, tr("Name"), named("sensorName"), tr("Where it is read, like: DE horizontal"),
                       [s](BalanceJob& job, const std::string& text) { job.sensors[s].name = text; });
    fields.channel = new QComboBox(page_);
    fields.channel->setObjectName(named("sensorChannel"));
    fields.channel->setAccessibleName(tr("Same as the node's channel"));
    fields.channel->setToolTip(
        tr("If it is read where the node sits, later 1x of the node is told in grams"));
    fields.channel->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    fields.channel->setMinimumContentsLength(12);
    form->addRow(tr("Same as the node's channel"), fields.channel);
    connect(fields.channel, &QComboBox::activated, this, [this, s](int index) {
        const std::string channel = index > 0 ? kept(sensors_[s].channel->itemText(index)) : "";
        model_.edit([&](BalanceJob& job) { job.sensors[s].channel = channel; });
    });
    fields.degrees = number(
        form, tr("Stands at"), named("sensorDegrees"), tr("degrees"), -360, 360,
        [s](BalanceJob& job, std::optional<double> value) { job.sensors[s].degrees = value.value_or(0); });
    return fields;
}

void BalanceRotorStep::setDesk(const BalanceDesk& desk) {
    desk_ = desk;
    for (SensorFields& fields : sensors_) {
        const QSignalBlocker quiet(fields.channel);
        fields.channel->clear();
        fields.channel->addItem(tr("none of them"));
        for (const std::string& channel : desk.channels)
            fields.channel->addItem(shown(channel));
    }
    component_->setEnabled(desk.hasDriven);
    showValues();
}

void BalanceRotorStep::fillSaved() {
    const QSignalBlocker quiet(saved_);
    saved_->clear();
    saved_->addItem(tr("by trial runs"));
    const auto& own = model_.job().saved;
    for (const SavedInfluence& one : desk_.saved) {
        if (one.influence.planes != planesOf(model_.job().method)) continue;
        saved_->addItem(tr("as in %1, %2").arg(shown(one.from), dateText(one.date)),
                        shown(one.from + "\n" + one.date));
        if (own && own->from == one.from && own->date == one.date)
            saved_->setCurrentIndex(saved_->count() - 1);
    }
    if (own && saved_->currentIndex() == 0) {
        saved_->addItem(tr("as in %1, %2").arg(shown(own->from), dateText(own->date)));
        saved_->setCurrentIndex(saved_->count() - 1);
    }
    saved_->setEnabled(saved_->count() > 1 && model_.job().method != BalanceMethod::FourRuns);
}

void BalanceRotorStep::chooseSaved(int index) {
    const std::string key = kept(saved_->itemData(index).toString());
    model_.edit([&](BalanceJob& job) {
        if (index == 0) return job.saved.reset();
        for (const SavedInfluence& one : desk_.saved)
            if (one.from + "\n" + one.date == key) job.saved = one;
    });
}

void BalanceRotorStep::chooseComponent(int index) {
    const BalanceJob& proposed = index == 1 ? desk_.proposedDriven : desk_.proposedDriver;
    model_.edit([&](BalanceJob& job) {
        job.rotor.component = index == 1 ? "driven" : "driver";
        job.rotor.rpm = proposed.rotor.rpm;
        job.rotor.grade = proposed.rotor.grade;
        if (!proposed.planes.empty() && job.planes[0].places.count == 0)
            job.planes[0].places.count = proposed.planes[0].places.count;
    });
}

void BalanceRotorStep::showValues() {
    const BalanceJob& job = model_.job();
    page_->setEnabled(!model_.closed());
    fillSaved();
    choose(method_, int(job.method));
    choose(component_, job.rotor.component == "driven" ? 1 : 0);
    choose(left_, job.trialMasses == TrialMasses::LeftOn ? 1 : 0);
    left_->setEnabled(job.method != BalanceMethod::FourRuns && !job.saved);
    choose(turns_, job.rotor.clockwise ? 0 : 1);
    choose(places_, job.convention.rotor == Counted::WithRotation ? 1 : 0);
    choose(phase_, job.convention.phase == PhaseIs::Lead ? 1 : 0);
    phase_->setEnabled(job.method != BalanceMethod::FourRuns);
    for (std::size_t i = 0; i < kBalanceGrades.size(); ++i)
        if (kBalanceGrades[i] == job.rotor.grade) choose(grade_, int(i));
    choose(unit_, unit_->findText(shown(job.unit)));
    setText(seen_, job.rotor.viewedFrom);
    mass_->setValue(job.rotor.massKg);
    speed_->setValue(job.rotor.rpm);
    for (std::size_t i = 0; i < 2; ++i) {
        const bool there = i < job.planes.size();
        planes_[i].box->setVisible(there);
        sensors_[i].box->setVisible(there);
        if (there) showPlane(i);
        if (there) showSensor(i);
    }
    showNotes();
}

void BalanceRotorStep::showPlane(std::size_t p) {
    const BalancePlane& plane = model_.job().planes[p];
    PlaneFields& fields = planes_[p];
    setText(fields.name, plane.name);
    fields.radius->setValue(plane.radiusMm > 0 ? std::optional(plane.radiusMm) : std::nullopt);
    fields.fromCentre->setValue(plane.fromCentreMm);
    fields.count->setValue(plane.places.count);
    fields.first->setValue(plane.places.firstDegrees);
    fields.most->setValue(plane.places.mostG);
    fields.step->setValue(plane.places.stepG);
    const bool places = plane.places.count > 0;
    fields.first->setEnabled(places);
    fields.taken->setEnabled(places);
    fields.most->setEnabled(places);
    if (!fields.taken->hasFocus()) fields.taken->setText(numbersText(plane.places.taken));
    if (!fields.existing->hasFocus()) fields.existing->setText(massesText(plane.existing, plane.radiusMm));
    const auto two = model_.job().planes.size() == 2;
    auto* form = qobject_cast<QFormLayout*>(fields.box->layout());
    if (QWidget* title = form->labelForField(fields.fromCentre)) title->setVisible(two);
    fields.fromCentre->setVisible(two);
}

void BalanceRotorStep::showSensor(std::size_t s) {
    const BalanceSensor& sensor = model_.job().sensors[s];
    SensorFields& fields = sensors_[s];
    setText(fields.name, sensor.name);
    fields.degrees->setValue(sensor.degrees);
    const int index = fields.channel->findText(shown(sensor.channel));
    choose(fields.channel, sensor.channel.empty() ? 0 : index);
}

void BalanceRotorStep::showNotes() {
    const auto note = [&](BalanceField* field, const std::string& place) {
        field->setNote(model_.remarksAt(place), model_.troubleAt(place));
    };
    const auto say = [&](QLabel* label, const QString& text, Role ink) {
        label->setText(text);
        label->setVisible(!text.isEmpty());
        setInk(*label, theme_, ink);
    };
    note(mass_, "/rotor/mass_kg");
    note(speed_, "/rotor/rpm");
    say(savedNote_, model_.remarksAt("/saved"), Role::Trouble);
    const BalanceAnswer& answer = model_.answer();
    say(permissible_,
        answer.permissibleGmm
            ? tr("Permissible unbalance %1 g mm, offset of the centre of mass %2 µm")
                  .arg(significant(*answer.permissibleGmm, 4), significant(*answer.offsetUm))
            : QString(),
        Role::MutedInk);
    for (std::size_t p = 0; p < answer.planes.size() && p < planes_.size(); ++p) {
        const std::string place = "/planes/" + std::to_string(p);
        note(planes_[p].radius, place + "/radius_mm");
        note(planes_[p].fromCentre, place + "/from_centre_mm");
        note(planes_[p].count, place + "/places");
        const auto& most = answer.planes[p].trialMostG;
        say(planes_[p].advice,
            most ? tr("Trial mass at most %1 g: its force is a tenth of the weight (rule of thumb)")
                       .arg(significant(*most))
                 : QString(),
            Role::MutedInk);
        const bool badList = !numbersIn(planes_[p].taken->text());
        say(planes_[p].takenNote, badList ? tr("Must be whole numbers with commas between.") : QString(),
            Role::Trouble);
        const bool badMasses = !massesIn(planes_[p].existing->text(), 1);
        say(planes_[p].existingNote, badMasses ? tr("Must be like: 12 @ 30; 5 @ 200.") : QString(),
            Role::Trouble);
    }
}

}  // namespace fettle
