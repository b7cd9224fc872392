// Why: a photograph of a spalled ring says more than a note: pictures hang on a dated event and come out byte
// for byte as they went in. Taken by their first bytes, whatever they are called: JPEG (ITU-T T.81, FF D8 FF)
// and PNG (ISO/IEC 15948, 8-byte signature). Thread: that of the FleetFile. Errors: Invalid for what is
// neither, empty or too large; NotFound for an event or picture that is not there.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace fettle {

class Database;

inline constexpr std::uint64_t kMostPhotoBytes = std::uint64_t(16) << 20;

struct Photo {
    std::int64_t id = 0;
    std::int64_t event = 0;
    std::string name;    // of the file as given, without its folder
    std::string media;   // image/jpeg | image/png
    std::uint64_t size;  // bytes
};

// "image/jpeg", "image/png"; refused else. `name` is named in the refusal.
Result<std::string> photoMedia(const std::string& name, std::string_view bytes);

class PhotoStore {
  public:
    explicit PhotoStore(Database& database) : database_(database) {}

    // The same picture of one event stands once.
    Result<std::int64_t> add(std::int64_t event, const std::string& name, std::string_view bytes);
    Result<std::vector<Photo>> ofMachine(const std::string& tag);  // by event, then as added; no bytes
    Result<std::string> bytes(std::int64_t id);

  private:
    Database& database_;
};

}  // namespace fettle
