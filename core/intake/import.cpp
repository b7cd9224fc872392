#include "core/intake/import.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <span>
#include <thread>

#include "core/base/text.h"
#include "core/fleet/asks.h"
#include "core/intake/level_intake.h"
#include "core/intake/level_jumps.h"
#include "core/intake/ordered_work.h"
#include "core/intake/take_in.h"

namespace fettle {

namespace {

constexpr std::size_t kMostBatchBytes = std::size_t(128) << 20;
constexpr std::size_t kMostWarnings = 1000;  // of different words
constexpr std::size_t kMostNotes = 256;      // of the log of refusals, in one transaction

Instant nowOf(const ImportOptions& options) {
    using namespace std::chrono;
    return options.now ? *options.now : floor<milliseconds>(system_clock::now());
}

// The one who writes: takes outcomes in order, stores in batches, tells.
class Writer {
  public:
    Writer(FleetFile& fleet, const ImportOptions& options, Instant now)
        : fleet_(fleet), options_(options), now_(now), jumps_(fleet) {}

    Status begin();
    Status take(TakenIn taken);
    Status takeTable(const IntakeShared& shared, const TakenIn& taken);
    Refusal refusalOf(const std::string& path, const Objection& objection) const;
    void tellRefused(const std::string& path, const Objection& objection);
    Status keepRefused(const std::string& path, const Objection& objection);
    Status refuse(const std::string& path, const Objection& objection);
    Status refuseSeveral(const std::string& path, const std::vector<Objection>& objections);
    Status commit();
    ImportReport& report() { return report_; }

  private:
    Status keep(TakenIn& taken);
    void warn(const std::string& path, const std::string& text);
    Status storeBatch(std::vector<PutRecording>& outcomes, std::vector<bool>& there);
    Status settle(const std::vector<PutRecording>& outcomes, const std::vector<bool>& there);
    Status note(Refusal refusal);
    Status clear(const std::string& path);
    Status writeNotes();
    Status noLongerRefused(const std::string& path);
    tl::unexpected<Error> stops(Error error) const;

