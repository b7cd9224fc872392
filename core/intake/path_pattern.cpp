#include "core/intake/path_pattern.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/text.h"
#include "core/signal/capture_facts.h"

namespace fettle {

namespace {

constexpr std::size_t kMostLetters = 1000;
constexpr std::size_t kMostParts = 64;
constexpr std::size_t kDigitsOfTime = 14;  // yyyymmddhhmmss

// "20260504T062000Z" -> "2026-05-04T06:20:00Z"; empty: no time.
std::string timeIn(std::string_view text) {
    std::string digits;
    for (const char c : text) {
        if (c >= '0' && c <= '9')
            digits += c;
        else if (std::string_view("-_:TtZz").find(c) == std::string_view::npos)
            return {};
    }
    if (digits.size() != kDigitsOfTime) return {};
    const auto part = [&](std::size_t from, std::size_t count) { return digits.substr(from, count); };
    const std::string utc = fmt::format("{}-{}-{}T{}:{}:{}Z", part(0, 4), part(4, 2), part(6, 2), part(8, 2),
                                        part(10, 2), part(12, 2));
    return parseCaptureTime(utc) ? utc : std::string();
}

bool isField(const std::string& name) {
    return name == "machine" || name == "point" || name == "time_utc";
}

}  // namespace

Result<PathPattern> PathPattern::parse(const std::string& text) {
    const auto broken = [&](const std::string& rule) {
        return fail(ErrorKind::Invalid, oneLine(text, 200), "pattern", rule);
    };
    if (text.empty() || text.size() > kMostLetters || text != oneLine(text, kMostLetters))
        return broken(fmt::format("must be 1 to {} letters on one line", kMostLetters));
    PathPattern pattern;
    std::vector<Part>& parts = pattern.parts_;
    if (text.front() != '/' && text.rfind("**", 0) != 0) parts.push_back({Kind::AnyFolders, {}});
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text.compare(i, 3, "**/") == 0) {
            parts.push_back({Kind::AnyFolders, {}});
            i += 2;
        } else if (text.compare(i, 2, "**") == 0) {
            parts.push_back({Kind::Anything, {}});
            i += 1;
        } else if (text[i] == '*') {
            parts.push_back({Kind::InName, {}});
        } else if (text[i] == '{') {
            const std::size_t end = text.find('}', i);
            const std::string name = end == text.npos ? "" : text.substr(i + 1, end - i - 1);
            if (!isField(name)) return broken("knows {machine}, {point} and {time_utc}, no other field");
            if (pattern.says(name)) return broken(fmt::format("has {{{}}} twice", name));
            parts.push_back({Kind::Field, name});
            i = end;
        } else if (!parts.empty() && parts.back().kind == Kind::Letters) {
            parts.back().text += text[i];
        } else {
            parts.push_back({Kind::Letters, std::string(1, text[i])});
        }
    }
    if (parts.size() > kMostParts) return broken("has too many stars and fields");
    return pattern;
}

// Goes back where a star or field took too little; what failed once at a place is not tried again there, so
// that no path takes longer than its length times the pattern's.
class PathPattern::Walk {
  public:
    Walk(const std::vector<Part>& parts, const std::string& path)
        : parts_(parts), path_(path), failed_(parts.size() * (path.size() + 1)) {}

    bool from(std::size_t part, std::size_t at) {
        if (part == parts_.size()) return at == path_.size();
        const std::size_t place = part * (path_.size() + 1) + at;
        if (failed_[place]) return false;
        if (takes(part, at)) return true;
        failed_[place] = true;
        return false;
    }
    PathSays said;

  private:
    bool takes(std::size_t part, std::size_t at) {
        const Part& one = parts_[part];
        if (one.kind == Kind::Letters)
            return path_.compare(at, one.text.size(), one.text) == 0 && from(part + 1, at + one.text.size());
        if (one.kind == Kind::AnyFolders) return folders(part, at);
        const bool name = one.kind != Kind::Anything;
        const std::size_t least = one.kind == Kind::Field ? 1 : 0;
        for (std::size_t length = 0; at + length <= path_.size(); ++length) {
            if (length > 0 && name && path_[at + length - 1] == '/') return false;
            if (length < least) continue;
            if (one.kind == Kind::Field && !note(one.text, path_.substr(at, length))) continue;
            if (from(part + 1, at + length)) return note(one.text, path_.substr(at, length));
        }
        return false;
    }

    // Nothing, or all up to and with a stroke.
    bool folders(std::size_t part, std::size_t at) {
        if (from(part + 1, at)) return true;
        for (std::size_t stroke = path_.find('/', at); stroke != path_.npos;
             stroke = path_.find('/', stroke + 1))
            if (from(part + 1, stroke + 1)) return true;
        return false;
    }

    bool note(const std::string& field, const std::string& text) {
        if (field == "machine") said.machine = text;
        if (field == "point") said.point = text;
        if (field != "time_utc") return true;
        const std::string time = timeIn(text);
        if (!time.empty()) said.time = time;
        return !time.empty();
    }

    const std::vector<Part>& parts_;
    const std::string& path_;
    std::vector<bool> failed_;  // by part and place in the path
};

std::optional<PathSays> PathPattern::match(const std::string& path) const {
    Walk walk(parts_, path);
    if (!walk.from(0, 0)) return std::nullopt;
    return walk.said;
}

std::size_t PathPattern::literals() const {
    std::size_t letters = 0;
    for (const Part& part : parts_)
        letters += part.kind == Kind::Letters ? part.text.size() : 0;
    return letters;
}

bool PathPattern::says(const std::string& field) const {
    return std::any_of(parts_.begin(), parts_.end(),
                       [&](const Part& part) { return part.kind == Kind::Field && part.text == field; });
}

// A star or brace in a name would be read as one of the pattern's: it becomes a star, which takes itself.
std::string patternOf(const std::string& path) {
    std::string pattern = path;
    for (char& c : pattern)
        if (c == '{' || c == '}') c = '*';
    return pattern;
}

std::string patternOfFolder(const std::string& folder, const std::string& extension, bool deeper) {
    const std::string start = patternOf(folder) + (folder.ends_with('/') ? "" : "/");
    return start + (deeper ? "**/" : "") + "*." + extension;
}

}  // namespace fettle
