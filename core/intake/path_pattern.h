// Why: files of one kind lie where their names follow one pattern, and the pattern often says what the file
// itself does not: machine, point, time. Form: * within a name, ** across folders, {machine}, {point} and
// {time_utc} within a name, where they say that fact; all else stands for itself. {time_utc} takes fourteen
// digits, perhaps parted by - _ : T or ended by Z, and whoever writes the pattern says that they are UTC. A
// pattern that does not begin with / matches at any folder. Fields take as little as they can. Thread: pure.
// Errors: Invalid with the rule the pattern breaks.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"

namespace fettle {

struct PathSays {
    std::string machine, point, time;  // time as in a sidecar; empty: the pattern has no such field
};

class PathPattern {
  public:
    static Result<PathPattern> parse(const std::string& text);
    std::optional<PathSays> match(const std::string& path) const;  // nothing: does not match
    std::size_t literals() const;  // letters that stand for themselves: more of them is the nearer pattern
    bool says(const std::string& field) const;  // "machine", "point", "time_utc"

  private:
    enum class Kind { Letters, InName, AnyFolders, Anything, Field };
    struct Part {
        Kind kind = Kind::Letters;
        std::string text;  // letters, or the field's name
    };
    class Walk;
    std::vector<Part> parts_;
};

// The pattern for exactly this path, and for all files of its ending in its folder.
std::string patternOf(const std::string& path);
std::string patternOfFolder(const std::string& folder, const std::string& extension, bool deeper);

}  // namespace fettle
