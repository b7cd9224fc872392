// Why: tags and points are any text, names of files are not, and two tags must not write one file. Thread:
// any.
#pragma once

#include <set>
#include <string>
#include <string_view>

namespace fettle {

// A name of a file or folder made from any text: signs that no file name holds become '_', none begins with
// '.' or '-', a long one is cut. Two texts never get one name: told apart by number from what is in `used`,
// and added to it.
std::string fileNameFrom(std::string_view text, std::set<std::string>& used);

}  // namespace fettle