    FleetFile& fleet_;
    const ImportOptions& options_;
    Instant now_;
    LevelJumps jumps_;
    ImportReport report_;
    std::vector<PackedRecording> batch_;
    std::vector<std::string> batchPaths_, safe_;
    std::size_t batchBytes_ = 0;
    std::vector<Refusal>
        notes_;  // to be written; with an empty rule: what stood against that path is settled
    std::set<std::string> refusedBefore_;
    std::map<std::string, std::size_t> warned_;  // text to place in the report
};

Status Writer::begin() {
    const auto refusals = fleet_.log().refusals(true);
    if (!refusals) return fail(refusals.error());
    for (const Refusal& refusal : *refusals)
        refusedBefore_.insert(refusal.path);
    return {};
}

// What stops an import is told with what it leaves.
tl::unexpected<Error> Writer::stops(Error error) const {
    error.rule += fmt::format("; the import stopped: {} of {} recordings are in, start it again for the rest",
                              report_.stored + report_.already, report_.found);
    return fail(std::move(error));
}

void Writer::warn(const std::string& path, const std::string& text) {
    const auto known = warned_.find(text);
    if (known != warned_.end()) {
        ++report_.warnings[known->second].files;
    } else if (warned_.size() < kMostWarnings) {
        warned_[text] = report_.warnings.size();
        report_.warnings.push_back({path, text, 1});
    }
}

Refusal Writer::refusalOf(const std::string& path, const Objection& objection) const {
    Refusal refusal;
    refusal.path = path;
    refusal.place = objection.place;
    refusal.rule = objection.rule;
    refusal.kind = objection.parked ? "parked" : "refused";
    refusal.firstSeen = refusal.lastSeen = now_;
    return refusal;
}

void Writer::tellRefused(const std::string& path, const Objection& objection) {
    report_.refusals.push_back(refusalOf(path, objection));
    if (options_.refused) options_.refused(report_.refusals.back());
}

Status Writer::refuse(const std::string& path, const Objection& objection) {
    tellRefused(path, objection);
    return keepRefused(path, objection);
}

Status Writer::keepRefused(const std::string& path, const Objection& objection) {
    Refusal refusal = refusalOf(path, objection);
    refusal.path = wholePath(path);
    if (refusal.path != path && refusedBefore_.count(path))
        if (auto cleared = clear(path); !cleared) return cleared;
    return note(std::move(refusal));
}

Status Writer::note(Refusal refusal) {
    notes_.push_back(std::move(refusal));
    return notes_.size() >= kMostNotes ? writeNotes() : Status{};
}

Status Writer::clear(const std::string& path) {
    Refusal settled;
    settled.path = path;
    return note(std::move(settled));
}

// In one transaction: a flush of the disk for each would cost more than reading the file did. What a kill
// takes with it is found again by the next import.
Status Writer::writeNotes() {
    if (notes_.empty()) return {};
    auto written = fleet_.together([&]() -> Status {
        for (const Refusal& one : notes_) {
            auto good = one.rule.empty() ? fleet_.log().clearRefusal(one.path) : fleet_.log().putRefusal(one);
            if (!good) return good;
        }
        return {};
    });
    if (!written) return stops(written.error());
    notes_.clear();
    return {};
}

Status Writer::keep(TakenIn& taken) {
    for (const std::string& warning : taken.warnings)
        warn(taken.path, warning);
    const auto jumps = jumps_.of(taken.recording.row);
    if (!jumps) return stops(jumps.error());
    for (const std::string& jump : *jumps)
        warn(taken.path, jump);
    batch_.push_back(std::move(taken.recording));
    batchPaths_.push_back(taken.path);
    batchBytes_ += taken.bytes;
    const bool full = batch_.size() >= options_.batch || batchBytes_ >= kMostBatchBytes;
    return full ? commit() : Status{};
}

Status Writer::take(TakenIn taken) {
    switch (taken.kind) {
        case TakenIn::Kind::Examined:
            return keep(taken);
        case TakenIn::Kind::Objected:
            if (taken.objection.unread && options_.mayWait && options_.mayWait(taken.path)) {
                ++report_.putOff;
                return {};
            }
            return refuse(taken.path, taken.objection);
        case TakenIn::Kind::PassedOver:
            ++report_.passedOver;
            --report_.found;
            return {};
        case TakenIn::Kind::Known:
            ++report_.already;
            safe_.push_back(taken.path);
            return noLongerRefused(taken.path);
        case TakenIn::Kind::Levels:
        case TakenIn::Kind::Stopped:
            break;
    }
    return stops(taken.failure);
}

// Whole before the next file: its rows may be of the same moments as those of another table.
Status Writer::takeTable(const IntakeShared& shared, const TakenIn& taken) {
    if (auto done = commit(); !done) return done;
    const auto levels = takeLevels(fleet_, taken.table, taken.path, {shared.book, shared.closed, now_});
    if (!levels && levels.error().file != taken.path) return stops(levels.error());
    if (!levels && options_.mayWait && options_.mayWait(taken.path)) {
        ++report_.putOff;
        return {};
    }
    if (!levels) return refuse(taken.path, objectionFrom(levels.error(), taken.path));
    ++report_.tables;
    report_.levels += levels->levels;
    report_.levelsAlready += levels->already;
    report_.levelRowsRefused += levels->rowsObjected;
    report_.late += levels->late;
    for (const std::string& warning : levels->warnings)
        warn(taken.path, warning);
    if (!levels->objections.empty()) return refuseSeveral(taken.path, levels->objections);
    safe_.push_back(taken.path);
    return noLongerRefused(taken.path);
}

// Each is told; kept is one word a file, so it holds them all.
Status Writer::refuseSeveral(const std::string& path, const std::vector<Objection>& objections) {
    for (std::size_t i = 1; i < objections.size(); ++i)
        tellRefused(path, objections[i]);
    Objection all = objections.front();
    tellRefused(path, all);
    for (std::size_t i = 1; i < objections.size(); ++i)
        all.rule += fmt::format("; {}: {}", objections[i].place, objections[i].rule);
    return keepRefused(path, all);
}

// Text that is not UTF-8 stands in the file with '?' in it: such paths are always asked for.
Status Writer::noLongerRefused(const std::string& path) {
    for (const std::string& name : {path, wholePath(path)}) {
        if (!refusedBefore_.count(name) && isUtf8(name)) continue;
        if (auto cleared = clear(name); !cleared) return cleared;
    }
    return {};
}

// All in one transaction. Where one of them is what the store will not have, each by itself, and that one is
// a refusal; where the file cannot be written, nothing of the batch is there.
Status Writer::storeBatch(std::vector<PutRecording>& outcomes, std::vector<bool>& there) {
    auto put = fleet_.recordings().putPacked(batch_);
    there.assign(batch_.size(), true);
    if (put) {
        outcomes = std::move(*put);
        return {};
    }
    if (put.error().kind != ErrorKind::Invalid && put.error().kind != ErrorKind::Unsupported)
        return stops(put.error());
    outcomes.assign(batch_.size(), PutRecording::Stored);
    for (std::size_t i = 0; i < batch_.size(); ++i) {
        const auto one = fleet_.recordings().putPacked(std::span(&batch_[i], 1));
        there[i] = one.has_value();
        if (one) {
            outcomes[i] = one->front();
            continue;
        }
        if (one.error().kind != ErrorKind::Invalid && one.error().kind != ErrorKind::Unsupported)
            return stops(one.error());
        if (auto refused = refuse(batchPaths_[i], {false, one.error().place, one.error().rule}); !refused)
            return refused;
    }
    return {};
}

Status Writer::settle(const std::vector<PutRecording>& outcomes, const std::vector<bool>& there) {
    for (std::size_t i = 0; i < outcomes.size(); ++i) {
        if (!there[i]) continue;
        const bool stored = outcomes[i] == PutRecording::Stored;
        ++(stored ? report_.stored : report_.already);
        report_.late += stored && batch_[i].row.late;
        safe_.push_back(batchPaths_[i]);
        if (auto cleared = noLongerRefused(batchPaths_[i]); !cleared) return cleared;
    }
    return {};
}

Status Writer::commit() {
    if (!batch_.empty()) {
        std::vector<PutRecording> outcomes;
        std::vector<bool> there;
        if (auto stored = storeBatch(outcomes, there); !stored) return stored;
        if (auto settled = settle(outcomes, there); !settled) return settled;
    }
    batch_.clear();
    batchPaths_.clear();
    batchBytes_ = 0;
    if (auto noted = writeNotes(); !noted) return noted;
    if (!safe_.empty() && options_.acknowledged) options_.acknowledged(safe_);
    safe_.clear();
    return {};
}

int threadsOf(const ImportOptions& options) {
    return options.threads > 0 ? options.threads : int(std::max(1u, std::thread::hardware_concurrency()));
}

Status takeAll(const IntakeShared& shared, const std::vector<FoundFile>& list, const ImportOptions& options,
               Writer& writer) {
    const int threads = std::min<int>(threadsOf(options), int(std::max<std::size_t>(1, list.size())));
    OrderedWork<TakenIn> work(list.size(), threads, [&shared, &list] {
        const auto worker = std::make_shared<IntakeWorker>(shared);
        return [worker, &list](std::size_t i) { return worker->take(list[i]); };
    });
    std::size_t done = 0;
    while (auto taken = work.take(options.cancel)) {
        const std::string path = taken->path;
        auto written = taken->kind == TakenIn::Kind::Levels ? writer.takeTable(shared, *taken)
                                                            : writer.take(std::move(*taken));
        if (!written) return written;
        if (options.progress) options.progress(++done, list.size(), path);
    }
    return writer.commit();
}

Result<IntakeShared> sharedOf(FleetFile& fleet, const FileSystem& files, const ImportOptions& options) {
    auto book = RegisterBook::of(fleet);
    if (!book) return fail(book.error());
    auto closed = ClosedPeriods::of(fleet);
    if (!closed) return fail(closed.error());
    auto rules = RuleBook::of(fleet);
    if (!rules) return fail(rules.error());
    return IntakeShared{files,          fleet.path(),     std::move(*book), std::move(*closed),
                        nowOf(options), std::move(*rules)};
}

}  // namespace

Result<ImportReport> import(FleetFile& fleet, const FileSystem& files, const std::vector<std::string>& paths,
                            const ImportOptions& options) {
    return importFound(fleet, files, discover(files, paths, options.recursive, fleet.path()), options);
}

Result<ImportReport> importFound(FleetFile& fleet, const FileSystem& files, const Found& found,
                                 const ImportOptions& options) {
    if (!fleet.writable()) return fail(ErrorKind::Unwritable, fleet.path(), "", fleet.word());
    const auto shared = sharedOf(fleet, files, options);
    if (!shared) return fail(shared.error());
    Writer writer(fleet, options, shared->now);
    if (auto begun = writer.begin(); !begun) return fail(begun.error());
    ImportReport& report = writer.report();
    report.found = found.files.size() + found.problems.size();
    report.passedOver = found.passedOver;
    report.foldersLeftOut = found.foldersLeftOut;
    for (const Error& problem : shared->rules.problems())
        report.warnings.push_back({problem.file, problem.rule, 1});
    for (const Error& problem : found.problems)
        if (auto refused = writer.refuse(problem.file, objectionFrom(problem, problem.file)); !refused)
            return fail(refused.error());
    if (auto taken = takeAll(*shared, found.files, options, writer); !taken) return fail(taken.error());
    if (report.stored > 0) {
        const auto answered = answerAsks(fleet);
        if (!answered) return fail(answered.error());
        report.answered = answered->size();
    }
    report.cancelled = options.cancel.cancelled();
    return std::move(report);
}

}  // namespace fettle
