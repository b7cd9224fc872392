#include <fmt/format.h>
#include <sqlite3.h>

#include "core/store/database.h"

namespace fettle {

namespace {
struct Meaning {
    int code;  // extended where it has a row of its own, else the low byte
    ErrorKind kind;
    const char* rule;
};

constexpr const char* kNoLocks =
    "cannot be locked; on a network drive keep the fleet file on a disk of this computer";

constexpr Meaning kMeanings[] = {
    {SQLITE_IOERR_LOCK, ErrorKind::Unwritable, kNoLocks},
    {SQLITE_IOERR_RDLOCK, ErrorKind::Unwritable, kNoLocks},
    {SQLITE_IOERR_UNLOCK, ErrorKind::Unwritable, kNoLocks},
    {SQLITE_IOERR_CHECKRESERVEDLOCK, ErrorKind::Unwritable, kNoLocks},
    {SQLITE_IOERR_SHMLOCK, ErrorKind::Unwritable, kNoLocks},
    {SQLITE_IOERR_SHMMAP, ErrorKind::Unwritable, kNoLocks},
    {SQLITE_IOERR_SHMOPEN, ErrorKind::Unwritable, kNoLocks},
    {SQLITE_IOERR_SHMSIZE, ErrorKind::Unwritable, "the disk is full"},
    {SQLITE_IOERR_SHORT_READ, ErrorKind::Damaged, "is shorter than it says; restore a backup"},
    {SQLITE_IOERR_READ, ErrorKind::Unreadable, "the disk could not read it"},
    {SQLITE_IOERR_NOMEM, ErrorKind::Unreadable, "not enough memory"},
    {SQLITE_IOERR, ErrorKind::Unwritable, "the disk could not write it; nothing of this step was kept"},
    {SQLITE_FULL, ErrorKind::Unwritable, "the disk is full; nothing of this step was kept"},
    {SQLITE_BUSY, ErrorKind::Unwritable, "another program has been writing to it for over 10 s; try again"},
    {SQLITE_LOCKED, ErrorKind::Unwritable, "is in use by another part of this program; try again"},
    {SQLITE_READONLY, ErrorKind::Unwritable, "is open for reading only"},
    {SQLITE_PERM, ErrorKind::Unwritable, "permission denied"},
    {SQLITE_CANTOPEN, ErrorKind::Unreadable, "cannot be opened, or no file can be made beside it"},
    {SQLITE_CORRUPT, ErrorKind::Damaged, "is damaged; run check, restore a backup"},
    {SQLITE_NOTADB, ErrorKind::Damaged, "does not begin as a fleet file does"},
    {SQLITE_TOOBIG, ErrorKind::Unsupported, "a value is larger than a fleet file can hold"},
    {SQLITE_NOMEM, ErrorKind::Unreadable, "not enough memory"},
    {SQLITE_INTERRUPT, ErrorKind::Cancelled, "stopped on request"},
    {SQLITE_CONSTRAINT_TRIGGER, ErrorKind::Invalid, ""},
    {SQLITE_CONSTRAINT, ErrorKind::Invalid, "breaks a rule of the fleet file"},
};

const Meaning* meaningOf(int code) {
    for (const Meaning& row : kMeanings)
        if (row.code == code) return &row;
    return nullptr;
}

// Codes whose detail (SQLite's own words) tells the user nothing more.
bool saysAll(const Meaning& meaning) {
    return meaning.code == SQLITE_FULL || meaning.code == SQLITE_BUSY || meaning.code == SQLITE_INTERRUPT ||
           meaning.code == SQLITE_NOMEM;
}
}  // namespace

Error Database::errorOf(int code, const std::string& detail) const {
    const Meaning* meaning = meaningOf(code);
    if (!meaning) meaning = meaningOf(code & 0xff);
    if (!meaning)
        return {ErrorKind::Damaged, path_, "", fmt::format("SQLite gives up with \"{}\" ({})", detail, code)};
    if (meaning->code == SQLITE_READONLY && !readOnlyWord_.empty())
        return {meaning->kind, path_, "", readOnlyWord_};
    if (meaning->rule[0] == 0) return {meaning->kind, path_, "", detail};
    if (saysAll(*meaning)) return {meaning->kind, path_, "", meaning->rule};
    return {meaning->kind, path_, "", fmt::format("{} ({})", meaning->rule, detail)};
}

}  // namespace fettle
