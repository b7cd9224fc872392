// Why: the only door to SQLite. A Database is one connection, a Statement one prepared question that is kept
// for the next time, a Transaction all or nothing. Values go in by position and come out by type, so a store
// reads as SQL and plain records. Settings, and why: WAL (readers never wait for the writer);
// synchronous=FULL (each commit is flushed, so that what was acknowledged survives a power cut as well as a
// kill; with NORMAL a power cut may take the last commits; a flush was measured at 1 to 3 ms, beside some 50
// ms that a batch of 16 recordings takes, so nothing is to be won); foreign keys on; busy timeout 10 s; page
// size 16 KiB (waveforms and spectra are large values); auto_vacuum=INCREMENTAL in files made from now on, so
// that what retention frees can be given back bit by bit. Thread: one at a time. Errors: sticky in a
// Statement (a failed bind or step ends it) and read with status(); every SQLite code becomes one sentence
// that names the file, the kind as in errorOf.
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/base/time.h"

struct sqlite3;
struct sqlite3_stmt;

namespace fettle {

inline constexpr int kPageSize = 16384;
inline constexpr int kBusyMilliseconds = 10000;

enum class Access {
    Create,     // makes the file where there is none
    ReadWrite,  // the file must be there
    ReadAlong,  // as ReadWrite, so that nothing is left behind at closing, but every change is refused
    ReadOnly,   // for files that may not be written; may leave an empty -wal and a -shm beside the file
    Immutable   // read-only, no lock and no file beside it is made or looked at: for files nobody writes
};

// Bytes that are not text.
struct Blob {
    std::string_view bytes;
};

class Database;

// A question with its answer row by row. Lives no longer than its Database.
class Statement {
  public:
    Statement(Database& database, const std::string& sql);
    ~Statement();
    Statement(const Statement&) = delete;
    Statement& operator=(const Statement&) = delete;

    // Fills the next places, in order. Text that is not UTF-8 is stored with '?' in place of the wrong bytes.
    template <class... Values>
    Statement& bind(const Values&... values) {
        (bindNext(values), ...);
        return *this;
    }
    bool next();  // a row is there; false at the end and after an error
    // The next columns of the row, in order.
    template <class... Values>
    void into(Values&... values) {
        (takeNext(values), ...);
    }
    std::string blob();            // the next column
    Status status() const;         // error of whatever failed first
    Status finish();               // runs to the end
    void broken(std::string why);  // the row contradicts itself: Damaged, ends the answer

  private:
    void bindNext(std::int64_t value);
    void bindNext(int value) { bindNext(std::int64_t(value)); }
    void bindNext(bool value) { bindNext(std::int64_t(value)); }
    void bindNext(std::size_t value) { bindNext(std::int64_t(value)); }
    void bindNext(double value);
    void bindNext(std::string_view value);
    void bindNext(const std::string& value) { bindNext(std::string_view(value)); }
    void bindNext(const char* value) { bindNext(std::string_view(value)); }
    void bindNext(Blob value);
    void bindNext(Instant value) { bindNext(std::int64_t(value.time_since_epoch().count())); }
    void bindNull();
    template <class Value>
    void bindNext(const std::optional<Value>& value) {
        value ? bindNext(*value) : bindNull();
    }

    void takeNext(std::int64_t& value);
    void takeNext(int& value);
    void takeNext(bool& value);
    void takeNext(double& value);
    void takeNext(std::string& value);
    void takeNext(Instant& value);
    template <class Value>
    void takeNext(std::optional<Value>& value) {
        if (isNull())
            ++column_, value.reset();
        else
            takeNext(value.emplace());
    }
    bool isNull() const;
    void check(int code);

    Database& database_;
    const std::string* sql_ = nullptr;  // key in the cache
    sqlite3_stmt* statement_ = nullptr;
    int place_ = 0, column_ = 0;
    std::optional<Error> error_;
};

class Database {
  public:
    // `vfs`: SQLite's name of the way to the disk; empty: the usual one. Tests name one that fails.
    static Result<std::unique_ptr<Database>> open(const std::string& path, Access access,
                                                  const std::string& vfs = "");
    // The first bytes of a file, and its size, whatever is in it. Read by way of SQLite: closing a file by
    // other means drops the locks that other connections of this program hold on it (sqlite.org, "How To
    // Corrupt An SQLite Database File", section 2.2).
    struct Beginning {
        std::string bytes;
        std::uint64_t size = 0;
    };
    static Result<Beginning> beginningOf(const std::string& path, std::size_t most,
                                         const std::string& vfs = "");
    ~Database();
    Database(const Database&) = delete;
    Database& operator=(const Database&) = delete;

    const std::string& path() const { return path_; }
    bool readOnly() const;  // also where writing was asked for and the system did not grant it
    // One or more statements that give no rows.
    Status script(const std::string& sql);
    // One statement with values, run to its end.
    template <class... Values>
    Status run(const std::string& sql, const Values&... values) {
        return Statement(*this, sql).bind(values...).finish();
    }
    // The first column of the first row; empty where there is no row.
    template <class Value, class... Values>
    Result<std::optional<Value>> one(const std::string& sql, const Values&... values) {
        Statement rows(*this, sql);
        std::optional<Value> found;
        if (rows.bind(values...).next()) rows.into(found);
        if (auto good = rows.status(); !good) return fail(good.error());
        return found;
    }
    std::int64_t lastId() const;   // of the newest row put in
    std::int64_t changes() const;  // rows the last statement put in, changed or removed
    bool inTransaction() const;

    // While `cancel` is alive and set, statements end with Cancelled. `tick` is called now and then.
    void watch(const CancelToken* cancel);
    // Copies everything, as it was at one moment, into another database.
    Status copyTo(Database& target, const Progress& progress, const CancelToken& cancel);

    // What an SQLite result code means for the user of this file.
    Error errorOf(int code, const std::string& detail) const;
    // Said instead of SQLite's words where something is written to a file that is open for reading only.
    void setReadOnlyWord(std::string word) { readOnlyWord_ = std::move(word); }
    sqlite3* handle() { return handle_; }

  private:
    friend class Statement;
    struct Kept {
        sqlite3_stmt* statement = nullptr;
        bool busy = false;
    };
    Database(std::string path, sqlite3* handle) : path_(std::move(path)), handle_(handle) {}
    static Result<std::unique_ptr<Database>> openBare(const std::string& path, Access access,
                                                      const std::string& vfs);
    Status configure(Access access);

    std::string path_;
    sqlite3* handle_ = nullptr;
    std::string readOnlyWord_;
    std::unordered_map<std::string, Kept> kept_;  // prepared statements by their text
};

// Begins at once as the writer (waits up to the busy timeout for another one); rolls back unless committed.
// Within another one it is a part of that: what it did stays or goes with it.
class Transaction {
  public:
    explicit Transaction(Database& database);
    ~Transaction();
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;
    const Status& begun() const { return begun_; }
    Status commit();

  private:
    Database& database_;
    Status begun_;
    bool open_ = false;
};

// Every row as one record: `read` is given the statement and fills the record.
template <class Record, class Read>
Result<std::vector<Record>> allRows(Statement& rows, Read read) {
    std::vector<Record> all;
    while (rows.next())
        read(rows, all.emplace_back());
    if (auto good = rows.status(); !good) return fail(good.error());
    return all;
}

}  // namespace fettle
