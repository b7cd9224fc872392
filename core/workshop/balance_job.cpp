#include "core/workshop/balance_job.h"

#include <cmath>

#include "core/workshop/unbalance.h"

namespace fettle {

namespace {

constexpr double kUsualSensorDegrees = 90;  // a horizontal one, the pick-up at the top

RotorKind kindOf(const Machine& machine, const std::string& component) {
    if (component == "driver") return RotorKind::ElectricMotor;
    const std::string& kind = machine.driven.kind;
    return kind == "fan" || kind == "pump" || kind == "blower" ? RotorKind::FanOrPump : RotorKind::General;
}

double ratioOf(const Machine& machine, const std::string& component) {
    const auto shaft = component == "driven" ? machine.shaftOfDriven() : std::optional<std::size_t>(0);
    return shaft && *shaft < machine.shafts.size() ? machine.shafts[*shaft].ratio : 1;
}

}  // namespace

std::size_t trialsOf(const BalanceJob& job) {
    if (job.method == BalanceMethod::FourRuns) return 3;
    return job.saved ? 0 : planesOf(job.method);
}

void fitToMethod(BalanceJob& job) {
    if (job.method == BalanceMethod::FourRuns) {
        job.saved.reset();
        job.trialMasses = TrialMasses::Removed;
    }
    if (job.saved && job.saved->influence.planes != planesOf(job.method)) job.saved.reset();
    const std::size_t planes = planesOf(job.method);
    const char* names[] = {"plane 1", "plane 2"};
    const char* sensors[] = {"sensor 1", "sensor 2"};
    while (job.planes.size() < planes)
        job.planes.push_back({names[job.planes.size()], 0, {}, {}, {}});
    while (job.sensors.size() < planes)
        job.sensors.push_back({sensors[job.sensors.size()], "", kUsualSensorDegrees});
    job.planes.resize(planes);
    job.sensors.resize(planes);
    job.trials.resize(trialsOf(job));
    job.initial.sensors.resize(planes);
    for (BalanceRun& run : job.trials)
        run.sensors.resize(planes);
    if (job.check) job.check->sensors.resize(planes);
}

BalanceJob proposedJob(const Machine& machine, const std::string& component) {
    BalanceJob job;
    job.machine = machine.tag;
    job.rotor.component = component;
    if (const auto rpm = machine.nominalRpm())
        job.rotor.rpm = std::round(*rpm * ratioOf(machine, component) * 10) / 10;
    job.rotor.grade =
        usualGrade(kindOf(machine, component), job.rotor.rpm.value_or(1500), machine.driver.shaftHeightMm);
    fitToMethod(job);
    if (component == "driven" && machine.driven.blades) job.planes[0].places.count = *machine.driven.blades;
    return job;
}

std::string toText(BalanceMethod method) {
    switch (method) {
        case BalanceMethod::OnePlane:
            return "one_plane";
        case BalanceMethod::TwoPlanes:
            return "two_planes";
        case BalanceMethod::FourRuns:
            break;
    }
    return "four_runs";
}

}  // namespace fettle
