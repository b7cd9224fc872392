#include <fmt/format.h>

#include <algorithm>
#include <memory>
#include <thread>

#include "core/base/caught.h"
#include "core/exchange/examination_json.h"
#include "core/fleet/asks.h"
#include "core/intake/checks.h"
#include "core/intake/import.h"
#include "core/intake/ordered_work.h"
#include "core/intake/stored_form.h"
#include "core/intake/weight_changes.h"

namespace fettle {

namespace {

struct Again {
    const BookedMachine* machine = nullptr;
    RecordingEntry entry;
};

struct Weighed {
    std::optional<NewRecording> recording;  // empty: `objection`, or `failure`
    std::vector<std::string> changes;
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
        const auto recording = fleet_->recordings().recording(again.entry.id);
        if (!recording) return fail(recording.error());
        const auto description = again.machine->describedAt(again.entry.time);
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
        const auto before = fleet_->recordings().examinationJson(again.entry.id);
        if (!before) return fail(before.error());
        if (const auto old = examinationFromText(*before, fleetPath_))
            weighed.changes = weightChanges(*old, examined->examination);
        weighed.recording = storedForm(*recording, again.entry.machine, **description, *examined);
        weighed.bytes = bytesOf(*weighed.recording);
        return {};
    }

    std::string fleetPath_;
    std::unique_ptr<FleetFile> fleet_;
};

class ReExamination {
  public:
    ReExamination(FleetFile& fleet, const ImportOptions& options) : fleet_(fleet), options_(options) {}

    Status choose(const RegisterBook& book, const std::string& tag);
    Status run();
    ReExamineReport& report() { return report_; }

  private:
    Status chooseOf(const BookedMachine& machine);
    Status take(const Again& again, Weighed weighed);

    FleetFile& fleet_;
    const ImportOptions& options_;
    std::vector<Again> list_;
    ReExamineReport report_;
};

Status ReExamination::choose(const RegisterBook& book, const std::string& tag) {
    if (!tag.empty() && !book.find(tag))
        return fail(ErrorKind::NotFound, fleet_.path(), "",
                    fmt::format("no machine \"{}\" in the register", tag));
    for (const BookedMachine* machine : book.all())
        if (tag.empty() || machine->entry.tag == tag)
            if (auto chosen = chooseOf(*machine); !chosen) return chosen;
    return {};
}

Status ReExamination::chooseOf(const BookedMachine& machine) {
    using namespace std::chrono;
    const Instant first = sys_days(year(1970) / 1 / 1), last = sys_days(year(2200) / 1 / 1);
    auto entries = fleet_.recordings().list(machine.entry.id, first, last);
    if (!entries) return fail(entries.error());
    const std::string engine = WeighingSettings().engine();
    for (RecordingEntry& entry : *entries) {
        if (entry.engine == engine && !options_.evenCurrent)
            ++report_.alreadyCurrent;
        else if (!entry.hasWaveform)
            ++report_.withoutWaveform;
        else
            list_.push_back({&machine, std::move(entry)});
    }
    return {};
}

Status ReExamination::take(const Again& again, Weighed weighed) {
    const std::string name = fmt::format("{} {}", again.machine->entry.tag, formatUtc(again.entry.time));
    if (weighed.failure) {
        if (weighed.failure->kind != ErrorKind::Damaged) return fail(*weighed.failure);
        weighed.objection = weighed.failure->sentence();
    }
    if (!weighed.recording) {
        report_.refused.push_back(name + ": " + weighed.objection);
        return {};
    }
    auto replaced = fleet_.recordings().replaceExamination(again.entry.id, *weighed.recording);
    if (!replaced) return replaced;
    ++report_.weighed;
    for (const std::string& change : weighed.changes)
        report_.changed.push_back(name + " " + change);
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
    report_.cancelled = options_.cancel.cancelled();
    return {};
}

}  // namespace

Result<ReExamineReport> reExamine(FleetFile& fleet, const std::string& tag, const ImportOptions& options) {
    if (!fleet.writable()) return fail(ErrorKind::Unwritable, fleet.path(), "", fleet.word());
    const auto book = RegisterBook::of(fleet);
    if (!book) return fail(book.error());
    ReExamination again(fleet, options);
    if (auto chosen = again.choose(*book, tag); !chosen) return fail(chosen.error());
    if (auto run = again.run(); !run) return fail(run.error());
    if (const auto answered = answerAsks(fleet, tag); !answered) return fail(answered.error());
    return std::move(again.report());
}

}  // namespace fettle
