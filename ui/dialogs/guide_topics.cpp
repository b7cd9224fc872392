#include "ui/dialogs/guide_topics.h"

#include <QCoreApplication>
#include <QRegularExpression>

#include "ui/model/shortcuts.h"

namespace fettle {

namespace {

struct Entry {
    const char *id, *title;
    std::vector<const char*> paragraphs;
};

const std::vector<Entry>& entries() {
    static const std::vector<Entry> all = {
        {"round",
         QT_TRANSLATE_NOOP("Guide", "The round"),
         {QT_TRANSLATE_NOOP(
              "Guide",
              "Once a week every machine of the fleet is looked at. The list is grouped by what is to be "
              "done: "
              "<b>act</b>, <b>plan</b>, <b>watch</b>, then <b>unseen</b> (no verdict was possible, with the "
              "reason), then <b>leave</b>. The disc beside a word fills with the urgency."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "Open a round from the Round menu. It is frozen at that moment: what arrives later is told, "
              "and counts in the next one."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "Go through the list with the arrow keys. {round.look} opens the machine, {round.accept} "
              "accepts the verdict, {round.dispute} disputes it with a reason, {round.defer} defers it to a "
              "day, {round.next} goes to the next one without a decision."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "Unseen machines want a reason ({round.unseen}). The machines on leave are accepted "
              "together ({round.leave}) after the sample that the program drew was opened: what the sample "
              "turns up is the only field check on what the list misses."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "Close the round when nothing is left to decide. A closed round is kept and never changes."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "The line under the title says how often the list is chance: at most one in ten of what is "
              "listed "
              "on evidence, on average over rounds; and how many were confirmed here so far.")}},
        {"machine",
         QT_TRANSLATE_NOOP("Guide", "The machine"),
         {QT_TRANSLATE_NOOP(
              "Guide",
              "Across the top the train: choose a bearing or a measuring point in it. On the left the "
              "waterfall over the trend, on one time axis; below them the chosen recording as spectrum, "
              "envelope spectrum, waveform or orbit. On the right the evidence."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "All parts share one selection: choosing a line in the table moves the cursor in every plot, "
              "choosing a moment in the trend loads that recording."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "Every plot is moved alike: the wheel zooms, dragging shifts, Shift and dragging frames a "
              "part, a double click or Home shows all. The arrow keys step from point to point. A right "
              "click "
              "copies or saves it as a picture or as a table."),
          QT_TRANSLATE_NOOP("Guide",
                            "{machine.sheet} shows the findings sheet, {machine.event} notes an event.")}},
        {"evidence",
         QT_TRANSLATE_NOOP("Guide", "The evidence"),
         {QT_TRANSLATE_NOOP(
              "Guide",
              "Each fault that was considered has a weight in decibans: how unlike chance its lines are. "
              "30 decibans are reached by chance lines in at most 1 recording of 1,000. The weight is not "
              "the odds that the fault is there: how often a repair found it is what this site's own record "
              "says."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "The table shows each expected line: where it should be, what was found there, how far above "
              "the "
              "floor, and how many decibans it added (to the right) or took away (to the left). The rows add "
              "up "
              "to the verdict."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "Below it stands the other side: what speaks against, which other fault would explain the "
              "same lines, which lines were left out because something ordinary stands there, and what the "
              "sensor could not see."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "A zone (A to D) grades shaft-rate and broadband vibration only. A bearing or gear finding has "
              "a stage instead: early, developed, late.")}},
        {"register",
         QT_TRANSLATE_NOOP("Guide", "The register"),
         {QT_TRANSLATE_NOOP(
              "Guide",
              "A verdict is as good as the description: poles and rated speed, bearings with their "
              "designation or geometry, teeth and pulleys, where each sensor sits and how it is fixed. What "
              "is "
              "wrong is said beside the field while you type; a description that is not sound is not saved."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "What you save holds from a day on: an examination uses what was fitted then. The history tab "
              "shows what changed when."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "The blind-spot table says for each fault whether this sensor could see it at all, and what "
              "would cure it."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "{register.save} saves, {register.add} makes a new machine, {register.copy} duplicates one.")}},
        {"import",
         QT_TRANSLATE_NOOP("Guide", "Taking recordings in"),
         {QT_TRANSLATE_NOOP("Guide",
                            "Files and folders can be dropped on the window. WAV, FLAC, CSV, universal "
                            "files, MAT and HDF5 are "
                            "read, and tables of ready-made levels; what a file cannot say comes from a file "
                            "of the same name "
                            "ending in .json beside it."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "What could not be taken in is listed with the file, the place and the rule that was broken; "
              "the "
              "rest goes on. Taking the same files in again does no harm."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "The clock of a cheap node may be wrong by a few per cent. Where the mains shows in a "
              "recording "
              "it is the ruler, and the page says so.")}},
        {"sheet",
         QT_TRANSLATE_NOOP("Guide", "The findings sheet"),
         {QT_TRANSLATE_NOOP(
              "Guide",
              "One page a job, for the planner who reads no spectra: what is wrong in shop words, by when, "
              "what to do, which parts, what to measure afterwards, and how to stay safe doing it."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "An empty box means the program does not know: confirm on the plate before ordering. The sheet "
              "is advice, not a permit to work.")}},
        {"jobs",
         QT_TRANSLATE_NOOP("Guide", "Jobs and what was found"),
         {QT_TRANSLATE_NOOP(
              "Guide",
              "A job groups the findings of one machine and is drafted, issued, scheduled, done, verified "
              "and "
              "closed. After a job the program watches whether it cured the machine: it compares 20 "
              "like recordings over 3 days with the time before."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "Report what was found when a finding was opened. From 20 reports on the sheets say how often "
              "the program was right here.")}},
        {"trial",
         QT_TRANSLATE_NOOP("Guide", "A trial"),
         {QT_TRANSLATE_NOOP(
              "Guide",
              "A trial proves detection on your own machine: a known mass, a bearing with a defect made on "
              "purpose, a slackened bolt. The effect to expect is computed and frozen before anything is "
              "changed; then recordings before and after are weighed against it."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "Agree stop values first. Never slacken or fit anything on a machine that could start; "
              "isolate, lock out and prove dead, and run with every guard fitted.")}},
        {"balance",
         QT_TRANSLATE_NOOP("Guide", "Balancing in place"),
         {QT_TRANSLATE_NOOP(
              "Guide",
              "One or two planes, by influence coefficients from amplitude and phase, or without phase by "
              "four "
              "runs. The angle convention is drawn: check it on the machine before the first mass goes on."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "Readings that scatter by more than 10 % or 10 degrees are refused: find out why first. "
              "Looseness, a bent shaft, a resonance or a loose build-up cannot be balanced away."),
          QT_TRANSLATE_NOOP(
              "Guide",
              "Secure trial masses against flying off, keep people out of the plane of rotation, and keep "
              "guards fitted in every run.")}},
        {"cannot",
         QT_TRANSLATE_NOOP("Guide", "What it cannot see"),
         {QT_TRANSLATE_NOOP(
              "Guide",
              "A node on a motor hardly hears the driven machine's bearings, cavitation or small gears. "
              "A cheap node ends at 1 to 3 kHz. Flux has no unit: only ratios and change count. Frame "
              "temperature is not winding temperature."),
          QT_TRANSLATE_NOOP("Guide",
                            "Each machine's own list is in its blind spots, with what would cure each.")}},
    };
    return all;
}

QString keyOf(const QString& id) {
    for (const Shortcut& shortcut : shortcuts())
        if (id == QString::fromLatin1(shortcut.id) && !shortcut.keys.isEmpty())
            return QStringLiteral("<b>%1</b>")
                .arg(shortcut.keys.first().toString(QKeySequence::NativeText).toHtmlEscaped());
    return {};
}

QString withKeys(QString text) {
    static const QRegularExpression place(QStringLiteral("\\{([a-z.]+)\\}"));
    for (auto found = place.match(text); found.hasMatch(); found = place.match(text))
        text.replace(found.capturedStart(), found.capturedLength(), keyOf(found.captured(1)));
    return text;
}

QString said(const char* text) {
    return QCoreApplication::translate("Guide", text);
}

}  // namespace

std::vector<GuideTopic> guideTopics() {
    std::vector<GuideTopic> topics;
    for (const Entry& entry : entries()) {
        GuideTopic topic{QString::fromLatin1(entry.id), said(entry.title), {}};
        for (const char* paragraph : entry.paragraphs)
            topic.paragraphs << withKeys(said(paragraph));
        topics.push_back(std::move(topic));
    }
    return topics;
}

}  // namespace fettle
