#include "core/store/database.h"

#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <atomic>

#include "core/base/text.h"
#include "core/store/statement_count.h"

namespace fettle {

namespace {

std::atomic<std::uint64_t> stepped{0};
std::atomic<StatementSeen> seen{nullptr};

// The path as SQLite's URI form takes it.
std::string uriOf(const std::string& path) {
    std::string uri = "file:";
    for (const char c : path)
        uri += c == '?' || c == '#' || c == '%' ? fmt::format("%{:02x}", c) : std::string(1, c);
    return uri + "?immutable=1";
}

int flagsOf(Access access) {
    constexpr int kAlways = SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE | SQLITE_OPEN_PRIVATECACHE;
    switch (access) {
        case Access::Create:
            return kAlways | SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE;
        case Access::ReadWrite:
        case Access::ReadAlong:
            return kAlways | SQLITE_OPEN_READWRITE;
        case Access::ReadOnly:
            return kAlways | SQLITE_OPEN_READONLY;
        case Access::Immutable:
            break;
    }
    return kAlways | SQLITE_OPEN_READONLY | SQLITE_OPEN_URI;
}

constexpr int kWatchEvery = 20000;  // steps of SQLite's machine: some ms

int stopWanted(void* cancel) {
    return static_cast<const CancelToken*>(cancel)->cancelled() ? 1 : 0;
}
}  // namespace

std::uint64_t statementsStepped() {
    return stepped;
}

void watchStatements(StatementSeen watcher) {
    seen = watcher;
}

Result<std::unique_ptr<Database>> Database::open(const std::string& path, Access access,
                                                 const std::string& vfs) {
    auto database = openBare(path, access, vfs);
    if (!database) return database;
    if (auto good = (*database)->configure(access); !good) return fail(good.error());
    return database;
}

Result<Database::Beginning> Database::beginningOf(const std::string& path, std::size_t most,
                                                  const std::string& vfs) {
    const auto database = openBare(path, Access::Immutable, vfs);
    if (!database) return fail(database.error());
    sqlite3_file* file = nullptr;
    sqlite3_int64 size = 0;
    int code = sqlite3_file_control((*database)->handle_, "main", SQLITE_FCNTL_FILE_POINTER, &file);
    if (code == SQLITE_OK) code = file->pMethods->xFileSize(file, &size);
    Beginning beginning{std::string(std::min(most, std::size_t(size)), '\0'), std::uint64_t(size)};
    if (code == SQLITE_OK && size > 0)
        code = file->pMethods->xRead(file, beginning.bytes.data(), int(beginning.bytes.size()), 0);
    if (code != SQLITE_OK) return fail((*database)->errorOf(code, sqlite3_errstr(code)));
    return beginning;
}

Result<std::unique_ptr<Database>> Database::openBare(const std::string& path, Access access,
                                                     const std::string& vfs) {
    const std::string name = access == Access::Immutable ? uriOf(path) : path;
    sqlite3* handle = nullptr;
    const int code =
        sqlite3_open_v2(name.c_str(), &handle, flagsOf(access), vfs.empty() ? nullptr : vfs.c_str());
    std::unique_ptr<Database> database(new Database(path, handle));
    if (code != SQLITE_OK)
        return fail(database->errorOf(code, handle ? sqlite3_errmsg(handle) : sqlite3_errstr(code)));
    return database;
}

Status Database::configure(Access access) {
    sqlite3_busy_timeout(handle_, kBusyMilliseconds);
    sqlite3_db_config(handle_, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    sqlite3_db_config(handle_, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
    std::string sql =
        "PRAGMA foreign_keys=ON; PRAGMA cell_size_check=ON; PRAGMA mmap_size=0;"
        "PRAGMA synchronous=FULL; PRAGMA temp_store=MEMORY; PRAGMA cache_size=-32768;"
        "PRAGMA journal_size_limit=67108864;";
    if (access == Access::ReadAlong) sql += "PRAGMA query_only=ON;";
    if (access == Access::Create)
        sql = fmt::format("PRAGMA page_size={}; PRAGMA auto_vacuum=INCREMENTAL;", kPageSize) + sql;
    return script(sql);
}

Database::~Database() {
    for (auto& [sql, kept] : kept_)
        sqlite3_finalize(kept.statement);
    sqlite3_close_v2(handle_);
}

bool Database::readOnly() const {
    return sqlite3_db_readonly(handle_, "main") != 0;
}

Status Database::script(const std::string& sql) {
    ++stepped;
    const int code = sqlite3_exec(handle_, sql.c_str(), nullptr, nullptr, nullptr);
    if (code != SQLITE_OK) return fail(errorOf(code, sqlite3_errmsg(handle_)));
    return {};
}

std::int64_t Database::lastId() const {
    return sqlite3_last_insert_rowid(handle_);
}

std::int64_t Database::changes() const {
    return sqlite3_changes64(handle_);
}

bool Database::inTransaction() const {
    return sqlite3_get_autocommit(handle_) == 0;
}

void Database::watch(const CancelToken* cancel) {
    sqlite3_progress_handler(handle_, cancel ? kWatchEvery : 0, cancel ? stopWanted : nullptr,
                             const_cast<CancelToken*>(cancel));
}

Statement::Statement(Database& database, const std::string& sql) : database_(database) {
    if (const StatementSeen watcher = seen) watcher(sql);
    auto& [key, kept] = *database.kept_.try_emplace(sql).first;
    if (kept.statement && !kept.busy) {
        statement_ = kept.statement;
        kept.busy = true;
        sql_ = &key;
        return;
    }
    check(sqlite3_prepare_v3(database.handle_, sql.c_str(), int(sql.size()) + 1, SQLITE_PREPARE_PERSISTENT,
                             &statement_, nullptr));
    if (error_ || kept.busy) return;  // the second at a time is not kept
    kept = {statement_, true};
    sql_ = &key;
}

Statement::~Statement() {
    if (!sql_) {
        sqlite3_finalize(statement_);
        return;
    }
    sqlite3_reset(statement_);
    sqlite3_clear_bindings(statement_);
    database_.kept_.find(*sql_)->second.busy = false;
}

void Statement::check(int code) {
    if (code != SQLITE_OK && !error_) error_ = database_.errorOf(code, sqlite3_errmsg(database_.handle_));
}

void Statement::broken(std::string why) {
    if (!error_) error_ = Error{ErrorKind::Damaged, database_.path(), "", std::move(why)};
}

bool Statement::next() {
    if (error_ || !statement_) return false;
    column_ = 0;
    ++stepped;
    const int code = sqlite3_step(statement_);
    if (code == SQLITE_ROW) return true;
    if (code != SQLITE_DONE) check(code);
    return false;
}

Status Statement::status() const {
    if (error_) return fail(*error_);
    return {};
}

Status Statement::finish() {
    while (next()) {
    }
    return status();
}

void Statement::bindNext(std::int64_t value) {
    if (!error_) check(sqlite3_bind_int64(statement_, ++place_, value));
}

void Statement::bindNext(double value) {
    if (!error_) check(sqlite3_bind_double(statement_, ++place_, value));
}

void Statement::bindNext(std::string_view value) {
    if (error_) return;
    const std::string mended = isUtf8(value) ? std::string() : oneLine(value, value.size() * 3);
    if (!mended.empty()) value = mended;
    check(sqlite3_bind_text64(statement_, ++place_, value.data() ? value.data() : "", value.size(),
                              SQLITE_TRANSIENT, SQLITE_UTF8));
}

void Statement::bindNext(Blob value) {
    if (!error_)
        check(sqlite3_bind_blob64(statement_, ++place_, value.bytes.data() ? value.bytes.data() : "",
                                  value.bytes.size(), SQLITE_TRANSIENT));
}

void Statement::bindNull() {
    if (!error_) check(sqlite3_bind_null(statement_, ++place_));
}

bool Statement::isNull() const {
    return error_ || sqlite3_column_type(statement_, column_) == SQLITE_NULL;
}

void Statement::takeNext(std::int64_t& value) {
    value = error_ ? 0 : sqlite3_column_int64(statement_, column_++);
}

void Statement::takeNext(int& value) {
    value = error_ ? 0 : sqlite3_column_int(statement_, column_++);
}

void Statement::takeNext(bool& value) {
    value = !error_ && sqlite3_column_int64(statement_, column_++) != 0;
}

void Statement::takeNext(double& value) {
    value = error_ ? 0 : sqlite3_column_double(statement_, column_++);
}

void Statement::takeNext(Instant& value) {
    std::int64_t milliseconds = 0;
    takeNext(milliseconds);
    value = Instant(std::chrono::milliseconds(milliseconds));
}

void Statement::takeNext(std::string& value) {
    value = blob();
    if (!isUtf8(value)) broken("holds text that is not UTF-8: is damaged; run check, restore a backup");
}

std::string Statement::blob() {
    if (error_) return {};
    const int at = column_++;
    const void* bytes = sqlite3_column_blob(statement_, at);
    const int count = sqlite3_column_bytes(statement_, at);
    return bytes ? std::string(static_cast<const char*>(bytes), std::size_t(count)) : std::string();
}

Transaction::Transaction(Database& database) : database_(database) {
    if (database.inTransaction()) return;
    begun_ = database.run("BEGIN IMMEDIATE");
    open_ = begun_.has_value();
}

Transaction::~Transaction() {
    if (open_ && database_.inTransaction()) (void)database_.run("ROLLBACK");
}

Status Transaction::commit() {
    if (!begun_ || !open_) return begun_;
    auto done = database_.run("COMMIT");
    if (done) open_ = false;
    return done;
}

Status Database::copyTo(Database& target, const Progress& progress, const CancelToken& cancel) {
    constexpr int kPagesAtOnce = 256;
    // Holding one moment keeps the copy from starting anew whenever somebody writes.
    if (auto good = script("BEGIN; SELECT count(*) FROM sqlite_schema;"); !good) return good;
    sqlite3_backup* copy = sqlite3_backup_init(target.handle_, "main", handle_, "main");
    int code = copy ? SQLITE_OK : sqlite3_extended_errcode(target.handle_);
    while (code == SQLITE_OK && !cancel.cancelled()) {
        code = sqlite3_backup_step(copy, kPagesAtOnce);
        const int all = sqlite3_backup_pagecount(copy), left = sqlite3_backup_remaining(copy);
        if (progress) progress(std::size_t(all - left), std::size_t(all), "pages");
    }
    const int end = copy ? sqlite3_backup_finish(copy) : code;
    (void)script("COMMIT");
    if (code == SQLITE_OK && cancel.cancelled()) return fail(errorOf(SQLITE_INTERRUPT, ""));
    if (code != SQLITE_DONE || end != SQLITE_OK)
        return fail(
            target.errorOf(end != SQLITE_OK ? end : code, sqlite3_errstr(end != SQLITE_OK ? end : code)));
    return {};
}

}  // namespace fettle
