// Why: what the drawings of a balancing show, made from the job and its answer in one place for the window
// and for the printed record. Thread: any.
#pragma once

#include "core/workshop/balance_solve.h"
#include "ui/plot/polar_drawing.h"
#include "ui/plot/rotor_drawing.h"

namespace fettle {

// One a plane; with `results` the masses to fit, else the trial masses.
std::vector<RotorPicture> rotorPictures(const BalanceJob& job, const BalanceAnswer& answer, bool results);
// One a sensor.
std::vector<PolarPicture> polarPictures(const BalanceJob& job, const BalanceAnswer& answer);

}  // namespace fettle
