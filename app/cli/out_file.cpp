#include "app/cli/out_file.h"

#include <unistd.h>

#include <cerrno>
#include <system_error>

#include "core/base/file_system.h"
#include "core/store/file_probe.h"

namespace fettle {

OutFile::OutFile(std::string path) : path_(std::move(path)), file_(nullptr, &std::fclose) {
    const auto place = writablePlace(path_);
    if (!place) {
        status_ = fail(place.error());
        return;
    }
    path_ = *place;
    unfinished_ = unfinishedName(path_);
    file_.reset(std::fopen(unfinished_.c_str(), "wb"));
    if (!file_) failed();
}

OutFile::~OutFile() {
    if (file_) ::unlink(unfinished_.c_str());
}

void OutFile::failed() {
    status_ = fail(ErrorKind::Unwritable, path_, "", std::generic_category().message(errno));
}

void OutFile::add(const std::string& text) {
    if (status_ && std::fwrite(text.data(), 1, text.size(), file_.get()) != text.size()) failed();
}

Status OutFile::finish() {
    if (!status_) return status_;
    if (std::fflush(file_.get()) != 0 || ::fsync(::fileno(file_.get())) != 0 ||
        std::rename(unfinished_.c_str(), path_.c_str()) != 0)
        failed();
    if (status_) file_.reset();
    return status_;
}

}  // namespace fettle
