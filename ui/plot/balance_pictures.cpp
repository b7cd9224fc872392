#include "ui/plot/balance_pictures.h"

#include "ui/plot/readout.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr double kSeen = 0.01;  // of the arrow as found; shorter ones are a dot

QString text(const std::string& words) {
    return QString::fromStdString(words);
}

QString grams(double amount) {
    return tr("%1 g").arg(significant(amount));
}

bool isClockwiseOnScreen(const BalanceJob& job) {
    return job.rotor.clockwise == (job.convention.rotor == Counted::WithRotation);
}

void addPlaces(const PlacesOnRotor& places, RotorPicture& picture) {
    for (int number = 1; number <= places.count; ++number)
        picture.places.push_back({number, places.degreesOf(number), places.isFree(number)});
}

void addTrials(const BalanceJob& job, std::size_t plane, RotorPicture& picture) {
    for (std::size_t i = 0; i < job.trials.size(); ++i) {
        const bool here = job.method != BalanceMethod::TwoPlanes || i == plane;
        const auto& trial = job.trials[i].trial;
        if (here && trial && trial->amount > 0)
            picture.masses.push_back({grams(trial->amount), trial->degrees, true});
    }
}

// The direction the circles use: the frame of the rotor's places, not of phases.
Polar counted(const BalanceJob& job, Phasor phasor) {
    return massAsCounted(phasor, job.convention);
}

void addArrow(const std::optional<Polar>& read, const QString& name, bool strong, bool dashed,
              PolarPicture& picture) {
    if (read && read->amount > 0)
        picture.arrows.push_back({name, read->amount, read->degrees, strong, dashed});
}

void addCircles(const BalanceJob& job, const BalanceAnswer& answer, PolarPicture& picture) {
    const auto& initial = answer.sensors[0].initial;
    if (!initial) return;
    picture.circles.push_back({tr("run 0"), 0, 0, initial->amount});
    for (std::size_t i = 0; i < job.trials.size(); ++i) {
        const auto& read = answer.sensors[0].trials[i];
        if (read && job.trials[i].trial)
            picture.circles.push_back(
                {tr("run %1").arg(i + 1), initial->amount, job.trials[i].trial->degrees, read->amount});
    }
    if (!answer.circles) return;
    const Polar effect = counted(job, answer.circles->effect);
    picture.arrows.push_back({tr("correction"), effect.amount, effect.degrees, true, false});
}

}  // namespace

std::vector<RotorPicture> rotorPictures(const BalanceJob& job, const BalanceAnswer& answer, bool results) {
    std::vector<RotorPicture> pictures;
    for (std::size_t p = 0; p < job.planes.size() && p < answer.planes.size(); ++p) {
        RotorPicture picture;
        picture.title = text(job.planes[p].name);
        if (!job.rotor.viewedFrom.empty())
            picture.seenFrom = tr("seen from the %1").arg(text(job.rotor.viewedFrom));
        picture.clockwise = job.rotor.clockwise;
        picture.withRotation = job.convention.rotor == Counted::WithRotation;
        addPlaces(job.planes[p].places, picture);
        if (p < job.sensors.size())
            picture.sensors.push_back({text(job.sensors[p].name), job.sensors[p].degrees});
        if (results && answer.solved)
            for (const PlacedMass& one : answer.planes[p].split.masses)
                picture.masses.push_back({grams(one.mass.amount), one.mass.degrees, false});
        else
            addTrials(job, p, picture);
        pictures.push_back(std::move(picture));
    }
    return pictures;
}

std::vector<PolarPicture> polarPictures(const BalanceJob& job, const BalanceAnswer& answer) {
    std::vector<PolarPicture> pictures;
    for (std::size_t s = 0; s < job.sensors.size() && s < answer.sensors.size(); ++s) {
        const SensorAnswer& sensor = answer.sensors[s];
        PolarPicture picture;
        picture.title = text(job.sensors[s].name);
        picture.unit = text(job.unit);
        picture.empty = tr("Arrows stand here when readings are typed.");
        picture.clockwise = isClockwiseOnScreen(job);
        if (job.method == BalanceMethod::FourRuns) {
            addCircles(job, answer, picture);
        } else {
            addArrow(sensor.initial, tr("run 0"), true, false, picture);
            for (std::size_t i = 0; i < sensor.trials.size(); ++i)
                addArrow(sensor.trials[i], tr("run %1").arg(i + 1), false, false, picture);
            if (sensor.predicted && sensor.initial &&
                sensor.predicted->amount > kSeen * sensor.initial->amount)
                addArrow(sensor.predicted, tr("predicted"), false, true, picture);
            addArrow(sensor.check, tr("check"), true, false, picture);
        }
        pictures.push_back(std::move(picture));
    }
    return pictures;
}

}  // namespace fettle
