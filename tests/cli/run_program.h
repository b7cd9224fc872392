// Why: the command program is tested as a user meets it: started by a shell with arguments, judged by its
// exit status and by what it wrote to either stream. Source of the statuses: the project's contract, 0 done,
// 1 done but something was refused, 2 wrong usage, 3 could not run. Thread: one.
#pragma once

#include <gtest/gtest.h>
#include <sys/wait.h>

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "core/base/text.h"
#include "tests/base/scratch_folder.h"

namespace fettle::made {

struct Ran {
    int status = -1;
    std::string out, err;

    std::vector<std::string> errLines() const {
        std::vector<std::string> lines;
        for (const std::string_view line : split(err, '\n'))
            if (!line.empty()) lines.emplace_back(line);
        return lines;
    }
};

inline std::string quoted(const std::string& argument) {
    std::string out = "'";
    for (const char c : argument)
        out += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return out + "'";
}

inline std::string contentOf(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

inline void write(const std::string& path, const std::string& bytes) {
    std::ofstream file(path, std::ios::binary);
    file << bytes;
    ASSERT_TRUE(file.flush()) << path;
}

// `to`: where standard output goes; empty: it is read back.
inline Ran run(const std::vector<std::string>& arguments, const std::string& to = "") {
    const ScratchFolder folder;
    std::string command = quoted(FETTLE_CLI);
    for (const std::string& argument : arguments)
        command += " " + quoted(argument);
    command +=
        " > " + quoted(to.empty() ? folder / "out" : to) + " 2> " + quoted(folder / "err") + " < /dev/null";
    const int ended = std::system(command.c_str());
    return {WIFEXITED(ended) ? WEXITSTATUS(ended) : -1, contentOf(folder / "out"), contentOf(folder / "err")};
}

}  // namespace fettle::made
