#include "tests/store/failing_vfs.h"

#include <new>

namespace fettle {

namespace {
struct File {
    sqlite3_file base;
    FailingVfs* owner;
    sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};

File* fileOf(sqlite3_file* file) {
    return reinterpret_cast<File*>(file);
}
const sqlite3_io_methods* methodsOf(sqlite3_file* file) {
    return fileOf(file)->real()->pMethods;
}
FailingVfs* ownerOf(sqlite3_file* file) {
    return fileOf(file)->owner;
}
sqlite3_file* realOf(sqlite3_file* file) {
    return fileOf(file)->real();
}
FailingVfs* ownerOf(sqlite3_vfs* vfs) {
    return static_cast<FailingVfs*>(vfs->pAppData);
}

int closeFile(sqlite3_file* file) {
    return methodsOf(file)->xClose(realOf(file));
}
int readFile(sqlite3_file* file, void* out, int count, sqlite3_int64 from) {
    if (ownerOf(file)->readsFail) return SQLITE_IOERR_READ;
    return methodsOf(file)->xRead(realOf(file), out, count, from);
}
int writeFile(sqlite3_file* file, const void* in, int count, sqlite3_int64 from) {
    if (ownerOf(file)->refuseWrite()) return SQLITE_FULL;
    return methodsOf(file)->xWrite(realOf(file), in, count, from);
}
int truncateFile(sqlite3_file* file, sqlite3_int64 size) {
    return methodsOf(file)->xTruncate(realOf(file), size);
}
int syncFile(sqlite3_file* file, int flags) {
    if (ownerOf(file)->refuseWrite()) return SQLITE_IOERR_FSYNC;
    return methodsOf(file)->xSync(realOf(file), flags);
}
int fileSize(sqlite3_file* file, sqlite3_int64* size) {
    return methodsOf(file)->xFileSize(realOf(file), size);
}
int lockFile(sqlite3_file* file, int level) {
    if (ownerOf(file)->locksFail) return SQLITE_IOERR_LOCK;
    return methodsOf(file)->xLock(realOf(file), level);
}
int unlockFile(sqlite3_file* file, int level) {
    return methodsOf(file)->xUnlock(realOf(file), level);
}
int checkReserved(sqlite3_file* file, int* out) {
    return methodsOf(file)->xCheckReservedLock(realOf(file), out);
}
int controlFile(sqlite3_file* file, int what, void* argument) {
    return methodsOf(file)->xFileControl(realOf(file), what, argument);
}
int sectorSize(sqlite3_file* file) {
    return methodsOf(file)->xSectorSize(realOf(file));
}
int characteristics(sqlite3_file* file) {
    return methodsOf(file)->xDeviceCharacteristics(realOf(file));
}
int mapShared(sqlite3_file* file, int page, int size, int extend, void volatile** out) {
    if (ownerOf(file)->sharedMemoryFails) return SQLITE_IOERR_SHMMAP;
    return methodsOf(file)->xShmMap(realOf(file), page, size, extend, out);
}
int lockShared(sqlite3_file* file, int offset, int count, int flags) {
    return methodsOf(file)->xShmLock(realOf(file), offset, count, flags);
}
void barrier(sqlite3_file* file) {
    methodsOf(file)->xShmBarrier(realOf(file));
}
int unmapShared(sqlite3_file* file, int remove) {
    return methodsOf(file)->xShmUnmap(realOf(file), remove);
}

const sqlite3_io_methods kMethods = {2,           closeFile,   readFile,        writeFile,  truncateFile,
                                     syncFile,    fileSize,    lockFile,        unlockFile, checkReserved,
                                     controlFile, sectorSize,  characteristics, mapShared,  lockShared,
                                     barrier,     unmapShared, nullptr,         nullptr};

int openFile(sqlite3_vfs* vfs, const char* name, sqlite3_file* file, int flags, int* outFlags) {
    FailingVfs* owner = ownerOf(vfs);
    File* shim = new (file) File{{nullptr}, owner};
    if (owner->readOnly && (flags & SQLITE_OPEN_MAIN_DB))
        flags = (flags & ~(SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE)) | SQLITE_OPEN_READONLY;
    const int code = owner->real()->xOpen(owner->real(), name, shim->real(), flags, outFlags);
    if (code == SQLITE_OK) shim->base.pMethods = &kMethods;
    return code;
}
int deleteFile(sqlite3_vfs* vfs, const char* name, int sync) {
    return ownerOf(vfs)->real()->xDelete(ownerOf(vfs)->real(), name, sync);
}
int accessFile(sqlite3_vfs* vfs, const char* name, int flags, int* out) {
    return ownerOf(vfs)->real()->xAccess(ownerOf(vfs)->real(), name, flags, out);
}
int fullName(sqlite3_vfs* vfs, const char* name, int count, char* out) {
    return ownerOf(vfs)->real()->xFullPathname(ownerOf(vfs)->real(), name, count, out);
}
}  // namespace

FailingVfs::FailingVfs() : real_(sqlite3_vfs_find(nullptr)) {
    name_ = "failing_" + std::to_string(reinterpret_cast<std::uintptr_t>(this));
    vfs_ = *real_;
    vfs_.pNext = nullptr;
    vfs_.zName = name_.c_str();
    vfs_.szOsFile = int(sizeof(File)) + real_->szOsFile;
    vfs_.pAppData = this;
    vfs_.xOpen = openFile;
    vfs_.xDelete = deleteFile;
    vfs_.xAccess = accessFile;
    vfs_.xFullPathname = fullName;
    sqlite3_vfs_register(&vfs_, 0);
}

FailingVfs::~FailingVfs() {
    sqlite3_vfs_unregister(&vfs_);
}

bool FailingVfs::refuseWrite() {
    ++writes;
    if (writesLeft < 0) return false;
    if (writesLeft > 0) {
        --writesLeft;
        return false;
    }
    if (once) writesLeft = -1;
    return true;
}

}  // namespace fettle
