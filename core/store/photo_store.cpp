#include "core/store/photo_store.h"

#include <fmt/format.h>

#include "core/base/text.h"
#include "core/store/database.h"

namespace fettle {

namespace {

constexpr std::string_view kJpeg = "\xFF\xD8\xFF";
constexpr std::string_view kPng = "\x89PNG\r\n\x1A\n";

std::string withoutFolder(const std::string& name) {
    return name.substr(name.find_last_of("/\\") + 1);
}

}  // namespace

Result<std::string> photoMedia(const std::string& name, std::string_view bytes) {
    const auto refused = [&](std::string rule) {
        return fail(ErrorKind::Invalid, "", "photograph " + oneLine(withoutFolder(name), 120),
                    std::move(rule));
    };
    if (bytes.empty()) return refused("is empty");
    if (bytes.size() > kMostPhotoBytes)
        return refused(fmt::format("has {} MB, the most is {} MB: make it smaller first",
                                   (bytes.size() >> 20) + 1, kMostPhotoBytes >> 20));
    if (bytes.starts_with(kJpeg)) return "image/jpeg";
    if (bytes.starts_with(kPng)) return "image/png";
    return refused("is neither JPEG nor PNG by its first bytes");
}

Result<std::int64_t> PhotoStore::add(std::int64_t event, const std::string& name, std::string_view bytes) {
    const auto media = photoMedia(name, bytes);
    if (!media) return fail(media.error());
    const auto there = database_.one<std::int64_t>("SELECT id FROM event WHERE id=?", event);
    if (!there) return fail(there.error());
    if (!*there)
        return fail(ErrorKind::NotFound, database_.path(), fmt::format("event {}", event),
                    "is not in the fleet file");
    const auto same =
        database_.one<std::int64_t>("SELECT id FROM photo WHERE event=? AND bytes=?", event, Blob{bytes});
    if (!same) return fail(same.error());
    if (*same) return **same;
    if (auto good = database_.run("INSERT INTO photo(event, name, media, bytes) VALUES (?,?,?,?)", event,
                                  withoutFolder(name), *media, Blob{bytes});
        !good)
        return fail(good.error());
    return database_.lastId();
}

Result<std::vector<Photo>> PhotoStore::ofMachine(const std::string& tag) {
    Statement rows(database_,
                   "SELECT p.id, p.event, p.name, p.media, length(p.bytes) FROM photo p JOIN event e ON e.id "
                   "= p.event JOIN machine m ON m.id = e.machine WHERE m.tag = ? ORDER BY e.time, p.event, "
                   "p.id");
    rows.bind(tag);
    return allRows<Photo>(rows, [](Statement& row, Photo& photo) {
        std::int64_t size = 0;
        row.into(photo.id, photo.event, photo.name, photo.media, size);
        photo.size = std::uint64_t(size);
    });
}

Result<std::string> PhotoStore::bytes(std::int64_t id) {
    Statement rows(database_, "SELECT bytes FROM photo WHERE id = ?");
    rows.bind(id);
    std::string bytes;
    const bool there = rows.next();
    if (there) bytes = rows.blob();
    if (auto good = rows.status(); !good) return fail(good.error());
    if (!there)
        return fail(ErrorKind::NotFound, database_.path(), fmt::format("photograph {}", id),
                    "is not in the fleet file");
    return bytes;
}

}  // namespace fettle
