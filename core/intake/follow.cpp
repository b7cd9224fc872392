#include "core/intake/follow.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <thread>

#include "core/base/text.h"
#include "core/intake/arrivals.h"
#include "core/intake/folder_watch.h"
#include "core/signal/reader.h"
#include "core/signal/sidecar.h"
#include "core/store/file_probe.h"

namespace fettle {

namespace {

using Clock = Arrivals::Clock;
using Time = Arrivals::Time;
using std::chrono::milliseconds;

constexpr milliseconds kTick{250};  // how long a request to stop may go unheard
constexpr std::chrono::minutes kToBeSure{10};
constexpr int kTriesOnce = 3;
constexpr int kLookShare = 20;  // looking takes at most a twentieth of the time

ArrivalLimits limitsOf(const FollowOptions& options) {
    ArrivalLimits limits;
    limits.patience = options.patience;
    limits.most = options.mostWaiting;
    if (options.settle) limits.settle = limits.gather = *options.settle;
    return limits;
}

// What may pass; all else will not get better by trying again.
bool mayPass(const Error& error) {
    return error.kind == ErrorKind::Unwritable || error.kind == ErrorKind::Unreadable;
}

class Follower {
  public:
    Follower(FleetFile& fleet, std::string folder, const FollowOptions& options)
        : fleet_(fleet), folder_(std::move(folder)), options_(options), arrivals_(limitsOf(options)) {}

    Result<FollowReport> run();

  private:
    bool isThere() const;
    std::string goneWord() const { return folder_ + ": is not there any more; trying again until it is"; }
    bool stopped() const { return options_.import.cancel.cancelled(); }
    void say(const std::string& sentence);
    void openWatch();
    void look();
    void lookThrough(const std::string& folder);
    void listen();
    void hear(const WatchNews& news);
    void hearOfFile(const std::string& path, bool whole);
    void rest(milliseconds most);
    void lost();
    Status takeDue();
    Status takeIn(const std::vector<std::string>& paths);
    Status trouble(const Error& error, const std::vector<std::string>& paths);
    void count(const ImportReport& report);
    void settleAll(const std::vector<std::string>& paths);
    void after(bool stored);
    void tellRefusal(const Refusal& refusal);
    bool isOver() const { return options_.once && arrivals_.empty() && !more_; }

