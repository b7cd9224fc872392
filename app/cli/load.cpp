#include "app/cli/load.h"

#include <unistd.h>

#include <cstdio>
#include <set>

namespace fettle {

void tell(const std::string& line) {
    std::fprintf(stderr, "%s\n", line.c_str());
}
void print(const std::string& text) {
    std::fwrite(text.data(), 1, text.size(), stdout);
}
bool stderrIsTerminal() {
    return ::isatty(STDERR_FILENO) != 0;
}

std::optional<Machine> loadMachine(const FileSystem& files, const std::string& path) {
    const auto text = files.read(path);
    if (!text) {
        tell(text.error().sentence());
        return std::nullopt;
    }
    auto parsed = parseMachine(*text, path);
    if (!parsed) {
        tell(parsed.error().sentence());
        return std::nullopt;
    }
    for (const std::string& warning : parsed->warnings)
        tell("note: " + warning);
    return std::move(parsed->machine);
}

Loaded loadRecordings(const FileSystem& files, const std::vector<std::string>& paths) {
    Loaded loaded;
    std::set<std::string> told;
    for (const std::string& path : paths) {
        auto recording = readRecording(files, path);
        if (!recording) {
            tell("refused: " + recording.error().sentence());
            loaded.refusedSome = true;
            continue;
        }
        for (const std::string& warning : (*recording)->warnings)
            if (told.insert(warning).second) tell("note: " + warning);
        loaded.recordings.push_back(std::move(*recording));
    }
    return loaded;
}

RecordingPtr pieceOf(const Recording& whole, std::size_t from, std::size_t count) {
    auto piece = std::make_shared<Recording>(whole);
    for (std::size_t c = 0; c < piece->channels.size(); ++c) {
        const auto& all = whole.channels[c].samples;
        const std::size_t first = std::min(from, all.size()), last = std::min(from + count, all.size());
        piece->channels[c].samples.assign(all.begin() + std::ptrdiff_t(first),
                                          all.begin() + std::ptrdiff_t(last));
    }
    return piece;
}

std::vector<RecordingPtr> piecesOf(const RecordingPtr& whole, double seconds) {
    if (seconds <= 0) return {whole};
    const auto count = std::size_t(seconds * whole->channels[0].sampleRateHz);
    std::vector<RecordingPtr> all;
    for (std::size_t from = 0; from + count <= whole->channels[0].samples.size(); from += count)
        all.push_back(pieceOf(*whole, from, count));
    return all;
}

}  // namespace fettle
