#include "app/cli/compare_report.h"

#include <fmt/format.h>

#include <algorithm>

#include "app/cli/load.h"
#include "core/base/text.h"

namespace fettle {

namespace {

std::string describe(const Hypothesis& h) {
    const std::string how = h.weightDban ? fmt::format("{:.0f} decibans", *h.weightDban)
                                         : fmt::format("{} {}", h.severity.kind, h.severity.value);
    return fmt::format("{} @ {}, {}, {}", h.fault, h.at, how, h.urgency);
}

std::string describe(const Story& story) {
    std::string words = story.fault.empty() ? "no fault" : story.fault;
    if (!story.at.empty()) words += " @ " + story.at;
    if (story.decoy) words += " (decoy)";
    if (!story.from.empty()) words += " from " + story.from.substr(0, 10);
    if (!story.to.empty()) words += " to " + story.to.substr(0, 10);
    return story.text.empty() ? words : words + ": " + story.text;
}

void row(std::string_view mark, std::string_view what, std::string_view words) {
    print(fmt::format("    {:<12} {:<6} {}\n", mark, what, words));
}

// "7 recordings, running 6, stopped 1"
std::string statesOf(const Examination& examination) {
    std::map<std::string, int> states;
    for (const RecordingFacts& r : examination.recordings)
        ++states[r.running];
    std::string words = fmt::format("recordings {}", examination.recordings.size());
    for (const auto& [state, count] : states)
        words += fmt::format(", {} {}", state, count);
    return words;
}

// The worst of the weeks the span touches; what truth.json says of the end where it says no more.
std::optional<double> severityIn(const Story& story, Instant start, const Span& span) {
    if (story.byWeek.empty()) return story.severity;
    double worst = 0;
    for (std::size_t w = 0; w < story.byWeek.size(); ++w) {
        const Instant monday = start + std::chrono::days(7 * int(w));
        if (monday < span.until && monday + std::chrono::days(7) > span.from)
            worst = std::max(worst, story.byWeek[w]);
    }
    return worst;
}

std::vector<const Story*> pointersTo(const std::vector<Story>& stories) {
    std::vector<const Story*> all;
    for (const Story& story : stories)
        all.push_back(&story);
    return all;
}

bool isFaulty(const std::vector<Story>& stories) {
    return std::any_of(stories.begin(), stories.end(),
                       [](const Story& story) { return !story.decoy && !story.fault.empty(); });
}

std::string countsOf(const Tally& tally) {
    return fmt::format("{} hit, {} found under another name, {} missed, {} not visible in these recordings",
                       tally.of(Mark::Hit), tally.of(Mark::OtherName), tally.of(Mark::Missed),
                       tally.of(Mark::NotVisible));
}
}  // namespace

void Tally::add(const Tally& other) {
    for (const auto& [mark, count] : other.marks)
        marks[mark] += count;
    quiet += other.quiet;
    unheard += other.unheard;
    machines += other.machines;
    falseByEvidence += other.falseByEvidence;
    falseOnSound += other.falseOnSound;
    days += other.days;
}

CompareReport::CompareReport(Instant start, Span span, bool brief)
    : start_(start),
      span_(span),
      brief_(brief),
      first_(formatDate(span.from)),
      last_(formatDate(span.until - std::chrono::days(1))) {}

std::vector<Story> CompareReport::storiesNow(const SampleMachine& sample) const {
    std::vector<Story> now;
    for (const Story& story : sample.stories) {
        if (!atWork(story, first_, last_)) continue;
        now.push_back(story);
        now.back().severity = severityIn(story, start_, span_);
        if (!story.byWeek.empty() && now.back().severity == 0.0) now.pop_back();
    }
    return now;
}

void CompareReport::head(const Machine& machine, const std::string& state) const {
    if (!brief_) print(fmt::format("\n{}  {} ({})\n", oneLine(machine.tag), oneLine(machine.service), state));
}

void CompareReport::count(const Marked& marked, bool sound) {
    ++tally_.marks[marked.mark];
    if (marked.mark != Mark::False || !marked.finding->weightDban) return;
    ++tally_.falseByEvidence;
    tally_.falseOnSound += sound;
}

void CompareReport::show(const Machine& machine, const Marked& m) {
    if (brief_) {
        if (m.mark == Mark::False)
            print(fmt::format("  {} false  {}  {}\n", last_, oneLine(machine.tag), describe(*m.finding)));
        return;
    }
    std::string mark = toText(m.mark);
    if (m.story) {
        row(mark, "story", describe(*m.story));
        mark.clear();
    }
    const std::string other = m.mark == Mark::Hit ? m.why : "nothing; " + m.why;
    row(mark, "found", m.finding ? describe(*m.finding) : other);
    if (m.finding && !m.finding->sentence.empty()) row("", "", m.finding->sentence);
}

void CompareReport::addUnheard(const SampleMachine& sample, const Machine& machine) {
    const TimedPath* newest = nullptr;
    for (const TimedPath& recording : sample.recordings)
        if (recording.time < span_.until) newest = &recording;
    const std::string since =
        newest ? "no recording since " + formatDate(newest->time) : std::string("no recording");
    head(machine, since);
    for (const Story& story : storiesNow(sample)) {
        const Marked marked{story.fault == "sensor" ? Mark::Hit : Mark::NotVisible, since, &story, nullptr};
        count(marked, false);
        show(machine, marked);
    }
    ++tally_.unheard;
    ++tally_.machines;
}

void CompareReport::add(const SampleMachine& sample, const Machine& machine, const Examination& examination) {
    head(machine, statesOf(examination));
    const std::vector<Story> stories = storiesNow(sample);
    const std::vector<Marked> marks = marksOf(pointersTo(stories), examination);
    for (const Marked& m : marks) {
        count(m, !isFaulty(stories));
        show(machine, m);
    }
    ++tally_.machines;
    tally_.days += double((span_.until - span_.from) / std::chrono::days(1));
    tally_.quiet += marks.empty();
    if (brief_) return;
    for (const Story& story : stories)
        if (story.decoy || story.fault.empty()) row("", "story", describe(story));
    if (marks.empty()) row("quiet", "found", "nothing, as it should be");
}

void CompareReport::close() const {
    if (brief_) {
        print(fmt::format("{} to {}: {} stories at work: {}; quiet {}; false {}\n", first_, last_,
                          tally_.stories(), countsOf(tally_), tally_.quiet, tally_.of(Mark::False)));
        return;
    }
    print(fmt::format("\n{} stories at work from {} to {}: {}.\n", tally_.stories(), first_, last_,
                      countsOf(tally_)));
    print(fmt::format(
        "Machines rightly quiet: {}; false findings: {}, {} of them with a weight; machines without a "
        "recording: {}.\n",
        tally_.quiet, tally_.of(Mark::False), tally_.falseByEvidence, tally_.unheard));
}

void printSum(const Tally& sum) {
    const double months = sum.days / 30 / 100;
    const auto rate = [&](int count) { return months > 0 ? count / months : 0; };
    print(fmt::format("\n{} machine-weeks, {} without a recording. Stories, once a week: {}.\n", sum.machines,
                      sum.unheard, countsOf(sum)));
    print(
        fmt::format("False findings {}: with a weight {}, {:.1f} per 100 machines and month of 30 days; "
                    "of these on machines with no fault at work {}, {:.1f}.\n",
                    sum.of(Mark::False), sum.falseByEvidence, rate(sum.falseByEvidence), sum.falseOnSound,
                    rate(sum.falseOnSound)));
}

}  // namespace fettle
