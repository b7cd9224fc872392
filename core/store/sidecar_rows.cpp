#include "core/store/sidecar_rows.h"

#include <fmt/format.h>

#include <vector>

#include "core/store/packing.h"

namespace fettle {

namespace {

constexpr std::size_t kShort = 96;  // bytes: not worth a row of their own
constexpr std::size_t kFits = 4;    // a pattern fits what it brings down to a quarter

struct Pattern {
    std::int64_t id = 0;
    std::string text;
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
        Pattern pattern;
        rows.into(pattern.id);
        auto text = unpack(rows.blob(), kMostPackedText);
        if (!text) continue;  // the check names it; a new one takes its place
        pattern.text = std::move(*text);
        patterns.push_back(std::move(pattern));
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
    for (const Pattern& pattern : *patterns)
        if (const std::string data = packAfter(pattern.text, text); data.size() * kFits <= text.size())
            return put(pattern.id, data);
    if (auto good = database.run("INSERT INTO sidecar_pattern(machine, point, text) VALUES (?,?,?)", machine,
                                 point, Blob{pack(text)});
        !good)
        return good;
    return put(database.lastId(), packAfter(text, text));
}

Result<std::optional<std::string>> sidecarOf(Database& database, std::int64_t recording) {
    std::string plain;
    std::string pattern, data;
    {
        Statement rows(
            database,
            "SELECT r.sidecar, p.text, s.data FROM recording r LEFT JOIN sidecar s ON s.recording = "
            "r.id LEFT JOIN sidecar_pattern p ON p.id = s.pattern WHERE r.id=?");
        const bool found = rows.bind(recording).next();
        if (found) {
            rows.into(plain);
            pattern = rows.blob();
            data = rows.blob();
        }
        if (auto good = rows.status(); !good) return fail(good.error());
        if (!found) return std::optional<std::string>();
    }
    if (data.empty()) return std::optional(std::move(plain));
    const auto before = unpack(pattern, kMostPackedText);
    if (!before) return damaged(database, recording, "its pattern " + before.error());
    auto text = unpackAfter(*before, data, kMostPackedText);
    if (!text) return damaged(database, recording, text.error());
    return std::optional(std::move(*text));
}

}  // namespace fettle
