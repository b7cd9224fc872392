// Why: the commands load machines and recordings alike and refuse alike: one line a refusal on stderr.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/file_system.h"
#include "core/machine/machine.h"
#include "core/signal/reader.h"

namespace fettle {

// Exit statuses of every command.
inline constexpr int kDone = 0, kRefusedSome = 1, kWrongUsage = 2, kCouldNotRun = 3;

void tell(const std::string& line);   // one line on stderr
void print(const std::string& text);  // on stdout, as it is
bool stderrIsTerminal();

// Empty after telling why.
std::optional<Machine> loadMachine(const FileSystem& files, const std::string& path);

struct Loaded {
    std::vector<RecordingPtr> recordings;
    bool refusedSome = false;
};
// Warnings of the same words are told once.
Loaded loadRecordings(const FileSystem& files, const std::vector<std::string>& paths);

// Samples [from, from + count) of every channel as a recording of its own.
RecordingPtr pieceOf(const Recording& whole, std::size_t from, std::size_t count);
// The recording cut into whole pieces of this length; itself where seconds <= 0.
std::vector<RecordingPtr> piecesOf(const RecordingPtr& whole, double seconds);

}  // namespace fettle
