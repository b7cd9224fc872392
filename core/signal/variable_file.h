// Why: recordings out of MAT (version 5 and 7.3) and HDF5 files, whose libraries run contained
// (contained_program.h). The program is asked twice: what is in the file, and then for the samples that the
// rules of variable_choice.h chose; what it answers is counted and checked like any file. A MAT 5 file is
// also walked here, as its library reads a cut one without a word. Names: those of the variables; of a matrix
// with a number behind. Units: an attribute `unit` or `units` (HDF5). Complex numbers and times of no number
// are refused. Errors: those of both, and Damaged "byte N" for a file that breaks off. Source of the walk:
// MAT-File Format, level 5, "data elements" (The MathWorks, published), from memory.
#pragma once

#include <string>

#include "core/signal/reader.h"

namespace fettle {

Result<Recording> readMat(const std::string& bytes, const std::string& file);
Result<Recording> readMatAs(const std::string& bytes, const std::string& file, const ReadingHints& hints);
Result<Recording> readHdf5(const std::string& bytes, const std::string& file);
Result<Recording> readHdf5As(const std::string& bytes, const std::string& file, const ReadingHints& hints);

}  // namespace fettle
