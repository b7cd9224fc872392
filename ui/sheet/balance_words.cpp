#include "ui/sheet/balance_words.h"

#include <QCoreApplication>
#include <cmath>

#include "core/workshop/unbalance.h"
#include "ui/model/numbers.h"
#include "ui/model/words.h"
#include "ui/plot/readout.h"

namespace fettle {

namespace {

constexpr double kHardlyShare = 0.002;  // of the vibration as found

class Words {
    Q_DECLARE_TR_FUNCTIONS(Balance)
  public:
    static QStringList cautions() {
        return {tr("Only people who are trained and authorised for it balance on the machine; start "
                   "permission is asked for and given for every single run."),
                tr("Before hands go near the rotor: isolate, lock and tag out every energy source, prove it "
                   "dead, and hold the rotor against turning by draught, load or springs."),
                tr("A trial mass flies off like a bullet: bolt, clamp or weld it so that it holds the force "
                   "at full speed, on a place made to carry it; never tape, wire or magnet alone."),
                tr("Stay below the trial mass that is advised. If vibration rises sharply at run-up, stop at "
                   "once and do not wait for a reading."),
                tr("Every guard and cover is back and closed before each run, and nobody stands in the plane "
                   "of the rotor."),
                tr("Never pass the permitted speed of the rotor; mind the number of starts the motor allows "
                   "an hour, and hot surfaces."),
                tr("Do not grind, drill or weld a rotor without the maker's or a responsible engineer's "
                   "word; earth a weld beside the weld, never through bearings."),
                tr("Find out first whether it is unbalance: dirt, a cracked blade, looseness, a bent shaft "
                   "or resonance are not cured by masses."),
                tr("Site rules, local codes and licensed electrical and mechanical practice come first; this "
                   "page is advice and no permit to work.")};
    }

    static QString convention(const BalanceJob& job) {
        const bool with = job.convention.rotor == Counted::WithRotation;
        const QString side = job.rotor.viewedFrom.empty() ? tr("stated side") : shown(job.rotor.viewedFrom);
        const QString places =
            with ? tr("Places are counted with the rotation from the mark, seen from the %1.").arg(side)
                 : tr("Places are counted against the rotation from the mark, seen from the %1.").arg(side);
        const QString turns = job.rotor.clockwise ? tr("It turns clockwise as seen from there.")
                                                  : tr("It turns anticlockwise as seen from there.");
        if (job.method == BalanceMethod::FourRuns) return places + QChar(' ') + turns;
        const QString phase = job.convention.phase == PhaseIs::Lead
                                  ? tr("Phase is a lead: degrees from the peak to the mark.")
                                  : tr("Phase is a lag: degrees from the mark to the peak.");
        return places + QChar(' ') + turns + QChar(' ') + phase;
    }

    static QString method(BalanceMethod method) {
        if (method == BalanceMethod::TwoPlanes) return tr("two planes, influence coefficients");
        return method == BalanceMethod::FourRuns ? tr("one plane, four runs without phase")
                                                 : tr("one plane, influence coefficients");
    }

    static QString mass(const Polar& mass) {
        return tr("%1 g at %2°").arg(significant(mass.amount), degrees(mass));
    }
    static QString degrees(const Polar& polar) {
        const double whole = std::round(polar.degrees);
        return fixedText(whole >= 360 ? 0 : whole, 0);
    }

    static QString vibration(const Polar& vibration, const BalanceJob& job) {
        const QString amount = significant(vibration.amount) + QChar(' ') + shown(job.unit);
        if (job.method == BalanceMethod::FourRuns) return amount;
        return tr("%1 at %2°").arg(amount, degrees(vibration));
    }

    static BalanceTable splitTable(const SplitMass& split) {
        BalanceTable table{{tr("place"), tr("at"), tr("mass")}, {}};
        for (const PlacedMass& one : split.masses)
            table.rows.push_back({one.place > 0 ? QString::number(one.place) : tr("any"),
                                  tr("%1°").arg(degrees(one.mass)),
                                  tr("%1 g").arg(significant(one.mass.amount))});
        return table;
    }

