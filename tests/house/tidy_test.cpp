#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <set>

#include "tests/house/source_tree.h"

namespace fettle::house {

namespace fs = std::filesystem;

namespace {

// What the project's root may hold; the second group is never kept in the repository.
const std::set<std::string> kTopLevel = {
    "CMakeLists.txt", "README.md",     "DEVELOPERS.md", "app", "core", "ui",         "resources",    "tests",
    "sample_fleet",   ".clang-format", ".clang-tidy",   ".ci", ".git", ".gitignore", ".editorconfig"};
bool isLeftover(const std::string& name) {
    return startsWith(name, "build") || name == ".cache" || name == "compile_commands.json" ||
           endsWith(name, ".swp");
}

bool isText(const std::string& path) {
    for (const std::string ending : {".h", ".cpp", ".cmake", ".txt", ".md", "/run", "/setup", "_machine"})
        if (endsWith(path, ending)) return true;
    return false;
}

// "" where a text file is tidy, else what is wrong and in which line.
std::string untidy(const std::string& text) {
    if (text.empty()) return "the file is empty";
    if (text.back() != '\n') return "the last line has no end";
    const std::vector<std::string> lines = linesOf(text);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const std::string& line = lines[i];
        const std::string place = "line " + std::to_string(i + 1);
        if (line.find_first_of("\t\r") != std::string::npos) return place + ": a tab or carriage return";
        if (!line.empty() && line.back() == ' ') return place + ": a blank at the end";
    }
    return "";
}

// The first line of a header is a comment that says something, and it guards itself once.
std::string faultOfHeader(const std::string& text) {
    const std::vector<std::string> lines = linesOf(text);
    if (lines.empty() || !startsWith(lines.front(), "// ") || lines.front().size() < 20)
        return "the first line is not a comment that says why the header exists";
    if (std::count(lines.begin(), lines.end(), "#pragma once") != 1) return "not one line #pragma once";
    return "";
}

}  // namespace

TEST(Tidy, TheTopLevelHoldsOnlyWhatItShould) {
    std::set<std::string> found;
    for (const auto& entry : fs::directory_iterator(FETTLE_SOURCE_DIR)) {
        const std::string name = entry.path().filename().string();
        EXPECT_TRUE(isLeftover(name) || kTopLevel.count(name)) << name << " does not belong there";
        found.insert(name);
    }
    for (const std::string needed : {"CMakeLists.txt", "README.md", "DEVELOPERS.md", "app", "core", "tests",
                                     "resources", "sample_fleet", ".ci"})
        EXPECT_TRUE(found.count(needed)) << needed << " is missing";
}

TEST(Tidy, TheScriptsAreThereAndMayRun) {
    for (const std::string script : {"sample_fleet/run", "tests/run", ".ci/run", "resources/setup/setup"}) {
        const fs::path path = fs::path(FETTLE_SOURCE_DIR) / script;
        ASSERT_TRUE(fs::is_regular_file(path)) << script;
        EXPECT_NE(fs::status(path).permissions() & fs::perms::owner_exec, fs::perms::none) << script;
    }
}

TEST(Tidy, EveryHeaderSaysWhyAndGuardsItself) {
    int headers = 0;
    for (const SourceFile& source : allSources()) {
        if (!endsWith(source.path, ".h")) continue;
        ++headers;
        EXPECT_EQ(faultOfHeader(source.text), "") << source.path;
    }
    EXPECT_GT(headers, 10);
    EXPECT_NE(faultOfHeader("#pragma once\n// Why: it exists for a reason.\n"), "");
    EXPECT_NE(faultOfHeader("// Why: it exists for a reason.\nint x;\n"), "");
    EXPECT_NE(faultOfHeader("//\n#pragma once\n"), "");
}

TEST(Tidy, NoSourceIsLongerThan600Lines) {
    for (const SourceFile& source : allSources())
        EXPECT_LE(linesOf(source.text).size(), 600u) << source.path;
}

TEST(Tidy, NoTabsNoTrailingBlanksAndEveryFileEndsItsLastLine) {
    int read = 0;
    for (const SourceFile& source :
         filesBelow({"core", "ui", "app", "tests", "resources", "sample_fleet", ".ci"})) {
        if (!isText(source.path)) continue;
        ++read;
        EXPECT_EQ(untidy(source.text), "") << source.path;
    }
    EXPECT_GT(read, 10);
    EXPECT_NE(untidy("a\tb\n"), "");
    EXPECT_NE(untidy("a \n"), "");
    EXPECT_NE(untidy("a"), "");
    EXPECT_EQ(untidy("a b\n\nc\n"), "");
}

TEST(Tidy, SourcesAreNamedInSnakeCase) {
    for (const SourceFile& source : allSources())
        for (const char c : source.path)
            EXPECT_TRUE((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || c == '/' || c == '.')
                << source.path;
}

}  // namespace fettle::house
