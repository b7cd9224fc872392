#include "core/store/fleet_file.h"

#include <fmt/format.h>

#include "core/base/text.h"
#include "core/store/database.h"
#include "core/store/file_probe.h"
#include "core/store/fleet_check.h"
#include "core/store/migrate.h"
#include "core/store/re_examination_store.h"

namespace fettle {

struct FleetFile::Parts {
    Parts(std::string name, std::unique_ptr<Database> opened, const FleetTuning& given)
        : path(std::move(name)), tuning(given), database(std::move(opened)) {}

    std::string path;
    FleetTuning tuning;
    std::unique_ptr<Database> database;
    OpenOutcome outcome = OpenOutcome::Current;
    std::string word;
    RegisterStore machines{*database};
    RecordingStore recordings{*database};
    TrendStore trends{*database};
    RoundStore rounds{*database};
    LogStore log{*database};
    JobStore jobs{*database};
    PhotoStore photos{*database};
    WorkshopStore workshop{*database};
    ReadingRuleStore readingRules{*database};
    RequestStore requests{*database};
    RetentionStore retention{*database};
    ReExaminationStore reExaminations{*database};
    AlertStore alerts{*database};
};

namespace {
const std::vector<Migration>& stepsOf(const FleetTuning& tuning) {
    return tuning.steps ? *tuning.steps : migrations();
}

std::string networkOf(const std::string& path, const FleetTuning& tuning) {
    return tuning.networkDrive ? tuning.networkDrive(path) : networkDriveOf(path);
}

Status writeSite(Database& database, const SiteSettings& site) {
    const std::string sql = "INSERT OR REPLACE INTO meta(key, value) VALUES (?, ?)";
    if (auto good = database.run(sql, "site", site.site); !good) return good;
    if (auto good = database.run(sql, "time_zone", site.timeZone); !good) return good;
    return database.run(sql, "alpha", fmt::format("{}", site.alpha));
}

Status checkSite(const SiteSettings& site, const std::string& path) {
    if (!(site.alpha > 0 && site.alpha < 1))
        return fail(ErrorKind::Invalid, path, "alpha",
                    fmt::format("is {}, must be above 0 and below 1", site.alpha));
    if (site.timeZone.empty()) return fail(ErrorKind::Invalid, path, "time zone", "must be named");
    return {};
}

// Everything of a new file in one file, nothing beside it.
Status makeFile(const std::string& path, const SiteSettings& site, const FleetTuning& tuning) {
    auto database = Database::open(path, Access::Create, tuning.vfs);
    if (!database) return fail(database.error());
    Database& made = **database;
    if (auto good = made.script(fmt::format("PRAGMA application_id={}", kApplicationId)); !good) return good;
    if (const auto done = migrate(made, stepsOf(tuning)); !done) return fail(done.error());
    if (auto good = writeSite(made, site); !good) return good;
    return made.one<std::string>("PRAGMA journal_mode=WAL").map([](const auto&) {});
}

// How a file may be opened, found without changing it.
struct Look {
    FileHead head;
    bool mayWrite = true;     // by rights and place
    std::string readOnlyWhy;  // empty: it will be written
    OpenOutcome outcome = OpenOutcome::Current;
    std::string word;
};

Status checkNewer(Database& database, int version, int newest, Look& look) {
    const auto least = leastReaderOf(database);
    if (!least) return fail(least.error());
    if (*least > newest)
        return fail(ErrorKind::Unsupported, database.path(), "",
                    fmt::format("was made by a newer program (file form {}, this one reads up to {}); update "
                                "this program",
                                version, newest));
    look.outcome = OpenOutcome::NewerFile;
    look.word = fmt::format("made by a newer program (file form {}, this one writes {}): reading only",
                            version, newest);
    return {};
}

std::string olderWord(const std::string& why) {
    return "was made by an older program and must be upgraded once, but " + why;
}

Status checkVersion(Database& database, Look& look, OpenMode mode, const FleetTuning& tuning) {
    const auto version = versionOf(database);
    if (!version) return fail(version.error());
    const int newest = newestOf(stepsOf(tuning));
    if (*version > newest) return checkNewer(database, *version, newest, look);
    if (*version < 1)
        return fail(ErrorKind::Damaged, database.path(), "byte 60", "states no version; restore a backup");
    if (auto good = checkSchema(database, stepsOf(tuning)); !good) return good;
    if (*version == newest) return {};
    if (mode == OpenMode::ReadAnyForm) {
        look.outcome = OpenOutcome::OlderFile;
        look.word = fmt::format(
            "made by an older program (file form {}, this one writes {}): reading only, what was added since "
            "is not there",
            *version, newest);
        return {};
    }
    if (!look.readOnlyWhy.empty())
        return fail(ErrorKind::Unwritable, database.path(), "", olderWord(look.readOnlyWhy));
    look.outcome = OpenOutcome::Upgraded;
    look.word = fmt::format("upgraded from file form {} to {}", *version, newest);
    return {};
}

Status quickCheck(Database& database) {
    Statement rows(database, "PRAGMA quick_check(1)");
    std::string said = "ok";
    if (rows.next()) rows.into(said);
    if (auto good = rows.status(); !good) return good;
    if (said == "ok") return {};
    return fail(ErrorKind::Damaged, database.path(), "",
                fmt::format("is damaged; run check, restore a backup ({})", said));
}

// Why rights or place forbid writing; empty: they do not.
std::string hindranceOf(const std::string& realPath, const std::string& network) {
    if (network.empty()) return whyNotWritable(realPath);
    return fmt::format("it lies on a network drive ({}), where safe writing is not possible", network);
}

Error explained(Error error, const FileHead& head) {
    if (head.pending && !head.inUse && error.kind == ErrorKind::Unreadable)
        error.rule = fmt::format(
            "has unfinished writing beside it ({}-wal) and its folder may not be written; "
            "copy both to a folder of your own and open it there",
            head.realPath);
    return error;
}

Result<Look> lookAt(const std::string& path, OpenMode mode, const FleetTuning& tuning) {
    auto head = readHead(path, tuning.vfs);
    if (!head) return fail(head.error());
    const std::string network = networkOf(head->realPath, tuning);
    if (!network.empty() && !head->alone())
        return fail(
            ErrorKind::Unreadable, path, "",
            fmt::format("lies on a network drive ({}) and is being written, or was not closed; open it "
                        "on the computer that writes it",
                        network));
    Look look;
    look.head = *head;
    look.readOnlyWhy = hindranceOf(head->realPath, network);
    look.mayWrite = look.readOnlyWhy.empty();
    if (look.mayWrite && mode != OpenMode::ReadWrite)
        look.readOnlyWhy = "it is opened for reading only, as asked";
    auto database =
        Database::open(head->realPath, head->alone() ? Access::Immutable : Access::ReadOnly, tuning.vfs);
    if (!database) return fail(explained(database.error(), *head));
    if (auto good = checkVersion(**database, look, mode, tuning); !good)
        return fail(explained(good.error(), *head));
    if (head->bytes <= tuning.quickCheckBytes)
        if (auto good = quickCheck(**database); !good) return fail(good.error());
    return look;
}

// A reader without rights must not put files of its own in the writer's way.
Access accessToStay(const Look& look) {
    if (look.readOnlyWhy.empty() && look.outcome != OpenOutcome::NewerFile) return Access::ReadWrite;
    if (!look.head.alone()) return Access::ReadOnly;
    return look.mayWrite ? Access::ReadAlong : Access::Immutable;
}

Status startWriting(Database& database, const FleetTuning& tuning) {
    const auto journal = database.one<std::string>("PRAGMA journal_mode=WAL");
    if (!journal) return fail(journal.error());
    if (const auto done = migrate(database, stepsOf(tuning)); !done) return fail(done.error());
    const auto version = versionOf(database);
    if (!version) return fail(version.error());
    if (*version == newestOf(stepsOf(tuning))) return {};
    return fail(ErrorKind::Unsupported, database.path(), "", "was upgraded by a newer program just now");
}

Status startReading(Database& database, Look& look, const FleetTuning& tuning) {
    if (look.readOnlyWhy.empty()) look.readOnlyWhy = "the system opens it for reading only";
    if (look.outcome == OpenOutcome::OlderFile)
        if (!standInForNewer(database, stepsOf(tuning)))
            return fail(ErrorKind::Unwritable, database.path(), "", olderWord(look.readOnlyWhy));
    if (look.outcome == OpenOutcome::Upgraded)
        return fail(ErrorKind::Unwritable, database.path(), "", olderWord(look.readOnlyWhy));
    if (look.outcome == OpenOutcome::Current) {
        look.outcome = OpenOutcome::ReadOnly;
        look.word = "cannot be changed: " + look.readOnlyWhy;
    }
    database.setReadOnlyWord(look.word);
    return {};
}
}  // namespace

FleetFile::FleetFile(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
FleetFile::~FleetFile() = default;

Result<std::unique_ptr<FleetFile>> FleetFile::create(const std::string& path, const SiteSettings& site,
                                                     const FleetTuning& tuning) {
    if (auto good = checkSite(site, path); !good) return fail(good.error());
    if (auto good = checkVacant(path); !good) return fail(good.error());
    if (const std::string network = networkOf(path, tuning); !network.empty())
        return fail(
            ErrorKind::Unwritable, path, "",
            fmt::format("would lie on a network drive ({}), where safe writing is not possible; choose "
                        "a disk of this computer",
                        network));
    const std::string unfinished = unfinishedName(path);
    removeUnfinished(unfinished);
    auto made = makeFile(unfinished, site, tuning);
    if (made) made = moveIntoPlace(unfinished, path);
    removeUnfinished(unfinished);
    if (!made) {
        Error error = made.error();
        error.file = path;
        return fail(error);
    }
    return open(path, OpenMode::ReadWrite, tuning);
}

Result<std::unique_ptr<FleetFile>> FleetFile::open(const std::string& path, OpenMode mode,
                                                   const FleetTuning& tuning) {
    auto look = lookAt(path, mode, tuning);
    if (!look) return fail(look.error());
    const Access access = accessToStay(*look);
    auto database = Database::open(look->head.realPath, access, tuning.vfs);
    if (!database) return fail(explained(database.error(), look->head));
    const bool writing = access == Access::ReadWrite && !(*database)->readOnly();
    if (auto good = writing ? startWriting(**database, tuning) : startReading(**database, *look, tuning);
        !good)
        return fail(good.error());
    std::unique_ptr<FleetFile> fleet(
        new FleetFile(std::make_unique<Parts>(path, std::move(*database), tuning)));
    fleet->parts_->outcome = look->outcome;
    fleet->parts_->word = look->word;
    if (const auto site = fleet->site(); !site) return fail(site.error());
    return fleet;
}

const std::string& FleetFile::path() const {
    return parts_->path;
}

OpenOutcome FleetFile::outcome() const {
    return parts_->outcome;
}

const std::string& FleetFile::word() const {
    return parts_->word;
}

bool FleetFile::writable() const {
    return parts_->outcome == OpenOutcome::Current || parts_->outcome == OpenOutcome::Upgraded;
}

Result<SiteSettings> FleetFile::site() {
    SiteSettings site;
    Statement rows(*parts_->database, "SELECT key, value FROM meta");
    while (rows.next()) {
        std::string key, value;
        rows.into(key, value);
        if (key == "site") site.site = value;
        if (key == "time_zone") site.timeZone = value;
        if (key == "alpha") site.alpha = parseNumber(value).value_or(0.1);
    }
    if (auto good = rows.status(); !good) return fail(good.error());
    return site;
}

Status FleetFile::setSite(const SiteSettings& site) {
    if (auto good = checkSite(site, parts_->path); !good) return good;
    Transaction transaction(*parts_->database);
    if (!transaction.begun()) return transaction.begun();
    if (auto good = writeSite(*parts_->database, site); !good) return good;
    return transaction.commit();
}

RegisterStore& FleetFile::machines() {
    return parts_->machines;
}

RecordingStore& FleetFile::recordings() {
    return parts_->recordings;
}

TrendStore& FleetFile::trends() {
    return parts_->trends;
}

RoundStore& FleetFile::rounds() {
    return parts_->rounds;
}

WorkshopStore& FleetFile::workshop() {
    return parts_->workshop;
}

RequestStore& FleetFile::requests() {
    return parts_->requests;
}

ReExaminationStore& FleetFile::reExaminations() {
    return parts_->reExaminations;
}

Result<std::int64_t> FleetFile::changesByOthers() {
    const auto version = parts_->database->one<std::int64_t>("PRAGMA data_version");
    if (!version) return fail(version.error());
    return version->value_or(0);
}

AlertStore& FleetFile::alerts() {
    return parts_->alerts;
}

RetentionStore& FleetFile::retention() {
    return parts_->retention;
}

ReadingRuleStore& FleetFile::readingRules() {
    return parts_->readingRules;
}

LogStore& FleetFile::log() {
    return parts_->log;
}

JobStore& FleetFile::jobs() {
    return parts_->jobs;
}

PhotoStore& FleetFile::photos() {
    return parts_->photos;
}

Status FleetFile::together(const std::function<Status()>& work) {
    Transaction transaction(*parts_->database);
    if (!transaction.begun()) return transaction.begun();
    if (auto done = work(); !done) return done;
    return transaction.commit();
}

namespace {
// Nothing was written: rolled back it ends whatever happened within, a throw or a request to stop.
struct ReadEnds {
    Database& database;
    ~ReadEnds() {
        if (database.inTransaction()) (void)database.run("ROLLBACK");
    }
};
}  // namespace

Status FleetFile::atOneMoment(const std::function<Status()>& work) {
    Database& database = *parts_->database;
    if (database.inTransaction()) return work();
    if (auto begun = database.run("BEGIN"); !begun) return begun;
    const ReadEnds ends{database};
    return work();
}

Result<std::vector<std::string>> FleetFile::check(bool deep, const Progress& progress,
                                                  const CancelToken& cancel) {
    auto faults = findFaults(*parts_->database, deep, progress, cancel);
    if (!faults || parts_->outcome == OpenOutcome::NewerFile || parts_->outcome == OpenOutcome::OlderFile)
        return faults;
    if (const auto schema = checkSchema(*parts_->database, stepsOf(parts_->tuning)); !schema)
        faults->push_back(schema.error().sentence());
    return faults;
}

Status FleetFile::backup(const std::string& path, const Progress& progress, const CancelToken& cancel) {
    if (auto good = checkVacant(path); !good) return good;
    const std::string unfinished = unfinishedName(path);
    removeUnfinished(unfinished);
    auto done = [&]() -> Status {
        auto target = Database::open(unfinished, Access::Create, parts_->tuning.vfs);
        if (!target) return fail(target.error());
        return parts_->database->copyTo(**target, progress, cancel);
    }();
    if (done) done = readHead(unfinished, parts_->tuning.vfs).map([](const FileHead&) {});
    if (done) done = moveIntoPlace(unfinished, path);
    removeUnfinished(unfinished);
    if (done) return {};
    Error error = done.error();
    if (error.file == unfinished) error.file = path;
    return fail(error);
}

}  // namespace fettle
