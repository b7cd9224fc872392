// Why: the rules of the house (who may include whom, what a file looks like) are checked on the sources
// themselves; this reads them. Paths are relative to the project's root with '/' between names. A file that
// cannot be read is an empty one, which every rule refuses. Thread: any, it holds no state.
#pragma once

#include <string>
#include <vector>

namespace fettle::house {

struct SourceFile {
    std::string path;  // "core/dsp/fft.cpp"
    std::string text;
};

struct Include {
    int line = 0;        // from 1
    bool quoted = true;  // "..." rather than <...>
    std::string target;  // "core/base/result.h"
};

// All regular files below the given folders of the project, sorted by path; a folder that is not there has
// none.
std::vector<SourceFile> filesBelow(const std::vector<std::string>& folders);
// The .h and .cpp files of core, ui, app and tests.
std::vector<SourceFile> allSources();

std::vector<Include> includesOf(const std::string& text);
std::vector<std::string> linesOf(const std::string& text);
bool endsWith(const std::string& text, const std::string& ending);
bool startsWith(const std::string& text, const std::string& beginning);

}  // namespace fettle::house
