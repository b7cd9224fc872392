// Every command tells what it takes, and the table of commands in the README says nothing that it does not:
// the same commands, and each option that is named beside one. Source: the README itself.
#include <gmock/gmock.h>

#include <map>
#include <set>

#include "tests/cli/run_program.h"

namespace fettle::cli_test {
namespace {

using made::run;
using Options = std::map<std::string, std::set<std::string>>;  // of a command

std::vector<std::string> tableRows() {
    const std::string readme = made::contentOf(std::string(FETTLE_SOURCE_DIR) + "/README.md");
    const std::size_t from = readme.find("## Commands");
    const std::string section = readme.substr(from, readme.find("\n## ", from + 1) - from);
    std::vector<std::string> rows;
    for (const std::string_view line : split(section, '\n'))
        if (line.starts_with("| `")) rows.emplace_back(line);
    return rows;
}

bool isWord(std::string_view text) {
    return !text.empty() && text.find_first_not_of("abcdefghijklmnopqrstuvwxyz-") == text.npos;
}

std::string optionIn(std::string_view word) {
    const std::size_t at = word.find("--");
    if (at == word.npos) return "";
    std::string option = "--";
    for (std::size_t i = at + 2; i < word.size() && isWord(word.substr(i, 1)); ++i)
        option += word[i];
    return option;
}

// What stands in backticks: a command first, then its options; options alone belong to the command before.
Options inReadme() {
    Options all;
    for (const std::string& row : tableRows()) {
        std::string command;
        const auto pieces = split(row, '`');
        for (std::size_t i = 1; i < pieces.size(); i += 2) {
            const auto words = split(pieces[i], ' ');
            const bool inFirstCell =
                std::string_view(row).substr(0, std::size_t(pieces[i].data() - row.data())).find(" | ") ==
                std::string_view::npos;
            if (inFirstCell && isWord(words[0]) && !words[0].starts_with("--")) command = words[0];
            all[command];
            for (const std::string_view word : words)
                if (const std::string option = optionIn(word); !option.empty()) all[command].insert(option);
        }
    }
    return all;
}

std::set<std::string> commands() {
    std::set<std::string> names;
    const std::string help = run({"--help"}).out;
    const std::string list = help.substr(help.find("Subcommands:"));
    for (const std::string_view line : split(list, '\n'))
        if (line.starts_with("  ") && line.size() > 2 && line[2] != ' ')
            names.emplace(line.substr(2, line.find(' ', 2) - 2));
    return names;
}

TEST(Help, TheReadmeNamesTheCommandsThereAre) {
    std::set<std::string> told;
    for (const auto& [command, options] : inReadme())
        told.insert(command);
    EXPECT_EQ(told, commands());
    EXPECT_GT(told.size(), 10u);
}

TEST(Help, TheManualNamesTheCommandsThereAre) {
    const std::string manual =
        made::contentOf(std::string(FETTLE_SOURCE_DIR) + "/resources/package/fettle-cli.1");
    std::set<std::string> told;
    const auto lines = split(manual, '\n');
    for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
        if (lines[i] != ".TP" || !lines[i + 1].starts_with(".B ")) continue;
        std::string name(lines[i + 1].substr(3));
        std::erase(name, '\\');
        told.insert(name);
    }
    EXPECT_EQ(told, commands());
}

// What a command's own help lists, "--help" left out.
std::set<std::string> optionsOf(const std::string& command) {
    std::set<std::string> options;
    const std::string help = run({command, "--help"}).out;
    for (const std::string_view line : split(help, '\n'))
        if (line.starts_with("  -"))
            if (const std::string option = optionIn(line); option != "--help") options.insert(option);
    return options;
}

// Options between .RS and .RE under each command.
Options inManual() {
    const std::string manual =
        made::contentOf(std::string(FETTLE_SOURCE_DIR) + "/resources/package/fettle-cli.1");
    Options all;
    std::string command;
    for (const std::string_view line : split(manual, '\n')) {
        std::string plain(line.substr(0, line.find("\\fR")));
        std::erase(plain, '\\');
        if (plain.starts_with(".B ") && !plain.starts_with(".B --")) command = plain.substr(3);
        if (plain.starts_with("fB"))
            if (const std::string option = optionIn(plain); !option.empty()) all[command].insert(option);
    }
    return all;
}

// resources/setup/update_manual takes them over.
TEST(Help, TheManualTellsEveryOptionOfEveryCommandAndNoOther) {
    const Options manual = inManual();
    std::size_t count = 0;
    for (const std::string& command : commands()) {
        const auto told = manual.find(command);
        const std::set<std::string> options = optionsOf(command);
        EXPECT_EQ(told == manual.end() ? std::set<std::string>() : told->second, options) << command;
        count += options.size();
    }
    EXPECT_GT(count, 100u);
}

// The window program's, as its source names them: it is not built everywhere.
TEST(Help, TheManualOfTheWindowTellsEveryOption) {
    const std::string source = made::contentOf(std::string(FETTLE_SOURCE_DIR) + "/app/desktop/options.cpp");
    std::string manual = made::contentOf(std::string(FETTLE_SOURCE_DIR) + "/resources/package/fettle.1");
    std::erase(manual, '\\');
    std::size_t count = 0;
    for (std::size_t at = source.find("\"--"); at != source.npos; at = source.find("\"--", at + 1)) {
        const std::string option = optionIn(std::string_view(source).substr(at));
        EXPECT_THAT(manual, testing::ContainsRegex(option + "[ \n]"));
        ++count;
    }
    EXPECT_GT(count, 10u);
}

TEST(Help, EveryCommandTellsTheOptionsOfTheReadme) {
    std::size_t count = 0;
    for (const auto& [command, options] : inReadme()) {
        const auto ran = run({command, "--help"});
        EXPECT_EQ(ran.status, 0) << command;
        EXPECT_EQ(ran.err, "") << command;
        for (const std::string& option : options) {
            EXPECT_THAT(ran.out, testing::ContainsRegex("[ ,]" + option + "[ \n]")) << command;
            ++count;
        }
    }
    EXPECT_GT(count, 20u);
}

// A folder may come from the surroundings, so the help does not call it required.
TEST(Help, JudgeAsksForAFolderOrTheVariable) {
    EXPECT_THAT(run({"judge", "--help"}).out, testing::Not(testing::HasSubstr("REQUIRED")));
    if (std::getenv("FETTLE_OPEN_RECORDS")) GTEST_SKIP() << "the variable is set";
    const auto ran = run({"judge"});
    EXPECT_EQ(ran.status, 2);
    EXPECT_THAT(ran.err, testing::HasSubstr("FETTLE_OPEN_RECORDS"));
}

}  // namespace
}  // namespace fettle::cli_test