    static BalanceSection plane(const BalanceJob& job, const BalanceAnswer& answer, std::size_t p) {
        const BalancePlane& plane = job.planes[p];
        const PlaneAnswer& out = answer.planes[p];
        BalanceSection section{
            tr("%1: fit %2").arg(shown(plane.name), mass(out.toFit)), {}, splitTable(out.split)};
        if (plane.radiusMm > 0)
            section.lines << tr("At a radius of %1 mm; unbalance as found %2 g mm.")
                                 .arg(significant(plane.radiusMm, 4), significant(out.initialGmm));
        if (job.trialMasses == TrialMasses::LeftOn && !job.saved && !job.trials.empty())
            section.lines << tr("The trial mass stays where it is.");
        else if (!job.trials.empty())
            section.lines << tr("The trial mass is taken off first.");
        if (out.split.leftOver.amount > 1e-6)
            section.lines << tr("Left over by the places and steps: %1.").arg(mass(out.split.leftOver));
        if (out.instead)
            section.lines << tr("Or take off all masses that are there and fit one instead: %1.")
                                 .arg(mass(*out.instead));
        addGrade(job, out, section);
        return section;
    }

    static void addGrade(const BalanceJob& job, const PlaneAnswer& out, BalanceSection& section) {
        const QString grade = shown(gradeName(job.rotor.grade));
        if (out.permissibleGmm && !out.residualGmm)
            section.lines << tr("Permissible here by %1: %2 g mm; the check run tells what is left.")
                                 .arg(grade, significant(*out.permissibleGmm));
        if (!out.residualGmm) return;
        if (!out.permissibleGmm)
            section.lines << tr("Left by the check run: %1 g mm.").arg(significant(*out.residualGmm));
        else if (*out.residualGmm <= *out.permissibleGmm)
            section.lines << tr("Left by the check run: %1 g mm, within the %2 g mm of %3 (ISO 21940-11).")
                                 .arg(significant(*out.residualGmm), significant(*out.permissibleGmm), grade);
        else
            section.lines << tr("Left by the check run: %1 g mm, more than the %2 g mm of %3 (ISO 21940-11).")
                                 .arg(significant(*out.residualGmm), significant(*out.permissibleGmm), grade);
        if (out.trim) section.lines << tr("To trim, add %1.").arg(mass(*out.trim));
    }

    static bool hardly(const SensorAnswer& sensor) {
        return sensor.predicted->amount < kHardlyShare * sensor.initial->amount;
    }

    static BalanceSection vibrationSection(const BalanceJob& job, const BalanceAnswer& answer) {
        BalanceSection section{tr("Vibration at 1x"), {}, {}};
        for (std::size_t s = 0; s < answer.sensors.size(); ++s) {
            const SensorAnswer& sensor = answer.sensors[s];
            if (!sensor.initial || !sensor.predicted) continue;
            QString line =
                tr("%1: as found %2; expected with these masses %3.")
                    .arg(shown(job.sensors[s].name), vibration(*sensor.initial, job),
                         hardly(sensor) ? tr("next to nothing") : vibration(*sensor.predicted, job));
            if (sensor.check) line += QChar(' ') + tr("Check run %1.").arg(vibration(*sensor.check, job));
            section.lines << line;
            for (std::size_t p = 0; p < answer.planes.size(); ++p)
                if (const auto perGram = answer.perGram(s, p))
                    section.lines << tr("One gram in %1 makes %2 %3 there.")
                                         .arg(shown(job.planes[p].name), significant(*perGram),
                                              shown(job.unit));
        }
        if (answer.circles)
            section.lines << tr("The circles miss one point by %1 % of the vibration as found.")
                                 .arg(significant(100 * answer.circles->missShare, 2));
        if (job.planes.size() == 2)
            section.lines << tr("Condition of both planes: %1; 1 is best, over 20 is refused.")
                                 .arg(significant(answer.condition, 2));
        return section;
    }

