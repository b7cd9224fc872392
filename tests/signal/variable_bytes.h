// Why: MAT and HDF5 files for the tests, written by their own libraries. Thread: one.
#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

namespace fettle::bytes {

struct MatVariable {
    std::string name;
    std::vector<double> numbers;          // the first index the fastest
    std::vector<std::size_t> shape = {};  // empty: a column
};
std::string mat(const std::vector<MatVariable>& variables, bool compressed = false);
std::string mat73(const std::vector<MatVariable>& variables);

struct Hdf5Variable {
    std::string name;                                             // with its groups
    std::vector<double> numbers;                                  // the last index the fastest
    std::vector<std::pair<std::string, std::string>> texts = {};  // attributes
    std::vector<std::pair<std::string, double>> values = {};
    std::vector<std::uint64_t> shape = {};  // empty: a vector
};
struct Hdf5File {
    std::vector<Hdf5Variable> variables;
    std::vector<std::pair<std::string, std::string>> texts = {};  // attributes of the file
    std::vector<std::pair<std::string, double>> values = {};
};
std::string hdf5(const Hdf5File& file);
std::string hdf5Elsewhere();  // data set "x" with its numbers in another file

}  // namespace fettle::bytes
