#include "tests/house/source_tree.h"

#include <algorithm>
#include <filesystem>
#include <optional>
#include <string_view>

#include "core/base/file_system.h"
#include "core/base/text.h"

namespace fettle::house {

namespace fs = std::filesystem;

namespace {

// Takes `word` and the blanks before it off the front of `rest`.
bool take(std::string_view& rest, std::string_view word) {
    rest = trimmed(rest);
    if (rest.substr(0, word.size()) != word) return false;
    rest.remove_prefix(word.size());
    return true;
}

std::optional<Include> includeOf(std::string_view line) {
    if (!take(line, "#") || !take(line, "include")) return std::nullopt;
    const bool quoted = take(line, "\"");
    if (!quoted && !take(line, "<")) return std::nullopt;
    return Include{0, quoted, std::string(line.substr(0, line.find_first_of("\">")))};
}

}  // namespace

std::vector<SourceFile> filesBelow(const std::vector<std::string>& folders) {
    const fs::path root = FETTLE_SOURCE_DIR;
    const RealFileSystem files;
    std::vector<SourceFile> all;
    for (const std::string& folder : folders) {
        if (!fs::is_directory(root / folder)) continue;
        for (const auto& entry : fs::recursive_directory_iterator(root / folder)) {
            if (!entry.is_regular_file()) continue;
            const std::string path = entry.path().lexically_relative(root).generic_string();
            all.push_back({path, files.read(entry.path().string()).value_or("")});
        }
    }
    std::sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.path < b.path; });
    return all;
}

std::vector<SourceFile> allSources() {
    std::vector<SourceFile> all = filesBelow({"core", "ui", "app", "tests"});
    std::erase_if(all,
                  [](const SourceFile& f) { return !endsWith(f.path, ".h") && !endsWith(f.path, ".cpp"); });
    return all;
}

std::vector<Include> includesOf(const std::string& text) {
    std::vector<Include> all;
    const std::vector<std::string> lines = linesOf(text);
    for (std::size_t i = 0; i < lines.size(); ++i)
        if (auto include = includeOf(lines[i])) {
            include->line = static_cast<int>(i) + 1;
            all.push_back(*include);
        }
    return all;
}

std::vector<std::string> linesOf(const std::string& text) {
    std::vector<std::string> lines;
    std::size_t from = 0;
    while (from < text.size()) {
        const std::size_t end = std::min(text.find('\n', from), text.size());
        lines.push_back(text.substr(from, end - from));
        from = end + 1;
    }
    return lines;
}

bool endsWith(const std::string& text, const std::string& ending) {
    return text.size() >= ending.size() &&
           text.compare(text.size() - ending.size(), ending.size(), ending) == 0;
}

bool startsWith(const std::string& text, const std::string& beginning) {
    return text.rfind(beginning, 0) == 0;
}

}  // namespace fettle::house
