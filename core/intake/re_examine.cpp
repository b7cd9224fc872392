#include "core/intake/re_examine.h"

#include <fmt/format.h>

#include <algorithm>
#include <memory>
#include <thread>

#include "core/base/caught.h"
#include "core/exchange/examination_json.h"
#include "core/fleet/asks.h"
#include "core/intake/checks.h"
#include "core/intake/ordered_work.h"
#include "core/intake/stored_form.h"
#include "core/intake/verdict_changes.h"
#include "core/store/packed_recording.h"

namespace fettle {

namespace {

struct Again {
    const BookedMachine* machine = nullptr;
    ToWeighAgain recording;
};

struct Weighed {
    std::optional<PackedRecording> recording;  // empty: `objection`, or `failure`
    std::vector<VerdictChange> changes;
    std::string objection;
    std::optional<Error> failure;
    std::size_t bytes = 0;
};

// Reads and weighs on a connection of its own.
class Reweigher {
  public:
    explicit Reweigher(std::string fleetPath) : fleetPath_(std::move(fleetPath)) {}

    Weighed weigh(const Again& again) {
        Weighed weighed;
        const std::string thrown = caught([&] {
            if (auto done = weighInto(again, weighed); !done) weighed.failure = done.error();
        });
        if (thrown.empty()) return weighed;
        Weighed objected;
        objected.objection = thrown;
        return objected;
    }

  private:
    Status open() {
        if (fleet_) return {};
        FleetTuning tuning;
        tuning.quickCheckBytes = 0;
        auto opened = FleetFile::open(fleetPath_, OpenMode::ReadOnly, tuning);
        if (!opened) return fail(opened.error());
        fleet_ = std::move(*opened);
        return {};
    }

    Status weighInto(const Again& again, Weighed& weighed) {
        if (auto opened = open(); !opened) return opened;
        const std::int64_t id = again.recording.recording;
        const auto recording = fleet_->recordings().recording(id);
        if (!recording) return fail(recording.error());
        const auto description = again.machine->describedAt(again.recording.time);
        if (!description) {
            weighed.objection = description.error().sentence();
            return {};
        }
        if (const auto objection = misfit(**recording, **description)) {
            weighed.objection = objection->place + " " + objection->rule;
            return {};
        }
        const auto examined = examineRecording(**description, *recording);
        if (!examined) return fail(examined.error());
        const auto before = fleet_->recordings().examinationJson(id);
        if (!before && before.error().kind != ErrorKind::NotFound) return fail(before.error());
        const auto old =
            before ? examinationFromText(*before, fleetPath_) : Result<Examination>(fail(before.error()));
        if (old) weighed.changes = verdictChanges(*old, examined->examination);
        NewRecording form = storedForm(*recording, again.machine->entry.id, **description, *examined);
        form.recording = nullptr;  // its samples stay as they are
        weighed.recording = packComputed(std::move(form));
        weighed.bytes = bytesOf(*weighed.recording);
        return {};
    }

    std::string fleetPath_;
    std::unique_ptr<FleetFile> fleet_;
};

class ReExamination {
  public:
    ReExamination(FleetFile& fleet, std::string tag, const ImportOptions& options)
        : fleet_(fleet), tag_(std::move(tag)), options_(options) {}

    Status choose(const RegisterBook& book);
    Status run();
    ReExamineReport& report() { return report_; }

  private:
    Status chooseOf(const BookedMachine& machine);
    Status begin();
    Status take(const Again& again, Weighed weighed);
    Status commit();
    tl::unexpected<Error> stops(Error error) const;