    FleetFile& fleet_;
    std::string folder_;
    const FollowOptions& options_;
    RealFileSystem files_;
    Arrivals arrivals_;
    std::unique_ptr<FolderWatch> watch_;
    FollowReport report_;
    std::set<std::string> said_, told_, putOff_;
    std::string trouble_;  // what was said of the last failure
    Time nextLook_{}, nextAfter_{}, notBefore_{};
    bool more_ = true;  // there is something to be found by looking
    bool gone_ = false;
    bool replaced_ = false;  // the folder that was watched is not that one any more, or may not be
    int tries_ = 0;
};

bool Follower::isThere() const {
    const PathKind kind = files_.kindOf(folder_);
    return kind == PathKind::Folder || kind == PathKind::FolderLink;
}

// Each sentence once, until what it tells of is over.
void Follower::say(const std::string& sentence) {
    if (said_.insert(sentence).second && options_.say) options_.say(sentence);
}

void Follower::openWatch() {
    watch_.reset();
    report_.polled = true;
    if (options_.poll) return;
    if (const std::string network = networkDriveOf(folder_); !network.empty())
        return say(fmt::format("{}: lies on a network drive ({}): looking every {} s for new files", folder_,
                               network, options_.lookEvery.count() / 1000));
    auto opened = FolderWatch::open(folder_, options_.recursive);
    if (!opened) return say(opened.error().sentence() + ": looking again and again instead");
    watch_ = std::move(*opened);
    report_.polled = false;
}

void Follower::lookThrough(const std::string& folder) {
    const Found found = discover(files_, {folder}, options_.recursive, fleet_.path());
    for (const Error& problem : found.problems)
        say(problem.sentence());
    for (const FoundFile& file : found.files)
        if (!arrivals_.meet(file.path, Clock::now())) return lost();
}

// No room for more, or more happened than the system kept: what is left is found by looking again.
void Follower::lost() {
    more_ = true;
}

void Follower::look() {
    const Time begun = Clock::now();
    more_ = false;
    if (!isThere()) {
        gone_ = true;
        watch_.reset();
        say(goneWord());
        nextLook_ = begun + options_.lookEvery;
        return;
    }
    if (gone_) {
        said_.erase(goneWord());
        if (options_.say) options_.say(folder_ + ": is there again");
    }
    if (gone_ || replaced_) openWatch();
    gone_ = replaced_ = false;
    ++report_.looks;
    arrivals_.beginLook();
    lookThrough(folder_);
    if (!more_) arrivals_.endLook();
    const auto every = watch_ ? std::chrono::duration_cast<milliseconds>(kToBeSure) : options_.lookEvery;
    const auto took = Clock::now() - begun;
    nextLook_ = Clock::now() + std::max<Clock::duration>(every, kLookShare * took);
}

void Follower::hearOfFile(const std::string& path, bool whole) {
    const std::string extension = extensionOf(path);
    if (extension == "json") whole = false;  // the sidecar is; the recording beside it may still be written
    std::vector<std::string> paths;
    for (const ReaderRow& row : readerRegistry())
        for (const std::string& known : row.extensions) {
            if (known == extension) paths.push_back(path);
            if (extension == "json") paths.push_back(withExtension(path, "." + known));
        }
    for (const std::string& one : paths)
        if (!isPartOfFleet(one, fleet_.path()) && !arrivals_.note(one, whole, Clock::now())) lost();
}

void Follower::hear(const WatchNews& news) {
    for (const std::string& path : news.whole)
        hearOfFile(path, true);
    for (const std::string& path : news.met)
        hearOfFile(path, false);
    for (const std::string& folder : news.folders)
        lookThrough(folder);
    if (news.lost) lost();
    if (news.gone) {
        replaced_ = true;  // by another of that name, perhaps, before it is looked for
        nextLook_ = Clock::now();
    }
}

void Follower::rest(milliseconds most) {
    if (watch_)
        hear(watch_->wait(most));
    else
        std::this_thread::sleep_for(most);
}

// Until something is to be done, and no longer than a request to stop may wait.
void Follower::listen() {
    Time until = std::min(Clock::now() + kTick, nextLook_);
    if (more_ && arrivals_.size() <= options_.mostWaiting / 2) until = Clock::now();
    if (const auto next = arrivals_.next()) until = std::min(until, std::max(*next, notBefore_));
    const auto most = std::chrono::ceil<milliseconds>(until - Clock::now());
    rest(std::clamp(most, milliseconds(0), kTick));
    const bool room = more_ && arrivals_.size() <= options_.mostWaiting / 2;
    if ((room && !gone_) || Clock::now() >= nextLook_) look();
}

void Follower::tellRefusal(const Refusal& refusal) {
    if (!told_.insert(refusal.path + "\n" + refusal.rule).second) return;
    ++(refusal.kind == "parked" ? report_.parked : report_.refused);
    if (options_.import.refused) options_.import.refused(refusal);
}

void Follower::count(const ImportReport& report) {
    ++report_.imports;
    report_.stored += report.stored;
    report_.already += report.already;
    report_.late += report.late;
    report_.answered += report.answered;
    report_.tables += report.tables;
    report_.levels += report.levels;
}

// What was put off waits on; on a request to stop the rest of a batch was not looked at.
void Follower::settleAll(const std::vector<std::string>& paths) {
    for (const std::string& path : paths)
        if (putOff_.count(path))
            arrivals_.again(path, Clock::now() + std::max(milliseconds(200), options_.patience / 20));
        else if (!stopped())
            arrivals_.handled(path);
}

// The rules between rounds, say.
void Follower::after(bool stored) {
    if (!options_.afterwards || (!stored && Clock::now() < nextAfter_)) return;
    nextAfter_ = Clock::now() + kToBeSure;
    if (const auto done = options_.afterwards(fleet_); !done) say(done.error().sentence());
}

Status Follower::trouble(const Error& error, const std::vector<std::string>& paths) {
    if (error.kind == ErrorKind::Cancelled) return {};
    if (!mayPass(error) || (options_.once && ++tries_ >= kTriesOnce)) return fail(error);
    Error word = error;
    word.rule = word.rule.substr(0, word.rule.find("; the import stopped"));
    trouble_ = word.sentence() + "; new files wait, trying again";
    say(trouble_);
    notBefore_ = Clock::now() + options_.pause;
    for (const std::string& path : paths)
        arrivals_.again(path, notBefore_);
    return {};
}

Status Follower::takeIn(const std::vector<std::string>& paths) {
    Found found;
    for (const std::string& path : paths)
        found.files.push_back({path, false});
    putOff_.clear();
    ImportOptions options = options_.import;
    options.refused = [this](const Refusal& refusal) { tellRefusal(refusal); };
    options.mayWait = [this](const std::string& path) {
        return arrivals_.mayWait(path, Clock::now()) && putOff_.insert(path).second;
    };
    const auto report = importFound(fleet_, files_, found, options);
    if (!report) return trouble(report.error(), paths);
    tries_ = 0;
    said_.erase(trouble_);
    settleAll(paths);
    count(*report);
    after(report->stored + report->levels > 0);
    if (options_.progress) options_.progress(report_, arrivals_.size());
    return {};
}

Status Follower::takeDue() {
    const Time now = Clock::now();
    if (now < notBefore_) return {};
    const std::vector<std::string> paths = arrivals_.due(now, options_.mostAtOnce);
    return paths.empty() ? Status{} : takeIn(paths);
}

Result<FollowReport> Follower::run() {
    if (!fleet_.writable()) return fail(ErrorKind::Unwritable, fleet_.path(), "", fleet_.word());
    if (!isThere()) return fail(ErrorKind::NotFound, folder_, "", "no such folder");
    openWatch();
    nextAfter_ = Clock::now() + kToBeSure;
    look();
    while (!stopped()) {
        if (auto taken = takeDue(); !taken) return fail(taken.error());
        if (isOver()) break;
        after(false);
        listen();
    }
    report_.cancelled = stopped();
    return report_;
}

}  // namespace

Result<FollowReport> follow(FleetFile& fleet, const std::string& folder, const FollowOptions& options) {
    return Follower(fleet, folder, options).run();
}

}  // namespace fettle