    static QStringList runRow(const QString& name, const std::optional<Polar>& trial, const BalanceRun& run,
                              const std::vector<std::optional<Polar>>& read, const BalanceJob& job) {
        QStringList row{name, trial && trial->amount > 0 ? mass(*trial) : QString()};
        for (const auto& one : read)
            row << (one ? vibration(*one, job) : QString());
        row << (run.rpm ? fixedText(*run.rpm, 0) : QString());
        return row;
    }

    static BalanceTable runs(const BalanceJob& job, const BalanceAnswer& answer) {
        BalanceTable table{{tr("run"), tr("trial mass")}, {}};
        for (const BalanceSensor& sensor : job.sensors)
            table.heads << shown(sensor.name);
        table.heads << tr("r/min");
        const auto at = [&](auto pick) {
            std::vector<std::optional<Polar>> read;
            for (const SensorAnswer& sensor : answer.sensors)
                read.push_back(pick(sensor));
            return read;
        };
        table.rows.push_back(runRow(tr("0, as found"), {}, job.initial,
                                    at([](const SensorAnswer& s) { return s.initial; }), job));
        for (std::size_t i = 0; i < job.trials.size(); ++i)
            table.rows.push_back(runRow(QString::number(i + 1), job.trials[i].trial, job.trials[i],
                                        at([i](const SensorAnswer& s) { return s.trials[i]; }), job));
        if (job.check)
            table.rows.push_back(
                runRow(tr("check"), {}, *job.check, at([](const SensorAnswer& s) { return s.check; }), job));
        return table;
    }

    static QString state(const BalanceAnswer& answer) {
        for (const BalanceRemark& remark : answer.remarks)
            if (remark.kind == BalanceRemark::Kind::Refusal)
                return tr("Refused: %1.").arg(shown(remark.words));
        if (answer.solved) return {};
        qsizetype missing = 0;
        for (const BalanceRemark& remark : answer.remarks)
            missing += remark.place.starts_with("/initial") || remark.place.starts_with("/trials");
        return missing == 1 ? tr("One value is missing yet before masses can be told.")
                            : tr("%1 values are missing yet before masses can be told.").arg(missing);
    }
};

}  // namespace

QStringList balanceCautions() {
    return Words::cautions();
}
QString conventionWords(const BalanceJob& job) {
    return Words::convention(job);
}
QString methodWords(BalanceMethod method) {
    return Words::method(method);
}
QString massWords(const Polar& mass) {
    return Words::mass(mass);
}
QString vibrationWords(const Polar& vibration, const BalanceJob& job) {
    return Words::vibration(vibration, job);
}

std::vector<BalanceSection> balanceResults(const BalanceJob& job, const BalanceAnswer& answer) {
    std::vector<BalanceSection> sections;
    if (!answer.solved) return sections;
    for (std::size_t p = 0; p < job.planes.size(); ++p)
        sections.push_back(Words::plane(job, answer, p));
    sections.push_back(Words::vibrationSection(job, answer));
    return sections;
}

BalanceTable runTable(const BalanceJob& job, const BalanceAnswer& answer) {
    return Words::runs(job, answer);
}

QStringList balanceDoubts(const BalanceAnswer& answer) {
    QStringList doubts;
    for (const BalanceRemark& remark : answer.remarks) {
        if (remark.kind == BalanceRemark::Kind::Missing) continue;
        QString words = shown(remark.words);
        if (!words.isEmpty()) words[0] = words[0].toUpper();
        doubts << words + QChar('.');
    }
    doubts.removeDuplicates();
    return doubts;
}

QString balanceState(const BalanceAnswer& answer) {
    return Words::state(answer);
}

}  // namespace fettle
