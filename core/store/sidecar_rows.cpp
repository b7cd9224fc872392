#include "core/store/sidecar_rows.h"

#include <fmt/format.h>

#include <vector>

#include "core/store/packing.h"

namespace fettle {

namespace {

constexpr std::size_t kShort = 96;  // bytes: not worth a row of their own

// To a quarter, beside what zstd adds to every frame and the digits of a time.
bool fits(std::size_t packed, std::size_t text) {
    return packed <= text / 4 + 24;
}

struct Pattern {
    std::int64_t id = 0;
    std::string packed;
};

tl::unexpected<Error> damaged(const Database& database, std::int64_t recording, const std::string& rule) {
    return fail(ErrorKind::Damaged, database.path(), fmt::format("sidecar of recording {}", recording), rule);
}

Result<std::vector<Pattern>> newestPatterns(Database& database, std::int64_t machine,
                                            const std::string& point) {
    Statement rows(
        database,
        "SELECT id, text FROM sidecar_pattern WHERE machine=? AND point=? ORDER BY id DESC LIMIT 3");
    rows.bind(machine, point);
    std::vector<Pattern> patterns;
    while (rows.next()) {
        Pattern& pattern = patterns.emplace_back();
        rows.into(pattern.id);
        pattern.packed = rows.blob();
    }
    if (auto good = rows.status(); !good) return fail(good.error());
    return patterns;
}

}  // namespace

bool isShortSidecar(std::string_view text) {
    return text.size() < kShort;
}

Status putSidecar(Database& database, std::int64_t recording, std::int64_t machine, const std::string& point,
                  std::string_view text) {
    const auto patterns = newestPatterns(database, machine, point);
    if (!patterns) return fail(patterns.error());
    const auto put = [&](std::int64_t pattern, const std::string& data) {
        return database.run("INSERT INTO sidecar(recording, pattern, data) VALUES (?,?,?)", recording,
                            pattern, Blob{data});
    };
    for (const Pattern& pattern : *patterns) {
        const auto before = unpack(pattern.packed, kMostPackedText);
        if (!before) continue;  // the check names it; a new one takes its place
        const std::string data = packAfter(*before, text);
        if (!data.empty() && fits(data.size(), text.size())) return put(pattern.id, data);
    }
    const std::string whole = pack(text), data = packAfter(text, text);
    if (whole.empty() || data.empty())
        return fail(ErrorKind::Unwritable, database.path(), "", "a sidecar could not be packed");
    if (auto good = database.run("INSERT INTO sidecar_pattern(machine, point, text) VALUES (?,?,?)", machine,
                                 point, Blob{whole});
        !good)
        return good;
    return put(database.lastId(), data);
}

Result<std::optional<std::string>> sidecarOf(Database& database, std::int64_t recording) {
    std::string plain, pattern, data;
    std::optional<std::int64_t> packed;
    {
        Statement rows(database,
                       "SELECT r.sidecar, s.recording, p.text, s.data FROM recording r LEFT JOIN sidecar s "
                       "ON s.recording = r.id LEFT JOIN sidecar_pattern p ON p.id = s.pattern WHERE r.id=?");
        const bool found = rows.bind(recording).next();
        if (found) {
            rows.into(plain, packed);
            pattern = rows.blob();
            data = rows.blob();
        }
        if (auto good = rows.status(); !good) return fail(good.error());
        if (!found) return std::optional<std::string>();
    }
    if (!packed) return std::optional(std::move(plain));
    const auto before = unpack(pattern, kMostPackedText);
    if (!before) return damaged(database, recording, "its pattern " + before.error());
    auto text = unpackAfter(*before, data, kMostPackedText);
    if (!text) return damaged(database, recording, text.error());
    return std::optional(std::move(*text));
}

}  // namespace fettle
