#include "core/store/database.h"

#include <gmock/gmock.h>
#include <sqlite3.h>

#include "tests/base/scratch_folder.h"

namespace fettle {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

class DatabaseTest : public testing::Test {
  protected:
    void SetUp() override {
        database_ = Database::open(folder_ / "t.db", Access::Create).value();
        ASSERT_TRUE(
            database_->script("CREATE TABLE t (id INTEGER PRIMARY KEY, text TEXT, number REAL, bytes BLOB) "
                              "STRICT; PRAGMA journal_mode=WAL"));
    }
    std::int64_t rows() { return database_->one<std::int64_t>("SELECT count(*) FROM t")->value(); }
    std::unique_ptr<Database> another(Access access = Access::ReadWrite) {
        return Database::open(folder_ / "t.db", access).value();
    }

    ScratchFolder folder_;
    std::unique_ptr<Database> database_;
};

TEST_F(DatabaseTest, ValuesComeBackAsTheyWentIn) {
    const std::string bytes("\0\xff\0", 3);
    ASSERT_TRUE(database_->run("INSERT INTO t VALUES (?,?,?,?)", std::int64_t(1) << 62,
                               "Stra\xc3\x9f"
                               "e",
                               0.1, Blob{bytes}));
    ASSERT_TRUE(database_->run("INSERT INTO t VALUES (?,?,?,?)", 2, "", std::optional<double>(), Blob{""}));
    Statement row(*database_, "SELECT id, text, number, bytes FROM t ORDER BY id DESC");
    std::int64_t id = 0;
    std::string text;
    std::optional<double> number;
    ASSERT_TRUE(row.next());
    row.into(id, text, number);
    EXPECT_EQ(id, std::int64_t(1) << 62);
    EXPECT_EQ(text,
              "Stra\xc3\x9f"
              "e");
    EXPECT_EQ(number, 0.1);
    EXPECT_EQ(row.blob(), bytes);
    ASSERT_TRUE(row.next());
    row.into(id, text, number);
    EXPECT_EQ(text, "");
    EXPECT_EQ(number, std::nullopt);
    EXPECT_EQ(row.blob(), "");
    EXPECT_FALSE(row.next());
    EXPECT_TRUE(row.status());
}

TEST_F(DatabaseTest, TheSettingsHold) {
    const auto said = [&](const char* pragma) {
        return database_->one<std::string>(std::string("PRAGMA ") + pragma)->value();
    };
    EXPECT_EQ(said("page_size"), "16384");
    EXPECT_EQ(said("foreign_keys"), "1");
    EXPECT_EQ(said("synchronous"), "2");  // FULL
    EXPECT_EQ(said("journal_mode"), "wal");
    EXPECT_EQ(said("busy_timeout"), "10000");
}

TEST_F(DatabaseTest, ATransactionIsAllOrNothing) {
    {
        Transaction transaction(*database_);
        ASSERT_TRUE(transaction.begun());
        ASSERT_TRUE(database_->run("INSERT INTO t(text) VALUES ('a')"));
    }
    EXPECT_EQ(rows(), 0);
    Transaction transaction(*database_);
    ASSERT_TRUE(database_->run("INSERT INTO t(text) VALUES ('a')"));
    ASSERT_TRUE(transaction.commit());
    EXPECT_EQ(rows(), 1);
    EXPECT_FALSE(database_->inTransaction());
}

TEST_F(DatabaseTest, ATransactionWithinAnotherGoesWithIt) {
    const auto inner = [&] {
        Transaction transaction(*database_);
        ASSERT_TRUE(transaction.begun());
        ASSERT_TRUE(database_->run("INSERT INTO t(text) VALUES ('a')"));
        ASSERT_TRUE(transaction.commit());
    };
    {
        Transaction outer(*database_);
        inner();
        EXPECT_TRUE(database_->inTransaction());
    }
    EXPECT_EQ(rows(), 0);
    Transaction outer(*database_);
    inner();
    ASSERT_TRUE(outer.commit());
    EXPECT_EQ(rows(), 1);
}

TEST_F(DatabaseTest, ErrorsStickAndNameTheFile) {
    Statement wrong(*database_, "SELECT a FROM nowhere");
    EXPECT_FALSE(wrong.bind(1).next());
    ASSERT_FALSE(wrong.status());
    EXPECT_THAT(wrong.status().error().sentence(), HasSubstr("t.db"));
    EXPECT_THAT(wrong.status().error().sentence(), HasSubstr("no such table: nowhere"));
    EXPECT_FALSE(database_->run("SELECT ?", 1, 2));  // one value too many
}

TEST_F(DatabaseTest, OneStatementTwiceAtATime) {
    for (int i = 0; i < 3; ++i)
        ASSERT_TRUE(database_->run("INSERT INTO t(text) VALUES (?)", std::to_string(i)));
    const std::string sql = "SELECT text FROM t ORDER BY id";
    Statement outer(*database_, sql);
    std::vector<std::string> pairs;
    while (outer.next()) {
        std::string a, b;
        outer.into(a);
        Statement inner(*database_, sql);
        while (inner.next()) {
            inner.into(b);
            pairs.push_back(a + b);
        }
    }
    EXPECT_THAT(pairs, ElementsAre("00", "01", "02", "10", "11", "12", "20", "21", "22"));
}

TEST_F(DatabaseTest, TextThatIsNotUtf8) {
    ASSERT_TRUE(database_->run("INSERT INTO t(text) VALUES (?)",
                               "a\xff"
                               "b"));
    EXPECT_EQ(database_->one<std::string>("SELECT text FROM t")->value(), "a?b");
    // Put in by another program, or by a damaged page.
    ASSERT_TRUE(database_->run("UPDATE t SET text = CAST(x'61ff62' AS TEXT)"));
    EXPECT_EQ(database_->one<std::string>("SELECT text FROM t").error().kind, ErrorKind::Damaged);
}

TEST_F(DatabaseTest, AReaderSeesWhatWasCommittedAndTheSecondWriterWaits) {
    auto writer = another(), reader = another(Access::ReadOnly);
    Transaction transaction(*writer);
    ASSERT_TRUE(writer->run("INSERT INTO t(text) VALUES ('a')"));
    EXPECT_EQ(reader->one<int>("SELECT count(*) FROM t")->value(), 0);
    sqlite3_busy_timeout(database_->handle(), 50);
    const auto second = database_->run("INSERT INTO t(text) VALUES ('b')");
    ASSERT_FALSE(second);
    EXPECT_EQ(second.error().kind, ErrorKind::Unwritable);
    EXPECT_THAT(second.error().sentence(), HasSubstr("another program has been writing to it for over 10 s"));
    ASSERT_TRUE(transaction.commit());
    EXPECT_EQ(reader->one<int>("SELECT count(*) FROM t")->value(), 1);
    EXPECT_TRUE(database_->run("INSERT INTO t(text) VALUES ('b')"));
}

TEST_F(DatabaseTest, ReadingOnlyRefusesEveryChange) {
    for (const Access access : {Access::ReadOnly, Access::ReadAlong}) {
        auto reader = another(access);
        const auto refused = reader->run("INSERT INTO t(text) VALUES ('a')");
        ASSERT_FALSE(refused);
        EXPECT_EQ(refused.error().kind, ErrorKind::Unwritable);
        reader->setReadOnlyWord("opened for reading only");
        EXPECT_THAT(reader->run("INSERT INTO t(text) VALUES ('a')").error().sentence(),
                    HasSubstr("t.db: opened for reading only"));
    }
    EXPECT_EQ(rows(), 0);
}

TEST_F(DatabaseTest, LongQuestionsStopOnRequest) {
    CancelToken cancel;
    cancel.cancel();
    database_->watch(&cancel);
    const auto stopped = database_->one<std::int64_t>(
        "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT count(*) FROM n");
    ASSERT_FALSE(stopped);
    EXPECT_EQ(stopped.error().kind, ErrorKind::Cancelled);
    database_->watch(nullptr);
    EXPECT_EQ(rows(), 0);
}

// Each code of SQLite's that a user can meet (sqlite.org, "Result and Error Codes") is one clear sentence.
TEST_F(DatabaseTest, EveryCodeHasItsSentence) {
    struct Row {
        int code;
        ErrorKind kind;
        const char* words;
    };
    const Row rows[] = {{SQLITE_FULL, ErrorKind::Unwritable, "the disk is full"},
                        {SQLITE_BUSY, ErrorKind::Unwritable, "another program"},
                        {SQLITE_BUSY_SNAPSHOT, ErrorKind::Unwritable, "another program"},
                        {SQLITE_READONLY, ErrorKind::Unwritable, "reading only"},
                        {SQLITE_READONLY_DIRECTORY, ErrorKind::Unwritable, "reading only"},
                        {SQLITE_CORRUPT, ErrorKind::Damaged, "is damaged; run check, restore a backup"},
                        {SQLITE_CORRUPT_INDEX, ErrorKind::Damaged, "is damaged"},
                        {SQLITE_NOTADB, ErrorKind::Damaged, "does not begin as a fleet file does"},
                        {SQLITE_IOERR_WRITE, ErrorKind::Unwritable, "could not write"},
                        {SQLITE_IOERR_FSYNC, ErrorKind::Unwritable, "could not write"},
                        {SQLITE_IOERR_READ, ErrorKind::Unreadable, "could not read"},
                        {SQLITE_IOERR_SHORT_READ, ErrorKind::Damaged, "shorter than it says"},
                        {SQLITE_IOERR_LOCK, ErrorKind::Unwritable, "network drive"},
                        {SQLITE_IOERR_SHMMAP, ErrorKind::Unwritable, "network drive"},
                        {SQLITE_CANTOPEN, ErrorKind::Unreadable, "cannot be opened"},
                        {SQLITE_CANTOPEN_ISDIR, ErrorKind::Unreadable, "cannot be opened"},
                        {SQLITE_TOOBIG, ErrorKind::Unsupported, "larger than"},
                        {SQLITE_NOMEM, ErrorKind::Unreadable, "not enough memory"},
                        {SQLITE_CONSTRAINT_FOREIGNKEY, ErrorKind::Invalid, "breaks a rule"},
                        {SQLITE_MISUSE, ErrorKind::Damaged, "gives up"}};
    for (const Row& row : rows) {
        const Error error = database_->errorOf(row.code, "detail");
        EXPECT_EQ(error.kind, row.kind) << row.code;
        EXPECT_THAT(error.rule, HasSubstr(row.words)) << row.code;
        EXPECT_EQ(error.file, folder_ / "t.db");
    }
}

}  // namespace
}  // namespace fettle
