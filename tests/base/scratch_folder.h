// Why: tests of the real disk get a folder of their own that is gone afterwards.
#pragma once

#include <stdlib.h>

#include <filesystem>
#include <string>

namespace fettle {

class ScratchFolder {
  public:
    ScratchFolder() {
        std::string form = (std::filesystem::temp_directory_path() / "fettle_XXXXXX").string();
        path_ = ::mkdtemp(form.data());
    }
    ~ScratchFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    ScratchFolder(const ScratchFolder&) = delete;
    ScratchFolder& operator=(const ScratchFolder&) = delete;

    std::string operator/(const std::string& name) const { return path_ + "/" + name; }
    const std::string& path() const { return path_; }

  private:
    std::string path_;
};

}  // namespace fettle
