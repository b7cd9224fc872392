// Why: what both readers of this program give: a list of what a file holds, and the numbers of one of them.
// The file is descriptor 3, its bytes in memory; what goes out on standard output is counted by the other
// side (core/signal/contained_program.h). Thread: one. Errors: `refused` in the answer; everything worse ends
// the process, which is what it is for.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/base/json_object.h"

namespace fettle {

inline constexpr const char* kFilePath = "/proc/self/fd/3";
inline constexpr std::size_t kMostVariables = 5000;
inline constexpr std::uint64_t kMostText = 4096;  // letters of a text that is handed on

// Writes answer and numbers, whole. REQUIRES: called once.
void answer(const Json& json, const std::vector<double>& numbers = {});
void refuse(const std::string& why);

std::string fileBytes();

// The file is open: from here on none can be opened any more, whatever a library wants.
void openNoMore();

// Letters of ASCII as they are, all others as '?'.
std::string asciiText(const char* letters, std::size_t count);

void listMat();
void readMatVariable(std::size_t place);
void listHdf5();
void readHdf5Variable(std::size_t place);

}  // namespace fettle
