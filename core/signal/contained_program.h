// Why: libraries that read intricate formats crash, hang or eat memory on hostile files. They run in a
// program of their own (app/variables), which gets the bytes of one file, may open nothing else, and has
// limits of time and memory; whatever becomes of it, here it is an answer or an error. The program stands
// beside the one that runs, or in ../libexec/fettle. Answer: a sign, the length of a JSON text, the text,
// numbers as the machine keeps doubles, a closing sign; nothing of it is believed before it is counted.
// Ownership: starts a process, waits for its end, leaves nothing behind. Thread: any, at once. Errors:
// Damaged with what became of the program (crashed, took too long, needed too much memory, answered
// nonsense), Unsupported where the program says why the file is not taken or where it is not there.
#pragma once

#include <chrono>
#include <cstdint>
#include <string>
#include <vector>

#include "core/base/json_object.h"
#include "core/base/result.h"

namespace fettle {

struct ContainedLimits {
    std::chrono::milliseconds time{60000};
    std::uint64_t memoryBytes = 0;                       // 0: by the size of the file
    std::uint64_t answerBytes = std::uint64_t(1) << 22;  // of the JSON text
};

struct ContainedAnswer {
    Json json;
    std::vector<double> numbers;
};

// Runs "PROGRAM MEMORY arguments.." over the bytes. `program` empty: the one that is found.
Result<ContainedAnswer> runContained(const std::string& bytes, const std::vector<std::string>& arguments,
                                     const std::string& file, const ContainedLimits& limits = {},
                                     const std::string& program = "");

std::string containedProgram();  // its path; empty where there is none

// The signs around an answer; also for the other side.
inline constexpr char kAnswerSign[9] = "FTLVAR1\n", kAnswerEnd[9] = "FTLEND1\n";
inline constexpr int kContainedFile = 3;  // the descriptor of the file's bytes, for reading

}  // namespace fettle