    FleetFile& fleet_;
    std::string tag_;
    const ImportOptions& options_;
    const std::string engine_ = WeighingSettings().engine();
    std::vector<Again> list_;
    std::vector<std::pair<const Again*, Weighed>> batch_;
    ReExamineReport report_;
};

std::string nameOf(const Again& again) {
    return fmt::format("{} {}", again.machine->entry.tag, formatUtc(again.recording.time));
}

// What stops a run is told with what it leaves.
tl::unexpected<Error> ReExamination::stops(Error error) const {
    error.rule +=
        fmt::format("; re-examination stopped: {} of {} recordings are weighed, start it again for the rest",
                    report_.weighed, list_.size());
    return fail(std::move(error));
}

Status ReExamination::choose(const RegisterBook& book) {
    if (!tag_.empty() && !book.find(tag_))
        return fail(ErrorKind::NotFound, fleet_.path(), "",
                    fmt::format("no machine \"{}\" in the register", tag_));
    auto unfinished = fleet_.reExaminations().unfinished(engine_, tag_, options_.evenCurrent);
    if (!unfinished) return fail(unfinished.error());
    if (*unfinished) report_.run = (*unfinished)->id;
    for (const BookedMachine* machine : book.all())
        if (tag_.empty() || machine->entry.tag == tag_)
            if (auto chosen = chooseOf(*machine); !chosen) return chosen;
    return {};
}

Status ReExamination::chooseOf(const BookedMachine& machine) {
    auto kept = fleet_.reExaminations().choose(machine.entry.id, engine_, options_.evenCurrent, report_.run);
    if (!kept) return fail(kept.error());
    report_.alreadyCurrent += kept->current;
    report_.withoutWaveform += kept->withoutWaveform;
    for (ToWeighAgain& one : kept->toWeigh)
        list_.push_back({&machine, std::move(one)});
    return {};
}

Status ReExamination::begin() {
    if (report_.run) return {};
    const auto begun = fleet_.reExaminations().begin(engine_, tag_, options_.evenCurrent);
    if (!begun) return fail(begun.error());
    report_.run = begun->id;
    return {};
}

Status ReExamination::take(const Again& again, Weighed weighed) {
    if (weighed.failure && weighed.failure->kind == ErrorKind::NotFound) {
        ++report_.withoutWaveform;  // thinned since it was chosen
        return {};
    }
    if (weighed.failure) {
        if (weighed.failure->kind != ErrorKind::Damaged) return stops(*weighed.failure);
        weighed.objection = weighed.failure->sentence();
    }
    if (!weighed.recording) {
        report_.refused.push_back(nameOf(again) + ": " + weighed.objection);
        return {};
    }
    batch_.emplace_back(&again, std::move(weighed));
    return batch_.size() >= options_.batch ? commit() : Status{};
}

// New verdicts and what they replace in one transaction: after a kill both are there or neither.
Status ReExamination::commit() {
    if (batch_.empty()) return {};
    if (auto begun = begin(); !begun) return stops(begun.error());
    auto written = fleet_.together([&]() -> Status {
        for (auto& [again, weighed] : batch_) {
            const ToWeighAgain& one = again->recording;
            if (auto good = fleet_.recordings().replaceExamination(one.recording, *weighed.recording); !good)
                return good;
            if (auto good =
                    fleet_.reExaminations().note(*report_.run, one.recording, one.engine, weighed.changes);
                !good)
                return good;
        }
        return {};
    });
    if (!written) return stops(written.error());
    std::vector<std::string> safe;
    for (const auto& [again, weighed] : batch_) {
        ++report_.weighed;
        report_.changed += !weighed.changes.empty();
        safe.push_back(nameOf(*again));
    }
    batch_.clear();
    if (options_.acknowledged) options_.acknowledged(safe);
    return {};
}

Status ReExamination::run() {
    const int wanted = options_.threads > 0 ? options_.threads : int(std::thread::hardware_concurrency());
    const int threads = std::clamp<int>(wanted, 1, int(std::max<std::size_t>(1, list_.size())));
    OrderedWork<Weighed> work(list_.size(), threads, [this] {
        const auto reweigher = std::make_shared<Reweigher>(fleet_.path());
        return [reweigher, this](std::size_t i) { return reweigher->weigh(list_[i]); };
    });
    std::size_t done = 0;
    while (auto weighed = work.take(options_.cancel)) {
        const Again& again = list_[done++];
        if (auto taken = take(again, std::move(*weighed)); !taken) return taken;
        if (options_.progress) options_.progress(done, list_.size(), again.machine->entry.tag);
    }
    if (auto committed = commit(); !committed) return committed;
    report_.cancelled = options_.cancel.cancelled() && done < list_.size();
    if (report_.cancelled || !report_.run) return {};
    const auto finished = fleet_.reExaminations().finish(*report_.run);
    return finished ? finished : stops(finished.error());
}

}  // namespace

Result<ReExamineReport> reExamine(FleetFile& fleet, const std::string& tag, const ImportOptions& options) {
    if (!fleet.writable()) return fail(ErrorKind::Unwritable, fleet.path(), "", fleet.word());
    const auto book = RegisterBook::of(fleet);
    if (!book) return fail(book.error());
    ReExamination again(fleet, tag, options);
    if (auto chosen = again.choose(*book); !chosen) return fail(chosen.error());
    if (auto run = again.run(); !run) return fail(run.error());
    if (const auto answered = answerAsks(fleet, tag); !answered) return fail(answered.error());
    return std::move(again.report());
}

}  // namespace fettle
