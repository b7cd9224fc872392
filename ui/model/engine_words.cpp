#include "ui/model/engine_words.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>

#include "core/diagnosis/wording.h"

namespace fettle {

namespace {

// Only for Qt's lupdate, which reads them here.
[[maybe_unused]] constexpr const char* kFixed[] = {
    QT_TRANSLATE_NOOP("Engine", "unbalance"),
    QT_TRANSLATE_NOOP("Engine", "misalignment"),
    QT_TRANSLATE_NOOP("Engine", "bent shaft"),
    QT_TRANSLATE_NOOP("Engine", "looseness"),
    QT_TRANSLATE_NOOP("Engine", "soft foot"),
    QT_TRANSLATE_NOOP("Engine", "resonance"),
    QT_TRANSLATE_NOOP("Engine", "rub"),
    QT_TRANSLATE_NOOP("Engine", "outer-race defect"),
    QT_TRANSLATE_NOOP("Engine", "inner-race defect"),
    QT_TRANSLATE_NOOP("Engine", "rolling-element defect"),
    QT_TRANSLATE_NOOP("Engine", "cage defect"),
    QT_TRANSLATE_NOOP("Engine", "dry or worn bearing"),
    QT_TRANSLATE_NOOP("Engine", "defect of an unknown bearing"),
    QT_TRANSLATE_NOOP("Engine", "bearing current"),
    QT_TRANSLATE_NOOP("Engine", "bearing"),
    QT_TRANSLATE_NOOP("Engine", "worn gear mesh"),
    QT_TRANSLATE_NOOP("Engine", "damaged gear tooth"),
    QT_TRANSLATE_NOOP("Engine", "worn or loose belt"),
    QT_TRANSLATE_NOOP("Engine", "blade pass"),
    QT_TRANSLATE_NOOP("Engine", "cavitation"),
    QT_TRANSLATE_NOOP("Engine", "rough flow"),
    QT_TRANSLATE_NOOP("Engine", "broken or cracked rotor bars"),
    QT_TRANSLATE_NOOP("Engine", "electrical 2 x mains"),
    QT_TRANSLATE_NOOP("Engine", "uneven air gap"),
    QT_TRANSLATE_NOOP("Engine", "unbalanced supply"),
    QT_TRANSLATE_NOOP("Engine", "overheating"),
    QT_TRANSLATE_NOOP("Engine", "sensor"),
    QT_TRANSLATE_NOOP("Engine", "raised vibration, cause not named"),
    QT_TRANSLATE_NOOP("Engine", "asked for by a person"),
    QT_TRANSLATE_NOOP("Engine", "early"),
    QT_TRANSLATE_NOOP("Engine", "developed"),
    QT_TRANSLATE_NOOP("Engine", "late"),
    QT_TRANSLATE_NOOP("Engine", "watch"),
    QT_TRANSLATE_NOOP("Engine", "suspect"),
    QT_TRANSLATE_NOOP("Engine", "probable"),
    QT_TRANSLATE_NOOP("Engine", "raised"),
    QT_TRANSLATE_NOOP("Engine", "high"),
    QT_TRANSLATE_NOOP("Engine", "stopped"),
    QT_TRANSLATE_NOOP("Engine", "energised_not_turning"),
    QT_TRANSLATE_NOOP("Engine", "turning_unpowered"),
    QT_TRANSLATE_NOOP("Engine", "run_up_or_down"),
    QT_TRANSLATE_NOOP("Engine", "running"),
    QT_TRANSLATE_NOOP("Engine", "running_unloaded"),
    QT_TRANSLATE_NOOP("Engine", "unsteady"),
    QT_TRANSLATE_NOOP("Engine", "unknown"),
    QT_TRANSLATE_NOOP("Engine", "found"),
    QT_TRANSLATE_NOOP("Engine", "absent"),
    QT_TRANSLATE_NOOP("Engine", "left out"),
    QT_TRANSLATE_NOOP("Engine", "simulation only"),
    QT_TRANSLATE_NOOP("Engine", "open data"),
    QT_TRANSLATE_NOOP("Engine", "published numbers"),
    QT_TRANSLATE_NOOP("Engine", "not stated"),
    QT_TRANSLATE_NOOP("Engine", "order parts by"),
    QT_TRANSLATE_NOOP("Engine", "do not run beyond"),
    QT_TRANSLATE_NOOP("Engine", "inspect by"),
    QT_TRANSLATE_NOOP("Engine", "next planned stop"),
    QT_TRANSLATE_NOOP("Engine", "filled in by the planner"),
    QT_TRANSLATE_NOOP("Engine", "order nothing before the inspection"),
    QT_TRANSLATE_NOOP("Engine",
                      "order nothing before the inspection; the parts listed are what a repair may take"),
    QT_TRANSLATE_NOOP("Engine", "nothing to wait for; have the small parts listed at hand"),
    QT_TRANSLATE_NOOP("Engine", "no part is known to be needed"),
    QT_TRANSLATE_NOOP("Engine", "no date: how bad it is was not graded"),
    QT_TRANSLATE_NOOP("Engine", "no job yet"),
    QT_TRANSLATE_NOOP("Engine", "act: ahead of the plan"),
    QT_TRANSLATE_NOOP("Engine", "act: ahead of the plan; the date below is the latest"),
    QT_TRANSLATE_NOOP("Engine", "act: ahead of the plan; the date below has passed"),
    QT_TRANSLATE_NOOP("Engine", "plan: a job for a planned stop"),
    QT_TRANSLATE_NOOP("Engine", "plan: a job for a planned stop before the date below"),
    QT_TRANSLATE_NOOP("Engine", "plan: a job for a planned stop; the date below has passed"),
    QT_TRANSLATE_NOOP("Engine", "watch: no repair yet, looked at again in the next round"),
    QT_TRANSLATE_NOOP("Engine", "unseen: nothing could be judged here this week"),
    QT_TRANSLATE_NOOP("Engine", "leave: nothing asks for work"),
    QT_TRANSLATE_NOOP("Engine",
                      "Possible: level and pattern fit, but these recordings alone cannot name the cause. "
                      "The inspection decides."),
    QT_TRANSLATE_NOOP(
        "Engine",
        "That it changed is as sure as the weight of the change says; the cause is possible, no "
        "more. The inspection decides."),
    QT_TRANSLATE_NOOP(
        "Engine",
        "This finding rests on a change against its own baseline, so there are no lines to add up."),
    QT_TRANSLATE_NOOP("Engine", "No evidence beyond chance. This is not the odds that the fault is there."),
    QT_TRANSLATE_NOOP("Engine",
                      "Too few findings were opened and reported here yet to say how often one is confirmed; "
                      "please report what you find."),
    QT_TRANSLATE_NOOP(
        "Engine",
        "This finding has no weight: it rests on level and pattern, so there are no lines to add up."),
    QT_TRANSLATE_NOOP("Engine", "stock number"),
    QT_TRANSLATE_NOOP("Engine", "on hand"),
    QT_TRANSLATE_NOOP("Engine", "lead time"),
    QT_TRANSLATE_NOOP("Engine", "point of isolation"),
    QT_TRANSLATE_NOOP("Engine", "locked by"),
    QT_TRANSLATE_NOOP("Engine", "proved dead by"),
    QT_TRANSLATE_NOOP(
        "Engine",
        "The site fills these in from its own list. Nothing here says which or how many there are."),
    QT_TRANSLATE_NOOP("Engine", "confirm on the plate before ordering"),
    QT_TRANSLATE_NOOP("Engine", "if the motor is changed instead; compare the plates"),
    QT_TRANSLATE_NOOP("Engine",
                      "People, hours, tools and permits are common practice for the inspection; the site "
                      "knows its machine and decides."),
    QT_TRANSLATE_NOOP("Engine",
                      "People, hours, tools and permits are common practice for such a job; the site knows "
                      "its machine and decides."),
    QT_TRANSLATE_NOOP("Engine", "grease"),
    QT_TRANSLATE_NOOP("Engine", "seal"),
    QT_TRANSLATE_NOOP("Engine", "coupling element"),
    QT_TRANSLATE_NOOP("Engine", "shims"),
    QT_TRANSLATE_NOOP("Engine", "spare motor"),
    QT_TRANSLATE_NOOP("Engine", "balance weights"),
    QT_TRANSLATE_NOOP("Engine", "foundation bolts"),
    QT_TRANSLATE_NOOP("Engine", "belt set"),
    QT_TRANSLATE_NOOP("Engine", "gear pair"),
    QT_TRANSLATE_NOOP("Engine", "oil"),
    QT_TRANSLATE_NOOP("Engine", "impeller"),
    QT_TRANSLATE_NOOP("Engine", "clearance"),
    QT_TRANSLATE_NOOP("Engine", "seal or shield"),
    QT_TRANSLATE_NOOP("Engine", "cage"),
    QT_TRANSLATE_NOOP("Engine", "insulated ring"),
    QT_TRANSLATE_NOOP("Engine", "type"),
    QT_TRANSLATE_NOOP("Engine", "grams"),
    QT_TRANSLATE_NOOP("Engine", "size"),
    QT_TRANSLATE_NOOP("Engine", "thickness"),
    QT_TRANSLATE_NOOP("Engine", "size of foot"),
    QT_TRANSLATE_NOOP("Engine", "designation"),
    QT_TRANSLATE_NOOP("Engine", "fixing"),
    QT_TRANSLATE_NOOP("Engine", "grade"),
    QT_TRANSLATE_NOOP("Engine", "drawing"),
    QT_TRANSLATE_NOOP("Engine", "teeth"),
    QT_TRANSLATE_NOOP("Engine", "litres"),
    QT_TRANSLATE_NOOP("Engine", "profile"),
    QT_TRANSLATE_NOOP("Engine", "length"),
    QT_TRANSLATE_NOOP("Engine", "belts in the set"),
    QT_TRANSLATE_NOOP("Engine", "lifting"),
    QT_TRANSLATE_NOOP("Engine", "hot work where a flame or grinder is used"),
    QT_TRANSLATE_NOOP("Engine", "work at height above 2 m"),
    QT_TRANSLATE_NOOP("Engine", "explosive dust or gas where the area is zoned"),
    QT_TRANSLATE_NOOP("Engine", "live electrical measurement"),
    QT_TRANSLATE_NOOP("Engine", "confined space where somebody reaches into the casing"),
    QT_TRANSLATE_NOOP("Engine", "opening of a line that holds a medium"),
    QT_TRANSLATE_NOOP(
        "Engine",
        "Before a guard comes off: isolate, lock and tag out every source of energy, and prove it dead."),
    QT_TRANSLATE_NOOP("Engine",
                      "Stored energy stays: springs, pressure, hanging loads, capacitors of drives, a fan "
                      "turned by draught. Block, vent, earth or wait."),
    QT_TRANSLATE_NOOP("Engine", "Surfaces may be hot enough to burn; let them cool or protect yourself."),
    QT_TRANSLATE_NOOP("Engine",
                      "Run tests only with every guard fitted and nobody within reach of moving parts."),
    QT_TRANSLATE_NOOP("Engine",
                      "Only people who are trained and authorised for it do this work; electrical work is "
                      "for qualified electrical staff."),
    QT_TRANSLATE_NOOP("Engine",
                      "Site rules, local codes and licensed electrical and mechanical practice come first. "
                      "This sheet is advice from measured data; it is no permit to work."),
    QT_TRANSLATE_NOOP("Engine", "as told"),
    QT_TRANSLATE_NOOP("Engine", "another fault"),
    QT_TRANSLATE_NOOP("Engine", "nothing found"),
    QT_TRANSLATE_NOOP("Engine", "not opened"),
    QT_TRANSLATE_NOOP("Engine", "it showed as (ISO 14224 manner)"),
    QT_TRANSLATE_NOOP("Engine", "VIB vibration"),
    QT_TRANSLATE_NOOP("Engine", "NOI noise"),
    QT_TRANSLATE_NOOP("Engine", "OHE overheating"),
    QT_TRANSLATE_NOOP("Engine", "STD structural"),
    QT_TRANSLATE_NOOP("Engine", "BRD breakdown"),
    QT_TRANSLATE_NOOP("Engine", "SER minor"),
    QT_TRANSLATE_NOOP("Engine", "OTH other"),
    QT_TRANSLATE_NOOP("Engine", "came from"),
    QT_TRANSLATE_NOOP("Engine", "wear"),
    QT_TRANSLATE_NOOP("Engine", "fatigue"),
    QT_TRANSLATE_NOOP("Engine", "breakage"),
    QT_TRANSLATE_NOOP("Engine", "corrosion"),
    QT_TRANSLATE_NOOP("Engine", "dirt or build-up"),
    QT_TRANSLATE_NOOP("Engine", "lubrication"),
    QT_TRANSLATE_NOOP("Engine", "electrical"),
    QT_TRANSLATE_NOOP("Engine", "other"),
    QT_TRANSLATE_NOOP("Engine", "bearing damage (ISO 15243)"),
    QT_TRANSLATE_NOOP("Engine", "electrical erosion"),
    QT_TRANSLATE_NOOP("Engine", "plastic deformation"),
    QT_TRANSLATE_NOOP("Engine", "cracking"),
    QT_TRANSLATE_NOOP("Engine", "old part kept and tagged"),
    QT_TRANSLATE_NOOP("Engine", "photo"),
    QT_TRANSLATE_NOOP("Engine", "yes"),
    QT_TRANSLATE_NOOP("Engine", "no"),
    QT_TRANSLATE_NOOP("Engine", "what was found"),
    QT_TRANSLATE_NOOP("Engine", "work order number"),
    QT_TRANSLATE_NOOP("Engine", "people x hours"),
    QT_TRANSLATE_NOOP("Engine", "done on"),
    QT_TRANSLATE_NOOP("Engine", "tag of the old part"),
    QT_TRANSLATE_NOOP("Engine", "alignment before: offset, angle"),
    QT_TRANSLATE_NOOP("Engine", "alignment after: offset, angle"),
    QT_TRANSLATE_NOOP("Engine", "planner"),
    QT_TRANSLATE_NOOP("Engine", "fitter"),
    QT_TRANSLATE_NOOP("Engine", "engineer"),
    QT_TRANSLATE_NOOP("Engine", "no axial channel: it shows there first"),
    QT_TRANSLATE_NOOP("Engine", "no radial channel"),
    QT_TRANSLATE_NOOP("Engine", "no vertical channel: a foot lifts that way"),
    QT_TRANSLATE_NOOP("Engine", "one radial direction: it answers in one direction most"),
    QT_TRANSLATE_NOOP("Engine", "the directions of the channels are not given"),
    QT_TRANSLATE_NOOP("Engine", "the number of blades is not known"),
    QT_TRANSLATE_NOOP("Engine", "no frame temperature comes with the recordings"),
    QT_TRANSLATE_NOOP("Engine", "its bearings are not described"),
    QT_TRANSLATE_NOOP("Engine", "its bearings are not described, and it is heard through the coupling only"),
    QT_TRANSLATE_NOOP("Engine", "its bearings are not described, and it is heard through the belt only"),
    QT_TRANSLATE_NOOP("Engine", "heard through the coupling only"),
    QT_TRANSLATE_NOOP("Engine", "heard through the belt only"),
    QT_TRANSLATE_NOOP("Engine", "no stray flux in this recording"),
    QT_TRANSLATE_NOOP("Engine", "no point at this bearing: its high frequencies hardly travel"),
    QT_TRANSLATE_NOOP("Engine", "the belt's length is not known, so its rate is not"),
    QT_TRANSLATE_NOOP("Engine", "the inverter's output frequency is not known"),
    QT_TRANSLATE_NOOP("Engine", "the number of rotor bars is not known, so the slot lines are not"),
    QT_TRANSLATE_NOOP("Engine", "the third harmonic lies above what this flux channel carries"),
    QT_TRANSLATE_NOOP("Engine", "an axial reading at the drive end"),
    QT_TRANSLATE_NOOP("Engine", "a radial reading"),
    QT_TRANSLATE_NOOP("Engine", "a vertical reading"),
    QT_TRANSLATE_NOOP("Engine", "a second radial reading, across the first"),
    QT_TRANSLATE_NOOP("Engine", "enter their designations"),
    QT_TRANSLATE_NOOP("Engine", "enter its geometry or orders, from the maker"),
    QT_TRANSLATE_NOOP("Engine", "enter pulleys and length"),
    QT_TRANSLATE_NOOP("Engine", "a node that sends it, with the ambient"),
    QT_TRANSLATE_NOOP("Engine", "a node with a flux channel at the motor's frame"),
    QT_TRANSLATE_NOOP("Engine", "a point at this bearing, stud or adhesive mount"),
    QT_TRANSLATE_NOOP("Engine", "a recording at another load"),
    QT_TRANSLATE_NOOP("Engine", "the speed better known: stray flux, or a tachometer"),
    QT_TRANSLATE_NOOP("Engine", "more than a minute at steady speed"),
    QT_TRANSLATE_NOOP("Engine", "a longer recording or a higher sample rate"),
    QT_TRANSLATE_NOOP("Engine", "a sample rate of 10 kHz or more on a stud or adhesive mount"),
    QT_TRANSLATE_NOOP("Engine", "a sample rate of 6.4 kHz or more and a stud or adhesive mount"),
    QT_TRANSLATE_NOOP("Engine", "a higher sample rate"),
    QT_TRANSLATE_NOOP("Engine", "a sensor of less noise"),
    QT_TRANSLATE_NOOP("Engine", "a sensor that reads lower"),
    QT_TRANSLATE_NOOP("Engine", "a wider range"),
    QT_TRANSLATE_NOOP("Engine", "a narrower range"),
    QT_TRANSLATE_NOOP("Engine", "a look at the node"),
    QT_TRANSLATE_NOOP("Engine", "the node seated firmly"),
    QT_TRANSLATE_NOOP("Engine", "enter rotor_bars, from the maker or a slot count"),
    QT_TRANSLATE_NOOP("Engine", "stray flux, or output_hz with the recording"),
    QT_TRANSLATE_NOOP("Engine", "a long narrow recording: 32 s at 1 kHz"),
    QT_TRANSLATE_NOOP("Engine", "What is not named here may still be missed."),
    QT_TRANSLATE_NOOP("Engine", "No blind spot is known for these recordings; that proves nothing."),
    QT_TRANSLATE_NOOP("Engine",
                      "The list tells what these sensors can hear. Leave proves no machine sound, and a "
                      "fault that draws no vibration, flux or heat at a sensor is not in it."),
    QT_TRANSLATE_NOOP("Engine",
                      "Windings, insulation, terminals and protection are not judged here, and a frame "
                      "temperature is not a winding temperature."),
    QT_TRANSLATE_NOOP("Engine",
                      "Entries by zone, by change and by hand carry no stated share of chance; those on "
                      "evidence do, on average over rounds, not each week."),
    QT_TRANSLATE_NOOP("Engine",
                      "Dates follow from how bad a finding is and how critical the machine is; they are no "
                      "forecast of how long a part lasts."),
    QT_TRANSLATE_NOOP("Engine",
                      "What happens between two recordings is not seen. Noise, smell, smoke, heat and what "
                      "operators notice come before this list."),
    QT_TRANSLATE_NOOP("Engine",
                      "Whoever answers for the machine has agreed in writing; permit, risk assessment and "
                      "site rules come first, and local codes and licensed practice before this sheet."),
    QT_TRANSLATE_NOOP("Engine",
                      "Only competent, authorised people make the change, with the machine isolated, locked "
                      "off, tried dead and at rest, stored energy let off."),
    QT_TRANSLATE_NOOP("Engine",
                      "The level, temperature or noise at which the machine is stopped at once is agreed and "
                      "written here, and somebody watches it during the first run."),
    QT_TRANSLATE_NOOP("Engine",
                      "Nobody stands in line with the rotor, reaches behind a guard or works on it while it "
                      "turns; it runs with all guards fitted."),
    QT_TRANSLATE_NOOP(
        "Engine",
        "The mass is secured so that it can neither turn nor fly off, clears everything fixed, and stays "
        "within the unbalance allowed for this rotor; it is taken out again and its removal is checked."),
    QT_TRANSLATE_NOOP("Engine",
                      "The damaged bearing carries its load for the whole trial: no lifting gear, no machine "
                      "whose seizing could hurt, a date by which it comes out."),
    QT_TRANSLATE_NOOP("Engine",
                      "The bolt is slackened with the machine at rest, never while it turns; the others hold "
                      "it alone, and it is tightened to its torque afterwards."),
    QT_TRANSLATE_NOOP("Engine", "a mass and its radius are needed"),
    QT_TRANSLATE_NOOP("Engine", "the speed of this shaft is not known"),
    QT_TRANSLATE_NOOP("Engine", "say where on the machine"),
    QT_TRANSLATE_NOOP("Engine", "choose the element that is damaged"),
    QT_TRANSLATE_NOOP("Engine", "say what is changed"),
    QT_TRANSLATE_NOOP("Engine", "choose the channel that is followed"),
    QT_TRANSLATE_NOOP(
        "Engine", "the orders of the bearing at this place are not known: give its geometry in the register"),
    QT_TRANSLATE_NOOP("Engine", "nothing is promised yet"),
    QT_TRANSLATE_NOOP("Engine", "the value at which the machine is stopped is not given"),
    QT_TRANSLATE_NOOP("Engine", "nobody is named who answers for it"),
    QT_TRANSLATE_NOOP(
        "Engine", "Before the change that never happens, and at most 1 recording in 20 reaches it alone."),
    QT_TRANSLATE_NOOP("Engine", "No other fault of a bearing is told with a greater weight."),
    QT_TRANSLATE_NOOP("Engine", "slip moves these lines by up to 2 %; they stand in the envelope spectrum"),
    QT_TRANSLATE_NOOP("Engine", "1x may stay as it is: the range holds what it is now"),
    QT_TRANSLATE_NOOP(
        "Engine",
        "a foot that lifts cuts the motion off: 1x grows, mostly upright, orders 2 to 10 follow, half orders "
        "where it rattles; how much cannot be said beforehand (common practice, no source)"),
    QT_TRANSLATE_NOOP("Engine", "listed machine has no decision"),
    QT_TRANSLATE_NOOP("Engine", "listed machines have no decision"),
    QT_TRANSLATE_NOOP("Engine", "unseen machine has no confirmed reason"),
    QT_TRANSLATE_NOOP("Engine", "unseen machines have no confirmed reason"),
    QT_TRANSLATE_NOOP("Engine", "machine of the sample was not opened"),
    QT_TRANSLATE_NOOP("Engine", "machines of the sample were not opened"),
    QT_TRANSLATE_NOOP("Engine", "the machines on leave are not accepted as a block"),
    QT_TRANSLATE_NOOP("Engine", "plane 1"),
    QT_TRANSLATE_NOOP("Engine", "plane 2"),
    QT_TRANSLATE_NOOP("Engine", "sensor 1"),
    QT_TRANSLATE_NOOP("Engine", "sensor 2"),
    QT_TRANSLATE_NOOP("Engine", "accepted"),
    QT_TRANSLATE_NOOP("Engine", "not decided yet"),
    QT_TRANSLATE_NOOP("Engine", "No machine is on leave."),
    QT_TRANSLATE_NOOP("Engine", "no finding was reported on yet"),
};

}  // namespace

QString engineText(const std::string& text) {
    return QCoreApplication::translate("Engine", text.c_str());
}

QString trialLackText(const std::string& lack) {
    static const QRegularExpression confirmed(QStringLiteral("^(\\d+) of (\\d+) cautions are confirmed$"));
    const auto found = confirmed.match(QString::fromStdString(lack));
    return found.hasMatch() ? QCoreApplication::translate("Engine", "%1 of %2 cautions are confirmed")
                                  .arg(found.captured(1), found.captured(2))
                            : engineText(lack);
}

QString roundLackText(const std::string& lack) {
    static const QRegularExpression counted(QStringLiteral("^(\\d+) (.+?): (.+?)(?: and (\\d+) more)?$"));
    const auto found = counted.match(QString::fromStdString(lack));
    if (!found.hasMatch()) return engineText(lack);
    const QString what = engineText(found.captured(2).toStdString());
    const QString tags = found.captured(3), more = found.captured(4);
    return more.isEmpty()
               ? QCoreApplication::translate("Engine", "%1 %2: %3").arg(found.captured(1), what, tags)
               : QCoreApplication::translate("Engine", "%1 %2: %3 and %4 more")
                     .arg(found.captured(1), what, tags, more);
}

QString faultNameText(const std::string& fault) {
    return engineText(faultName(fault));
}

QString blindWhatText(const BlindRow& row) {
    QStringList faults, places;
    for (const std::string& fault : row.faults)
        if (const QString name = faultNameText(fault); !faults.contains(name)) faults << name;
    for (const std::string& place : row.places)
        places << QString::fromStdString(place);
    const QString what = faults.join(QStringLiteral(", ")), at = places.join(QStringLiteral(", "));
    if (what.isEmpty()) return at;
    return at.isEmpty() ? what : QCoreApplication::translate("Engine", "%1 at %2").arg(what, at);
}

}  // namespace fettle
